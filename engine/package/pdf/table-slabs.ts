// Tables as slabs: columns fitted to what they hold, a head that comes again on every page, too many columns set as several tables.

import { type Cell, type Column, plainText, type TableBlock } from "../../sheet/index.ts";
import type { Frame } from "./block-slabs.ts";
import { INK, RULE, type Ruler, SOFT, STRONG, type TextStyle } from "./pen.ts";
import type { Node, Part, Slab } from "./slab.ts";
import { type Line, leastWidth, textLines, wholeWidth } from "./text-lines.ts";

const PAD = 3;
/** Sizes that are tried, the largest first. */
const SIZES = [7.8, 7.2, 6.6] as const;
const DENSE = 6.4;
/** Widest that a word asks for; longer ones (digests, formulas as text) are broken. */
const LONGEST_WORD = 86;
/** A row with more lines goes over several slabs, so that a page can end inside it. */
const ROW_LINES = 36;
const LEADING = 1.38;

interface Fit {
  readonly size: number;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly widths: readonly number[];
  /** What is said of a part of a table: "columns 1 and 6 to 9 of 9". */
  readonly part: string;
}

export function tableSlabs(block: TableBlock, frame: Frame, within: readonly Node[]): readonly Slab[] {
  if (block.columns.length === 0) return [];
  return fitted(block, frame.width, frame.ruler).flatMap((fit) => oneTable(block, fit, frame, within));
}

const bodyStyle = (size: number): TextStyle => ({ face: "sans-400", size, colour: INK });
const headStyle = (size: number): TextStyle => ({ face: "condensed-500", size: Math.max(6, size * 0.88), colour: STRONG });

/** One table where its columns fit at one of the sizes; else several, each led by the first column. */
function fitted(block: TableBlock, width: number, ruler: Ruler): readonly Fit[] {
  for (const size of block.dense === true ? [DENSE] : SIZES) {
    const widths = columnWidths(block.columns, block.rows, width, size, ruler);
    if (widths !== undefined) return [{ size, columns: block.columns, rows: block.rows, widths, part: "" }];
  }
  const size = SIZES[SIZES.length - 1] ?? 6.6;
  const least = leastWidths(block.columns, block.rows, size, ruler);
  const groups: number[][] = [];
  let group: number[] = [];
  let used = least[0] ?? 0;
  for (let i = 1; i < block.columns.length; i += 1) {
    const own = least[i] ?? 0;
    if (group.length > 0 && used + own > width) {
      groups.push(group);
      group = [];
      used = least[0] ?? 0;
    }
    group.push(i);
    used += own;
  }
  groups.push(group);
  return groups.map((places): Fit => {
    const kept = [0, ...places];
    const columns = kept.flatMap((i) => block.columns[i] ?? []);
    const rows = block.rows.map((row) => kept.map((i) => row[i] ?? []));
    const widths = columnWidths(columns, rows, width, size, ruler) ?? columns.map(() => width / columns.length);
    const [first = 0, last = 0] = [places[0], places[places.length - 1]];
    const range = first === last ? `${first + 1}` : `${first + 1} to ${last + 1}`;
    return { size, columns, rows, widths, part: ` (columns 1 and ${range} of ${block.columns.length})` };
  });
}

function leastWidths(columns: readonly Column[], rows: readonly (readonly Cell[])[], size: number, ruler: Ruler): readonly number[] {
  return columns.map(({ head }, i) => {
    const body = rows.reduce((most, row) => Math.max(most, leastWidth(row[i] ?? [], bodyStyle(size), ruler, LONGEST_WORD)), 0);
    return Math.max(body, leastWidth(upper(head), headStyle(size), ruler, LONGEST_WORD)) + 2 * PAD;
  });
}

/** Each as wide as its longest word at least; what is left over goes to those that want more, by their shares. Undefined where they do not fit. */
function columnWidths(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  width: number,
  size: number,
  ruler: Ruler,
): readonly number[] | undefined {
  const least = leastWidths(columns, rows, size, ruler);
  const spare = width - least.reduce((sum, each) => sum + each, 0);
  if (spare < -0.01) return undefined;
  const wanted = columns.map(({ head }, i) => {
    const body = rows.reduce((most, row) => Math.max(most, wholeWidth(row[i] ?? [], bodyStyle(size), ruler)), 0);
    return Math.max(least[i] ?? 0, Math.min(width, Math.max(body, wholeWidth(upper(head), headStyle(size), ruler)) + 2 * PAD));
  });
  const lack = wanted.map((each, i) => Math.max(0, each - (least[i] ?? 0)));
  const total = lack.reduce((sum, each) => sum + each, 0);
  if (total <= spare) {
    const share = columns.reduce((sum, column) => sum + column.share, 0);
    return wanted.map((each, i) => each + ((spare - total) * (columns[i]?.share ?? 1)) / share);
  }
  // Short of room: mostly by what each lacks, so that columns come out about equally tall.
  const weights = lack.map((each) => each ** 0.85);
  const out = least.map(() => 0);
  let left = spare;
  let open = weights.map((_, i) => i).filter((i) => (weights[i] ?? 0) > 0);
  while (open.length > 0 && left > 0.01) {
    const sum = open.reduce((all, i) => all + (weights[i] ?? 0), 0);
    const full = open.filter((i) => (lack[i] ?? 0) - (out[i] ?? 0) <= (left * (weights[i] ?? 0)) / sum);
    if (full.length === 0) {
      for (const i of open) out[i] = (out[i] ?? 0) + (left * (weights[i] ?? 0)) / sum;
      break;
    }
    for (const i of full) {
      left -= (lack[i] ?? 0) - (out[i] ?? 0);
      out[i] = lack[i] ?? 0;
    }
    open = open.filter((i) => !full.includes(i));
  }
  return least.map((each, i) => each + (out[i] ?? 0));
}

/** Heads stand in capitals, formulas in them stay. */
const upper = (cell: Cell): Cell =>
  cell.map((inline, i) => (inline.kind === "text" && i === 0 ? { ...inline, text: inline.text.toUpperCase() } : inline));

function oneTable(block: TableBlock, fit: Fit, frame: Frame, within: readonly Node[]): readonly Slab[] {
  const { columns, rows, widths, size } = fit;
  const table: Node = { type: "Table" };
  const inside = [...within, table];
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, each) => sum + each, 0));
  const slabs: Slab[] = [];
  const words = block.caption + fit.part;
  if (words !== "") {
    const node: Node = { type: "Caption" };
    const style: TextStyle = { face: "sans-400", size: 7.8, colour: SOFT };
    const lines = textLines([{ kind: "text", text: words }], frame.width, style, frame.ruler);
    slabs.push(
      ...lines.map(
        ({ box }, i): Slab => ({
          height: 10.6,
          before: i === 0 ? 8 : 0,
          keep: true,
          parts: [{ within: [...inside, node], draw: (pen, x, y) => box.draw(pen, x, y + 8) }],
        }),
      ),
    );
  }
  const head = rowSlab(
    columns.map(({ head: cell }) => upper(cell)),
    "TH",
    slabs.length === 0 ? 8 : 0,
  );
  const lines = rows.flatMap((row) => bodyRows(row));
  slabs.push({ ...head, keep: lines.length > 0 });
  // The head is never drawn again for readers by ear: it is the same head.
  const again: Slab = { ...head, parts: head.parts.map((part) => ({ ...part, within: [] })) };
  lines.forEach((slab, i) => {
    slabs.push({ ...slab, keep: slab.keep || (i === 0 && lines.length > 1) || i === lines.length - 2, repeat: again });
  });
  return slabs;

  function cut(cell: Cell, i: number, style: TextStyle): readonly Line[] {
    const room = (widths[i] ?? 0) - 2 * PAD;
    const found = textLines(cell, room, style, frame.ruler);
    for (const { box } of found)
      if (box.width > room + 0.5) frame.problem(`A table cell is wider than its column: ${plainText(cell).slice(0, 80)}`);
    return found;
  }

  function rowSlab(cells: readonly Cell[], type: "TH" | "TD", before: number): Slab {
    const style = headStyle(size);
    return slabOf(
      cells.map((cell, i) => cut(cell, i, style)),
      style,
      type,
      { type: "TR" },
      cells.map(() => ({ type })),
      before,
      true,
    );
  }

  function bodyRows(cells: readonly Cell[]): readonly Slab[] {
    const style = bodyStyle(size);
    const all = cells.map((cell, i) => cut(cell, i, style));
    const count = Math.max(1, ...all.map((found) => found.length));
    const row: Node = { type: "TR" };
    const nodes = cells.map((): Node => ({ type: "TD" }));
    const out: Slab[] = [];
    for (let from = 0; from < count; from += ROW_LINES) {
      const last = from + ROW_LINES >= count;
      out.push(
        slabOf(
          all.map((found) => found.slice(from, from + ROW_LINES)),
          style,
          "TD",
          row,
          nodes,
          0,
          last,
        ),
      );
    }
    return out;
  }

  function slabOf(
    cells: readonly (readonly Line[])[],
    style: TextStyle,
    type: "TH" | "TD",
    row: Node,
    nodes: readonly Node[],
    before: number,
    ruled: boolean,
  ): Slab {
    const leading = style.size * LEADING;
    const [above, below] = type === "TD" && block.dense === true ? [1, 1] : [2.6, 2.4];
    // Lines with a formula are taller than their leading.
    const stacks = cells.map((found) => {
      let top = type === "TH" ? 2 : above;
      const placed = found.map(({ box }) => {
        const height = Math.max(leading, box.up + box.down + 1.5);
        const base = top + (height - box.up - box.down) / 2 + box.up;
        top += height;
        return { box, base };
      });
      return { placed, bottom: top };
    });
    const height = Math.max(...stacks.map(({ bottom }) => bottom)) + below;
    const parts = stacks.map(({ placed, bottom }, i): Part => {
      const drop = type === "TH" ? height - below - bottom : 0;
      return {
        within: [...inside, row, nodes[i] as Node],
        draw: (pen, x, y) => {
          for (const { box, base } of placed) {
            const left = columns[i]?.align === "right" ? (lefts[i] ?? 0) + (widths[i] ?? 0) - PAD - box.width : (lefts[i] ?? 0) + PAD;
            box.draw(pen, x + left, y + base + drop);
          }
        },
      };
    });
    const line: Part = {
      within: [],
      draw: (pen, x, y) => pen.line([x, y + height], [x + frame.width, y + height], type === "TH" ? 0.8 : 0.5, type === "TH" ? INK : RULE),
    };
    return { height, before, keep: false, parts: ruled ? [...parts, line] : parts };
  }
}
