// Entries that wait for the network: kept by the browser until the workbench has taken each of them once.
const opened = new Promise((done, fail) => {
  const asked = indexedDB.open("wellproved-bench", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("entries", { keyPath: "order", autoIncrement: true });
  asked.onsuccess = () => done(asked.result);
  asked.onerror = () => fail(asked.error);
});

/** Runs something on the entries, and gives what it asked for once that is on the disk. */
async function on(mode, run) {
  const work = (await opened).transaction("entries", mode, { durability: "strict" });
  const asked = run(work.objectStore("entries"));
  return new Promise((done, fail) => {
    work.oncomplete = () => done(asked.result);
    work.onerror = work.onabort = () => fail(work.error);
  });
}

/** A number that no other entry has, by which the workbench knows one that comes twice. */
export function number() {
  const bytes = crypto.getRandomValues(new Uint8Array(9));
  return btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_");
}

/** Keeps an entry: its address, what it says, and how it is called. */
export const keep = (entry) => on("readwrite", (entries) => entries.add(entry));

/** What waits, the oldest first. */
export const waiting = () => on("readonly", (entries) => entries.getAll());

const forget = (entry) => on("readwrite", (entries) => entries.delete(entry.order));
const mark = (entry) => on("readwrite", (entries) => entries.put(entry));

let token = document.querySelector("meta[name=token]").content;

/** A workbench that was opened anew has a new token: the page is asked for it. */
async function anew() {
  const page = await fetch(location.href, { cache: "no-store" });
  if (!page.ok) return false;
  const fresh = new DOMParser().parseFromString(await page.text(), "text/html").querySelector("meta[name=token]")?.content;
  if (!fresh || fresh === token) return false;
  token = fresh;
  return true;
}

const post = (entry) => fetch(entry.address, { method: "POST", body: entry.blob ?? new URLSearchParams(entry.form), headers: { "x-token": token, "x-parts": "1" } });

async function attempt(entry) {
  const answer = await post(entry);
  return answer.status === 403 && (await anew()) ? post(entry) : answer;
}

let sending = null;

/** Sends what waits, one after the other; `took` hears of each that was taken or refused. Stops where nobody answers. */
export function send(took) {
  sending ??= sendAll(took).finally(() => (sending = null));
  return sending;
}

async function sendAll(took) {
  // Two tabs of one phone do not send the same entry side by side where the browser can tell them apart.
  if (navigator.locks) return navigator.locks.request("wellproved-bench", () => each(took));
  return each(took);
}

async function each(took) {
  for (const entry of await waiting()) {
    if (entry.refused) continue;
    const answer = await attempt(entry).catch(() => null);
    if (!answer || answer.status >= 500 || answer.status === 403) return;
    const text = await answer.text();
    if (answer.ok) await forget(entry);
    else await mark({ ...entry, refused: words(text) });
    await took(entry, answer.ok, text);
  }
}

/** Forgets an entry that was refused. */
export const drop = (entry) => forget(entry);

export function words(text) {
  const page = new DOMParser().parseFromString(text, "text/html");
  const told = page.querySelector("#refusal") ?? page.body;
  // What is wrong and what to do are sentences of their own.
  const said = [...told.children].map((part) => part.textContent.trim()).filter(Boolean);
  return (said.length ? said.map((one) => one.replace(/[.;]$/, "")).join("; ") : told.textContent.trim());
}
