// Keeps the page on the telephone, so that it opens without a network from the first visit on. A new version is fetched whole
// beside the old one, and is taken up when no window of the old one is open any more, which is how a browser begins with a
// service worker unless told otherwise: never in the middle of a tick.
const CACHE = "cropful @version";
const FILES = ["./", "manifest.webmanifest", "icon.svg", "icon-192.png", "icon-512.png"];

const filled = async () => {
  const cache = await caches.open(CACHE);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
};

const onlyThis = async () => {
  const older = (await caches.keys()).filter((name) => name.startsWith("cropful ") && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
};

const kept = async (request) => {
  const cache = await caches.open(CACHE);
  const page = request.mode === "navigate" ? "./" : request;
  return (await cache.match(page, { ignoreSearch: true })) ?? fetch(request);
};

self.addEventListener("install", (event) => event.waitUntil(filled()));
self.addEventListener("activate", (event) => event.waitUntil(onlyThis()));
self.addEventListener("fetch", (event) => event.respondWith(kept(event.request)));
