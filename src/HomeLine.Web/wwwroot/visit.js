// A visit written at the door. The form works without this script; the script keeps a draft while there is no signal and sends it when there is.
// On the device lies only what was typed, encrypted, beneath the visit's number: no name. The office holds the key and gives it back for a day.
const shelf = "homeline-visit-draft:";
const day = 24 * 60 * 60 * 1000;
const minute = 60 * 1000;
const form = document.querySelector("form[data-draft]");
const status = document.querySelector("[data-draft-status]");

for (const name of Object.keys(localStorage)) {
  if (!name.startsWith(shelf)) continue;
  let made = 0;
  try { made = JSON.parse(localStorage.getItem(name)).at; } catch { /* unreadable: thrown away below */ }
  if (Date.now() - made > day) localStorage.removeItem(name);
}

for (const signed of document.querySelectorAll("[data-drop-draft]")) localStorage.removeItem(shelf + signed.dataset.dropDraft);

for (const stop of document.querySelectorAll("[data-draft-of]"))
  if (localStorage.getItem(shelf + stop.dataset.draftOf)) stop.querySelector("[data-draft-note]").hidden = false;

if (form) writeVisit(form);

function writeVisit(form) {
  const slot = shelf + form.dataset.draft;
  const canKeep = Boolean(globalThis.crypto?.subtle && form.dataset.draftKey);
  let waiting = null;
  let sent = false;
  let keeping = Promise.resolve();
  let told = Date.now();

  function say(words, tone) {
    status.textContent = words;
    status.className = "notice " + (tone ?? "");
    status.hidden = words === "";
  }

  const bytes = text => Uint8Array.from(atob(text), letter => letter.charCodeAt(0));
  const text = buffer => btoa(String.fromCharCode(...new Uint8Array(buffer)));
  const keyOf = raw => crypto.subtle.importKey("raw", bytes(raw), "AES-GCM", false, ["encrypt", "decrypt"]);

  function typed() {
    return [...new FormData(form)].filter(([name, value]) => typeof value === "string" && name !== "do" && name !== "device-now" && !name.startsWith("__"));
  }

  // Drafts are written one after the other, so that an older one never lies on top of a newer.
  function keep() {
    if (!canKeep || sent) return keeping;
    keeping = keeping.then(async () => {
      const iv = crypto.getRandomValues(new Uint8Array(12));
      const plain = new TextEncoder().encode(JSON.stringify(typed()));
      const secret = await crypto.subtle.encrypt({ name: "AES-GCM", iv }, await keyOf(form.dataset.draftKey), plain);
      localStorage.setItem(slot, JSON.stringify({ seal: form.dataset.draftSeal, iv: text(iv), secret: text(secret), at: Date.now() }));
    }).catch(() => say("This device cannot keep a draft: write on paper too while there is no signal.", "bad"));
    return keeping;
  }

  async function bringBack() {
    const stored = localStorage.getItem(slot);
    if (!stored || form.dataset.answered) return;
    const draft = JSON.parse(stored);
    const answer = await fetch("/visits/draft-key", {
      method: "POST", headers: { "Content-Type": "application/json", "X-HomeLine": "draft" }, body: JSON.stringify({ seal: draft.seal }),
    }).catch(() => null);
    if (!answer) return;
    if (!answer.ok || answer.redirected) {
      if (answer.status === 404) localStorage.removeItem(slot);
      return;
    }
    const plain = await crypto.subtle.decrypt({ name: "AES-GCM", iv: bytes(draft.iv) }, await keyOf(await answer.text()), bytes(draft.secret));
    putBack(JSON.parse(new TextDecoder().decode(plain)));
    say("What you typed on this device at " + new Date(draft.at).toTimeString().slice(0, 5) + " was put back. Look at it, then check it.", "good");
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

  async function send(button) {
    if (sent) return;
    waiting = button;
    await keep();
    switch (await signal()) {
      case "no":
        say(canKeep
          ? "No signal. What you wrote is kept on this device. Leave this page open: it is sent when the signal is back."
          : "No signal, and nothing is kept because this page was not opened over https. Leave this page open and write on paper too.", "warn");
        return;
      case "out":
        say("You were signed out. What you wrote is kept on this device: sign in again and open this visit.", "bad");
        status.append(document.createElement("br"), Object.assign(document.createElement("a"), { href: "/sign-in?ReturnUrl=" + encodeURIComponent(location.pathname), textContent: "Sign in and come back here" }));
        return;
    }
    if (sent) return;
    sent = true;
    say("Sending …");
    form.elements["device-now"].value = String(Date.now());
    form.requestSubmit(waiting);
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
    later = setTimeout(keep, 250);
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
  else if (form.dataset.answered) keep();
  else bringBack().catch(() => say("An older draft on this device could not be read.", "warn"));
}
