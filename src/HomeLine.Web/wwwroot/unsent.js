// Visits written without signal: the list of those that wait, and the sending. Each goes once; each carries a number of its own, so that a second arrival is the same visit.
import { keptAt, recallKey } from "./kept-day.js";
import { openSeal, unlock } from "./sealed.js";

export const shelf = "homeline-visit-draft:";
const done = "homeline-visit-sent";
const day = 24 * 60 * 60 * 1000;
const waitsAtMost = 3 * day;

export function draftOf(slot) {
  try { return JSON.parse(localStorage.getItem(slot)); } catch { return null; }
}

/** What lay too long: a draft after a day, a form that waits to be sent after three, when the office no longer opens it. Unreadable ones too. */
export function clearOld() {
  for (const slot of slots()) {
    const draft = draftOf(slot);
    if (!draft || Date.now() - draft.at > (draft.wait ? waitsAtMost : day)) localStorage.removeItem(slot);
  }
  keepSent(sent().filter(one => Date.now() - one.at < day));
}

const slots = () => Object.keys(localStorage).filter(name => name.startsWith(shelf));
const waiting = () => slots().filter(slot => draftOf(slot)?.wait);
const sent = () => { try { return JSON.parse(localStorage.getItem(done)) ?? []; } catch { return []; } };
const keepSent = list => list.length ? localStorage.setItem(done, JSON.stringify(list)) : localStorage.removeItem(done);

export const howManyWait = () => waiting().length;
export const somethingToSend = () => waiting().some(slot => !draftOf(slot).wait.asks);

let trouble = "";

/** Sends everything that waits and asks for nothing; what the office asks about waits for its writer. Answers how many were signed. */
export async function sendAll(except) {
  let signed = 0;
  await navigator.locks?.request("homeline-send", { ifAvailable: true }, async turn => {
    if (!turn) return;
    for (const slot of waiting()) {
      if (slot === except || draftOf(slot).wait.asks) continue;
      trouble = await send(slot);
      if (trouble === "signal" || trouble === "session") break;
      if (trouble === "") signed++;
      show();
    }
  });
  show();
  return signed;
}

async function send(slot) {
  const draft = draftOf(slot);
  const mark = (asks, words) => { localStorage.setItem(slot, JSON.stringify({ ...draft, wait: { ...draft.wait, asks, words } })); return "asks"; };
  const form = await fetch(draft.wait.path).catch(() => null);
  if (!form) return "signal";
  if (form.redirected) return "session";
  const page = read(await form.text());
  const token = page.querySelector("form[data-draft] input[name=__RequestVerificationToken]");
  if (!token) return mark("refused", page.querySelector("main .notice p, main .notice")?.textContent.trim() ?? "");
  const known = await recallKey(draft.seal);
  const { key, gone } = known ? { key: known } : await openSeal(draft.seal);
  if (!key) return gone ? mark("sealed") : "signal";
  const body = new URLSearchParams(JSON.parse(await unlock(key, draft)));
  body.set("__RequestVerificationToken", token.value);
  body.set("_handler", page.querySelector("form[data-draft] input[name=_handler]")?.value ?? "visit");
  body.set("device-now", String(Date.now()));
  body.set("do", "sign");
  body.set("unseen", "yes");
  const answer = await fetch(draft.wait.path, { method: "POST", body }).catch(() => null);
  if (!answer) return "signal";
  const end = new URL(answer.url).pathname;
  if (end === "/sign-in") return "session";
  const told = read(await answer.text());
  if (!answer.redirected || !end.startsWith("/visits/records/")) return mark(told.querySelector("[data-outcome]")?.dataset.outcome ?? "refused");
  localStorage.removeItem(slot);
  keepSent([...sent(), { visit: slot.slice(shelf.length), record: end, at: Date.now(), stops: Boolean(told.querySelector("[data-stops]")) }]);
  return "";
}

const read = html => new DOMParser().parseFromString(html, "text/html");

const why = {
  faults: "Something has to be corrected before it can be signed.",
  questions: "Something is asked before it can be signed.",
  twice: "Somebody else recorded this visit meanwhile. Look at it, and sign if you did more.",
  refused: "The office does not have this visit any more: it was moved or taken out. What you wrote is here.",
  sealed: "It cannot be opened with this sign-in. Its writer can send it.",
};

/** The list on every page of the nurse. */
export function show() {
  const list = document.querySelector("[data-unsent]");
  if (!list) return;
  const items = waiting().map(slot => waitingItem(slot)).concat(sent().reverse().map(sentItem));
  list.hidden = items.length === 0;
  list.querySelector("ul").replaceChildren(...items);
  const count = waiting().length;
  list.querySelector("[data-unsent-title]").textContent = count === 0 ? "Sent" : count === 1 ? "1 record waits on this device" : `${count} records wait on this device`;
  const state = list.querySelector("[data-unsent-state]");
  state.replaceChildren(count === 0 ? "" : trouble === "session" ? "You were signed out. They are sent once you are signed in. " : !navigator.onLine || trouble === "signal" || keptAt() ? "They are sent when there is signal." : "");
  if (count > 0 && trouble === "session") state.append(link("/sign-in?ReturnUrl=%2Fmy-day", "Sign in and send"));
}

// Names are not stored: they come from the page on screen, else the visit's number stands here.
const nameOf = visit => document.querySelector(`[data-draft-of="${CSS.escape(visit)}"] h3`)?.textContent.trim() ?? `Visit ${visit}`;
const clock = at => new Date(at).toTimeString().slice(0, 5);
const link = (href, textContent) => Object.assign(document.createElement("a"), { href, textContent, className: "button" });

function line(strong, words, ...rest) {
  const item = document.createElement("li");
  item.append(Object.assign(document.createElement("strong"), { textContent: strong }), Object.assign(document.createElement("p"), { textContent: words }), ...rest);
  return item;
}

function waitingItem(slot) {
  const visit = slot.slice(shelf.length);
  const { at, wait } = draftOf(slot);
  const moved = wait.asks === "refused" && wait.patient && !visit.startsWith("unplanned ");
  const words = wait.asks ? "▲ " + why[wait.asks] : `Written ${clock(at)}, not sent yet.`;
  const open = link(wait.path, wait.asks ? "Open and finish" : "Open");
  open.append(Object.assign(document.createElement("span"), { className: "visually-hidden", textContent: `: ${nameOf(visit)}` }));
  if (!moved) return line(nameOf(visit), words, open);
  const carry = Object.assign(document.createElement("button"), { type: "button", textContent: "Record it as a visit that was not planned" });
  carry.addEventListener("click", () => {
    localStorage.setItem(`${shelf}unplanned ${wait.patient}`, JSON.stringify({ ...draftOf(slot), wait: undefined }));
    localStorage.removeItem(slot);
    location.assign(`/visits/unplanned/${encodeURIComponent(wait.patient)}/record`);
  });
  return line(nameOf(visit), words, carry);
}

function sentItem({ visit, record, at, stops }) {
  const read = link(record, stops ? "Read whom to call" : "Read the record");
  return line(nameOf(visit), stops ? `▲ Sent and signed at ${clock(at)}. A line is locked or a red flag was found: call now.` : `Sent and signed at ${clock(at)}.`, read);
}
