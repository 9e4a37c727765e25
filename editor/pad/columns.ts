// The reference and the output column: two lists laid over the scroller, each row placed at the height of its statement's line.
// Not gutters: CodeMirror hides gutters from screen readers.

import { Transaction } from "@codemirror/state";
import { BlockType, type EditorView, type PluginValue, ViewPlugin, type ViewUpdate } from "@codemirror/view";
import type { LineOutput } from "../../engine/session/index.ts";
import { outputWords, referenceWords } from "./output-words.ts";
import { nowAt, outputsField, outputsIn, type PlacedOutput } from "./outputs-field.ts";

/** Rows: the first line of a statement carries its output and its citation. */
interface Row {
  readonly placed: PlacedOutput;
  readonly top: number;
  /** Height of the statement's first line, wrapped rows and all. */
  readonly height: number;
}

/** Called when a row of the output column is chosen. */
export interface ColumnHandlers {
  readonly onChoose: (output: LineOutput) => void;
}

const SHOWN_KINDS = new Set<LineOutput["kind"]>(["definition", "check", "example", "broken", "csv", "use", "formula", "record", "family"]);

export const columns = (handlers: ColumnHandlers) => ViewPlugin.define((view) => new Columns(view, handlers));

class Columns implements PluginValue {
  private readonly references = list("jw-references", "References");
  private readonly outputs = list("jw-outputs", "Outputs");
  private readonly referenceRows = new Map<string, HTMLElement>();
  private readonly outputRows = new Map<string, HTMLElement>();
  private readonly drawn = new WeakMap<HTMLElement, LineOutput>();
  private readonly measure = {
    key: this,
    read: (view: EditorView) => this.read(view),
    write: (rows: readonly Row[], view: EditorView) => this.write(rows, view),
  };

  constructor(
    readonly view: EditorView,
    handlers: ColumnHandlers,
  ) {
    view.scrollDOM.prepend(this.references);
    view.scrollDOM.append(this.outputs);
    this.outputs.addEventListener("click", (event) => {
      const row = (event.target as Element).closest<HTMLElement>(".jw-output");
      const output = row === null ? undefined : this.drawn.get(row);
      if (output !== undefined && !(event.target instanceof HTMLInputElement)) handlers.onChoose(output);
    });
    view.requestMeasure(this.measure);
  }

  update(update: ViewUpdate): void {
    const answered = update.startState.field(outputsField) !== update.state.field(outputsField);
    if (update.geometryChanged || update.viewportChanged || update.docChanged || answered) this.view.requestMeasure(this.measure);
  }

  destroy(): void {
    this.references.remove();
    this.outputs.remove();
  }

  private read(view: EditorView): readonly Row[] {
    const rows: Row[] = [];
    const { from, to } = view.viewport;
    const padding = view.documentPadding.top;
    for (const placed of outputsIn(view.state, from, to)) {
      if (!SHOWN_KINDS.has(placed.output.kind) || placed.from < from) continue;
      const block = view.lineBlockAt(placed.from);
      const text = Array.isArray(block.type) ? (block.type.find((part) => part.type === BlockType.Text) ?? block) : block;
      rows.push({ placed, top: text.top + padding, height: text.height });
    }
    return rows;
  }

  private write(rows: readonly Row[], view: EditorView): void {
    const seen = new Set<string>();
    const cited: HTMLElement[] = [];
    const shown: HTMLElement[] = [];
    const add = (element: HTMLElement | undefined, row: Row, to: HTMLElement[]): void => {
      if (element === undefined) return;
      place(element, row);
      to.push(element);
    };
    for (const row of rows) {
      const { output } = row.placed;
      if (seen.has(output.id)) continue;
      seen.add(output.id);
      add(this.row(this.referenceRows, output, drawReference), row, cited);
      add(
        this.row(this.outputRows, output, (element, value) => drawOutput(element, value, view, value.id)),
        row,
        shown,
      );
    }
    for (const rowsOf of [this.referenceRows, this.outputRows]) {
      for (const [id, element] of rowsOf) {
        if (seen.has(id)) continue;
        element.remove();
        rowsOf.delete(id);
      }
    }
    inOrder(this.references, cited);
    inOrder(this.outputs, shown);
  }

  /** The row's element, drawn again only when what it says changed; undefined and gone when it says nothing. */
  private row(
    rows: Map<string, HTMLElement>,
    output: LineOutput,
    draw: (element: HTMLElement, output: LineOutput) => boolean,
  ): HTMLElement | undefined {
    const { id } = output;
    const known = rows.get(id);
    if (known !== undefined && this.drawn.get(known) === output) return known;
    const element = known ?? item();
    if (!draw(element, output)) {
      known?.remove();
      rows.delete(id);
      return undefined;
    }
    this.drawn.set(element, output);
    rows.set(id, element);
    return element;
  }
}

function list(className: string, label: string): HTMLElement {
  const element = document.createElement("div");
  element.className = className;
  element.setAttribute("role", "list");
  element.setAttribute("aria-label", label);
  return element;
}

function item(): HTMLElement {
  const element = document.createElement("div");
  element.setAttribute("role", "listitem");
  return element;
}

/** Puts the rows in the order of the text, as screen readers read them, and touches only those that are not in their place. */
function inOrder(parent: HTMLElement, rows: readonly HTMLElement[]): void {
  let next = parent.firstElementChild;
  for (const row of rows) {
    if (row === next) next = next.nextElementSibling;
    else parent.insertBefore(row, next);
  }
}

function place(element: HTMLElement, row: Row): void {
  const top = `${row.top}px`;
  const height = `${row.height}px`;
  if (element.style.top !== top) element.style.top = top;
  if (element.style.getPropertyValue("--line-height") !== height) element.style.setProperty("--line-height", height);
}

function span(className: string, text: string): HTMLElement {
  const element = document.createElement("span");
  element.className = className;
  element.textContent = text;
  return element;
}

/** For screen readers: the whole sentence; for the eye: the short row, hidden from them. */
function said(element: HTMLElement, sentence: string, parts: readonly HTMLElement[]): void {
  const seen = document.createElement("span");
  seen.className = "jw-seen";
  seen.setAttribute("aria-hidden", "true");
  seen.replaceChildren(...parts);
  element.title = sentence;
  element.replaceChildren(span("jw-spoken", sentence), seen);
}

function drawReference(element: HTMLElement, output: LineOutput): boolean {
  const words = referenceWords(output);
  if (words === undefined) return false;
  element.className = words.doubtful ? "jw-reference jw-doubtful" : "jw-reference";
  said(element, words.sentence, [span("", words.text)]);
  return true;
}

function drawOutput(element: HTMLElement, output: LineOutput, view: EditorView, id: string): boolean {
  const words = outputWords(output);
  if (words === undefined) return false;
  element.className = `jw-output jw-${words.tone}`;
  const parts: HTMLElement[] = [];
  if (words.bar !== undefined) {
    const bar = span(words.bar.over ? "jw-bar jw-over" : "jw-bar", "");
    const fill = span("jw-fill", "");
    fill.style.width = `${(words.bar.filled * 100).toFixed(1)}%`;
    bar.append(fill);
    parts.push(bar);
  }
  if (words.shape !== "") parts.push(span("jw-shape", words.shape));
  if (words.word !== "") parts.push(span("jw-word", words.word));
  if (words.number !== "") parts.push(span("jw-number", words.number));
  if (words.unit !== "") parts.push(span("jw-unit", words.unit));
  const full = output.value?.full;
  const sentence = full === undefined || full === words.number || full === "" ? words.sentence : `${words.sentence} (${full})`;
  const old = element.querySelector<HTMLInputElement>("input.jw-slider");
  said(element, sentence, parts);
  if (output.control !== undefined && words.tone === "plain") {
    const control = old ?? slider(view, id);
    setSlider(control, output);
    element.append(control);
  }
  return true;
}

/** A control for an input with bounds; it edits the number in the text, which stays the only truth. */
function slider(view: EditorView, id: string): HTMLInputElement {
  const input = document.createElement("input");
  input.type = "range";
  input.className = "jw-slider";
  input.addEventListener("input", () => {
    const placed = findOutput(view, id);
    const control = placed?.output.control;
    if (placed === undefined || control === undefined) return;
    const [from, to] = [nowAt(placed, control.from), nowAt(placed, control.to)];
    const written = view.state.sliceDoc(from, to);
    // Between two answers of the engine the number's place is not known; the next event finds it.
    if (!/^[−-]?[\d._]+(e[+-]?\d+)?$/i.test(written)) return;
    const text = decimal(Number(input.value), stepOf(control));
    if (text === written) return;
    const userEvent = Transaction.userEvent.of("input.slide");
    view.dispatch({ changes: { from, to, insert: text }, annotations: userEvent });
  });
  return input;
}

function setSlider(input: HTMLInputElement, output: LineOutput): void {
  const { control } = output;
  if (control === undefined) return;
  input.min = String(control.low);
  input.max = String(control.high);
  input.step = String(stepOf(control));
  // A drag in hand keeps its own place: an answer to an earlier one must not pull it back.
  if (!input.matches(":active")) input.value = String(control.value);
  input.setAttribute("aria-label", `${output.name ?? "value"} in ${control.unit}, ${control.low} to ${control.high}`);
}

function findOutput(view: EditorView, id: string): PlacedOutput | undefined {
  return outputsIn(view.state, view.viewport.from, view.viewport.to).find((placed) => placed.output.id === id);
}

/** A round step: about fifty to two hundred of them between the bounds. */
export function stepOf(control: { readonly low: number; readonly high: number }): number {
  const span = control.high - control.low;
  if (!(0 < span && span < Infinity)) return 1;
  const power = 10 ** Math.floor(Math.log10(span / 50));
  const ratio = span / 50 / power;
  return power * (ratio < 2 ? 1 : ratio < 5 ? 2 : 5);
}

/** As short as the step allows, without the tail of binary fractions. */
function decimal(value: number, step: number): string {
  const digits = Math.max(0, Math.ceil(-Math.log10(step)));
  return String(Number(value.toFixed(Math.min(12, digits))));
}
