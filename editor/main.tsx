// The page's root: the one place where store, worker, pad and views are put together.

import "./fonts/fonts.css";
import "./page.css";
import "./panels.css";
import "./overlays.css";
import "./print.css";
import { render } from "preact";
import { type Keep, openKeep } from "./files/keep.ts";
import type { WorkerPort } from "./link/protocol.ts";
import { OFFLINE_WORKER, workOffline } from "./offline/register.ts";
import { App } from "./shell/app.tsx";
import { createDesk } from "./shell/desk.ts";
import { listenForKeys } from "./shell/keys.ts";
import workerAddress from "./worker.ts?worker&url";

interface Policy {
  createScriptURL(address: string): string;
}

interface TrustedTypes {
  createPolicy(name: string, rules: Policy): Policy;
}

/** The one Trusted Types policy: it lets the addresses of our own two workers through and nothing else. */
function workerUrls(): { readonly engine: string; readonly offline: string } {
  const factory = (globalThis as { readonly trustedTypes?: TrustedTypes }).trustedTypes;
  const allow = (address: string): string => {
    if (address !== workerAddress && address !== OFFLINE_WORKER) throw new TypeError("only the page's own workers may be started");
    return address;
  };
  const policy = factory?.createPolicy("jointwright", { createScriptURL: allow });
  const address = (name: string): string => policy?.createScriptURL(name) ?? name;
  return { engine: address(workerAddress), offline: address(OFFLINE_WORKER) };
}

async function main(): Promise<void> {
  const workers = workerUrls();
  const host = document.createElement("div");
  host.className = "pad-host";
  let keep: Keep | undefined;
  try {
    keep = await openKeep();
  } catch {
    // The desk says plainly that nothing is kept.
  }
  const desk = createDesk({
    parent: host,
    startWorker: () => new Worker(workers.engine, { type: "module" }) as unknown as WorkerPort,
    keep,
  });
  render(<App desk={desk} host={host} />, document.querySelector("#app") as HTMLElement);
  listenForKeys(desk);
  // What is typed in the last moment is written before the page goes.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void desk.flush();
  });
  window.addEventListener("beforeunload", (event) => {
    const { keep: kept, onDisk } = desk.state();
    const atRisk = kept.kind === "keeping" || ((kept.kind === "full" || kept.kind === "unavailable") && !onDisk);
    void desk.flush();
    if (atRisk) event.preventDefault();
  });
  await desk.start();
  await workOffline(workers.offline);
}

void main();
