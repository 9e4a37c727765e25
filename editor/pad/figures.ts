// Figures under the lines that make them: blocks of whole rows of the grid, so that nothing jumps when they come or are resized.

import { type EditorState, type Extension, type Range as MarkRange, StateEffect, StateField, type Transaction } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView, WidgetType } from "@codemirror/view";
import { darkPalette, lightPalette, type Painter, roles, type Scene, svgElements } from "../../engine/figure/index.ts";
import { clearOutputs, outputsField, receiveSnapshot } from "./outputs-field.ts";
import { LINE } from "./theme.ts";

const MOST_ROWS_AT_FIRST = 27;
const LEAST_ROWS = 5;
const MOST_ROWS = 60;
const SVG = "http://www.w3.org/2000/svg";

/** Gives the figure of a statement another height, in rows. */
const resize = StateEffect.define<{ readonly id: string; readonly rows: number }>();

interface Figures {
  readonly decorations: DecorationSet;
  /** Statements that have a figure on the page. */
  readonly ids: ReadonlySet<string>;
  /** Heights that the user chose; they go with the view, not into the text. */
  readonly rows: ReadonlyMap<string, number>;
}

const NOTHING: Figures = { decorations: Decoration.none, ids: new Set(), rows: new Map() };

const figuresField = StateField.define<Figures>({
  create: () => NOTHING,
  update(before, transaction) {
    let { rows } = before;
    for (const effect of transaction.effects) {
      if (effect.is(clearOutputs)) rows = NOTHING.rows;
      if (effect.is(resize)) rows = new Map(rows).set(effect.value.id, effect.value.rows);
    }
    if (rows !== before.rows || touched(transaction, before.ids)) return place(transaction.state, rows);
    return transaction.docChanged ? { ...before, decorations: before.decorations.map(transaction.changes) } : before;
  },
  provide: (field) => EditorView.decorations.from(field, ({ decorations }) => decorations),
});

/** Most answers of the engine have nothing to do with figures; those are not looked for then. */
function touched(transaction: Transaction, ids: ReadonlySet<string>): boolean {
  return transaction.effects.some((effect) => {
    if (effect.is(clearOutputs)) return true;
    if (!effect.is(receiveSnapshot)) return false;
    const { changed, removed, order } = effect.value.snapshot;
    if (order !== undefined && (ids.size > 0 || effect.value.whole)) return true;
    return changed.some((output) => output.figure !== undefined || ids.has(output.id)) || removed.some((id) => ids.has(id));
  });
}

function place(state: EditorState, rows: ReadonlyMap<string, number>): Figures {
  const ranges: MarkRange<Decoration>[] = [];
  const ids = new Set<string>();
  for (const cursor = state.field(outputsField).marks.iter(); cursor.value !== null; cursor.next()) {
    const { output } = cursor.value;
    if (output.figure === undefined || cursor.from === cursor.to) continue;
    ids.add(output.id);
    const widget = new Figure(output.id, output.name ?? "figure", output.figure, rows.get(output.id) ?? rowsOf(output.figure));
    ranges.push(Decoration.widget({ widget, block: true, side: 2 }).range(state.doc.lineAt(cursor.to).to));
  }
  return { decorations: Decoration.set(ranges, true), ids, rows };
}

const rowsOf = (scene: Scene): number => Math.max(LEAST_ROWS, Math.min(MOST_ROWS_AT_FIRST, Math.ceil(scene.height / LINE)));

class Figure extends WidgetType {
  constructor(
    readonly id: string,
    readonly name: string,
    readonly scene: Scene,
    readonly rows: number,
  ) {
    super();
  }

  override eq(other: Figure): boolean {
    return other.scene === this.scene && other.rows === this.rows && other.id === this.id;
  }

  override toDOM(view: EditorView): HTMLElement {
    const element = document.createElement("div");
    element.append(document.createElement("div"), caption(), handle(view));
    this.fill(element);
    return element;
  }

  /** The same place on the page: the handle keeps its focus while its figure follows the numbers. */
  override updateDOM(element: HTMLElement, _view: EditorView, from: WidgetType): boolean {
    if (!(from instanceof Figure) || from.id !== this.id) return false;
    this.fill(element, from);
    return true;
  }

  private fill(element: HTMLElement, before?: Figure): void {
    const [picture, words, grip] = element.children as unknown as [HTMLElement, HTMLElement, HTMLElement];
    element.className = "jw-figure";
    element.dataset.figure = this.id;
    element.dataset.rows = String(this.rows);
    element.style.height = `${this.height()}px`;
    picture.className = "jw-figure-picture";
    picture.style.height = `${this.rows * LINE}px`;
    if (before?.scene !== this.scene) picture.replaceChildren(drawing(this.scene));
    words.textContent = this.scene.caption;
    words.hidden = this.scene.caption === "";
    grip.setAttribute("aria-label", `Height of the figure ${this.name}, in rows`);
    grip.setAttribute("aria-valuenow", String(this.rows));
  }

  private height(): number {
    return (this.rows + (this.scene.caption === "" ? 1 : 2)) * LINE;
  }

  override get estimatedHeight(): number {
    return this.height();
  }

  override ignoreEvent(): boolean {
    return true;
  }
}

function caption(): HTMLElement {
  const element = document.createElement("div");
  element.className = "jw-figure-caption";
  return element;
}

const painter: Painter = (role, what) => ({ class: `jw-${what}-${role}` });

function drawing(scene: Scene): SVGElement {
  const svg = document.createElementNS(SVG, "svg");
  const set = (name: string, value: string): void => svg.setAttribute(name, value);
  set("viewBox", `0 0 ${scene.width} ${scene.height}`);
  set("preserveAspectRatio", "xMinYMin meet");
  set("role", "img");
  set("aria-label", scene.alternative);
  set("stroke-linejoin", "round");
  // Never larger than it was drawn: lines and letters keep the weight they have in the text.
  svg.style.maxWidth = `${scene.width}px`;
  for (const { name, attributes, text } of svgElements(scene, painter)) {
    const element = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    if (text !== undefined) element.textContent = text;
    svg.append(element);
  }
  return svg;
}

/** Makes a figure taller or lower: dragged, or with the arrow keys. Below it everything moves, above nothing does. */
function handle(view: EditorView): HTMLElement {
  const grip = document.createElement("div");
  grip.className = "jw-figure-grip";
  grip.tabIndex = 0;
  grip.title = "Drag, or press the up and down arrows, to resize the figure";
  for (const [name, value] of [
    ["role", "separator"],
    ["aria-orientation", "horizontal"],
    ["aria-valuemin", String(LEAST_ROWS)],
    ["aria-valuemax", String(MOST_ROWS)],
  ] as const) {
    grip.setAttribute(name, value);
  }
  const own = (): { readonly id: string; readonly rows: number } => {
    const { figure, rows } = (grip.parentElement as HTMLElement).dataset;
    return { id: figure ?? "", rows: Number(rows) };
  };
  const set = (wanted: number): void => {
    const { id, rows } = own();
    const next = Math.max(LEAST_ROWS, Math.min(MOST_ROWS, Math.round(wanted)));
    if (next !== rows) view.dispatch({ effects: resize.of({ id, rows: next }) });
  };
  grip.addEventListener("keydown", (event) => {
    const step = STEPS[event.key];
    if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    set(own().rows + step);
  });
  grip.addEventListener("pointerdown", (down) => {
    down.preventDefault();
    grip.focus();
    grip.setPointerCapture(down.pointerId);
    const start = own().rows;
    const move = (event: PointerEvent): void => set(start + (event.clientY - down.clientY) / LINE);
    grip.addEventListener("pointermove", move);
    grip.addEventListener("lostpointercapture", () => grip.removeEventListener("pointermove", move), { once: true });
  });
  return grip;
}

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1, PageDown: 5, PageUp: -5 };

const colours = Object.fromEntries(
  roles.flatMap((role) => {
    // The page says which scheme it is in; both palettes are the engine's own, so page, sheet and print agree.
    const colour = `light-dark(${lightPalette[role]}, ${darkPalette[role]})`;
    return [
      [`.jw-stroke-${role}`, { stroke: colour }],
      [`.jw-fill-${role}`, { fill: colour }],
    ];
  }),
);

const look = EditorView.theme({
  ".jw-figure": {
    position: "relative",
    boxSizing: "border-box",
    paddingLeft: "calc(var(--reference-width) + 16px)",
    paddingRight: "calc(var(--output-width) + 16px)",
    paddingTop: `${LINE / 2}px`,
    overflow: "hidden",
  },
  ".jw-figure-picture": { overflow: "hidden" },
  ".jw-figure-picture svg": { display: "block", width: "100%", height: "100%", fontFamily: "var(--sans)" },
  ".jw-figure-caption": {
    height: `${LINE}px`,
    lineHeight: `${LINE}px`,
    overflow: "hidden",
    textOverflow: "ellipsis",
    whiteSpace: "nowrap",
    fontFamily: "var(--serif)",
    fontStyle: "italic",
    fontSize: "14px",
    color: "var(--soft)",
  },
  ".jw-figure-grip": {
    position: "absolute",
    left: "calc(var(--reference-width) + 16px)",
    right: "calc(var(--output-width) + 16px)",
    bottom: "0",
    height: "12px",
    cursor: "ns-resize",
    touchAction: "none",
  },
  ".jw-figure-grip::after": {
    content: "''",
    position: "absolute",
    left: "calc(50% - 18px)",
    width: "36px",
    top: "5px",
    borderTop: "2px solid transparent",
  },
  ".jw-figure:hover .jw-figure-grip::after, .jw-figure-grip:focus-visible::after": { borderTopColor: "var(--faint)" },
  ".jw-figure-grip:focus-visible": { outline: "2px solid var(--accent)", outlineOffset: "-2px" },
  ...colours,
});

export const figures: Extension = [figuresField, look];
