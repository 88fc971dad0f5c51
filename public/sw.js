// The service worker: the whole app is kept on the phone and served from there.
//
// A template. The build replaces the marks: the first by a name made from the contents of all
// files, the second by the files with their SHA-256 digests, the third by the digest of the
// list of those that a start does not need.
const BUILD = "@build@";
const FILES = /*@files@*/ [];
const REST = ["rest.json", "@rest@"];

// Two copies of the app in different folders share one origin's caches, so the scope is
// part of the name.
const OURS = `fenderbench ${registration.scope} `;
const CACHE = OURS + BUILD;

// "no-cache" asks the server whether the browser's own copy is current.
const request = ([url, integrity]) => new Request(url, { cache: "no-cache", integrity });

// All or nothing: with one file missing or not the one that was built, as in a half-finished
// upload, the installation fails and the former version goes on.
const keepAll = async () => {
  const cache = await caches.open(CACHE);
  try {
    await cache.addAll(FILES.map(request));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
};

// The drawings and samples, once the page is at rest. The list is kept last: with it, all is.
const keepRest = async () => {
  const cache = await caches.open(CACHE);
  if (await cache.match(REST[0])) return;
  const list = await fetch(request(REST));
  await cache.addAll((await list.clone().json()).map(request));
  await cache.put(REST[0], list);
};

const dropOld = async () => {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  // A first visit works offline without a reload, and a take-over reaches every open page.
  await clients.claim();
};

// No network on the start path: what is kept is answered from there, always.
const answer = async (request) => {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === "navigate" ? "./" : request;
  const kept = await cache.match(wanted, { ignoreVary: true });
  return kept ?? fetch(request);
};

addEventListener("install", (event) => event.waitUntil(keepAll()));
addEventListener("activate", (event) => event.waitUntil(dropOld()));

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && new URL(request.url).origin === location.origin) {
    event.respondWith(answer(request));
  }
});

// A new version waits until the person agrees, so nothing changes under a running entry.
addEventListener("message", (event) => {
  if (event.data?.type === "take-over") skipWaiting();
  // Without a network it is asked for again at the next start.
  if (event.data?.type === "rest") {
    event.waitUntil(keepRest().then(() => event.source.postMessage({ type: "rest" }), () => {}));
  }
});
