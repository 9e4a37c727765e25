// The list of headings with their pages.

import type { Frame } from "./block-slabs.ts";
import { INK, type Pen, RULE, type TextStyle } from "./pen.ts";
import type { Node, Part, Slab } from "./slab.ts";
import { drawLines, textLines } from "./text-lines.ts";

/** Headings with their pages, in two columns read downward. */
export function contents(frame: Frame, within: readonly Node[]): readonly Slab[] {
  const entries = frame.blocks.flatMap((block) => (block.kind === "heading" && block.level < 3 ? [block] : []));
  if (entries.length === 0) return [];
  const style: TextStyle = { face: "sans-400", size: 8.4, colour: INK };
  const node: Node = { type: "TOC" };
  const half = Math.ceil(entries.length / 2);
  const width = (frame.width - 24) / 2;
  const set = entries.map((entry) => {
    const indent = (entry.level - 1) * 12;
    const lead = indent + (entry.level === 1 ? 18 : 24);
    return { entry, indent, lead, lines: textLines([{ kind: "text", text: entry.text }], width - lead - 24, style, frame.ruler) };
  });
  const draw = (pen: Pen, { entry, indent, lead, lines }: (typeof set)[number], x: number, y: number): void => {
    const page = String(pen.pageOf(entry.id) ?? "");
    const pageWidth = frame.ruler.width(page, style);
    pen.text(entry.number, x + indent, y + 9, style);
    drawLines(lines, pen, x + lead, y + 9, 11);
    const last = y + 9 + (lines.length - 1) * 11;
    const [from, to] = [x + lead + (lines[lines.length - 1]?.box.width ?? 0) + 4, x + width - pageWidth - 4];
    if (from < to) pen.line([from, last], [to, last], 0.3, RULE);
    pen.text(page, x + width - pageWidth, last, style);
    pen.goTo(x, y, width, 12 * lines.length, entry.id);
  };
  return Array.from({ length: half }, (_, i): Slab => {
    const pair = [set[i], set[half + i]];
    return {
      height: 1.6 + 11 * Math.max(1, ...pair.map((each) => each?.lines.length ?? 1)),
      before: i === 0 ? 12 : 0,
      keep: i < half - 1,
      parts: pair.flatMap((each, column): readonly Part[] =>
        each === undefined
          ? []
          : [{ within: [...within, node, { type: "TOCI" }], draw: (pen, x, y) => draw(pen, each, x + column * (width + 24), y) }],
      ),
    };
  });
}
