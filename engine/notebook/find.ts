// Places in a notebook: which part, which chunk, and what differs between two readings.

import type { Chunk, Notebook, Part } from "./part.ts";

/** Index of the last number that is at most `value`; -1 if none. `sorted` ascends. */
export function lastAtMost(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) <= value) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Index of the part that holds an offset; at a border the later one; -1 in an empty notebook. */
export const partIndexAt = (notebook: Notebook, offset: number): number => lastAtMost(notebook.starts, offset);

export interface FoundChunk {
  readonly chunk: Chunk;
  /** Index of its part, and its index in the part. */
  readonly part: number;
  readonly index: number;
  /** Offset of its text in the notebook. */
  readonly from: number;
}

/**
 * The chunk whose lines hold an offset, the blank lines after it counted in, so that a caret behind a statement finds
 * it; undefined in prose, on fence lines and before a fence's first statement.
 */
export function chunkAt(notebook: Notebook, offset: number): FoundChunk | undefined {
  const at = partIndexAt(notebook, offset);
  const part = notebook.parts[at];
  if (part?.kind !== "calc") return undefined;
  const from = notebook.starts[at] as number;
  if (part.closed && offset >= from + part.bodyTo) return undefined;
  const index = lastAtMost(part.starts, offset - from);
  const chunk = part.chunks[index];
  return chunk === undefined ? undefined : { chunk, part: at, index, from: from + (part.starts[index] as number) };
}

/** Every chunk with its place, in the order of the text. */
export function* placedChunks(notebook: Notebook): Generator<FoundChunk> {
  for (const [at, part] of notebook.parts.entries()) {
    if (part.kind !== "calc") continue;
    const from = notebook.starts[at] as number;
    for (const [index, chunk] of part.chunks.entries()) yield { chunk, part: at, index, from: from + (part.starts[index] as number) };
  }
}

export interface Differences {
  /** Chunks of the old notebook that the new one does not hold, and the other way round; by identity. */
  readonly removed: readonly Chunk[];
  readonly added: readonly Chunk[];
  /** Parts other than calc. */
  readonly removedParts: readonly Part[];
  readonly addedParts: readonly Part[];
}

/** What an edit took out and put in. Cost: the parts, and the chunks of those parts that are not the same objects. */
export function differences(old: Notebook, now: Notebook): Differences {
  const [from, oldTo, nowTo] = differing(old.parts, now.parts);
  const oldParts = old.parts.slice(from, oldTo);
  const nowParts = now.parts.slice(from, nowTo);
  const [onlyOld] = oldParts;
  const [onlyNow] = nowParts;
  const one = oldParts.length === 1 && nowParts.length === 1 && onlyOld?.kind === "calc" && onlyNow?.kind === "calc";
  const chunks = one ? withoutCommon(onlyOld.chunks, onlyNow.chunks) : withoutCommon(chunksOf(oldParts), chunksOf(nowParts));
  const parts = withoutCommon(
    oldParts.filter((part) => part.kind !== "calc"),
    nowParts.filter((part) => part.kind !== "calc"),
  );
  return { removed: chunks.removed, added: chunks.added, removedParts: parts.removed, addedParts: parts.added };
}

/** All chunks of some parts, in their order. */
export const chunksOf = (parts: readonly Part[]): Chunk[] => parts.flatMap((part) => (part.kind === "calc" ? part.chunks : []));

/** `[from, oldTo, nowTo]` of what is left when a common start and a common end are taken off. */
function differing<T>(old: readonly T[], now: readonly T[]): readonly [number, number, number] {
  const shorter = Math.min(old.length, now.length);
  let from = 0;
  while (from < shorter && old[from] === now[from]) from += 1;
  let end = 0;
  while (end < shorter - from && old[old.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  return [from, old.length - end, now.length - end];
}

function withoutCommon<T>(old: readonly T[], now: readonly T[]): { readonly removed: readonly T[]; readonly added: readonly T[] } {
  const [from, oldTo, nowTo] = differing(old, now);
  const oldOnes = old.slice(from, oldTo);
  const nowOnes = now.slice(from, nowTo);
  const before = new Set(oldOnes);
  const after = new Set(nowOnes);
  return { removed: oldOnes.filter((item) => !after.has(item)), added: nowOnes.filter((item) => !before.has(item)) };
}
