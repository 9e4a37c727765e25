// The page's service worker: after the first visit the page works with no network. The build gives `self.offline` in front.

/**
 * What this scope has beyond a page's; the compiler knows the page's library alone.
 * @typedef {{ waitUntil(work: Promise<unknown>): void }} LifeEvent
 * @typedef {{ readonly request: Request, respondWith(answer: Promise<Response>): void }} AskEvent
 * @typedef {{
 *   readonly offline: { readonly version: string, readonly files: readonly string[] },
 *   readonly clients: { claim(): Promise<void> },
 *   readonly location: Location,
 *   skipWaiting(): Promise<void>,
 *   addEventListener(kind: "install" | "activate", listener: (event: LifeEvent) => void): void,
 *   addEventListener(kind: "fetch", listener: (event: AskEvent) => void): void,
 * }} WorkerScope
 */

const scope = /** @type {WorkerScope} */ (/** @type {unknown} */ (self));
const CACHE = `jointwright-${scope.offline.version}`;
/** How long the server may take before the page is taken from the cache. */
const PATIENCE = 3000;

scope.addEventListener("install", (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll([...scope.offline.files])));
  // Nothing of an older version is asked for by name once the new page runs: every file but the page itself carries its digest.
  void scope.skipWaiting();
});

scope.addEventListener("activate", (event) => {
  const isOld = (/** @type {string} */ name) => name.startsWith("jointwright-") && name !== CACHE;
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter(isOld).map((name) => caches.delete(name))))
      .then(() => scope.clients.claim()),
  );
});

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== scope.location.origin) return;
  event.respondWith(request.mode === "navigate" ? freshPage(request) : fromCache(request));
});

/** The page as the server has it now, so that an update shows at once; the kept one when there is no server. @param {Request} request */
async function freshPage(request) {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE) });
    if (answer.ok) return answer;
  } catch {
    // No network, no server, or one that does not answer.
  }
  return (await caches.match("/")) ?? Response.error();
}

/** @param {Request} request */
async function fromCache(request) {
  return (await caches.match(request)) ?? fetch(request);
}
