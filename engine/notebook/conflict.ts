// Marks that a version-control merge leaves in a file: seen as faults at their place, never as working or data.

import { range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { lineAfter, lineEnd } from "./line.ts";

/** Codes of `<`, `=`, `>`, `|`. */
const MARKS = new Set([60, 61, 62, 124]);
const EQUALS = 61;
const SIZE = 7;

/** Whether a line is a conflict mark: seven of `<`, `>` or `|` and perhaps a label, or seven `=` alone. */
export function isConflictMark(text: string, from: number, to: number): boolean {
  const mark = text.charCodeAt(from);
  if (!MARKS.has(mark) || to - from < SIZE) return false;
  for (let i = 1; i < SIZE; i += 1) if (text.charCodeAt(from + i) !== mark) return false;
  const after = from + SIZE;
  const alone = after === to || (after + 1 === to && text[after] === "\r");
  return alone || (mark !== EQUALS && text[after] === " ");
}

/** The fault of a mark; the range counts from `base`. */
export const conflictFault = (text: string, from: number, to: number, base: number): Diagnostic =>
  faults.conflictMark(range(from - base, to - base), { mark: text.slice(from, from + SIZE) });

/** Offsets of the lines that are conflict marks, from `from` on. Seven `=` alone underline a heading, so they count beside others only. */
export function conflictMarks(text: string, from: number): { readonly from: number; readonly to: number }[] {
  const found: { from: number; to: number }[] = [];
  if (!text.includes("<<<<<<<", from) && !text.includes(">>>>>>>", from)) return found;
  for (let at = from; at < text.length; ) {
    const end = lineEnd(text, at);
    if (isConflictMark(text, at, end)) found.push({ from: at, to: end });
    at = lineAfter(text, end);
  }
  return found.some((mark) => text.charCodeAt(mark.from) !== EQUALS) ? found : [];
}

/** Offset of a line's end without its line end, when `to` stands behind that. */
export function lineWithoutEnd(text: string, from: number, to: number): number {
  let end = to;
  if (from < end && text[end - 1] === "\n") end -= 1;
  if (from < end && text[end - 1] === "\r") end -= 1;
  return end;
}
