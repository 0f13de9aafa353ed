import "./kept-store.js";

// The cut connection and the idle session, in our own words. No patient text passes through here.
const cut = document.getElementById("components-reconnect-modal");
const idle = document.getElementById("idle-notice");

function show(when) {
  for (const line of cut.querySelectorAll("[data-when]")) line.style.display = line.dataset.when === when ? "block" : "none";
  if (!cut.open) cut.showModal();
}

async function tryAgain() {
  show("trying");
  try {
    if (!(await Blazor.reconnect()) && !(await Blazor.resumeCircuit())) show("rejected");
    else cut.close();
  } catch {
    show("failed");
  }
}

cut.addEventListener("components-reconnect-state-changed", event => {
  switch (event.detail.state) {
    case "show": show("trying"); break;
    case "hide": if (cut.open) cut.close(); break;
    case "failed": show("failed"); break;
    case "rejected": show("rejected"); break;
  }
});
cut.addEventListener("cancel", event => event.preventDefault());
cut.querySelector("[data-line-try]").addEventListener("click", tryAgain);
cut.querySelector("[data-line-reload]").addEventListener("click", () => location.reload());

// A day that this device kept for somebody else does not stay once another person works here.
keptDay.onlyOf(document.body.dataset.owner).catch(() => { });

const minute = 60_000;
const warnAfter = 13 * minute;
const endAfter = 15 * minute;
let touched = Date.now();
let told = Date.now();

async function keepSession() {
  touched = told = Date.now();
  const answer = await fetch("/session/keep", { method: "POST", headers: { "X-HomeLine": "keep" } }).catch(() => null);
  if (answer && answer.redirected) leave();
}

function leave() { location.assign("/sign-in?idle=true"); }

for (const sign of ["pointerdown", "keydown"]) {
  addEventListener(sign, () => {
    if (idle.open) return;
    touched = Date.now();
    if (touched - told > 4 * minute) keepSession();
  }, { passive: true });
}
idle.querySelector("[data-idle-stay]").addEventListener("click", () => { idle.close(); keepSession(); });

setInterval(() => {
  const quiet = Date.now() - touched;
  if (quiet >= endAfter) leave();
  else if (quiet >= warnAfter && !idle.open) idle.showModal();
}, 5_000);
