// The pad: one CodeMirror view of the whole notebook, in a shadow root so that its style sheets are adopted ones (a strict
// content security policy forbids style elements).

import { acceptCompletion, closeBrackets, closeBracketsKeymap, completionKeymap } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap, indentLess, indentMore } from "@codemirror/commands";
import { highlightSelectionMatches, search, searchKeymap } from "@codemirror/search";
import { type ChangeDesc, EditorState, type Extension, Prec, Transaction } from "@codemirror/state";
import { drawSelection, dropCursor, EditorView, highlightActiveLine, keymap, placeholder, rectangularSelection } from "@codemirror/view";
import type { TextChange } from "../../engine/base/index.ts";
import type { LineOutput, Snapshot } from "../../engine/session/index.ts";
import type { EngineLink } from "../link/link.ts";
import { announceOutputs, announceWayOut } from "./announce.ts";
import { assist } from "./assist.ts";
import { columns } from "./columns.ts";
import { acceptMend, faults } from "./faults.ts";
import { firstPlace, foldField, frontFold, showFront } from "./front-fold.ts";
import { backOverFence, deleteOverFence, leaveWorking, offerWorking, turnLine } from "./line-commands.ts";
import { notebookField } from "./notebook-field.ts";
import { clearOutputs, outputsField, receiveSnapshot } from "./outputs-field.ts";
import { theme } from "./theme.ts";
import { scrollRoom, working } from "./working.ts";

export interface PadOptions {
  readonly parent: HTMLElement;
  readonly link: EngineLink;
  /** After every change of text, selection or outputs. */
  readonly onUpdate: (change: PadChange) => void;
  readonly onChoose: (output: LineOutput) => void;
}

export interface PadChange {
  /** `theirs`: a newer text of the same notebook was taken over, nothing that the user did here. */
  readonly text: "none" | "own" | "theirs";
  readonly outputs: boolean;
  readonly caret: boolean;
}

export interface Pad {
  readonly view: EditorView;
  /** Puts another text in; nothing of the one before is left, its undo history neither. */
  open(text: string): void;
  /** Takes over a newer text of the same notebook with as small a change as will do. */
  follow(text: string): void;
  edit(changes: readonly TextChange[], userEvent: string): void;
  receive(snapshot: Snapshot, since: ChangeDesc | undefined, whole: boolean): void;
  goTo(from: number, to?: number): void;
  showFront(open: boolean): void;
  isFrontShown(): boolean;
  focus(): void;
}

const LABEL = "Working of the notebook";
const WAY_OUT = "Press Escape, then Tab, to leave the pad.";

export function createPad(options: PadOptions): Pad {
  const { link } = options;
  const root = options.parent.attachShadow({ mode: "open" });
  const extensions = padExtensions(options);
  const stateOf = (text: string): EditorState => EditorState.create({ doc: text, extensions });
  const view = new EditorView({ state: stateOf(""), parent: root, root });

  return {
    view,
    open(text) {
      view.setState(stateOf(text));
      const at = startPlace(view.state);
      view.dispatch({ selection: { anchor: at }, effects: clearOutputs.of(null) });
    },
    follow(text) {
      const changes = smallestChange(view.state.doc.toString(), text);
      if (changes === undefined) return;
      view.dispatch({ changes, annotations: [Transaction.remote.of(true), Transaction.addToHistory.of(false)] });
    },
    edit(changes, userEvent) {
      view.dispatch({ changes: changes.map(({ from, to, insert }) => ({ from, to, insert })), userEvent });
    },
    receive(snapshot, since, whole) {
      view.dispatch({ effects: receiveSnapshot.of({ snapshot, since, whole }) });
    },
    goTo(from, to = from) {
      const end = view.state.doc.length;
      view.dispatch({
        selection: { anchor: Math.min(from, end), head: Math.min(to, end) },
        effects: EditorView.scrollIntoView(Math.min(from, end), { y: "center" }),
      });
      view.focus();
    },
    showFront(open) {
      view.dispatch({
        effects: showFront.of(open),
        ...(open ? { selection: { anchor: 0 } } : { selection: { anchor: firstPlace(view.state) } }),
      });
    },
    isFrontShown: () => view.state.field(foldField).open,
    focus: () => view.focus(),
  };

  function padExtensions({ onUpdate, onChoose }: PadOptions): Extension {
    return [
      notebookField,
      outputsField,
      frontFold,
      faults,
      working,
      offerWorking,
      columns({ onChoose }),
      assist(link),
      announceOutputs,
      theme,
      scrollRoom,
      history(),
      drawSelection({ cursorBlinkRate: 1060 }),
      dropCursor(),
      rectangularSelection(),
      highlightActiveLine(),
      highlightSelectionMatches({ minSelectionLength: 2 }),
      search({ top: false }),
      closeBrackets(),
      placeholder("Write prose, or a line like  F = 42 N | what it is | where it comes from"),
      EditorState.allowMultipleSelections.of(true),
      EditorState.tabSize.of(2),
      EditorView.lineWrapping,
      EditorView.contentAttributes.of({
        "aria-label": LABEL,
        "aria-description": WAY_OUT,
        spellcheck: "false",
        autocorrect: "off",
        autocapitalize: "off",
      }),
      Prec.high(
        keymap.of([
          { key: "Escape", run: announceWayOut },
          { key: "Alt-Enter", run: acceptMend },
          { key: "Mod-Enter", run: turnLine },
          { key: "Backspace", run: backOverFence },
          { key: "Delete", run: deleteOverFence },
        ]),
      ),
      keymap.of([
        { key: "Tab", run: acceptCompletion },
        ...closeBracketsKeymap,
        ...completionKeymap,
        { key: "Enter", run: leaveWorking },
        ...searchKeymap,
        ...historyKeymap,
        ...defaultKeymap,
        { key: "Tab", run: indentMore, shift: indentLess },
      ]),
      // Registered last, so that the link is told once the view has taken the change over.
      EditorView.updateListener.of((update) => {
        if (update.docChanged) link.edit(update.changes, update.state.doc);
        const outputs = update.startState.field(outputsField) !== update.state.field(outputsField);
        if (update.docChanged || outputs || update.selectionSet) {
          const theirs = update.transactions.some((transaction) => transaction.annotation(Transaction.remote) === true);
          onUpdate({ text: !update.docChanged ? "none" : theirs ? "theirs" : "own", outputs, caret: update.selectionSet });
        }
      }),
    ];
  }
}

/** Where one begins to write: the first empty line of working in a notebook that has nothing else, else the first line. */
function startPlace(state: EditorState): number {
  const notebook = state.field(notebookField);
  const content = notebook.parts.some((part) =>
    part.kind === "calc" ? part.chunks.length > 0 : part.kind === "front" ? false : part.kind === "prose" ? part.text.trim() !== "" : true,
  );
  const calc = notebook.parts.findIndex((part) => part.kind === "calc");
  const part = notebook.parts[calc];
  if (!content && part?.kind === "calc") return (notebook.starts[calc] as number) + part.bodyFrom;
  return firstPlace(state);
}

function smallestChange(before: string, after: string): { from: number; to: number; insert: string } | undefined {
  if (before === after) return undefined;
  const shorter = Math.min(before.length, after.length);
  let from = 0;
  while (from < shorter && before.charCodeAt(from) === after.charCodeAt(from)) from += 1;
  let end = 0;
  while (end < shorter - from && before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end)) end += 1;
  return { from, to: before.length - end, insert: after.slice(from, after.length - end) };
}
