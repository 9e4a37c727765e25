// Sections folded away under their headings.

import { codeFolding, foldable, foldEffect, foldedRanges, foldService, unfoldAll, unfoldEffect } from "@codemirror/language";
import type { EditorState, Extension } from "@codemirror/state";
import { type Command, EditorView } from "@codemirror/view";
import { headings } from "../../engine/notebook/index.ts";
import { notebookField } from "./notebook-field.ts";

interface Placed {
  readonly level: number;
  readonly from: number;
}

function headingsOf(state: EditorState): readonly Placed[] {
  const notebook = state.field(notebookField);
  return notebook.parts.flatMap((part, index) => {
    const start = notebook.starts[index] as number;
    return part.kind === "prose" ? headings(part.text).map(({ level, from }) => ({ level, from: start + from })) : [];
  });
}

/** From the end of a heading's line to the last line before the next heading of its level or a higher one. */
function sectionAt(state: EditorState, lineFrom: number): { readonly from: number; readonly to: number } | null {
  const all = headingsOf(state);
  const index = all.findIndex(({ from }) => from === lineFrom);
  const heading = all[index];
  if (heading === undefined) return null;
  const next = all.slice(index + 1).find(({ level }) => level <= heading.level);
  let last = next === undefined ? state.doc.length : next.from - 1;
  while (lineFrom < last && state.doc.lineAt(last).text.trim() === "") last = state.doc.lineAt(last).from - 1;
  const from = state.doc.lineAt(lineFrom).to;
  return from < last ? { from, to: Math.min(last, state.doc.length) } : null;
}

/** Folds the section of the caret, or opens it where it is folded. */
export const foldSection: Command = (view) => {
  const { state } = view;
  const at = state.selection.main.head;
  const heading = headingsOf(state).findLast(({ from }) => from <= at);
  if (heading === undefined) return false;
  const line = state.doc.lineAt(heading.from);
  let folded: { from: number; to: number } | undefined;
  foldedRanges(state).between(line.from, line.to, (from, to) => {
    folded = { from, to };
  });
  if (folded !== undefined) {
    view.dispatch({ effects: [unfoldEffect.of(folded), EditorView.announce.of("Section opened")] });
    return true;
  }
  const range = foldable(state, line.from, line.to);
  if (range === null) return false;
  view.dispatch({
    effects: [foldEffect.of(range), EditorView.announce.of("Section folded")],
    selection: { anchor: line.to },
    scrollIntoView: true,
  });
  return true;
};

export const unfoldSections: Command = unfoldAll;

/** Whether a place is folded away, so that nothing is shown beside it. */
export function isFolded(state: EditorState, at: number): boolean {
  let found = false;
  foldedRanges(state).between(at, at, (from, to) => {
    if (from < at && at <= to) found = true;
  });
  return found;
}

export const sections: Extension = [
  foldService.of((state, from) => sectionAt(state, from)),
  codeFolding({
    placeholderDOM(view, onclick) {
      const mark = document.createElement("button");
      mark.type = "button";
      mark.className = "jw-folded";
      mark.textContent = "… folded";
      mark.setAttribute("aria-label", "Open the folded section");
      mark.addEventListener("click", (event) => {
        onclick(event);
        view.focus();
      });
      return mark;
    },
  }),
];
