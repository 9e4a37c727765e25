// The pad: one CodeMirror view of the whole notebook, in a shadow root so that its style sheets are adopted ones (a strict
// content security policy forbids style elements).

import {
  acceptCompletion,
  closeBrackets,
  closeBracketsKeymap,
  closeCompletion,
  completionKeymap,
  snippet,
  startCompletion,
} from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap, indentLess, indentMore, redo, undo } from "@codemirror/commands";
import { highlightSelectionMatches, openSearchPanel, search, searchKeymap } from "@codemirror/search";
import { type ChangeDesc, EditorState, type Extension, Prec, Transaction } from "@codemirror/state";
import {
  type Command,
  closeHoverTooltips,
  drawSelection,
  dropCursor,
  EditorView,
  highlightActiveLine,
  keymap,
  placeholder,
  rectangularSelection,
} from "@codemirror/view";
import type { TextChange } from "../../engine/base/index.ts";
import type { InsertedCall, LineOutput, Snapshot } from "../../engine/session/index.ts";
import type { EngineLink } from "../link/link.ts";
import { announceOutputs, announceWayOut } from "./announce.ts";
import { assist } from "./assist.ts";
import { columns } from "./columns.ts";
import { acceptMend, faults } from "./faults.ts";
import { figures } from "./figures.ts";
import { firstPlace, foldField, frontFold, showFront } from "./front-fold.ts";
import { gaps } from "./gaps.ts";
import { grids } from "./grids.ts";
import { backOverFence, deleteOverFence, endOfWorking, enterBeforeNote, leaveWorking, offerWorking, turnLine } from "./line-commands.ts";
import { notebookField } from "./notebook-field.ts";
import { dragNumbers, numberDown, numberUp } from "./numbers.ts";
import { clearOutputs, outputsField, outputsIn, receiveSnapshot } from "./outputs-field.ts";
import { foldSection, sections, unfoldSections } from "./sections.ts";
import { theme } from "./theme.ts";
import { scrollRoom, working } from "./working.ts";

export interface PadOptions {
  readonly parent: HTMLElement;
  readonly link: EngineLink;
  /** After every change of text, selection or outputs. */
  readonly onUpdate: (change: PadChange) => void;
  readonly onChoose: (output: LineOutput, at: DOMRect) => void;
  readonly onCite: (output: LineOutput, at: DOMRect) => void;
}

/** What the pad can be told to do by name; each is a command of the editor. */
export type PadCommand = keyof typeof padCommands;

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
  run(command: PadCommand): void;
  /** Puts a call of a library name in at the caret; arguments without a value are places to fill in, one after the other. */
  insertCall(call: InsertedCall): void;
  /** Where the output of a statement is on the screen, if it is. */
  outputPlace(id: string): DOMRect | undefined;
  /** From the caret's line to its output, or the next one below. */
  focusOutput(): void;
}

const padCommands = {
  turn: turnLine,
  mend: acceptMend,
  complete: startCompletion,
  more: numberUp,
  less: numberDown,
  undo,
  redo,
  find: openSearchPanel,
  fold: foldSection,
  unfold: unfoldSections,
} satisfies Readonly<Record<string, Command>>;

const LABEL = "Working of the notebook";
const WAY_OUT = "Press Escape, then Tab, to leave the pad.";

export function createPad(options: PadOptions): Pad {
  const { link } = options;
  const root = options.parent.attachShadow({ mode: "open" });
  const columnsPlugin = columns(options);
  const extensions = padExtensions(options);
  const stateOf = (text: string): EditorState => EditorState.create({ doc: text, extensions });
  const view = new EditorView({ state: stateOf(""), parent: root, root });

  return {
    view,
    open(text) {
      // What hangs at a place of the old text would be measured once more in the new one.
      closeCompletion(view);
      view.dispatch({ effects: closeHoverTooltips });
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
    run(command) {
      // The search panel takes the focus itself.
      if (command !== "find") view.focus();
      padCommands[command](view);
    },
    insertCall(call) {
      const { from, to } = view.state.selection.main;
      const before = view.state.sliceDoc(Math.max(0, from - 1), from);
      const lead = /[\p{L}\p{N}_)]/u.test(before) ? " " : "";
      const filled = call.arguments.map(
        ({ name, value, hint }) => `${name} = ${value === "" ? `#{${hint.replaceAll(/[{}]/g, "")}}` : value}`,
      );
      const inside = filled.join(", ");
      const text = call.kind === "formula" ? `${call.name}(${inside})` : call.kind === "record" ? `${call.name} { ${inside} }` : call.name;
      view.focus();
      // The last, empty place is where the caret ends.
      snippet(`${lead}${text}#{}`)(view, null, from, to);
    },
    outputPlace: (id) => view.plugin(columnsPlugin)?.stopOf(id)?.getBoundingClientRect(),
    focusOutput() {
      const at = view.state.doc.lineAt(view.state.selection.main.head).from;
      for (const { output } of outputsIn(view.state, at, view.viewport.to)) {
        const stop = view.plugin(columnsPlugin)?.stopOf(output.id);
        if (stop != null) return stop.focus();
      }
    },
  };

  function padExtensions({ onUpdate }: PadOptions): Extension {
    return [
      notebookField,
      outputsField,
      // Filters run from the last to the first: what the front matter sends out of its lines, the fence lines send on.
      gaps,
      frontFold,
      faults,
      figures,
      grids,
      working,
      offerWorking,
      sections,
      dragNumbers,
      columnsPlugin,
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
          { key: "Alt-PageUp", run: numberUp },
          { key: "Alt-PageDown", run: numberDown },
          { key: "F9", run: foldSection },
          { key: "Mod-y", run: redo },
          { key: "Backspace", run: backOverFence },
          { key: "Delete", run: deleteOverFence },
        ]),
      ),
      keymap.of([
        { key: "Tab", run: acceptCompletion },
        ...closeBracketsKeymap,
        ...completionKeymap,
        { key: "Enter", run: leaveWorking },
        { key: "Enter", run: enterBeforeNote },
        { key: "End", run: endOfWorking },
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
  return firstWords(state);
}

/** The first line of prose or working, past headings: the caret calls up the marks of its line. */
function firstWords(state: EditorState): number {
  const first = firstPlace(state);
  for (let line = state.doc.lineAt(first); ; line = state.doc.line(line.number + 1)) {
    if (line.text.trim() !== "" && !/^[`~#]/.test(line.text)) return line.from;
    if (line.number === state.doc.lines) return first;
  }
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
