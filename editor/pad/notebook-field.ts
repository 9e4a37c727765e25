// The notebook's parts beside the text, read once and then edited along, so that nobody scans the whole document a keystroke.

import { type EditorState, StateField } from "@codemirror/state";
import { editNotebook, type Notebook, type Part, partIndexAt, readNotebook } from "../../engine/notebook/index.ts";
import { textChanges } from "../link/link.ts";

export const notebookField: StateField<Notebook> = StateField.define<Notebook>({
  create: (state) => readNotebook(state.doc.toString()),
  update: (notebook, transaction) => (transaction.docChanged ? editNotebook(notebook, textChanges(transaction.changes)) : notebook),
});

/** A part and where it begins. */
export interface PlacedPart {
  readonly part: Part;
  readonly from: number;
  readonly index: number;
}

/** The parts that touch a range, in order. */
export function partsIn(notebook: Notebook, from: number, to: number): readonly PlacedPart[] {
  const found: PlacedPart[] = [];
  for (let index = Math.max(0, partIndexAt(notebook, from)); index < notebook.parts.length; index += 1) {
    const start = notebook.starts[index] as number;
    if (start > to) break;
    found.push({ part: notebook.parts[index] as Part, from: start, index });
  }
  return found;
}

/** The part a place belongs to; undefined in an empty notebook. */
export function partAt(state: EditorState, offset: number): PlacedPart | undefined {
  const notebook = state.field(notebookField);
  const index = partIndexAt(notebook, offset);
  const part = notebook.parts[index];
  return part === undefined ? undefined : { part, from: notebook.starts[index] as number, index };
}

/** Whether the place lies between the fence lines of a calc part. */
export function inWorking(state: EditorState, offset: number): boolean {
  const placed = partAt(state, offset);
  if (placed === undefined || placed.part.kind !== "calc") return false;
  return placed.from + placed.part.bodyFrom <= offset && offset < placed.from + Math.max(placed.part.bodyTo, placed.part.bodyFrom + 1);
}
