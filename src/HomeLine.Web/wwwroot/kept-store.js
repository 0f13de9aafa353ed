// What this device keeps of one nurse's day: pages, each encrypted, and a note that says whose, until when and under which seal. No key lies here.
// Read by pages and by the worker, therefore without imports.
globalThis.keptDay = (() => {
  function open() {
    return new Promise((done, fail) => {
      const asked = indexedDB.open("homeline-day", 1);
      asked.onupgradeneeded = () => { asked.result.createObjectStore("pages"); asked.result.createObjectStore("about"); };
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    });
  }

  async function work(store, mode, act) {
    const shelf = await open();
    try {
      const turn = shelf.transaction(store, mode);
      const asked = act(turn.objectStore(store));
      await new Promise((done, fail) => { turn.oncomplete = done; turn.onabort = turn.onerror = () => fail(turn.error); });
      return asked?.result;
    } finally {
      shelf.close();
    }
  }

  async function empty() {
    await work("pages", "readwrite", shelf => shelf.clear());
    await work("about", "readwrite", shelf => shelf.clear());
  }

  /** The note about the day; a day that is over is thrown away by the first who asks. */
  async function about() {
    const day = await work("about", "readonly", shelf => shelf.get("day"));
    if (!day || Date.now() < day.until) return day;
    await empty();
    return undefined;
  }

  /** Throws the day away when somebody else is signed in. */
  async function onlyOf(owner) {
    const day = await about();
    if (day && owner && day.owner !== owner) await empty();
  }

  /** Asks the office whether the day may stay; it needs no session, the seal says whose it is. Without an answer it stays until it ends. */
  async function askOffice() {
    const day = await about();
    if (!day) return;
    const answer = await fetch("/my-day/standing", {
      method: "POST", headers: { "Content-Type": "application/json", "X-HomeLine": "draft" }, body: JSON.stringify({ seal: day.seal }),
    }).catch(() => null);
    if (answer?.status !== 410 && answer?.status !== 423) return;
    await empty();
    if (answer.status === 410 && globalThis.document) location.assign("/sign-in");
  }

  return {
    about, empty, onlyOf, askOffice,
    note: day => work("about", "readwrite", shelf => shelf.put(day, "day")),
    page: path => work("pages", "readonly", shelf => shelf.get(path)),
    paths: () => work("pages", "readonly", shelf => shelf.getAllKeys()),
    put: (path, sealed) => work("pages", "readwrite", shelf => shelf.put(sealed, path)),
    drop: path => work("pages", "readwrite", shelf => shelf.delete(path)),
  };
})();
