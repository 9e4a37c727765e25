// Blocks of the sheet as slabs of a page's width.

import type { Block } from "../../sheet/index.ts";
import { contents } from "./contents-slabs.ts";
import { drawScene, sceneSize } from "./draw-scene.ts";
import { INK, OPEN, RULE, type Ruler, SOFT, type TextStyle } from "./pen.ts";
import { signatures } from "./sign-off-slabs.ts";
import type { Node, Part, Slab } from "./slab.ts";
import { tableSlabs } from "./table-slabs.ts";
import { drawLines, type Line, textLines } from "./text-lines.ts";
import { workingSlabs } from "./working-slabs.ts";

export interface Frame {
  readonly ruler: Ruler;
  readonly width: number;
  /** Height of a page's body. */
  readonly height: number;
  readonly blocks: readonly Block[];
  /** Hears what does not fit. */
  readonly problem: (what: string) => void;
}

const BODY: TextStyle = { face: "serif-400", size: 10, colour: INK };
const LEADING = 1.42;
const HEADS: Readonly<Record<1 | 2 | 3, { readonly size: number; readonly before: number; readonly behind: number }>> = {
  1: { size: 13, before: 18, behind: 6 },
  2: { size: 11, before: 13, behind: 5 },
  3: { size: 10, before: 10, behind: 4 },
};

/** `within` are the elements that the blocks stand in. */
export function blockSlabs(blocks: readonly Block[], frame: Frame, within: readonly Node[], indent = 0): readonly Slab[] {
  return blocks.flatMap((block, i) => slabsOf(block, frame, within, indent, blocks[i - 1]));
}

function slabsOf(block: Block, frame: Frame, within: readonly Node[], indent: number, previous: Block | undefined): readonly Slab[] {
  switch (block.kind) {
    case "heading":
      return [heading(block, frame, within)];
    case "paragraph":
      return lineSlabs(
        textLines(block.of, frame.width - indent, BODY, frame.ruler),
        BODY.size * LEADING,
        6,
        [...within, { type: "P" }],
        indent,
      );
    case "list":
      return list(block, frame, within, indent);
    case "quote": {
      const inner = blockSlabs(block.of, frame, [...within, { type: "BlockQuote" }], indent + 14);
      return inner.map((slab) => ({ ...slab, parts: [...slab.parts, rule(indent + 4, slab.height)] }));
    }
    case "code":
      return code(block.text, frame, within, indent);
    case "rule":
      return [
        {
          height: 1,
          before: 8,
          keep: false,
          parts: [{ within: [], draw: (pen, x, y) => pen.line([x, y], [x + frame.width, y], 0.6, RULE) }],
        },
      ];
    case "table":
      return tableSlabs(block, frame, within);
    case "working":
      return workingSlabs(block, frame, within, previous?.kind === "working");
    case "figure":
      return figure(block, frame, within);
    case "caution":
      return [caution(block, frame, within)];
    case "signatures":
      return signatures(block, frame, within);
    case "contents":
      return contents(frame, within);
  }
}

const rule = (left: number, height: number): Part => ({
  within: [],
  draw: (pen, x, y) => pen.line([x + left, y], [x + left, y + height], 1.2, RULE),
});

/** One slab a line; the first two and the last two stay together. */
export function lineSlabs(
  lines: readonly Line[],
  leading: number,
  before: number,
  within: readonly Node[],
  indent = 0,
  keepLast = false,
): readonly Slab[] {
  return lines.map(({ box }, i): Slab => {
    const height = Math.max(leading, box.up + box.down + 2);
    const keep = (i === 0 && lines.length > 1) || i === lines.length - 2 || (keepLast && i === lines.length - 1);
    const base = (height - box.up - box.down) / 2 + box.up;
    return { height, before: i === 0 ? before : 0, keep, parts: [{ within, draw: (pen, x, y) => box.draw(pen, x + indent, y + base) }] };
  });
}

function heading({ level, number, text, id }: Extract<Block, { kind: "heading" }>, frame: Frame, within: readonly Node[]): Slab {
  const { size, before, behind } = HEADS[level];
  const style: TextStyle = { face: "serif-600", size, colour: INK };
  const lead = number === "" ? 0 : frame.ruler.width(`${number}  `, style) + 2;
  const lines = textLines([{ kind: "text", text }], frame.width - lead, style, frame.ruler);
  const leading = size * 1.3;
  const node: Node = { type: `H${level}` };
  return {
    height: lines.length * leading + behind,
    before,
    keep: true,
    heading: { id, level, title: number === "" ? text : `${number} ${text}` },
    parts: [
      {
        within: [...within, node],
        draw: (pen, x, y) => {
          if (number !== "") pen.text(number, x, y + size, style);
          drawLines(lines, pen, x + lead, y + size, leading);
        },
      },
    ],
  };
}

function list(
  { ordered, start, items }: Extract<Block, { kind: "list" }>,
  frame: Frame,
  within: readonly Node[],
  indent: number,
): readonly Slab[] {
  const node: Node = { type: "L" };
  return items.flatMap((item, i) => {
    const entry: Node = { type: "LI" };
    const label = ordered ? `${start + i}.` : "•";
    const inner = blockSlabs(item, frame, [...within, node, entry, { type: "LBody" }], indent + 16);
    return inner.map((slab, at): Slab => {
      if (at > 0) return slab;
      const mark: Part = {
        within: [...within, node, entry, { type: "Lbl" }],
        draw: (pen, x, y) => pen.text(label, x + indent + 2, y + BODY.size * 1.07, BODY),
      };
      return { ...slab, before: i === 0 ? 4 : 2, parts: [mark, ...slab.parts] };
    });
  });
}

function code(text: string, frame: Frame, within: readonly Node[], indent: number): readonly Slab[] {
  const style: TextStyle = { face: "mono-400", size: 8, colour: INK };
  const node: Node = { type: "Code" };
  const lines = text.split("\n").flatMap((line) => {
    const kept = line.replaceAll("\t", "    ").replaceAll(" ", "\u00a0");
    return textLines([{ kind: "text", text: kept === "" ? "\u00a0" : kept }], frame.width - indent - 12, style, frame.ruler);
  });
  return lines.map(
    ({ box }, i): Slab => ({
      height: 11.5,
      before: i === 0 ? 6 : 0,
      keep: i === 0 && lines.length > 1,
      parts: [
        { within: [], draw: (pen, x, y) => pen.rectangle(x + indent, y, frame.width - indent, 11.6, { fill: "#f5f4ef" }) },
        { within: [...within, node], draw: (pen, x, y) => box.draw(pen, x + indent + 6, y + 8.6) },
      ],
    }),
  );
}

function figure({ number, scene, caption }: Extract<Block, { kind: "figure" }>, frame: Frame, within: readonly Node[]): readonly Slab[] {
  const node: Node = { type: "Figure", alt: scene.alternative };
  const captions = textLines(
    [
      { kind: "strong", of: [{ kind: "text", text: `Figure ${number}. ` }] },
      { kind: "text", text: caption },
    ],
    frame.width,
    { face: "sans-400", size: 8.4, colour: SOFT },
    frame.ruler,
  );
  const most = frame.height - captions.length * 12 - 20;
  const { height, scale } = sceneSize(scene, frame.width, most);
  return [
    {
      height: height + 4,
      before: 8,
      keep: true,
      parts: [{ within: [...within, node], draw: (pen, x, y) => drawScene(pen, scene, x, y, scale) }],
    },
    ...lineSlabs(captions, 12, 2, [...within, node, { type: "Caption" }]).map((slab, i, all) => ({ ...slab, keep: i < all.length - 1 })),
  ];
}

function caution({ title, of }: Extract<Block, { kind: "caution" }>, frame: Frame, within: readonly Node[]): Slab {
  const style: TextStyle = { face: "sans-400", size: 8.2, colour: INK };
  const lead: TextStyle = { face: "sans-600", size: 8.2, colour: OPEN };
  const shift = frame.ruler.width(`${title}. `, lead);
  // The title stands in its own colour before the first line, for which a gap of its width is left.
  const gap = "\u2007".repeat(Math.ceil(shift / frame.ruler.width("\u2007", style)));
  const lines = textLines([{ kind: "text", text: gap }, ...of], frame.width - 16, style, frame.ruler);
  const height = lines.length * 11.6 + 9;
  return {
    height: height + 2,
    before: 8,
    keep: false,
    parts: [
      { within: [], draw: (pen, x, y) => pen.rectangle(x, y, frame.width, height, { stroke: { width: 0.8, colour: OPEN } }) },
      {
        within: [...within, { type: "P" }],
        draw: (pen, x, y) => {
          pen.text(`${title}. `, x + 8, y + 12.4, lead);
          drawLines(lines, pen, x + 8, y + 12.4, 11.6);
        },
      },
    ],
  };
}
