// Where new chunks and parts come from: fresh ones, or the old ones with the same text that an edit set free.

import { ownCopy } from "./line.ts";
import type { CalcPart, Chunk, Part } from "./part.ts";

/** A part that is told by its text alone. */
export type TextPart = Exclude<Part, CalcPart>;

export interface Pool {
  chunk(text: string): Chunk;
  gap(text: string): string;
  /** An old part of that kind and text, each given once; or what `make` makes of a copy of the text. */
  part<P extends TextPart>(kind: P["kind"], text: string, make: (text: string) => P): P;
}

/** For reading afresh: everything is new and slices of the one text. */
export const freshPool: Pool = { chunk: (text) => ({ text }), gap: (text) => text, part: (_, text, make) => make(text) };

/** For an edit: gives back `old` parts and chunks where the text is the same, in the order they stood. */
export function reusingPool(oldChunks: Iterable<Chunk>, oldParts: Iterable<Part>): Pool {
  const chunks = new Map<string, Chunk[]>();
  for (const chunk of oldChunks) put(chunks, chunk.text, chunk);
  const parts = new Map<string, TextPart[]>();
  for (const part of oldParts) {
    // Prose with a diagnostic may owe it to standing first in the text.
    if (part.kind === "calc" || (part.kind === "prose" && part.diagnostics.length > 0)) continue;
    put(parts, `${part.kind} ${part.text}`, part);
  }
  for (const list of [...chunks.values(), ...parts.values()]) list.reverse();
  return {
    chunk: (text) => chunks.get(text)?.pop() ?? { text: ownCopy(text) },
    gap: ownCopy,
    part: <P extends TextPart>(kind: P["kind"], text: string, make: (text: string) => P): P =>
      (parts.get(`${kind} ${text}`)?.pop() as P | undefined) ?? make(ownCopy(text)),
  };
}

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
