// A nurse's pages at the door. They work without this script; the script keeps a draft of the form and the day's pages while there is no signal, and sends what waits.
// On the device lies only what is encrypted, beneath the visit's number: no name. The office makes the keys and takes them back.
import "./kept-store.js";
import { chooseCode, keepDay, keptAt, recallKey, rememberKey } from "./kept-day.js";
import { canSeal, lock, openSeal, unlock } from "./sealed.js";
import { clearOld, draftOf, howManyWait, sendAll, shelf, show, somethingToSend } from "./unsent.js";

const minute = 60 * 1000;
const form = document.querySelector("form[data-draft]");
const status = document.querySelector("[data-draft-status]");
const panel = document.querySelector("[data-day]");
const here = form ? shelf + form.dataset.draft : null;

clearOld();
for (const signed of document.querySelectorAll("[data-drop-draft]")) localStorage.removeItem(shelf + signed.dataset.dropDraft);
for (const stop of document.querySelectorAll("[data-draft-of]")) {
  const draft = draftOf(shelf + stop.dataset.draftOf);
  if (!draft) continue;
  const note = stop.querySelector("[data-draft-note]");
  if (draft.wait) note.textContent = draft.wait.asks ? "Written on this device; it needs you before it can be signed." : "Written on this device; it waits to be sent.";
  note.hidden = false;
}
if (keptAt()) {
  const notice = document.querySelector("[data-kept-notice]");
  notice.querySelector("span").textContent = keptAt();
  notice.hidden = false;
}
for (const leaving of document.querySelectorAll("form[action='/sign-out']"))
  leaving.addEventListener("submit", async event => {
    event.preventDefault();
    const count = howManyWait();
    if (count > 0 && !confirm(`${count === 1 ? "1 record waits" : count + " records wait"} on this device and ${count === 1 ? "is" : "are"} not sent. They stay, encrypted, for three days, and are sent when you sign in again here. Sign out now?`)) return;
    await keptDay.empty().catch(() => { });
    leaving.submit();
  });

show();
if (canSeal) standAndSend();
addEventListener("online", () => { if (canSeal) standAndSend(); });
setInterval(() => { if (canSeal && somethingToSend()) standAndSend(); }, 10 * 1000);
setInterval(() => { if (canSeal && navigator.onLine) keptDay.askOffice(); }, minute);
if (panel) keepToday(panel);
if (form) writeVisit(form);

// Whose day lies here, may it stay, and what waits: asked on every page and whenever the signal comes back.
async function standAndSend() {
  if (!keptAt()) await keptDay.onlyOf(document.body.dataset.owner);
  if (!navigator.onLine) return;
  await keptDay.askOffice();
  const signed = await sendAll(here);
  if (form || (signed === 0 && !keptAt())) return;
  // What is on screen is older than what the office has now.
  if (panel && (signed > 0 || await fetch("/session/keep", { method: "POST", headers: { "X-HomeLine": "keep" } }).then(answer => answer.ok && !answer.redirected, () => false))) location.reload();
}

function keepToday(panel) {
  const words = panel.querySelector("[data-day-status]");
  const say = (text, tone) => { words.textContent = text; words.className = tone ? "notice " + tone : ""; };
  const code = panel.querySelector("form");
  panel.querySelector("[data-day-code]").hidden = !canSeal;
  code.addEventListener("submit", event => {
    event.preventDefault();
    chooseCode(code.elements["day-code"].value, say).then(() => { code.reset(); panel.querySelector("[data-day-code]").open = false; });
  });
  if (keptAt()) keptDay.about().then(day => say(day ? "You are reading from this device." : "What this device kept is thrown away. Sign in to see your day.", day ? "" : "warn"));
  else keepDay(panel, say).catch(() => say("This device could not keep the day. Take the printed sheet.", "warn"));
}

function writeVisit(form) {
  const canKeep = Boolean(canSeal && form.dataset.draftKey);
  let waiting = null;
  let sent = false;
  let keeping = Promise.resolve();
  let told = Date.now();

  function say(words, tone) {
    status.textContent = words;
    status.className = "notice " + (tone ?? "");
    status.hidden = words === "";
  }

  function typed() {
    return [...new FormData(form)].filter(([name, value]) => typeof value === "string" && name !== "do" && name !== "device-now" && name !== "unseen" && !name.startsWith("__"));
  }

  // Drafts are written one after the other, so that an older one never lies on top of a newer.
  function keep(wait = draftOf(here)?.wait) {
    if (!canKeep || sent) return keeping;
    keeping = keeping.then(async () => {
      const secret = await lock(form.dataset.draftKey, JSON.stringify(typed()));
      localStorage.setItem(here, JSON.stringify({ seal: form.dataset.draftSeal, ...secret, at: Date.now(), wait }));
    }).catch(() => say("This device cannot keep a draft: write on paper too while there is no signal.", "bad"));
    return keeping;
  }

  async function keyOf(seal) {
    if (seal === form.dataset.draftSeal) return { key: form.dataset.draftKey };
    const known = await recallKey(seal);
    return known ? { key: known } : openSeal(seal);
  }

  async function bringBack() {
    const draft = draftOf(here);
    if (!draft || form.dataset.answered) return;
    const { key, gone } = await keyOf(draft.seal);
    if (gone && !draft.wait) localStorage.removeItem(here);
    if (!key) {
      say(gone ? "What lies on this device for this visit was written by somebody else, or longer than three days ago." : "What you typed before lies on this device and opens when there is signal.", "warn");
      return;
    }
    putBack(JSON.parse(await unlock(key, draft)));
    await keep(draft.wait);
    say("What you typed on this device at " + new Date(draft.at).toTimeString().slice(0, 5) + " was put back. "
      + (draft.wait && !draft.wait.asks ? "It waits to be sent." : "Look at it, then check it."), "good");
  }

  function putBack(pairs) {
    for (const field of form.elements)
      if (field.type === "checkbox" || field.type === "radio") field.checked = false;
    for (const [name, value] of pairs) {
      for (const field of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) {
        if (field.type === "checkbox" || field.type === "radio") { if (field.value === value) field.checked = true; }
        else if (field.type !== "hidden" || name === "submission") field.value = value;
      }
    }
    for (const fold of form.querySelectorAll("details"))
      if ([...fold.querySelectorAll("input:not([type=hidden]), textarea")].some(field => field.type === "checkbox" || field.type === "radio" ? field.checked && field.value !== "" : field.value !== "")) fold.open = true;
  }

  // "yes" with a session, "out" when signed out, "no" without signal.
  async function signal() {
    if (!navigator.onLine) return "no";
    const answer = await fetch("/session/keep", { method: "POST", headers: { "X-HomeLine": "keep" } }).catch(() => null);
    if (!answer) return "no";
    return answer.redirected || answer.status === 401 ? "out" : answer.ok ? "yes" : "no";
  }

  // No signal: leave the page open and look at it later, or be done here and let it be signed when there is signal.
  function offerToWait() {
    say("No signal. What you wrote is kept on this device. Leave this page open: it is sent when the signal is back.", "warn");
    const flags = Object.assign(document.createElement("p"), { textContent: "If you found anything marked “call”, call now and do not wait for the signal: " });
    for (const [words, number] of [["clinical manager or on call", form.dataset.onCall], ["emergency", form.dataset.emergency]])
      if (number) flags.append(Object.assign(document.createElement("a"), { href: "tel:" + number, textContent: `${words}, ${number}`, className: "button" }), " ");
    const finish = Object.assign(document.createElement("button"), { type: "button", textContent: "I am done here: sign it when there is signal" });
    finish.addEventListener("click", async () => {
      waiting = null;
      await keep({ path: location.pathname, patient: form.dataset.patient });
      location.assign("/my-day");
    });
    const hint = Object.assign(document.createElement("p"), { className: "hint", textContent: "Then it waits in a list on your day. Where the office has to ask something, it waits for your answer." });
    status.append(flags, finish, hint);
  }

  async function send(button) {
    if (sent) return;
    waiting = button;
    await keep();
    switch (await signal()) {
      case "no":
        if (canKeep) offerToWait();
        else say("No signal, and nothing is kept because this page was not opened over https. Leave this page open and write on paper too.", "warn");
        return;
      case "out":
        say("You were signed out. What you wrote is kept on this device: sign in again and open this visit.", "bad");
        status.append(document.createElement("br"), Object.assign(document.createElement("a"), { href: "/sign-in?ReturnUrl=" + encodeURIComponent(location.pathname), textContent: "Sign in and come back here" }));
        return;
    }
    if (sent) return;
    // A page that was kept this morning carries this morning's token.
    if (keptAt() && !await freshToken()) { offerToWait(); return; }
    sent = true;
    say("Sending …");
    form.elements["device-now"].value = String(Date.now());
    form.requestSubmit(waiting);
  }

  async function freshToken() {
    const answer = await fetch(location.pathname).catch(() => null);
    if (!answer?.ok || answer.redirected) return false;
    const token = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("form[data-draft] input[name=__RequestVerificationToken]");
    if (token) form.elements.__RequestVerificationToken.value = token.value;
    return true;
  }

  form.addEventListener("submit", event => {
    if (sent) return;
    event.preventDefault();
    send(event.submitter);
  });

  const again = () => { if (waiting && !sent) send(waiting); };
  addEventListener("online", again);
  setInterval(again, 10 * 1000);
  addEventListener("pageshow", event => { if (event.persisted) { sent = false; waiting = null; say(""); } });

  let later = 0;
  form.addEventListener("input", () => {
    clearTimeout(later);
    later = setTimeout(() => keep(), 250);
    if (Date.now() - told > 4 * minute) { told = Date.now(); signal(); }
  });

  const all = form.querySelector("[data-all-done]");
  if (all) {
    all.hidden = false;
    all.addEventListener("click", () => {
      for (const done of form.querySelectorAll("[data-done=planned]")) done.checked = true;
      keep();
    });
  }

  if (!canKeep) say("This page was not opened over https: nothing is kept on this device if the signal drops.", "warn");
  else {
    if (!keptAt()) rememberKey(form.dataset.draftSeal, form.dataset.draftKey);
    if (form.dataset.answered) keep();
    else bringBack().catch(() => say("An older draft on this device could not be read.", "warn"));
  }
}
