// Keys that turn a line into working or into prose, and that keep unseen fences whole: one writes, and does not manage cells.

import { type ChangeSpec, EditorSelection, type EditorState, type Line } from "@codemirror/state";
import { type Command, Decoration, type DecorationSet, type EditorView, ViewPlugin, type ViewUpdate, WidgetType } from "@codemirror/view";
import { chunkAt } from "../../engine/notebook/index.ts";
import { inWorking, notebookField, partAt } from "./notebook-field.ts";
import { statementStyle } from "./statement-style.ts";

const OPEN = "```calc";
const CLOSE = "```";

const isBlank = (line: Line): boolean => line.text.trim() === "";

/** Turns the caret's line into working where it is prose, into prose where it is working. */
export const turnLine: Command = (view) => {
  const { state } = view;
  const line = state.doc.lineAt(state.selection.main.head);
  const placed = partAt(state, line.from);
  if (placed?.part.kind === "front" || placed?.part.kind === "csv" || placed?.part.kind === "fence") return false;
  const spec = inWorking(state, line.from) ? toProse(state, line) : toWorking(state, line);
  if (spec === undefined) return false;
  view.dispatch({ ...spec, scrollIntoView: true, userEvent: "input.turn" });
  return true;
};

interface Turn {
  readonly changes: ChangeSpec;
  readonly selection: EditorSelection;
}

/** The calc fence that ends right above the line (blank lines between), by its closing line. */
function workingAbove(state: EditorState, line: Line): Line | undefined {
  for (let number = line.number - 1; 1 <= number; number -= 1) {
    const above = state.doc.line(number);
    if (isBlank(above)) continue;
    const placed = partAt(state, above.from);
    const closes = placed?.part.kind === "calc" && placed.part.closed && placed.from + placed.part.bodyTo === above.from;
    return closes ? above : undefined;
  }
  return undefined;
}

/** The calc fence that begins right below the line, by its opening line. */
function workingBelow(state: EditorState, line: Line): Line | undefined {
  for (let number = line.number + 1; number <= state.doc.lines; number += 1) {
    const below = state.doc.line(number);
    if (isBlank(below)) continue;
    const placed = partAt(state, below.from);
    return placed?.part.kind === "calc" && placed.from === below.from ? below : undefined;
  }
  return undefined;
}

function toWorking(state: EditorState, line: Line): Turn {
  const above = workingAbove(state, line);
  const below = workingBelow(state, line);
  const text = line.text.trim();
  const column = Math.max(
    0,
    Math.min(text.length, state.selection.main.head - line.from - (line.text.length - line.text.trimStart().length)),
  );
  // Joins the working above and below, so that a column of lines stays one column.
  const from = above?.from ?? line.from;
  const to = below?.to ?? line.to;
  const before = above === undefined ? `${needsBlankAbove(state, line) ? "\n" : ""}${OPEN}\n` : "";
  const after = below === undefined ? `\n${CLOSE}${needsBlankBelow(state, line) ? "\n" : ""}` : "";
  return {
    changes: { from, to, insert: before + text + after },
    selection: EditorSelection.single(from + before.length + column),
  };
}

const needsBlankAbove = (state: EditorState, line: Line): boolean => {
  if (line.number === 1) return false;
  const above = state.doc.line(line.number - 1);
  return !isBlank(above) && partAt(state, above.from)?.part.kind === "prose";
};

const needsBlankBelow = (state: EditorState, line: Line): boolean =>
  line.number < state.doc.lines && !isBlank(state.doc.line(line.number + 1)) && partAt(state, line.to + 1)?.part.kind === "prose";

function toProse(state: EditorState, line: Line): Turn | undefined {
  const placed = partAt(state, line.from);
  if (placed?.part.kind !== "calc") return undefined;
  const { part, from: start } = placed;
  const bodyFrom = start + part.bodyFrom;
  const bodyTo = start + part.bodyTo;
  const blankBefore = state.sliceDoc(bodyFrom, line.from).trim() === "";
  const blankAfter = line.to + 1 >= bodyTo || state.sliceDoc(line.to + 1, bodyTo).trim() === "";
  const from = blankBefore ? start : line.from;
  const to = blankAfter ? Math.min(state.doc.length, part.closed ? state.doc.lineAt(bodyTo).to : bodyTo) : line.to;
  const before = blankBefore ? "" : `${CLOSE}\n\n`;
  const after = blankAfter ? "" : `\n\n${OPEN}`;
  const insert = before + line.text + after;
  return {
    changes: { from, to, insert },
    selection: EditorSelection.single(from + before.length + Math.min(line.text.length, state.selection.main.head - line.from)),
  };
}

/** The fence line that ends right before this line, or undefined. */
function fenceBefore(state: EditorState, line: Line): Line | undefined {
  if (line.number === 1) return undefined;
  const above = state.doc.line(line.number - 1);
  const placed = partAt(state, above.from);
  if (placed === undefined || placed.part.kind === "prose" || placed.part.kind === "front") return undefined;
  const opens = placed.from === above.from;
  const closes = placed.part.closed && placed.from + placed.part.bodyTo === above.from;
  return opens || closes ? above : undefined;
}

/** Backspace at a line's start never eats into a fence that is not seen: it takes an empty working away, or steps over. */
export const backOverFence: Command = (view) => {
  const { state } = view;
  const { main, ranges } = state.selection;
  if (ranges.length > 1 || !main.empty) return false;
  const line = state.doc.lineAt(main.head);
  if (main.head !== line.from) return false;
  const fence = fenceBefore(state, line);
  if (fence === undefined) return false;
  const placed = partAt(state, fence.from);
  if (placed?.part.kind === "calc" && placed.from === fence.from && placed.part.closed) {
    const bodyFrom = placed.from + placed.part.bodyFrom;
    const bodyTo = placed.from + placed.part.bodyTo;
    if (state.sliceDoc(bodyFrom, bodyTo).trim() === "") {
      const to = state.doc.lineAt(bodyTo).to;
      view.dispatch({
        changes: { from: placed.from, to },
        selection: { anchor: placed.from },
        userEvent: "delete.fence",
        scrollIntoView: true,
      });
      return true;
    }
  }
  const target = Math.max(0, fence.from - 1);
  view.dispatch({ selection: { anchor: target }, userEvent: "select", scrollIntoView: true });
  return true;
};

/** Delete at a line's end, the same the other way. */
export const deleteOverFence: Command = (view) => {
  const { state } = view;
  const { main, ranges } = state.selection;
  if (ranges.length > 1 || !main.empty) return false;
  const line = state.doc.lineAt(main.head);
  if (main.head !== line.to || line.number === state.doc.lines) return false;
  const next = state.doc.line(line.number + 1);
  const placed = partAt(state, next.from);
  if (placed === undefined || placed.part.kind === "prose" || placed.part.kind === "front") return false;
  const isFence = placed.from === next.from || (placed.part.closed && placed.from + placed.part.bodyTo === next.from);
  if (!isFence) return false;
  view.dispatch({ selection: { anchor: Math.min(state.doc.length, next.to + 1) }, userEvent: "select", scrollIntoView: true });
  return true;
};

/** Where the columns of the caret's line begin, when the caret is in its working. */
function columnsAfter(state: EditorState): number | undefined {
  const { main, ranges } = state.selection;
  if (ranges.length > 1 || !main.empty) return undefined;
  const placed = chunkAt(state.field(notebookField), main.head);
  if (placed === undefined) return undefined;
  const at = main.head - placed.from;
  const end = state.doc.lineAt(main.head).to - placed.from;
  const column = statementStyle(placed.chunk).columns.find(({ from, to }) => at <= from && to <= end);
  return column === undefined ? undefined : placed.from + column.from;
}

/** Enter behind a working whose note is set at the right begins a new line; it does not carry the note along. */
export const enterBeforeNote: Command = (view) => {
  const { state } = view;
  const { head } = state.selection.main;
  if (columnsAfter(state) !== head) return false;
  const { to } = state.doc.lineAt(head);
  view.dispatch({ changes: { from: to, insert: "\n" }, selection: { anchor: to + 1 }, userEvent: "input", scrollIntoView: true });
  return true;
};

/** End goes to the end of the working first, then behind the note. */
export const endOfWorking: Command = (view) => {
  const at = columnsAfter(view.state);
  if (at === undefined || at === view.state.selection.main.head) return false;
  view.dispatch({ selection: { anchor: at }, userEvent: "select", scrollIntoView: true });
  return true;
};

/** Enter on an empty last line of working leaves the working, as it leaves a list. */
export const leaveWorking: Command = (view) => {
  const { state } = view;
  const { main, ranges } = state.selection;
  if (ranges.length > 1 || !main.empty) return false;
  const line = state.doc.lineAt(main.head);
  if (!isBlank(line) || !inWorking(state, line.from) || line.number < 2) return false;
  const placed = partAt(state, line.from);
  if (placed?.part.kind !== "calc" || !placed.part.closed) return false;
  const closing = state.doc.lineAt(placed.from + placed.part.bodyTo);
  const first = placed.from + placed.part.bodyFrom === line.from;
  if (closing.number !== line.number + 1 || first || !isBlank(state.doc.line(line.number - 1))) return false;
  // Two empty lines at the end: both go, and a line of prose begins below.
  const above = state.doc.line(line.number - 1);
  const cut = above.from - 1;
  const follows = closing.number < state.doc.lines ? state.doc.line(closing.number + 1) : undefined;
  const insert = follows === undefined ? "\n\n" : isBlank(follows) ? "\n" : "\n\n";
  view.dispatch({
    changes: [
      { from: cut, to: closing.from - 1 },
      { from: closing.to, insert },
    ],
    selection: { anchor: closing.to - (closing.from - 1 - cut) + insert.length },
    userEvent: "input.leave",
    scrollIntoView: true,
  });
  return true;
};

/** A line of prose that looks like a definition or a check; the engine has the last word once it is working. */
const LIKE_WORKING = /^\s{0,3}(?:check\s+\S|[\p{L}_][\p{L}\p{M}\p{Nd}_]*\s*(?::\s*\S+\s*)?=(?!=)\s*\S)/u;

class Offer extends WidgetType {
  override eq(): boolean {
    return true;
  }
  override toDOM(): HTMLElement {
    const element = document.createElement("span");
    element.className = "jw-offer";
    element.textContent = "Ctrl+Enter makes this line working";
    return element;
  }
  override ignoreEvent(): boolean {
    return false;
  }
}

const offer = Decoration.widget({ widget: new Offer(), side: 1 });

/** Offers to turn a line of prose that is typed like a definition. */
export const offerWorking = ViewPlugin.define<{ decorations: DecorationSet; update(update: ViewUpdate): void }>(
  (view) => ({
    decorations: offers(view),
    update(update) {
      if (update.docChanged || update.selectionSet || update.focusChanged) this.decorations = offers(update.view);
    },
  }),
  { decorations: (plugin) => plugin.decorations },
);

function offers(view: EditorView): DecorationSet {
  const { state } = view;
  const line = state.doc.lineAt(state.selection.main.head);
  if (!view.hasFocus || partAt(state, line.from)?.part.kind === "calc" || !LIKE_WORKING.test(line.text)) return Decoration.none;
  const kind = partAt(state, line.from)?.part.kind;
  return kind === undefined || kind === "prose" ? Decoration.set([offer.range(line.to)]) : Decoration.none;
}
