// Decorations of what is on the screen: working, prose, fences, live values. Built for the viewport alone, from parts and
// statements whose styles are read once.

import type { EditorState, Range as MarkRange, SelectionRange } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, type PluginValue, ViewPlugin, type ViewUpdate, WidgetType } from "@codemirror/view";
import type { LineOutput } from "../../engine/session/index.ts";
import { hiddenFences, isGap } from "./gaps.ts";
import { notebookField, type PlacedPart, partsIn } from "./notebook-field.ts";
import { outputsField, outputsIn } from "./outputs-field.ts";
import { proseStyle } from "./prose.ts";
import { statementStyle } from "./statement-style.ts";
import { LINE } from "./theme.ts";

export const working = ViewPlugin.define((view) => new Working(view), { decorations: (plugin) => plugin.decorations });

class Working implements PluginValue {
  decorations: DecorationSet;

  constructor(view: EditorView) {
    this.decorations = build(view);
  }

  update(update: ViewUpdate): void {
    const answered = update.startState.field(outputsField) !== update.state.field(outputsField);
    if (update.docChanged || update.viewportChanged || update.selectionSet || update.focusChanged || answered) {
      this.decorations = build(update.view);
    }
  }
}

class Sign extends WidgetType {
  constructor(readonly shown: string) {
    super();
  }
  override eq(other: Sign): boolean {
    return other.shown === this.shown;
  }
  override toDOM(): HTMLElement {
    const element = document.createElement("span");
    element.textContent = this.shown;
    return element;
  }
  override ignoreEvent(): boolean {
    return false;
  }
}

class Note extends WidgetType {
  constructor(readonly note: string) {
    super();
  }
  override eq(other: Note): boolean {
    return other.note === this.note;
  }
  override toDOM(): HTMLElement {
    const element = document.createElement("span");
    element.className = "jw-note";
    element.textContent = this.note;
    return element;
  }
  override ignoreEvent(): boolean {
    return false;
  }
}

class Live extends WidgetType {
  constructor(readonly output: LineOutput) {
    super();
  }
  override eq(other: Live): boolean {
    return other.output === this.output || liveText(other.output) === liveText(this.output);
  }
  override toDOM(): HTMLElement {
    const element = document.createElement("span");
    element.className = this.output.value === undefined ? "jw-live jw-live-open" : "jw-live";
    element.textContent = liveText(this.output);
    if (this.output.value !== undefined) element.title = this.output.value.full;
    return element;
  }
  override ignoreEvent(): boolean {
    return false;
  }
}

function liveText(output: LineOutput): string {
  if (output.value !== undefined) return output.value.text;
  const name = output.name ?? "";
  return output.waitsFor !== undefined && output.waitsFor.length > 0 ? `◇ ${name} waits for ${output.waitsFor.join(", ")}` : `◇ ${name}`;
}

const lineClass = new Map<string, Decoration>();
const markClass = new Map<string, Decoration>();
const signs = new Map<string, Decoration>();

function cached(map: Map<string, Decoration>, key: string, make: (key: string) => Decoration): Decoration {
  const before = map.get(key);
  if (before !== undefined) return before;
  const made = make(key);
  map.set(key, made);
  return made;
}

const line = (name: string): Decoration => cached(lineClass, name, (className) => Decoration.line({ class: className }));
const mark = (name: string): Decoration => cached(markClass, name, (className) => Decoration.mark({ class: className }));
const sign = (shown: string): Decoration =>
  cached(signs, shown, (text) => (text === "" ? Decoration.replace({}) : Decoration.replace({ widget: new Sign(text) })));

interface Build {
  readonly state: EditorState;
  /** Only while the editor has the focus does the caret call up what is hidden. */
  readonly carets: readonly SelectionRange[];
  readonly ranges: MarkRange<Decoration>[];
}

function build(view: EditorView): DecorationSet {
  const { state } = view;
  const carets = view.hasFocus ? state.selection.ranges : [];
  const context: Build = { state, carets, ranges: [] };
  const notebook = state.field(notebookField);
  for (const { from, to } of view.visibleRanges) {
    for (const placed of partsIn(notebook, from, to)) showPart(context, placed, from, to);
    for (const { output, from: start } of outputsIn(state, from, to)) {
      if (output.kind === "live" || output.kind === "title" || output.kind === "remark") continue;
      context.ranges.push(line("jw-has-output").range(state.doc.lineAt(start).from));
    }
  }
  return Decoration.set(context.ranges, true);
}

const touches = (carets: readonly SelectionRange[], from: number, to: number): boolean =>
  carets.some((caret) => caret.from <= to && from <= caret.to);

function showPart(context: Build, placed: PlacedPart, from: number, to: number): void {
  const { part } = placed;
  const start = Math.max(from, placed.from);
  const end = Math.min(to, placed.from + part.length);
  if (part.kind === "front") {
    showLines(context, start, end, () => "jw-front");
    return;
  }
  if (part.kind === "prose") {
    showProse(context, placed, start, end);
    return;
  }
  const bodyFrom = placed.from + part.bodyFrom;
  const bodyTo = placed.from + part.bodyTo;
  if (part.kind === "calc") {
    showLines(context, start, end, (at) => (bodyFrom <= at && at < bodyTo ? "jw-working" : undefined));
    showStatements(context, placed, start, end);
  } else showLines(context, start, end, (at) => (at < bodyFrom && part.kind === "csv" ? "jw-data jw-data-head" : "jw-data"));
  if (part.kind === "csv") showDataHead(context, placed, start);
  showGaps(context, placed, start, end);
  showFences(context, placed, start, end);
}

/** Puts a class on each line that begins in the range. */
function showLines({ state, ranges }: Build, from: number, to: number, className: (at: number) => string | undefined): void {
  for (let at = state.doc.lineAt(from).from; at < to; ) {
    const found = className(at);
    if (found !== undefined && from <= at) ranges.push(line(found).range(at));
    at = state.doc.lineAt(at).to + 1;
  }
}

/** Blank lines between two things take half a row, fence lines none; neither height hangs on where the caret is. */
function showGaps({ state, ranges }: Build, placed: PlacedPart, from: number, to: number): void {
  const { part } = placed;
  if (part.kind === "csv" || part.kind === "fence") return;
  for (let at = state.doc.lineAt(from).from; at < to; ) {
    const row = state.doc.lineAt(at);
    if (from <= at && isGap(state, row)) ranges.push(line("jw-gap").range(at));
    at = row.to + 1;
  }
}

function showFences({ state, ranges }: Build, placed: PlacedPart, from: number, to: number): void {
  const { part } = placed;
  const hidden = hiddenFences(state, placed);
  for (const fence of hidden) {
    if (to < fence.from || fence.to < from) continue;
    ranges.push(line("jw-fence").range(fence.from));
    if (fence.from < fence.to) ranges.push(Decoration.replace({}).range(fence.from, fence.to));
  }
  if (part.kind === "prose" || part.kind === "front") return;
  for (const at of [placed.from, placed.from + part.bodyTo]) {
    if (placed.from + part.length <= at || (at === placed.from ? part.kind === "csv" : !part.closed)) continue;
    const fence = state.doc.lineAt(at);
    if (fence.to < from || to < fence.from || hidden.some((one) => one.from === fence.from)) continue;
    ranges.push(line("jw-fence-seen").range(fence.from));
  }
}

function showDataHead({ state, ranges, carets }: Build, placed: PlacedPart, from: number): void {
  const head = state.doc.lineAt(placed.from);
  if (head.from < from || touches(carets, head.from, head.to) || placed.part.kind !== "csv") return;
  const { note } = placed.part;
  const marks = /^[ ]*[`~]+/.exec(head.text)?.[0].length ?? 0;
  if (marks > 0) ranges.push(Decoration.replace({}).range(head.from, head.from + marks));
  const bar = head.text.indexOf("|");
  if (bar > marks) ranges.push(Decoration.replace({ widget: new Note(note?.text ?? "") }).range(head.from + bar, head.to));
}

function showStatements({ ranges, carets }: Build, placed: PlacedPart, from: number, to: number): void {
  if (placed.part.kind !== "calc") return;
  const { chunks, starts } = placed.part;
  for (let index = firstAfter(starts, from - placed.from); index < chunks.length; index += 1) {
    const chunk = chunks[index]!;
    const base = placed.from + (starts[index] as number);
    if (to < base) break;
    const style = statementStyle(chunk);
    const hiddenFrom: [number, number][] = [];
    for (const column of style.columns) {
      const [start, end] = [base + column.from, base + column.to];
      // The note stays set while the hand is in the working; only inside the columns it is text.
      if (end <= start || touches(carets, start + 1, end)) continue;
      hiddenFrom.push([start, end]);
      ranges.push(Decoration.replace({ widget: new Note(column.note) }).range(start, end));
    }
    const hidden = (at: number): boolean => hiddenFrom.some(([start, end]) => start <= at && at < end);
    for (const { from: start, to: end, className } of style.marks) {
      if (start < end && !hidden(base + start)) ranges.push(mark(className).range(base + start, base + end));
    }
    for (const { from: start, to: end, shown } of style.signs) {
      // Blanks that only align stay one blank until the caret is among them.
      const inner = shown === "" && end - start > 1 ? 1 : 0;
      if (!touches(carets, base + start + inner, base + end - inner)) ranges.push(sign(shown).range(base + start, base + end));
    }
  }
}

/** Index of the statement that holds the offset, or of the first one after it. */
function firstAfter(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] as number) <= offset) low = middle + 1;
    else high = middle;
  }
  return Math.max(0, low - 1);
}

function showProse(context: Build, placed: PlacedPart, from: number, to: number): void {
  const { state, ranges, carets } = context;
  if (placed.part.kind !== "prose") return;
  showLines(context, from, to, () => "jw-prose");
  showGaps(context, placed, from, to);
  const style = proseStyle(placed.part);
  const base = placed.from;
  const within = (start: number, end: number): boolean => base + start <= to && from <= base + end;
  for (const { at, className } of style.lines) {
    if (!within(at, at)) continue;
    const row = state.doc.lineAt(base + at);
    ranges.push(line(className).range(row.from));
  }
  for (const { from: start, to: end, className } of style.marks)
    if (within(start, end)) ranges.push(mark(className).range(base + start, base + end));
  for (const { from: start, to: end, shown } of style.hidden) {
    if (!within(start, end) || start === end) continue;
    const row = state.doc.lineAt(base + start);
    if (!touches(carets, row.from, row.to)) ranges.push(sign(shown).range(base + start, base + end));
  }
  for (const { output, from: start, to: end } of outputsIn(state, from, to)) {
    if (output.kind !== "live" || start < base || base + placed.part.length < end || touches(carets, start, end)) continue;
    if (output.diagnostics.length > 0 && output.value === undefined) continue;
    // An edit inside the braces has outrun the engine: show what is written.
    if (end - start !== output.to - output.from) continue;
    ranges.push(Decoration.replace({ widget: new Live(output) }).range(start, end));
  }
}

/** What the pad reserves at the top and the bottom of the window for its bars when it scrolls to the caret. */
export const scrollRoom = EditorView.scrollMargins.of(() => {
  const bar = Number.parseFloat(document.documentElement.style.getPropertyValue("--bar-height"));
  return { top: (Number.isFinite(bar) ? bar : 0) + 2 * LINE, bottom: 2 * LINE };
});
