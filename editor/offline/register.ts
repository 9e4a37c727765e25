// Registers the service worker that lets the page work with no network.

/** `address` has passed the page's Trusted Types policy. A browser without service workers works as before, with the server. */
export async function workOffline(address: string): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  try {
    await navigator.serviceWorker.register(address, { scope: "/", updateViaCache: "none" });
  } catch {
    // A private window may refuse; nothing but working offline is lost.
  }
}

/** Where the build puts it: at the top, because a service worker serves what lies below it. */
export const OFFLINE_WORKER = "/offline.js";
