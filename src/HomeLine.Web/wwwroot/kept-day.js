// Keeps today's pages of the nurse who is signed in, so that the day can be read and written down without signal. The office makes the key; this tab holds it
// (and, if she chooses, it lies under a code of hers); the device stores the pages under it until the day ends, she signs out, or the office takes them back.
import "./kept-store.js";
import { canSeal, lock, lockUnderCode, openSeal, unlock, unlockWithCode } from "./sealed.js";

const slot = "homeline-day-key";
const looks = "homeline-looks";
const freshFor = 20 * 60 * 1000;

export const dayKey = () => sessionStorage.getItem(slot);

/** When the page on screen was kept, in the words of a clock; nothing for a page that came from the office just now. */
export const keptAt = () => document.documentElement.dataset.keptAt;

export async function readKept(key, path) {
  const sealed = await keptDay.page(path);
  return sealed ? unlock(key, sealed) : null;
}

export async function openWithCode(code) {
  const day = await keptDay.about();
  const key = day?.code ? await unlockWithCode(code, day.code).catch(() => null) : null;
  if (!key) return null;
  sessionStorage.setItem(slot, key);
  await keptDay.note({ ...day, tries: 0 });
  return key;
}

// A draft begun on an earlier page lies under that page's key; for the day the device can find it without asking the office.
const keyPath = async seal => "key:" + [...new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(seal)))].map(one => one.toString(16).padStart(2, "0")).join("");

export async function rememberKey(seal, key) {
  if (canSeal && dayKey() && await keptDay.about()) await keptDay.put(await keyPath(seal), await lock(dayKey(), key));
}

export async function recallKey(seal) {
  return canSeal && dayKey() && await keptDay.about() ? readKept(dayKey(), await keyPath(seal)).catch(() => null) : null;
}

/** Keeps the day that the page on screen names, unless it is here already and fresh. */
export async function keepDay(panel, say) {
  if (!canSeal || !("serviceWorker" in navigator)) {
    say("This page was not opened over https, or this browser cannot keep pages: without signal there is nothing on this device. Take the printed sheet.", "warn");
    return;
  }
  await navigator.serviceWorker.register("/day-worker.js");
  const { day, owner, seal, key, version, ends, pages, numbers } = JSON.parse(panel.dataset.day);
  const before = await keptDay.about();
  const isSame = before?.day === day && before.owner === owner;
  const found = isSame ? dayKey() ?? (await openSeal(before.seal)).key : null;
  if (!found) await keptDay.empty();
  const note = found ? before : { day, owner, seal };
  sessionStorage.setItem(slot, found ?? key);
  const until = Date.now() + ends;
  if (found && before.version === version && Date.now() - before.at < freshFor) { said(before, say); return; }
  say("Putting the day on this device …");
  await keptDay.note({ ...note, until, version: "", numbers });
  await navigator.serviceWorker.ready;
  const wanted = ["/my-day", ...pages];
  const assets = new Set();
  const clock = new Date().toTimeString().slice(0, 5);
  for (const path of wanted) {
    const answer = await fetch(path).catch(() => null);
    if (!answer?.ok || answer.redirected) { say("The day could not be put on this device: try again where the signal is better.", "warn"); return; }
    const html = await answer.text();
    const parsed = new DOMParser().parseFromString(html, "text/html");
    for (const one of parsed.querySelectorAll("link[rel=stylesheet], script[src], link[rel=icon]")) assets.add(new URL(one.getAttribute("href") ?? one.getAttribute("src"), location.origin).href);
    const form = parsed.querySelector("form[data-draft-seal]");
    if (form) await rememberKey(form.dataset.draftSeal, form.dataset.draftKey);
    await keptDay.put(path, await lock(dayKey(), html.replace(/<html/i, `<html data-kept-at="${clock}"`)));
  }
  for (const path of await keptDay.paths()) if (path.startsWith("/") && !wanted.includes(path)) await keptDay.drop(path);
  await (await caches.open(looks)).addAll(assets);
  const kept = { ...note, at: Date.now(), until, version, numbers, count: pages.length };
  await keptDay.note(kept);
  said(kept, say);
}

function said(day, say) {
  const at = new Date(day.at).toTimeString().slice(0, 5);
  const forms = day.count === 1 ? "the form of 1 visit" : `the forms of ${day.count} visits`;
  say(`Today and ${forms} are on this device since ${at}, encrypted, until midnight or until you sign out. `
    + (day.code ? "With your code they open again after the page was closed." : "Keep this page open: without a code, what is here cannot be opened again without signal once it is closed."), "good");
}

/** Puts the day's key under a code, so that a page that was closed opens again without signal. */
export async function chooseCode(code, say) {
  const day = await keptDay.about();
  if (!day || !dayKey()) { say("There is nothing on this device yet.", "warn"); return; }
  const kept = { ...day, code: await lockUnderCode(code, dayKey()), tries: 0 };
  await keptDay.note(kept);
  said(kept, say);
}
