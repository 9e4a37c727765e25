// A line of the working on the page: reference, equation and output side by side, the note and the marks below the equation.

import { type EquationRow, equationRows, type Typeset, typesetText, type WorkingBlock } from "../../sheet/index.ts";
import type { Frame } from "./block-slabs.ts";
import { mathsBox } from "./maths-box.ts";
import { INK, type Pen, SOFT, STRONG, type TextStyle } from "./pen.ts";
import type { Node, Part, Slab } from "./slab.ts";
import { drawLines, type Line, textLines } from "./text-lines.ts";

const REFERENCE = 72;
const OUTPUT = 84;
const GUTTER = 9;
const REFERENCE_LEADING = 9.4;
const OUTPUT_LEADING = 12.4;
const NOTE_LEADING = 11.4;
/** A line that takes more of a page than this may end a page in its middle. */
const WHOLE = 0.4;

/** A row of the middle column. */
interface Strip {
  readonly height: number;
  /** From its top. */
  readonly base: number;
  readonly node: Node;
  readonly draw: (pen: Pen, x: number, base: number) => void;
}

/** `follows` another line of the working. */
export function workingSlabs(line: WorkingBlock, frame: Frame, within: readonly Node[], follows: boolean): readonly Slab[] {
  const { ruler } = frame;
  const size = line.depth === 0 ? 10.8 : line.depth === 1 ? 9.4 : 9;
  const shift = Math.min(3, line.depth) * 14;
  const room = frame.width - REFERENCE - OUTPUT - 2 * GUTTER - shift;
  const strips = stripsOf(line, size, room, frame);
  const reference = textLines(line.reference, REFERENCE, { face: "condensed-400", size: 7.4, colour: SOFT }, ruler);
  const output = textLines(
    line.output,
    OUTPUT,
    line.depth === 0 ? { face: "sans-600", size: 9, colour: INK } : { face: "sans-400", size: 8, colour: STRONG },
    ruler,
  );
  const total = strips.reduce((sum, { height }) => sum + height, 0);
  const sides = Math.max(reference.length * REFERENCE_LEADING, output.length * OUTPUT_LEADING);
  const before = line.depth > 0 ? 1.5 : follows ? 4.5 : 8;
  const group: Node = { type: "Div" };
  const left = REFERENCE + GUTTER + shift;
  const middle = (some: readonly Strip[]): readonly Part[] => {
    let top = 0;
    return some.map((strip): Part => {
      const at = top + strip.base;
      top += strip.height;
      return { within: [...within, group, strip.node], draw: (pen, x, y) => strip.draw(pen, x + left, y + at) };
    });
  };
  // The first base line is shared by the three columns.
  const around = sideParts(reference, output, strips[0]?.base ?? 9, frame, [...within, group]);
  const [first, ...rest] = strips;
  if (Math.max(total, sides) <= frame.height * WHOLE || first === undefined || sides > first.height * 3)
    return [{ height: Math.max(total, sides) + 3, before, keep: false, parts: [...around, ...middle(strips)] }];
  const head: Slab = { height: Math.max(first.height, sides), before, keep: true, parts: [...around, ...middle([first])] };
  return [
    head,
    ...rest.map((strip, i): Slab => ({ height: strip.height, before: 0, keep: i === rest.length - 2, parts: middle([strip]) })),
  ];
}

function stripsOf(line: WorkingBlock, size: number, room: number, frame: Frame): readonly Strip[] {
  const { ruler } = frame;
  const measure = (set: Typeset): number => mathsBox(set, size, INK, ruler).width / size;
  const rows = equationRows(line.equation, room / size, measure);
  const formula: Node = { type: "Formula", alt: spoken(rows) };
  const style: TextStyle = { face: "serif-400", size: 8.4, colour: SOFT };
  return [
    ...rows.map((row): Strip => {
      const box = mathsBox(row.of, size, INK, ruler);
      if (row.indent * size + box.width > room + 0.5)
        frame.problem(`A formula is wider than its column: ${typesetText(row.of).trim().slice(0, 80)}`);
      const height = Math.max(size * 1.25, box.up + box.down + 3);
      return {
        height,
        base: (height - box.up - box.down) / 2 + box.up,
        node: formula,
        draw: (pen, x, base) => box.draw(pen, x + row.indent * size, base),
      };
    }),
    ...line.below.flatMap((words) => {
      const node: Node = { type: "P" };
      return textLines(words, room, style, ruler).map(
        ({ box }): Strip => ({ height: NOTE_LEADING, base: 8.2, node, draw: (pen, x, base) => box.draw(pen, x, base) }),
      );
    }),
  ];
}

const spoken = (rows: readonly EquationRow[]): string => rows.map(({ of }) => typesetText(of).trim()).join(" ");

function sideParts(
  reference: readonly Line[],
  output: readonly Line[],
  first: number,
  frame: Frame,
  within: readonly Node[],
): readonly Part[] {
  const parts: Part[] = [];
  if (reference.length > 0)
    parts.push({
      within: [...within, { type: "Note" }],
      draw: (pen, x, y) => drawLines(reference, pen, x, y + first, REFERENCE_LEADING),
    });
  if (output.length > 0)
    parts.push({
      within: [...within, { type: "P" }],
      draw: (pen, x, y) => {
        for (const [i, { box }] of output.entries()) box.draw(pen, x + frame.width - box.width, y + first + i * OUTPUT_LEADING);
      },
    });
  return parts;
}
