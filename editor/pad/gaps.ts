// Lines that take less room than a row: blank lines are half a row, fence lines none. What the hand is writing on is always whole.

import { EditorSelection, EditorState, type Extension, type Line, StateField } from "@codemirror/state";
import { type PlacedPart, partAt } from "./notebook-field.ts";

const isBlank = (line: Line): boolean => line.text.trim() === "";

/**
 * The blank line that was just made under the caret, by its start; -1 when there is none. It keeps its full height until the
 * caret leaves, so that the first letter typed on it moves nothing.
 */
export const freshLine: StateField<number> = StateField.define<number>({
  create: () => -1,
  update(before, transaction) {
    if (!transaction.docChanged && transaction.selection === undefined) return before;
    const { state } = transaction;
    const here = state.doc.lineAt(state.selection.main.head);
    if (!isBlank(here)) return -1;
    if (transaction.docChanged && (transaction.isUserEvent("input") || transaction.isUserEvent("delete"))) return here.from;
    const moved = before === -1 ? -1 : transaction.changes.mapPos(before, -1);
    return moved === here.from ? moved : -1;
  },
});

/** Whether a blank line is shown at half height: it parts two things, and nobody is about to write on it. */
export function isGap(state: EditorState, line: Line): boolean {
  if (!isBlank(line) || line.number === state.doc.lines || line.from === state.field(freshLine)) return false;
  const next = state.doc.line(line.number + 1);
  if (isBlank(next)) return false;
  const placed = partAt(state, line.from);
  // The only line of an empty working is where the first line goes.
  return !(
    placed?.part.kind === "calc" && state.sliceDoc(placed.from + placed.part.bodyFrom, placed.from + placed.part.bodyTo).trim() === ""
  );
}

/** Fence lines that are out of sight: both of a closed working, the closing one of measured data. The last line of all stays. */
export function hiddenFences(state: EditorState, { part, from }: PlacedPart): readonly Line[] {
  if (part.kind === "prose" || part.kind === "front" || part.kind === "fence" || !part.closed) return [];
  const closing = state.doc.lineAt(Math.min(state.doc.length, from + part.bodyTo));
  const lines = part.kind === "calc" ? [state.doc.lineAt(from), closing] : [closing];
  return lines.filter((line) => line.number < state.doc.lines);
}

/** The caret steps over lines that are out of sight, the way it was going. */
const stepOver = EditorState.transactionFilter.of((transaction) => {
  if (transaction.selection === undefined) return transaction;
  const { main, ranges } = transaction.selection;
  if (ranges.length > 1 || !main.empty) return transaction;
  const { state } = transaction;
  const line = state.doc.lineAt(main.head);
  if (!/^[`~]/.test(line.text)) return transaction;
  const placed = partAt(state, line.from);
  if (placed === undefined || !hiddenFences(state, placed).some((fence) => fence.from === line.from)) return transaction;
  const before = transaction.startState.selection.main.head;
  const nothingAbove = line.from === 0 || partAt(state, line.from - 1)?.part.kind === "front";
  const forward = nothingAbove || transaction.changes.mapPos(before) <= main.head;
  const anchor = forward ? line.to + 1 : line.from - 1;
  return [transaction, { selection: EditorSelection.cursor(anchor), sequential: true }];
});

export const gaps: Extension = [freshLine, stepOver];
