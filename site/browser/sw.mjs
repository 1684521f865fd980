// Keeps the whole site for use without a network. A classic script (no import), which every browser can run here.
// The build fills in these two: each file of the site with its hash, and the hash of that list.
const FILES = {};
const VERSION = "";

const SCOPE = self.registration.scope;
const FAMILY = `burnercalc ${SCOPE} `;
const NAME = FAMILY + VERSION;

// The whole list or nothing: addAll stores no file if one is missing or is not the one that the build made.
self.addEventListener("install", (event) => {
  const requests = Object.entries(FILES).map(([path, integrity]) =>
    new Request(new URL(path, SCOPE), { integrity, cache: "no-cache" }));
  event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(requests)));
});

// An old version goes only when no page uses it any more.
self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const old = (await caches.keys()).filter((name) => name.startsWith(FAMILY) && name !== NAME);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

// Unless somebody says in a page that the new one is to be taken now.
self.addEventListener("message", ({ data }) => { if (data === "take over") self.skipWaiting(); });

// A design travels in the query, so the query never chooses the file.
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(SCOPE)) return;
  const path = url.pathname.slice(new URL(SCOPE).pathname.length) || "index.html";
  if (!Object.hasOwn(FILES, path)) return;
  event.respondWith(
    caches.open(NAME).then((cache) => cache.match(new URL(path, SCOPE))).then((kept) => kept ?? fetch(event.request)));
});
