// The page's service worker: after the first visit the page works with no network. The build puts VERSION and FILES in front.

const CACHE = `jointwright-${VERSION}`;
/** How long the server may take before the page is taken from the cache. */
const PATIENCE = 3000;

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES)));
  // Nothing of an older version is asked for by name once the new page runs: every file but the page itself carries its digest.
  self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  const old = (name) => name.startsWith("jointwright-") && name !== CACHE;
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(request.mode === "navigate" ? freshPage(request) : fromCache(request));
});

/** The page as the server has it now, so that an update shows at once; the kept one when there is no server. */
async function freshPage(request) {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE) });
    if (answer.ok) return answer;
  } catch {
    // No network, no server, or one that does not answer.
  }
  return (await caches.match("/")) ?? Response.error();
}

async function fromCache(request) {
  return (await caches.match(request)) ?? fetch(request);
}
