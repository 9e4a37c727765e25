// One helper for tests of whole notebooks: a session over an empty library, or over the standard one.

import type { Library, LineOutput, Session } from "../../engine/session/index.ts";
import { createSession } from "../../engine/session/index.ts";

export const emptyLibrary: Library = { version: "0", modules: [], files: [], natives: {}, sources: "" };

export const FILE = "a.joint.md";

export const fenced = (working: string): string => `\`\`\`calc\n${working.trim()}\n\`\`\`\n`;

export interface Opened {
  readonly session: Session;
  readonly line: (name: string) => LineOutput;
  readonly lines: () => readonly LineOutput[];
  /** Codes of all faults and notices, in the order of the text. */
  readonly codes: () => readonly string[];
}

/** A notebook text (a bare working is put into a fence), with other files beside it. */
export function open(text: string, files: Readonly<Record<string, string>> = {}, library: Library = emptyLibrary): Opened {
  const session = createSession(library);
  for (const [name, other] of Object.entries(files))
    session.put(name, name.endsWith(".csv") || other.includes("```") ? other : fenced(other));
  session.put(FILE, text.includes("```") || text.startsWith("---") ? text : fenced(text));
  const lines = (): readonly LineOutput[] => session.outputs(FILE);
  return {
    session,
    lines,
    line: (name) => {
      const found = lines().find((line) => line.name === name || line.note === name || line.id === name);
      if (found === undefined)
        throw new Error(
          `no line ${name} among ${lines()
            .map((line) => line.name ?? line.id)
            .join(", ")}`,
        );
      return found;
    },
    codes: () => lines().flatMap((line) => line.diagnostics.map((diagnostic) => diagnostic.code)),
  };
}
