// Keeps the page's own files, so that the bench opens without a network once it has been loaded.
// The page puts the program itself into the same cache: it knows which packing it has fetched.
const CACHE = "detent-{{VERSION}}";
const FILES = {{FILES}};
const HOME = new URL("./", location).pathname;

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) =>
    cache.addAll(FILES.map((file) => new Request(file, { cache: "no-cache" })))));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    const names = await caches.keys();
    const old = names.filter((name) => name.startsWith("detent-") && name !== CACHE);
    await Promise.all(old.map((name) => caches.delete(name)));
    await self.clients.claim();
  })());
});

// A page that is loaded whole no longer needs the files of its own version.
self.addEventListener("message", (event) => {
  if (event.data === "loaded") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin) return;
  // What a class says is asked for each time.
  if (url.pathname.startsWith("/api/")) return;
  event.respondWith((async () => {
    const cache = await caches.open(CACHE);
    const home = [HOME, `${HOME}index.html`].includes(url.pathname);
    const key = home ? "./" : event.request;
    return (await cache.match(key, { ignoreSearch: true })) ?? fetch(event.request);
  })());
});
