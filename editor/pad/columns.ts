// The reference and the output column: two lists laid over the scroller, each row placed at the height of its statement's line.
// Not gutters: CodeMirror hides gutters from screen readers.

import { BlockType, type EditorView, type PluginValue, ViewPlugin, type ViewUpdate } from "@codemirror/view";
import type { LineOutput } from "../../engine/session/index.ts";
import { drawOutput, drawReference } from "./output-row.ts";
import { outputsField, outputsIn, type PlacedOutput } from "./outputs-field.ts";
import { isFolded } from "./sections.ts";

/** Rows: the first line of a statement carries its output and its citation. */
interface Row {
  readonly placed: PlacedOutput;
  readonly top: number;
  /** Height of the statement's first line, wrapped rows and all. */
  readonly height: number;
}

/** Called when a row of a column is chosen, with the place of the row on the screen. */
export interface ColumnHandlers {
  readonly onChoose: (output: LineOutput, at: DOMRect) => void;
  readonly onCite: (output: LineOutput, at: DOMRect) => void;
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
    this.listen(this.outputs, handlers.onChoose);
    this.listen(this.references, handlers.onCite);
    view.requestMeasure(this.measure);
  }

  private listen(column: HTMLElement, choose: (output: LineOutput, at: DOMRect) => void): void {
    column.addEventListener("click", (event) => {
      const stop = (event.target as Element).closest<HTMLElement>(".jw-stop");
      const row = stop?.closest<HTMLElement>("[role=listitem]");
      const output = row == null ? undefined : this.drawn.get(row);
      if (output !== undefined && stop !== null) choose(output, stop.getBoundingClientRect());
    });
    // One stop of the Tab key; the arrows go from row to row, and inside a row to its control.
    column.addEventListener("keydown", (event) => {
      const from = event.target as HTMLElement;
      const row = from.closest<HTMLElement>("[role=listitem]");
      if (row === null) return;
      if (event.key === "Escape") {
        event.preventDefault();
        this.view.focus();
        return;
      }
      const isSlider = from instanceof HTMLInputElement;
      if ((event.key === "ArrowLeft" || event.key === "ArrowRight") && !isSlider) {
        const stops = [...row.querySelectorAll<HTMLElement>("button, input")];
        const next = stops[stops.indexOf(from) + (event.key === "ArrowRight" ? 1 : -1)];
        if (next !== undefined) event.preventDefault();
        next?.focus();
      }
      if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
      if (isSlider) return;
      const next = event.key === "ArrowDown" ? row.nextElementSibling : row.previousElementSibling;
      if (next === null) return;
      event.preventDefault();
      this.stopAt(column, next.querySelector<HTMLElement>(".jw-stop"), true);
    });
    column.addEventListener("focusin", (event) => {
      const row = (event.target as HTMLElement).closest<HTMLElement>("[role=listitem]");
      this.stopAt(column, row?.querySelector<HTMLElement>(".jw-stop") ?? null, false);
    });
  }

  private stopAt(column: HTMLElement, stop: HTMLElement | null, focus: boolean): void {
    if (stop === null) return;
    for (const other of column.querySelectorAll<HTMLElement>(".jw-stop[tabindex='0']")) if (other !== stop) other.tabIndex = -1;
    stop.tabIndex = 0;
    if (!focus) return;
    stop.focus({ preventScroll: true });
    stop.scrollIntoView({ block: "nearest" });
  }

  /** The row of the output column that belongs to a statement, where it is on the screen. */
  stopOf(id: string): HTMLElement | null {
    return this.outputRows.get(id)?.querySelector<HTMLElement>(".jw-stop") ?? null;
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
      if (!SHOWN_KINDS.has(placed.output.kind) || placed.from < from || isFolded(view.state, placed.from)) continue;
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
        this.row(this.outputRows, output, (element, value) => drawOutput(element, value, view)),
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
    for (const column of [this.references, this.outputs]) {
      if (column.querySelector(".jw-stop[tabindex='0']") === null) this.stopAt(column, column.querySelector(".jw-stop"), false);
    }
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
