// Lets a nurse's day be opened without signal. It holds no key and keeps no page itself: without an answer of the office it hands out one plain sheet
// (away.html), which opens what this device kept in the tab that has the key.
importScripts("/kept-store.js");

const looks = "homeline-looks";
const sheet = "/away.html";
const always = [sheet, "/away.js", "/kept-store.js", "/kept-day.js", "/sealed.js", "/unsent.js", "/light.js", "/app.css", "/visit.css", "/mark.svg"];
const pagePatience = 6_000;
const lookPatience = 3_000;

addEventListener("install", event => event.waitUntil(caches.open(looks).then(shelf => shelf.addAll(always)).then(() => skipWaiting())));
addEventListener("activate", event => event.waitUntil(Promise.all([clients.claim(), keptDay.about()])));

addEventListener("fetch", event => {
  const { request } = event;
  const asked = new URL(request.url);
  if (asked.origin !== location.origin) return;
  if (request.method === "POST" && asked.pathname === "/sign-out") {
    // First nothing lies here any more, then the office hears of it.
    event.respondWith(keptDay.empty().catch(() => { }).then(() => fetch(request)));
    return;
  }
  if (request.method !== "GET") return;
  if (request.mode === "navigate") event.respondWith(page(event, asked));
  else if (["style", "script", "image"].includes(request.destination) && !asked.pathname.startsWith("/_")) event.respondWith(look(request));
});

async function page(event, asked) {
  // Sent to the sign-in: by the person's own wish, or because the session ended, and then the office is asked whether the day may stay.
  if (asked.pathname === "/sign-in" && asked.searchParams.has("left")) await keptDay.empty().catch(() => { });
  else if (asked.pathname === "/sign-in") event.waitUntil(keptDay.askOffice().catch(() => { }));
  const office = fetch(event.request);
  const kept = Boolean(await keptDay.about().catch(() => null));
  if (!kept) return office;
  // A day's page does not wait for a signal that is too weak to bring it; every other page does.
  const isKept = Boolean(await keptDay.page(asked.pathname).catch(() => null));
  try {
    return await (isKept ? within(office, pagePatience) : office);
  } catch {
    office.catch(() => { });
    return await caches.match(sheet) ?? Response.error();
  }
}

// Names that carry a print of their content never change; the others are asked for first.
async function look(request) {
  const kept = await caches.match(request.url, { ignoreVary: true });
  if (kept && /\.[a-z0-9]{10}\.\w+$/.test(new URL(request.url).pathname)) return kept;
  const office = fetch(request);
  if (!kept) return office;
  try {
    return await within(office, lookPatience);
  } catch {
    office.catch(() => { });
    return kept;
  }
}

function within(answer, patience) {
  return Promise.race([answer, new Promise((_, fail) => setTimeout(() => fail(new Error("no signal")), patience))]);
}
