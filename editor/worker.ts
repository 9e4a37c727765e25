// The worker: the engine with its library, behind the link. A composition root.

import { createSession } from "../engine/session/index.ts";
import { library } from "./library.ts";
import { hostSession } from "./link/host.ts";
import type { Ask, Reply } from "./link/protocol.ts";

const send = (reply: Reply): void => self.postMessage(reply);

try {
  const answer = hostSession(createSession(library), send);
  self.onmessage = (event: MessageEvent<Ask>) => answer(event.data);
  send({ kind: "ready", library: library.version });
} catch (fault) {
  send({ kind: "broken", observed: fault instanceof Error ? fault.message : String(fault) });
}
