// Tables of values: what the pad shows row by row, and measured data.

import { type CsvPart, readCsv } from "../notebook/index.ts";
import type { Grid, LineOutput } from "../session/index.ts";
import { symbolOf } from "../trace/index.ts";
import { isLedger, weakestWords } from "./checks.ts";
import { unitText } from "./expression-maths.ts";
import { cell, maths, nameText, state, text, valueCell } from "./inlines.ts";
import type { Cell, Column, State, TableBlock } from "./model.ts";
import { symbol } from "./typeset.ts";

/** Rows of measured data that are printed; the rest stands in the source that goes with the sheet, and the caption says so. */
const PRINTED_ROWS = 60;

/** Rows that a value has, as the pad shows them; of a ledger how each mode is checked, for its numbers stand on the first page. */
export function gridTable(output: LineOutput, grid: Grid): TableBlock {
  const ledger = isLedger(grid);
  const shown = grid.columns.map((_, i) => i).filter((i) => !ledger || LEDGER_COLUMNS.includes(grid.columns[i]?.head ?? ""));
  const weakest = grid.rows.map((row) => weakestWords(row.marks));
  const alike = new Set(weakest).size === 1 ? (weakest[0] ?? "") : undefined;
  const columns = shown.flatMap((i): readonly Column[] => {
    const column = grid.columns[i];
    if (column === undefined) return [];
    return [{ head: headCell(column.head, column.unit), align: column.numeric ? "right" : "left", share: column.numeric ? 1 : 1.6 }];
  });
  const rows = grid.rows.map((row, at) => [
    ...shown.map((i): Cell => {
      const words = row.cells[i]?.text ?? "";
      return grid.columns[i]?.head === "state" && isState(words) ? [state(words)] : valueCell(words);
    }),
    ...(alike === undefined ? [cell(weakest[at] ?? "")] : []),
  ]);
  const said = [
    [output.name === undefined ? "" : nameText(output.name), output.note].filter((part) => part !== "").join(": "),
    ledger ? "demands, capacities and margins are in the table of checks" : "",
    alike === undefined || alike === "" ? "" : `weakest source of every row: ${alike}`,
    grid.count > grid.rows.length ? `rows 1 to ${grid.rows.length} of ${grid.count}` : "",
  ];
  return {
    kind: "table",
    id: `table-${output.name ?? output.from}`,
    caption: said.filter((part) => part !== "").join("; "),
    columns: alike === undefined ? [...columns, { head: cell("weakest source"), align: "left", share: 1.4 }] : columns,
    rows,
  };
}

const LEDGER_COLUMNS = ["mode", "state", "reason", "method"];

const isState = (word: string): word is State => ["holds", "fails", "open", "ruled out"].includes(word);

export function headCell(head: string, unit: string): Cell {
  // A head that reads as a name is set as a symbol, any other as it stands.
  const name = /^[\p{L}]+(?:_[\p{L}\p{N}]+)*$/u.test(head) && [...symbolOf(head).base].length === 1;
  const shown = name ? maths(symbol(symbolOf(head))) : text(head.replaceAll("_", " "));
  return unit === "" ? [shown] : [shown, text(` (${unit})`)];
}

/** A csv block, at most its first rows. */
export function csvTable(part: CsvPart, output: LineOutput): TableBlock {
  const table = readCsv(part.body);
  const rows = table.rows.slice(0, PRINTED_ROWS);
  const rest = table.rows.length > rows.length ? `; rows 1 to ${rows.length} of ${table.rows.length}, the others are in the source` : "";
  const faults = output.diagnostics.filter(({ severity }) => severity === "fault").map(({ message }) => `; fault: ${message}`);
  return {
    kind: "table",
    id: `data-${part.name?.text ?? output.from}`,
    caption: [part.name?.text ?? "", output.note, output.citation].filter((piece) => piece !== "").join("; ") + rest + faults.join(""),
    columns: table.heads.map((head) => ({
      head: headCell(head.name, head.unit === undefined || head.unit === "1" ? "" : unitText(head.unit)),
      align: head.unit === undefined ? "left" : "right",
      share: 1,
    })),
    rows: rows.map((row) => table.heads.map((_, i) => cell((row[i] ?? "").replace(/^-(?=[\d.])/, "−")))),
  };
}
