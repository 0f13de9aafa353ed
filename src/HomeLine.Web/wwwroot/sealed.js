// Text under a key, and keys under the office's seal. AES-GCM with a number of its own for every text.
const bytes = text => Uint8Array.from(atob(text), letter => letter.charCodeAt(0));

function text(buffer) {
  let letters = "";
  for (const one of new Uint8Array(buffer)) letters += String.fromCharCode(one);
  return btoa(letters);
}

const keyOf = raw => crypto.subtle.importKey("raw", bytes(raw), "AES-GCM", false, ["encrypt", "decrypt"]);

/** Whether this page may encrypt at all: browsers give it over https and on the machine itself only. */
export const canSeal = Boolean(globalThis.crypto?.subtle);

export async function lock(key, plain) {
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const secret = await crypto.subtle.encrypt({ name: "AES-GCM", iv }, await keyOf(key), new TextEncoder().encode(plain));
  return { iv: text(iv), secret: text(secret) };
}

export async function unlock(key, { iv, secret }) {
  return new TextDecoder().decode(await crypto.subtle.decrypt({ name: "AES-GCM", iv: bytes(iv) }, await keyOf(key), bytes(secret)));
}

/** The key behind a seal, asked of the office: { key }, { gone: true } when it opens for nobody here, or nothing without signal or session. */
export async function openSeal(seal) {
  const answer = await fetch("/visits/draft-key", {
    method: "POST", headers: { "Content-Type": "application/json", "X-HomeLine": "draft" }, body: JSON.stringify({ seal }),
  }).catch(() => null);
  if (!answer || answer.redirected) return {};
  if (answer.status === 404) return { gone: true };
  return answer.ok ? { key: await answer.text() } : {};
}

// Our own default: slow on purpose, because a code is short.
const rounds = 600_000;

async function keyFromCode(code, salt) {
  const word = await crypto.subtle.importKey("raw", new TextEncoder().encode(code), "PBKDF2", false, ["deriveBits"]);
  return text(await crypto.subtle.deriveBits({ name: "PBKDF2", hash: "SHA-256", salt: bytes(salt), iterations: rounds }, word, 256));
}

export async function lockUnderCode(code, key) {
  const salt = text(crypto.getRandomValues(new Uint8Array(16)));
  return { salt, ...await lock(await keyFromCode(code, salt), key) };
}

export async function unlockWithCode(code, locked) {
  return unlock(await keyFromCode(code, locked.salt), locked);
}
