// Faults at their place: a wave under the wrong piece, the message in whole lines under the statement, a mend that one key accepts.

import { type EditorState, type Extension, type Range as MarkRange, StateEffect, StateField } from "@codemirror/state";
import { type Command, Decoration, type DecorationSet, EditorView, ViewPlugin, type ViewUpdate, WidgetType } from "@codemirror/view";
import type { Placed, PlacedMend } from "../../engine/session/index.ts";
import { messagePieces, plainMessage } from "./message-pieces.ts";
import { clearOutputs, nowAt, outputsIn, outputsWithMessages, type PlacedOutput, receiveSnapshot } from "./outputs-field.ts";

/** How long the hand must rest before a message about the statement under it comes up. */
const REST = 600;
/** Messages of one statement shown in place; the fault list has all. */
const MOST_LINES = 3;

const setTyping = StateEffect.define<boolean>();

/** Whether the user is in the middle of typing: the statement under the caret is then not yet complained about. */
const typingField = StateField.define<boolean>({
  create: () => false,
  update(typing, transaction) {
    for (const effect of transaction.effects) if (effect.is(setTyping)) return effect.value;
    return typing || (transaction.docChanged && transaction.isUserEvent("input.type"));
  },
});

interface Shown {
  readonly decorations: DecorationSet;
  /** `id code` of each message on the page, so that one that is shown stays while its line is typed in. */
  readonly keys: ReadonlySet<string>;
}

const faultsField = StateField.define<Shown>({
  create: () => ({ decorations: Decoration.none, keys: new Set() }),
  update(shown, transaction) {
    const again = transaction.effects.some((effect) => effect.is(receiveSnapshot) || effect.is(setTyping) || effect.is(clearOutputs));
    if (again) return place(transaction.state, shown.keys);
    return transaction.docChanged ? { ...shown, decorations: shown.decorations.map(transaction.changes) } : shown;
  },
  provide: (field) => EditorView.decorations.from(field, ({ decorations }) => decorations),
});

function place(state: EditorState, before: ReadonlySet<string>): Shown {
  const ranges: MarkRange<Decoration>[] = [];
  const keys = new Set<string>();
  const { head } = state.selection.main;
  const typing = state.field(typingField);
  for (const placed of outputsWithMessages(state)) {
    if (placed.output.kind === "title") continue;
    const line = state.doc.lineAt(placed.to);
    const inHand = typing && placed.from <= head && head <= line.to;
    const faulty = placed.output.diagnostics.some((entry) => entry.severity === "fault");
    if (faulty && !(inHand && ![...before].some((shown) => shown.startsWith(`${placed.output.id} `)))) {
      for (let at = placed.from; at <= placed.to; ) {
        const row = state.doc.lineAt(at);
        ranges.push(faultyLine.range(row.from));
        at = row.to + 1;
      }
    }
    const entries = ordered(placed.output.diagnostics).filter((entry) => !inHand || before.has(key(placed, entry)));
    entries.forEach((entry, index) => {
      keys.add(key(placed, entry));
      const mark = waveAt(state, placed, entry);
      if (mark !== undefined) ranges.push(mark);
      if (index < MOST_LINES) {
        ranges.push(Decoration.widget({ widget: new MessageLine(placed.output.id, entry), block: true, side: 1 }).range(line.to));
      }
    });
  }
  return { decorations: Decoration.set(ranges, true), keys };
}

const key = (placed: PlacedOutput, entry: Placed): string => `${placed.output.id} ${entry.code}`;

const ordered = (entries: readonly Placed[]): readonly Placed[] =>
  [...entries].sort((a, b) => Number(a.severity === "notice") - Number(b.severity === "notice") || a.from - b.from);

const faultyLine = Decoration.line({ class: "jw-faulty" });

const waves = {
  fault: Decoration.mark({ class: "jw-wave jw-wave-fault" }),
  notice: Decoration.mark({ class: "jw-wave jw-wave-notice" }),
};

function waveAt(state: EditorState, placed: PlacedOutput, entry: Placed): MarkRange<Decoration> | undefined {
  let from = nowAt(placed, entry.from);
  let to = nowAt(placed, entry.to);
  if (from === to) {
    // Something is missing here: the character before shows where.
    if (placed.from < from && state.sliceDoc(from - 1, from) !== "\n") from -= 1;
    else if (to < state.doc.lineAt(to).to) to += 1;
  }
  return from < to ? waves[entry.severity].range(from, to) : undefined;
}

class MessageLine extends WidgetType {
  constructor(
    readonly id: string,
    readonly entry: Placed,
  ) {
    super();
  }

  override eq(other: MessageLine): boolean {
    const same = other.id === this.id && other.entry.message === this.entry.message && other.entry.hint === this.entry.hint;
    return same && other.entry.mends[0]?.label === this.entry.mends[0]?.label;
  }

  override toDOM(view: EditorView): HTMLElement {
    const line = document.createElement("div");
    line.className = `jw-message jw-message-${this.entry.severity}`;
    line.setAttribute("role", "note");
    const words = document.createElement("span");
    words.className = "jw-message-words";
    const text = this.entry.hint === undefined ? this.entry.message : `${this.entry.message} ${this.entry.hint}`;
    for (const piece of messagePieces(text)) {
      const part = document.createElement(piece.code ? "code" : "span");
      part.textContent = piece.words;
      words.append(part);
    }
    line.append(words);
    const mend = this.entry.mends[0];
    if (mend !== undefined) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "jw-mend";
      button.append("Accept ");
      const what = document.createElement("span");
      what.className = "jw-mend-what";
      what.textContent = plainMessage(mend.label);
      button.append(what);
      button.title = "Alt+Enter";
      button.setAttribute("aria-keyshortcuts", "Alt+Enter");
      // The editor would take the press for a click into its text.
      button.addEventListener("mousedown", (event) => event.preventDefault());
      button.addEventListener("click", () => {
        accept(view, this.id, this.entry.code);
        view.focus();
      });
      line.append(button);
    }
    return line;
  }

  override get estimatedHeight(): number {
    return 24;
  }

  override ignoreEvent(): boolean {
    return true;
  }
}

/** The changes of a mend at their present place, or undefined when its statement is not as the engine saw it. */
function changesNow(
  state: EditorState,
  placed: PlacedOutput,
  mend: PlacedMend,
): { from: number; to: number; insert: string }[] | undefined {
  const { output } = placed;
  if (placed.to - placed.from !== output.to - output.from) return undefined;
  const shift = placed.from - output.from;
  // A change outside the statement is at a known place only while nothing before it moved.
  const known = mend.changes.every((change) => (output.from <= change.from && change.to <= output.to) || shift === 0);
  if (!known) return undefined;
  const changes = mend.changes.map(({ from, to, insert }) => ({ from: from + shift, to: to + shift, insert }));
  return changes.every((change) => change.to <= state.doc.length) ? changes : undefined;
}

function accept(view: EditorView, id: string, code: string): boolean {
  const placed = outputsWithMessages(view.state).find((entry) => entry.output.id === id);
  const mend = placed?.output.diagnostics.find((entry) => entry.code === code && entry.mends.length > 0)?.mends[0];
  if (placed === undefined || mend === undefined) return false;
  const changes = changesNow(view.state, placed, mend);
  if (changes === undefined) return false;
  view.dispatch({
    changes,
    userEvent: "input.mend",
    effects: [setTyping.of(false), EditorView.announce.of(`Mended: ${plainMessage(mend.label)}`)],
    scrollIntoView: true,
  });
  return true;
}

/** Accepts the mend of the statement under the caret, the one nearest to the caret first. */
export const acceptMend: Command = (view) => {
  const { head } = view.state.selection.main;
  const line = view.state.doc.lineAt(head);
  const candidates = outputsIn(view.state, line.from, line.to)
    .flatMap((placed) => placed.output.diagnostics.filter((entry) => entry.mends.length > 0).map((entry) => ({ placed, entry })))
    .sort((a, b) => distance(a.placed, a.entry, head) - distance(b.placed, b.entry, head));
  return candidates.some(({ placed, entry }) => accept(view, placed.output.id, entry.code));
};

const distance = (placed: PlacedOutput, entry: Placed, head: number): number =>
  Math.max(0, nowAt(placed, entry.from) - head, head - nowAt(placed, entry.to));

const restWatch = ViewPlugin.define((view) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    update(update: ViewUpdate) {
      if (!update.state.field(typingField)) return;
      const away = update.selectionSet && !update.docChanged;
      if (!update.docChanged && !away && timer !== undefined) return;
      clearTimeout(timer);
      timer = setTimeout(() => view.dispatch({ effects: setTyping.of(false) }), away ? 0 : REST);
    },
    destroy: () => clearTimeout(timer),
  };
});

export const faults: Extension = [typingField, faultsField, restWatch];
