// An edit read at the cost of what it touches: parts and chunks outside keep their objects.

import { applyChanges, type TextChange } from "../base/index.ts";
import { readChunks } from "./chunks.ts";
import { chunksOf, lastAtMost, partIndexAt } from "./find.ts";
import { lineAfter, lineEnd, readOpening, startsChunk } from "./line.ts";
import { type CalcPart, type Chunk, calcStretch, type Notebook, notebookOf, type Part, partText } from "./part.ts";
import { freshPool, type Pool, reusingPool } from "./pool.ts";
import { readPart } from "./scan.ts";

/** The changes, and the one stretch that holds them: `from` to `to` in the old text, longer by `by` in the new. */
interface Edit {
  readonly changes: readonly TextChange[];
  readonly from: number;
  readonly to: number;
  readonly by: number;
}

/**
 * The notebook after changes (sorted, not overlapping, counted in the old text). Equal in structure to
 * `readNotebook(applyChanges(old.text, changes))`; every chunk and text part whose text did not change keeps its object.
 * Cost: the parts touched (of a calc part only the chunks touched), and a number for each part and chunk behind them.
 */
export function editNotebook(old: Notebook, changes: readonly TextChange[]): Notebook {
  const first = changes[0];
  const last = changes[changes.length - 1];
  if (first === undefined || last === undefined) return old;
  const by = changes.reduce((sum, { from, to, insert }) => sum + insert.length - (to - from), 0);
  const edit = { changes, from: first.from, to: last.to, by };
  return editInsideCalc(old, edit) ?? editParts(old, edit);
}

/** A piece of the old text that begins at `offset` and holds all changes, as it reads after them. */
const edited = (piece: string, offset: number, { changes }: Edit): string =>
  applyChanges(
    piece,
    changes.map(({ from, to, insert }) => ({ from: from - offset, to: to - offset, insert })),
  );

/** The frequent case: the change lies between the fence lines of one calc part and leaves them alone. */
function editInsideCalc(old: Notebook, edit: Edit): Notebook | undefined {
  const at = partIndexAt(old, edit.from);
  const part = old.parts[at];
  if (part?.kind !== "calc") return undefined;
  const now = editCalc(part, old.starts[at] as number, edit);
  if (now === undefined) return undefined;
  const parts = old.parts.slice();
  parts[at] = now;
  return notebookOf(old.length + edit.by, parts, old.starts.slice(0, at + 1).concat(shiftedFrom(old.starts, at + 1, edit.by)));
}

function editCalc(part: CalcPart, base: number, edit: Edit): CalcPart | undefined {
  const { chunks, starts, gaps } = part;
  const from = edit.from - base;
  const to = edit.to - base;
  if (from < part.bodyFrom || part.bodyTo < to || !part.open.endsWith("\n")) return undefined;
  // Conflict marks cut statements and carry places; rare enough to be read afresh.
  if (part.diagnostics.some(({ code }) => code === "conflict-mark")) return undefined;
  const fence = readOpening(part.open, 0, part.open.length);
  if (fence === undefined) return undefined;

  // From the statement that begins before the change: its first character, so its being a statement, is out of reach.
  const first = Math.max(0, lastAtMost(starts, from - 1));
  // To the first one behind the change that begins a line still and would begin a statement whatever stands before it.
  let next = lastAtMost(starts, to - 1) + 1;
  const windowFrom = first === 0 ? part.bodyFrom : (starts[first] as number);
  const before = first === 0 ? "" : (gaps[first] as string);
  let window = "";
  for (; ; next += 1) {
    const stretch = calcStretch(part, first, next).slice(before.length) + (gaps[next] as string);
    window = edited(stretch, base + windowFrom, edit);
    const endsLine = window === "" || window.endsWith("\n");
    if (next === chunks.length) {
      if (part.closed && !endsLine) return undefined;
      break;
    }
    if (endsLine && startsChunk((chunks[next] as Chunk).text.charCodeAt(0))) break;
  }

  const run = readChunks(window, 0, -windowFrom, fence, reusingPool(chunks.slice(first, next), []));
  if (run.closed || run.diagnostics.length > 0) return undefined;
  run.gaps[0] = before + run.gaps[0];
  return {
    ...part,
    length: part.length + edit.by,
    bodyTo: part.bodyTo + edit.by,
    gaps: gaps.slice(0, first).concat(run.gaps, gaps.slice(next + 1)),
    chunks: chunks.slice(0, first).concat(run.chunks, chunks.slice(next)),
    starts: starts.slice(0, first).concat(run.starts, shiftedFrom(starts, next, edit.by)),
  };
}

/** The general case: reads parts from the first one in reach until a border of the old text is met again. */
function editParts(old: Notebook, edit: Edit): Notebook {
  // A part that ends where the change begins is in reach: its last line may grow. So is prose before it, which ends where it begins.
  let first = Math.max(0, partIndexAt(old, edit.from - 1));
  if (first > 0 && old.parts[first - 1]?.kind === "prose") first -= 1;
  // Read twice: how far the change reaches must be known before old objects are given out again, or one could stand in two places.
  let { window, next } = windowOf(old, edit, first, partIndexAt(old, edit.to) + 1);
  for (;;) {
    const met = readUntilMet(old, edit, first, window, next, freshPool).met;
    if (met !== undefined) {
      next = met;
      break;
    }
    ({ window, next } = windowOf(old, edit, first, first + 2 * (next - first)));
  }
  const replaced = old.parts.slice(first, next);
  const { parts, starts } = readUntilMet(old, edit, first, window, next, reusingPool(chunksOf(replaced), replaced));
  return notebookOf(
    old.length + edit.by,
    old.parts.slice(0, first).concat(parts, old.parts.slice(next)),
    old.starts.slice(0, first).concat(starts, shiftedFrom(old.starts, next, edit.by)),
  );
}

/** The new text from old part `first` on up to old part `next`, and that one's first line, which ends prose before it. */
function windowOf(old: Notebook, edit: Edit, first: number, next: number): { readonly window: string; readonly next: number } {
  const last = Math.min(next, old.parts.length);
  const after = old.parts[last];
  const pieces = old.parts.slice(first, last).map(partText);
  if (after !== undefined) pieces.push(firstLine(after));
  return { window: edited(pieces.join(""), old.starts[first] ?? 0, edit), next: last };
}

const firstLine = (part: Part): string =>
  part.kind === "calc" ? part.open : part.text.slice(0, lineAfter(part.text, lineEnd(part.text, 0)));

interface Reread {
  readonly parts: Part[];
  readonly starts: number[];
  /** Index of the first old part that stands as it was; undefined when the window ends before that is known. */
  readonly met: number | undefined;
}

function readUntilMet(old: Notebook, { to, by }: Edit, first: number, window: string, last: number, pool: Pool): Reread {
  const parts: Part[] = [];
  const starts: number[] = [];
  const base = old.starts[first] ?? 0;
  // The very first part is never met again: what begins a text is read by rules of its own (front matter).
  let next = first + 1;
  for (let at = base; at - base < window.length; ) {
    while (next < last && (old.starts[next] as number) + by < at) next += 1;
    const border = old.starts[next];
    if (next <= last && at > 0 && border !== undefined && to <= border && border + by === at) return { parts, starts, met: next };
    const part = readPart(window, at - base, at === 0, pool);
    parts.push(part);
    starts.push(at);
    at += part.length;
  }
  return { parts, starts, met: last === old.parts.length ? last : undefined };
}

/** The numbers from index `from` on, each plus `by`. */
function shiftedFrom(numbers: readonly number[], from: number, by: number): number[] {
  const tail = numbers.slice(from);
  if (by !== 0) for (let i = 0; i < tail.length; i += 1) tail[i] = (tail[i] as number) + by;
  return tail;
}
