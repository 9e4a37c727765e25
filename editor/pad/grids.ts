// Ledgers, tables and lists of records under the lines that make them: rows of the page's own grid, long ones in a frame that
// scrolls by itself, so that the place they take is known before they are drawn.

import { type EditorState, type Extension, type Range as MarkRange, StateField, type Transaction } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";
import type { Grid, GridRow, LineOutput } from "../../engine/session/index.ts";
import { clearOutputs, outputsField, receiveSnapshot } from "./outputs-field.ts";
import { LINE } from "./theme.ts";

/** Beyond these a frame scrolls. */
const MOST_ROWS = 24;

interface Grids {
  readonly decorations: DecorationSet;
  readonly ids: ReadonlySet<string>;
}

const NOTHING: Grids = { decorations: Decoration.none, ids: new Set() };

const gridsField = StateField.define<Grids>({
  create: () => NOTHING,
  update(before, transaction) {
    if (touched(transaction, before.ids)) return place(transaction.state);
    return transaction.docChanged ? { ...before, decorations: before.decorations.map(transaction.changes) } : before;
  },
  provide: (field) => EditorView.decorations.from(field, ({ decorations }) => decorations),
});

/** Most answers of the engine have nothing to do with tables; those are not looked for then. */
function touched(transaction: Transaction, ids: ReadonlySet<string>): boolean {
  return transaction.effects.some((effect) => {
    if (effect.is(clearOutputs)) return true;
    if (!effect.is(receiveSnapshot)) return false;
    const { changed, removed, order } = effect.value.snapshot;
    if (order !== undefined && (ids.size > 0 || effect.value.whole)) return true;
    return changed.some((output) => isShown(output) || ids.has(output.id)) || removed.some((id) => ids.has(id));
  });
}

/** A csv block shows its data as text already. */
const isShown = (output: LineOutput): boolean => output.grid !== undefined && output.grid.rows.length > 0 && output.kind === "definition";

function place(state: EditorState): Grids {
  const ranges: MarkRange<Decoration>[] = [];
  const ids = new Set<string>();
  for (const cursor = state.field(outputsField).marks.iter(); cursor.value !== null; cursor.next()) {
    const { output } = cursor.value;
    if (output.grid === undefined || !isShown(output) || cursor.from === cursor.to) continue;
    ids.add(output.id);
    const widget = new GridWidget(output.name ?? "table", output.grid);
    ranges.push(Decoration.widget({ widget, block: true, side: 1 }).range(state.doc.lineAt(cursor.to).to));
  }
  return { decorations: Decoration.set(ranges, true), ids };
}

class GridWidget extends WidgetType {
  constructor(
    readonly name: string,
    readonly grid: Grid,
  ) {
    super();
  }

  override eq(other: GridWidget): boolean {
    return other.name === this.name && (other.grid === this.grid || JSON.stringify(other.grid) === JSON.stringify(this.grid));
  }

  override toDOM(): HTMLElement {
    const frame = document.createElement("div");
    frame.className = "jw-grid";
    frame.style.height = `${this.estimatedHeight}px`;
    const scroller = document.createElement("div");
    scroller.className = "jw-grid-frame";
    // What scrolls is reached by keyboard.
    scroller.tabIndex = 0;
    scroller.setAttribute("role", "region");
    scroller.setAttribute("aria-label", `${this.name}, ${this.grid.count} rows`);
    scroller.append(tableOf(this.name, this.grid));
    frame.append(scroller);
    return frame;
  }

  override get estimatedHeight(): number {
    return (Math.min(this.grid.rows.length, MOST_ROWS) + 2 + (this.grid.rows.length < this.grid.count ? 1 : 0)) * LINE;
  }

  override ignoreEvent(): boolean {
    return true;
  }
}

function tableOf(name: string, grid: Grid): HTMLTableElement {
  const table = document.createElement("table");
  table.createCaption().textContent = name;
  const head = table.createTHead().insertRow();
  for (const { head: word, unit, numeric } of grid.columns)
    head.append(headCell(unit === "" ? wordsOf(word) : `${wordsOf(word)} (${unit})`, numeric));
  const marked = grid.rows.some((row) => sourceOf(row) !== "");
  if (marked) head.append(headCell("weakest source", false));
  const body = table.createTBody();
  for (const row of grid.rows) {
    const line = body.insertRow();
    row.cells.forEach((cell, at) => {
      const column = grid.columns[at];
      const place = line.insertCell();
      if (column?.numeric === true) place.className = "jw-grid-number";
      place.title = cell.number === "" ? cell.full : `${cell.full}${cell.unit === "" ? "" : ` ${cell.unit}`}`;
      if (column?.head === "state") place.append(...stateOf(cell.text));
      else place.textContent = cell.text;
    });
    if (marked) {
      const place = line.insertCell();
      place.textContent = sourceOf(row);
      place.title = row.marks?.provenance === undefined ? "" : `from ${row.marks.provenance.from}: ${row.marks.provenance.text}`;
    }
  }
  if (grid.rows.length < grid.count) {
    const rest = body.insertRow().insertCell();
    rest.colSpan = grid.columns.length + (marked ? 1 : 0);
    rest.textContent = `${grid.count - grid.rows.length} more rows`;
  }
  return table;
}

function headCell(words: string, numeric: boolean): HTMLTableCellElement {
  const cell = document.createElement("th");
  cell.scope = "col";
  cell.textContent = words;
  if (numeric) cell.className = "jw-grid-number";
  return cell;
}

const wordsOf = (head: string): string => head.replaceAll("_", " ");

/** Of a row: how well the weakest thing behind it is known, and whether a limit of validity is broken. */
const sourceOf = ({ marks }: GridRow): string =>
  [marks?.outside.length === 0 || marks === undefined ? "" : "◆ outside validity", marks?.provenance?.level ?? ""]
    .filter((word) => word !== "")
    .join(", ");

const SHAPES: Readonly<Record<string, readonly [string, string]>> = {
  holds: ["●", "jw-tone-holds"],
  fails: ["▲", "jw-tone-fails"],
  open: ["◇", "jw-tone-open"],
  "ruled out": ["–", "jw-tone-plain"],
};

function stateOf(word: string): readonly Node[] {
  const [shape, tone] = SHAPES[word] ?? ["", "jw-tone-plain"];
  const sign = document.createElement("span");
  sign.textContent = `${shape} `;
  sign.setAttribute("aria-hidden", "true");
  const state = document.createElement("span");
  state.className = tone;
  state.append(sign, word);
  return [state];
}

const look = EditorView.theme({
  ".jw-grid": {
    boxSizing: "border-box",
    padding: `${LINE / 2}px 16px 0 calc(var(--reference-width) + 16px)`,
    overflow: "hidden",
    // Wider than the working column, it lies over the rule.
    position: "relative",
    zIndex: "3",
  },
  ".jw-grid-frame": { background: "var(--paper)", maxHeight: `${(MOST_ROWS + 1) * LINE}px`, overflow: "auto" },
  ".jw-grid-frame:focus-visible": { outline: "2px solid var(--accent)", outlineOffset: "-2px" },
  ".jw-grid table": { borderCollapse: "collapse", fontFamily: "var(--condensed)", fontSize: "14px", fontVariantNumeric: "tabular-nums" },
  // The line above says the name already; a reader of the table alone hears it.
  ".jw-grid caption": { position: "absolute", width: "1px", height: "1px", overflow: "hidden", clipPath: "inset(50%)" },
  ".jw-grid th, .jw-grid td": {
    height: `${LINE}px`,
    lineHeight: `${LINE - 1}px`,
    boxSizing: "border-box",
    padding: "0 14px 0 0",
    textAlign: "left",
    whiteSpace: "nowrap",
    maxWidth: "340px",
    overflow: "hidden",
    textOverflow: "ellipsis",
    borderBottom: "1px solid var(--rule)",
  },
  ".jw-grid th": {
    position: "sticky",
    top: "0",
    background: "var(--paper)",
    color: "var(--soft)",
    fontWeight: "500",
    borderBottom: "1px solid var(--strong)",
  },
  ".jw-grid .jw-grid-number": { textAlign: "right" },
  ".jw-grid .jw-tone-holds": { color: "var(--holds)", fontWeight: "600" },
  ".jw-grid .jw-tone-fails": { color: "var(--fails)", fontWeight: "600" },
  ".jw-grid .jw-tone-open": { color: "var(--open)", fontWeight: "600" },
  ".jw-grid .jw-tone-plain": { color: "var(--soft)" },
});

export const grids: Extension = [gridsField, look];
