// Rows of a table with equal cells, in order of first appearance.

import { equalValues } from "./equality.ts";
import type { TableValue, Value } from "./value.ts";

/** Row numbers (from 0) of each group. Numbers must be exactly equal: a tolerance would make groups hang on the order of rows. */
export function groupRows(table: TableValue, by: readonly string[]): readonly (readonly number[])[] {
  const keys = by.map((name) => table.columns[table.heads.indexOf(name)] as readonly Value[]);
  const groups: number[][] = [];
  const found = new Map<string, number[]>();
  for (let row = 0; row < table.rows; row += 1) {
    const cells = keys.map((column) => column[row] as Value);
    const plain = cells.every((cell) => cell === null || typeof cell !== "object");
    const key = plain ? JSON.stringify(cells.map((cell) => (cell === 0 ? 0 : cell))) : undefined;
    const group =
      key === undefined
        ? groups.find((rows) => keys.every((column, k) => equalValues(column[rows[0] as number] as Value, cells[k] as Value)))
        : found.get(key);
    if (group !== undefined) {
      group.push(row);
      continue;
    }
    const rows = [row];
    groups.push(rows);
    if (key !== undefined) found.set(key, rows);
  }
  return groups;
}
