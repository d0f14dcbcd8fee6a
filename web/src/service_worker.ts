// Keeps the whole app on the phone as one set. `set` (version and files) is written in front of this text
// when the app is built. A newer set installs beside the old one and waits until the person takes it.
declare const set: { version: string; files: string[] };
declare const self: ServiceWorkerGlobalScope;
export {}; // a module to the type checker; the build takes this line away

const cacheName = `swathbook ${set.version}`;
const scope = new URL("./", self.location.href);
const addressOf = (file: string) => new URL(file, scope).href;

self.addEventListener("install", (event) => {
  event.waitUntil(fill());
});

// A file that an older set has under the same hashed name is copied, not fetched again.
async function fill(): Promise<void> {
  const cache = await caches.open(cacheName);
  await Promise.all(
    set.files.map(async (file) => {
      const known = file.startsWith("assets/") ? await caches.match(addressOf(file)) : undefined;
      const answer = known ?? (await fetch(addressOf(file), { cache: "no-cache" }));
      if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
      await cache.put(addressOf(file), answer);
    }),
  );
}

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith("swathbook ") && name !== cacheName).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("message", (event) => {
  if (event.data === "take over") void self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const place = new URL(request.url);
  if (request.method !== "GET" || place.origin !== self.location.origin || place.pathname.includes("/api/")) return;
  event.respondWith(fromSet(request, place));
});

async function fromSet(request: Request, place: URL): Promise<Response> {
  const cache = await caches.open(cacheName);
  const isPage = request.mode === "navigate" || place.href === scope.href;
  const found = await cache.match(isPage ? addressOf("index.html") : place.origin + place.pathname);
  return found ?? fetch(request);
}
