// Stands in for a page while there is no signal: opens the kept one in its place, or says why it cannot.
import "./kept-store.js";
import { dayKey, openWithCode, readKept } from "./kept-day.js";

const triesAllowed = 10;
const part = name => document.querySelector(`[data-away="${name}"]`);

function show(name) {
  for (const one of document.querySelectorAll("[data-away]")) one.hidden = one.dataset.away !== name;
}

async function openPage(key) {
  const html = await readKept(key, location.pathname);
  if (html === null) { show("not-here"); return; }
  document.open();
  document.write(html);
  document.close();
}

async function begin() {
  const day = await keptDay.about();
  if (!day) { show("nothing"); return; }
  for (const { words, address } of day.numbers ?? []) {
    const line = document.createElement("li");
    line.append(Object.assign(document.createElement("a"), { className: "button", href: address, textContent: words }));
    document.querySelector("[data-away-numbers]").append(line);
  }
  if (await keptDay.page(location.pathname) === undefined) { show("not-here"); return; }
  const key = dayKey();
  if (key) await openPage(key).catch(() => show(day.code ? "code" : "no-key"));
  else show(day.code ? "code" : "no-key");
}

part("code").addEventListener("submit", async event => {
  event.preventDefault();
  const field = event.target.elements.code;
  const wrong = document.querySelector("[data-away-wrong]");
  const key = await openWithCode(field.value);
  if (key) { await openPage(key); return; }
  const day = await keptDay.about();
  if (!day) { show("nothing"); return; }
  const tries = (day.tries ?? 0) + 1;
  if (tries >= triesAllowed) { await keptDay.empty(); show("nothing"); return; }
  await keptDay.note({ ...day, tries });
  wrong.textContent = `That is not the code. After ${triesAllowed - tries} more wrong ones the day is thrown away.`;
  wrong.hidden = false;
  field.value = "";
  field.focus();
});

document.querySelector("[data-away-again]").addEventListener("click", () => location.reload());
// A device says that it is online before anything gets through.
addEventListener("online", () => fetch("/health/live").then(answer => { if (answer.ok) location.reload(); }, () => { }));
begin().catch(() => show("nothing"));
