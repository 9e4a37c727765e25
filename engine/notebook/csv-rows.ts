// A csv text into rows of cells, each with its place.

import Papa from "papaparse";
import { type Range, range } from "../base/index.ts";
import { isConflictMark, lineWithoutEnd } from "./conflict.ts";
import type { Separator } from "./csv-separator.ts";

export interface CsvRow {
  /** Trimmed; quotes taken off. */
  readonly cells: readonly string[];
  /** The row's text without its line end. */
  readonly range: Range;
  /** Its quotes do not pair up. */
  readonly badQuotes: boolean;
}

export interface CsvRows {
  /** Rows that are not blank. */
  readonly rows: readonly CsvRow[];
  /** Lines that are conflict marks. */
  readonly marks: readonly Range[];
}

/** Splits from `from` on; ranges count from the text's start. */
export function splitRows(text: string, from: number, separator: Separator): CsvRows {
  const rows: CsvRow[] = [];
  const marks: Range[] = [];
  const newline = text.includes("\r\n") ? "\r\n" : text.includes("\n") ? "\n" : "\r";
  let at = from;
  Papa.parse<string[]>(from === 0 ? text : text.slice(from), {
    delimiter: separator,
    newline,
    step: ({ data, errors, meta }) => {
      const start = at;
      at = from + meta.cursor;
      const end = lineWithoutEnd(text, start, at);
      if (isConflictMark(text, start, end)) marks.push(range(start, end));
      else if (data.some((cell) => cell.trim() !== "")) {
        // A quote behind a blank opens nothing: what looks like one quoted cell was cut at its separators.
        const badQuotes = errors.some(({ type }) => type === "Quotes") || data.some((cell) => /^\s+"/.test(cell));
        rows.push({ cells: data.map((cell) => cell.trim()), range: range(start, end), badQuotes });
      }
    },
  });
  return { rows, marks };
}

/** Place of a cell in its row, quotes with it; where the row has no such cell, the row's end. */
export function cellPlace(text: string, row: Range, separator: Separator, column: number): Range {
  let at = row.from;
  for (let i = 0; ; i += 1) {
    const end = cellEnd(text, at, row.to, separator);
    if (i === column) return trimmed(text, at, end);
    if (end >= row.to) return range(row.to, row.to);
    at = end + 1;
  }
}

function cellEnd(text: string, from: number, to: number, separator: Separator): number {
  let at = from;
  if (text[at] === '"') {
    for (at += 1; at < to; at += 1) {
      if (text[at] !== '"') continue;
      if (text[at + 1] !== '"') break;
      at += 1;
    }
  }
  const end = text.indexOf(separator, at);
  return end === -1 ? to : Math.min(end, to);
}

function trimmed(text: string, from: number, to: number): Range {
  const cell = text.slice(from, to);
  const lead = cell.length - cell.trimStart().length;
  return lead === cell.length ? range(from, to) : range(from + lead, from + cell.trimEnd().length);
}
