// Tables with more columns than a page holds, as several that are each led by the first column.

import { textWidth } from "../figure/index.ts";
import { plainText } from "./inlines.ts";
import type { Cell, TableBlock } from "./model.ts";

/** Pixels of 1/96 in: the text's size, room at both sides of a cell, and the width that A4 and Letter both have. */
const SIZE = 10.7;
const ROOM = 9;
const WIDTH = 655;
/** Set small and close a table takes this share of its width. */
const DENSER = 0.84;
/** Longer words are broken. */
const LONGEST = 130;

/** The table itself where its columns fit beside each other. */
export function splitTable(table: TableBlock): readonly TableBlock[] {
  const least = table.columns.map(
    ({ head, align }, i) =>
      Math.max(longest(head, false) * 0.8, ...table.rows.map((row) => longest(row[i] ?? [], align === "right"))) + ROOM,
  );
  const [lead = 0, ...others] = least;
  const total = least.reduce((sum, each) => sum + each, 0);
  if (total <= WIDTH || others.length < 2) return [table];
  if (total * DENSER <= WIDTH) return [{ ...table, dense: true }];
  const groups: number[][] = [[]];
  let used = lead;
  others.forEach((own, i) => {
    const group = groups[groups.length - 1] as number[];
    if (group.length > 0 && used + own > WIDTH) {
      groups.push([i + 1]);
      used = lead + own;
      return;
    }
    group.push(i + 1);
    used += own;
  });
  return groups.map((places, part): TableBlock => {
    const kept = [0, ...places];
    const [first = 1, last = 1] = [places[0], places[places.length - 1]];
    const range = first === last ? `${first + 1}` : `${first + 1} to ${last + 1}`;
    return {
      ...table,
      id: part === 0 ? table.id : `${table.id}-${part + 1}`,
      caption: `${table.caption} (columns 1 and ${range} of ${table.columns.length})`.trim(),
      columns: kept.flatMap((i) => table.columns[i] ?? []),
      rows: table.rows.map((row) => kept.map((i) => row[i] ?? [])),
    };
  });
}

/** Width of what cannot be broken: a word, or a whole number with its unit. */
function longest(cell: Cell, whole: boolean): number {
  const text = plainText(cell);
  const pieces = whole && text.length <= NUMBER ? [text] : text.split(/[ \t\n]+/);
  return Math.min(LONGEST, Math.max(0, ...pieces.map((piece) => textWidth(piece, SIZE))));
}

/** Right-aligned cells longer than this may break: see the style of `wide`. */
export const NUMBER = 18;
