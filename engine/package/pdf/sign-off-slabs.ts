// The table to sign in, and the title block of the first page.

import type { Block, Sheet } from "../../sheet/index.ts";
import type { Frame } from "./block-slabs.ts";
import { textBox } from "./box.ts";
import { INK, RULE, SOFT, STRONG, type TextStyle } from "./pen.ts";
import type { Node, Part, Slab } from "./slab.ts";
import { drawLines, textLines } from "./text-lines.ts";

/** A table to sign in: role, name, and two empty boxes. */
export function signatures({ roles }: Extract<Block, { kind: "signatures" }>, frame: Frame, within: readonly Node[]): readonly Slab[] {
  const heads = ["Role", "Name", "Signature", "Date"];
  const shares = [0.18, 0.32, 0.32, 0.18];
  const lefts = shares.map((_, i) => shares.slice(0, i).reduce((sum, share) => sum + share, 0) * frame.width);
  const table: Node = { type: "Table" };
  const label: TextStyle = { face: "condensed-500", size: 7, colour: STRONG };
  const body: TextStyle = { face: "sans-400", size: 9, colour: INK };
  const row = (cells: readonly string[], height: number, style: TextStyle, node: "TH" | "TD", keep: boolean): Slab => {
    const line: Node = { type: "TR" };
    const cut = cells.map((cell, i) =>
      textLines(cell === "" ? [] : [{ kind: "text", text: cell }], (shares[i] ?? 0) * frame.width - 8, style, frame.ruler),
    );
    return {
      height: Math.max(height, ...cut.map((lines) => lines.length * style.size * 1.3 + 6)),
      before: 0,
      keep,
      parts: [
        ...cut.map(
          (lines, i): Part => ({
            within: [...within, table, line, { type: i === 0 ? "TH" : node }],
            draw: (pen, x, y) =>
              drawLines(lines, pen, x + (lefts[i] ?? 0) + 4, y + height - 5 - (lines.length - 1) * style.size * 1.3, style.size * 1.3),
          }),
        ),
        { within: [], draw: (pen, x, y) => pen.line([x, y + height], [x + frame.width, y + height], 0.6, node === "TH" ? INK : RULE) },
      ],
    };
  };
  return [
    row(heads, 15, label, "TH", true),
    ...roles.map(({ role, name }, i) => row([role, name, "", ""], 32, body, "TD", i < roles.length - 1)),
  ];
}

/** Fields of ISO 7200 in two rows of boxes. */
export function titleSlab(sheet: Sheet, frame: Frame, within: readonly Node[]): Slab {
  const { title } = sheet;
  const rows: readonly (readonly (readonly [label: string, value: string, share: number])[])[] = [
    [
      ["TITLE", title.title, 5],
      ["PROJECT", title.project, 3],
      ["NUMBER", title.number, 2],
      ["REV.", title.revision, 1],
      ["STATUS", title.status, 2],
    ],
    [
      ["CREATOR", title.creator, 3],
      ["CHECKER", title.checker, 3],
      ["APPROVAL PERSON", title.approval_person, 3],
      ["OWNER", title.owner, 2],
      ["DATE OF ISSUE", title.date, 2],
    ],
  ];
  const label: TextStyle = { face: "condensed-400", size: 6, colour: SOFT };
  const value: TextStyle = { face: "sans-600", size: 8.8, colour: INK };
  const whole = 13;
  const parts: Part[] = [];
  let top = 0;
  for (const row of rows) {
    const cells = row.map(([name, words, share]) => ({
      name,
      share,
      lines: textLines(words === "" ? [] : [{ kind: "text", text: words }], (frame.width * share) / whole - 10, value, frame.ruler),
    }));
    const height = Math.max(27, ...cells.map(({ lines }) => 15 + lines.length * 11));
    const y0 = top;
    let left = 0;
    cells.forEach(({ name, share, lines }, i) => {
      const x0 = left;
      parts.push({
        within: [...within, { type: "P" }],
        draw: (pen, x, y) => {
          textBox(name, label, frame.ruler).draw(pen, x + x0 + 5, y + y0 + 8.5);
          drawLines(lines, pen, x + x0 + 5, y + y0 + 19.5, 11);
        },
      });
      if (i > 0) parts.push({ within: [], draw: (pen, x, y) => pen.line([x + x0, y + y0], [x + x0, y + y0 + height], 0.5, "#8a92a0") });
      left += (frame.width * share) / whole;
    });
    top += height;
    const bottom = top;
    if (row === rows[0])
      parts.push({ within: [], draw: (pen, x, y) => pen.line([x, y + bottom], [x + frame.width, y + bottom], 0.5, "#8a92a0") });
  }
  const height = top;
  parts.push({ within: [], draw: (pen, x, y) => pen.rectangle(x, y, frame.width, height, { stroke: { width: 1, colour: INK } }) });
  return { height: height + 4, before: 0, keep: false, parts };
}
