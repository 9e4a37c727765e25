// Measured data: a csv text into columns whose types their heads alone decide.

import { type Range, range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { type CsvRow, cellPlace, splitRows } from "./csv-rows.ts";
import { detectSeparator, type Separator } from "./csv-separator.ts";

export interface CsvHead {
  readonly name: string;
  /** The unit in brackets as written, `1` for a bare number; absent: a column of text. */
  readonly unit?: string;
  readonly nameRange: Range;
  readonly unitRange?: Range;
}

export interface CsvTable {
  readonly heads: readonly CsvHead[];
  /** Cells as written, trimmed, without quotes; every row as long as the heads. */
  readonly rows: readonly (readonly string[])[];
  /** By column: numbers in the head's unit, or texts; null where a cell is empty (or no number, which is a fault). */
  readonly columns: readonly (readonly (number | string | null)[])[];
  /** Place of each row in the text. */
  readonly rowRanges: readonly Range[];
  readonly separator: Separator;
  /** Numbers were read with a decimal comma. */
  readonly decimalComma: boolean;
  /** Ranges count from the text's start. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What an importer may state instead of leaving it to be found out. */
export interface CsvOptions {
  readonly separator?: Separator;
  readonly decimalComma?: boolean;
}

/** Largest table taken in; more is a fault, never a silent cut. */
export const csvLimits = { rows: 100_000, columns: 256 } as const;

/** Cells of one column that are reported each; of more the count is told. */
const REPORTED = 10;

const NUMBER = /^[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?$/;
const COMMA_NUMBER = /^[+-]?\d+,\d+(?:[eE][+-]?\d+)?$/;
/** Reads as thousands as well as with a decimal comma. */
const UNCLEAR = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/** Reads the body of a csv fence, or a csv file. The head line is the first that is not blank: `F_max [N]`, `ratio [1]`, `method`. */
export function readCsv(text: string, options: CsvOptions = {}): CsvTable {
  const from = text.startsWith("\uFEFF") ? 1 : 0;
  const separator = options.separator ?? detectSeparator(text.slice(from));
  const { rows, marks } = splitRows(text, from, separator);
  const diagnostics: Diagnostic[] = marks.map((mark) => faults.conflictMark(mark, { mark: text.slice(mark.from, mark.from + 7) }));
  const [headRow, ...body] = rows;
  if (headRow === undefined) {
    diagnostics.push(faults.csvEmpty(range(from, text.length), {}));
    return { heads: [], rows: [], columns: [], rowRanges: [], separator, decimalComma: false, diagnostics };
  }
  const width = usedWidth(headRow, body);
  const place = (row: CsvRow, column: number): Range => cellPlace(text, row.range, separator, column);
  const heads = readHeads(text, headRow, width, place, diagnostics);
  const kept = withinLimits(headRow, body, heads, diagnostics);
  checkRows([headRow, ...kept], width, diagnostics);

  const cells = kept.map((row) => heads.map((_, column) => row.cells[column] ?? ""));
  const numeric = heads.flatMap((head, column) => (head.unit === undefined ? [] : [column]));
  const found = separator === "," ? noComma : findDecimalComma(cells, numeric);
  const stated = options.decimalComma;
  const decimalComma = stated ?? (found.decimalComma && !found.unclear);
  const unclear = stated === undefined && found.unclear;
  if (stated === undefined && found.sample !== undefined) {
    const { row, column } = found.sample;
    const written = cells[row]?.[column] as string;
    const at = place(kept[row] as CsvRow, column);
    diagnostics.push(
      unclear
        ? faults.csvCommaUnclear(at, { text: written })
        : faults.csvDecimalComma(at, { text: written, number: written.replace(",", ".") }),
    );
  }

  const columns = heads.map((head, column) => {
    const texts = cells.map((row) => row[column] as string);
    if (head.unit === undefined) {
      if (looksMeasured(texts, separator)) diagnostics.push(faults.csvNumbersAsText(head.nameRange, { column: head.name }));
      return texts.map((cell) => (cell === "" ? null : cell));
    }
    const numbers = texts.map((cell) => (cell === "" ? null : toNumber(cell, decimalComma)));
    // Where all commas are unclear one fault said so; it stands for every cell with a comma.
    const bad = numbers.flatMap((number, row) =>
      number !== undefined || (unclear && UNCLEAR.test(withSign(texts[row] as string))) ? [] : [row],
    );
    for (const row of bad.slice(0, REPORTED)) {
      const slots = { row: String(row + 1), column: head.name, text: texts[row] as string };
      diagnostics.push(faults.csvNotNumber(place(kept[row] as CsvRow, column), slots));
    }
    if (bad.length > REPORTED) {
      const slots = { count: String(bad.length), shown: String(REPORTED), column: head.name };
      diagnostics.push(faults.csvMoreNotNumbers(head.nameRange, slots));
    }
    return numbers.map((number) => number ?? null);
  });
  return { heads, rows: cells, columns, rowRanges: kept.map((row) => row.range), separator, decimalComma, diagnostics };
}

/** Place of a cell in the text that the table was read from. */
export const cellRange = (text: string, table: CsvTable, row: number, column: number): Range =>
  cellPlace(text, table.rowRanges[row] ?? range(text.length, text.length), table.separator, column);

/** A separator at the end of every line makes a last column without head and cells: that is no column. */
function usedWidth(head: CsvRow, body: readonly CsvRow[]): number {
  let width = head.cells.length;
  while (width > 1 && head.cells[width - 1] === "" && body.every((row) => (row.cells[width - 1] ?? "") === "")) width -= 1;
  return width;
}

function readHeads(
  text: string,
  row: CsvRow,
  width: number,
  place: (row: CsvRow, column: number) => Range,
  diagnostics: Diagnostic[],
): CsvHead[] {
  const seen = new Set<string>();
  return row.cells.slice(0, width).map((cell, column) => {
    const at = place(row, column);
    const open = cell.endsWith("]") ? cell.lastIndexOf("[") : -1;
    const name = open === -1 ? cell : cell.slice(0, open).trimEnd();
    const unit = open === -1 ? undefined : cell.slice(open + 1, -1).trim();
    if (name === "") diagnostics.push(faults.csvNoHead(at, { column: String(column + 1) }));
    else if (seen.has(name)) diagnostics.push(faults.csvHeadTwice(at, { column: name }));
    seen.add(name);
    if (unit === undefined) return { name, nameRange: at };
    if (unit === "") diagnostics.push(faults.csvNoUnit(at, { column: name }));
    // Counted in the text, where a quoted head has a character more in front.
    const start = text[at.from] === '"' ? at.from + 1 : at.from;
    const bracket = text.indexOf("[", start + open);
    return { name, unit, nameRange: range(start, start + name.length), unitRange: range(bracket + 1, text.indexOf("]", bracket)) };
  });
}

function withinLimits(head: CsvRow, body: readonly CsvRow[], heads: CsvHead[], diagnostics: Diagnostic[]): readonly CsvRow[] {
  if (heads.length > csvLimits.columns) {
    diagnostics.push(faults.csvTooLarge(head.range, { count: String(heads.length), what: "columns", limit: String(csvLimits.columns) }));
    heads.length = csvLimits.columns;
  }
  if (body.length <= csvLimits.rows) return body;
  const at = (body[csvLimits.rows] as CsvRow).range;
  diagnostics.push(faults.csvTooLarge(at, { count: String(body.length), what: "rows", limit: String(csvLimits.rows) }));
  return body.slice(0, csvLimits.rows);
}

/** Rows count from 1, the head being none. */
function checkRows(rows: readonly CsvRow[], width: number, diagnostics: Diagnostic[]): void {
  for (const [index, row] of rows.entries()) {
    if (row.badQuotes) diagnostics.push(faults.csvQuotes(row.range, {}));
    const extra = row.cells.slice(width).some((cell) => cell !== "");
    if (index === 0 || (row.cells.length >= width && !extra)) continue;
    const slots = { row: String(index), cells: String(row.cells.length), heads: String(width) };
    diagnostics.push(faults.csvRagged(row.range, slots));
  }
}

interface FoundComma {
  readonly decimalComma: boolean;
  /** Every cell that tells could also be thousands. */
  readonly unclear: boolean;
  /** The first cell with a comma. */
  readonly sample: { readonly row: number; readonly column: number } | undefined;
}

const noComma: FoundComma = { decimalComma: false, unclear: false, sample: undefined };

/** A decimal comma is one that stands in some number cell while no number cell has a point. */
function findDecimalComma(cells: readonly (readonly string[])[], numeric: readonly number[]): FoundComma {
  let sample: FoundComma["sample"];
  let unclear = true;
  for (const [row, texts] of cells.entries()) {
    for (const column of numeric) {
      const cell = withSign(texts[column] as string);
      if (cell.includes(".")) return noComma;
      if (!COMMA_NUMBER.test(cell)) continue;
      sample ??= { row, column };
      if (!UNCLEAR.test(cell)) unclear = false;
    }
  }
  return sample === undefined ? noComma : { decimalComma: true, unclear, sample };
}

const withSign = (cell: string): string => cell.replaceAll("−", "-");

/** Undefined where the cell does not read as a finite number. */
function toNumber(cell: string, decimalComma: boolean): number | undefined {
  const signed = withSign(cell);
  const pointed = decimalComma && COMMA_NUMBER.test(signed) ? signed.replace(",", ".") : signed;
  if (!NUMBER.test(pointed)) return undefined;
  const number = Number(pointed);
  return Number.isFinite(number) ? number : undefined;
}

/** All cells numbers and some with decimals: measured values rather than counts or designations. */
function looksMeasured(texts: readonly string[], separator: Separator): boolean {
  const filled = texts.filter((cell) => cell !== "").map((cell) => (separator === "," ? cell : cell.replace(",", ".")));
  return filled.length > 0 && filled.every((cell) => NUMBER.test(cell)) && filled.some((cell) => cell.includes("."));
}
