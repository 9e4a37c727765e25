// The front matter's lines stay behind the title block: they take no room, until the user asks for their text.

import { EditorState, type Extension, type Range as MarkRange, StateEffect, StateField, Transaction } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";
import { notebookField } from "./notebook-field.ts";

/** Shows the front matter as text, or puts it back behind the title block. */
export const showFront = StateEffect.define<boolean>();

class Row extends WidgetType {
  override eq(): boolean {
    return true;
  }
  override toDOM(): HTMLElement {
    const element = document.createElement("div");
    element.className = "jw-front-hidden";
    return element;
  }
  override get estimatedHeight(): number {
    return 0;
  }
}

const row = Decoration.replace({ widget: new Row(), block: true });

interface Fold {
  readonly open: boolean;
  /** End of the front matter's last line, before the line end; -1 when there is none. */
  readonly to: number;
  readonly decorations: DecorationSet;
}

function frontEnd(state: EditorState): number {
  const front = state.field(notebookField).parts[0];
  if (front?.kind !== "front") return -1;
  return state.doc.sliceString(front.length - 1, front.length) === "\n" ? front.length - 1 : front.length;
}

function fold(state: EditorState, open: boolean): Fold {
  const to = frontEnd(state);
  const ranges: MarkRange<Decoration>[] = open || to <= 0 ? [] : [row.range(0, to)];
  return { open, to, decorations: Decoration.set(ranges) };
}

export const foldField = StateField.define<Fold>({
  create: (state) => fold(state, false),
  update(before, transaction) {
    let { open } = before;
    for (const effect of transaction.effects) if (effect.is(showFront)) open = effect.value;
    if (open === before.open && (!transaction.docChanged || frontEnd(transaction.state) === before.to)) return before;
    return fold(transaction.state, open);
  },
  provide: (field) => [
    EditorView.decorations.from(field, ({ decorations }) => decorations),
    EditorView.atomicRanges.of((view) => view.state.field(field).decorations),
  ],
});

/** First place of the text that the hand may reach. */
export function firstPlace(state: EditorState): number {
  const { open, to } = state.field(foldField);
  return open || to < 0 ? 0 : Math.min(state.doc.length, to + 1);
}

/** What is out of sight is not deleted by a key held too long; cutting everything that is selected still cuts everything. */
const guard = EditorState.changeFilter.of((transaction) => {
  const { open, to } = transaction.startState.field(foldField);
  if (open || to <= 0) return true;
  const event = transaction.annotation(Transaction.userEvent);
  if (event === undefined || (!event.startsWith("delete") && !event.startsWith("input"))) return true;
  if (event === "input.title" || transaction.startState.selection.ranges.some((range) => range.from === 0 && to < range.to)) return true;
  return [0, Math.min(transaction.startState.doc.length, to + 1)];
});

/** The caret never waits behind the title block. */
const keepOut = EditorState.transactionFilter.of((transaction) => {
  if (transaction.selection === undefined || transaction.docChanged) return transaction;
  const { open, to } = transaction.startState.field(foldField);
  if (open || to <= 0) return transaction;
  const { main, ranges } = transaction.selection;
  if (ranges.length > 1 || !main.empty || main.head > to) return transaction;
  return [transaction, { selection: { anchor: Math.min(transaction.startState.doc.length, to + 1) }, sequential: true }];
});

export const frontFold: Extension = [foldField, guard, keepOut];
