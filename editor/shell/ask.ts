// One question to the session's tools, typed: what the tool takes, what it gives, undefined when the text changed meanwhile.

import type { SessionTools } from "../../engine/session/index.ts";
import type { EngineLink } from "../link/link.ts";

export async function askTool<K extends keyof SessionTools>(
  link: EngineLink,
  tool: K,
  ...args: Parameters<SessionTools[K]>
): Promise<ReturnType<SessionTools[K]> | undefined> {
  return (await link.ask({ about: "tool", tool, args })) as ReturnType<SessionTools[K]> | undefined;
}
