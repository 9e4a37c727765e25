// Lines of one fence put into columns: `=`, the first bar, the second bar, the cells of a table.

import type { Line } from "./layout.ts";

/** Before the first bar a little more air than inside the working. */
const GAP = 3;

/** A line with what aligning needs: which statement and block it belongs to, and whether it is that statement's only line. */
export interface Placed extends Line {
  readonly statement: number;
  readonly alone: boolean;
}

const width = (text: string): number => [...text].length;
const pad = (text: string, to: number): string => text + " ".repeat(Math.max(0, to - width(text)));
const isBlank = (line: Placed): boolean => line.cells.length === 0 && line.comment === undefined;
const hasWorking = (line: Placed): boolean => line.cells.length > 0;

/** The texts of the lines, aligned; no first bar of a statement stands before column `least`. */
export function alignLines(lines: readonly Placed[], least: number): readonly string[] {
  const workings = alignEquals(alignCells(lines), lines);
  return alignColumns(workings, lines, least);
}

const STATEMENTS = "statements";

/** What is aligned with each other: one-line statements among themselves, and the lines of one block of one statement. */
const groupOf = (line: Placed): string | undefined => {
  if (line.block > 0) return `${line.statement}.${line.block}`;
  return line.alone ? STATEMENTS : undefined;
};

/** Runs of lines of one group; where `blankEnds`, a blank line ends them. A statement of several lines ends a run of statements. */
function runs(lines: readonly Placed[], blankEnds: boolean): readonly (readonly number[])[] {
  const open = new Map<string, number[]>();
  const all: number[][] = [];
  for (const [i, line] of lines.entries()) {
    if (!hasWorking(line)) {
      if (blankEnds && isBlank(line)) open.delete(line.block > 0 ? `${line.statement}.${line.block}` : STATEMENTS);
      continue;
    }
    const group = groupOf(line);
    if (group === undefined) {
      open.delete(STATEMENTS);
      continue;
    }
    const run = open.get(group);
    if (run !== undefined) run.push(i);
    else {
      const fresh = [i];
      open.set(group, fresh);
      all.push(fresh);
    }
  }
  return all;
}

function alignCells(lines: readonly Placed[]): string[] {
  const widths = new Map<string, number[]>();
  for (const line of lines) {
    if (!line.row || !hasWorking(line)) continue;
    const key = `${line.statement}.${line.block}`;
    const known = widths.get(key) ?? [];
    for (const [i, cell] of line.cells.entries()) known[i] = Math.max(known[i] ?? 0, width(cell));
    widths.set(key, known);
  }
  return lines.map((line) => {
    if (!line.row) return line.cells.join(" | ");
    const known = widths.get(`${line.statement}.${line.block}`) ?? [];
    return line.cells
      .map((cell, i) => pad(cell, known[i] ?? 0))
      .join(" | ")
      .trimEnd();
  });
}

/** A blank line ends a run of `=`. */
function alignEquals(workings: string[], lines: readonly Placed[]): string[] {
  const out = [...workings];
  for (const run of runs(lines, true)) {
    const at = Math.max(0, ...run.map((i) => lines[i]?.equals ?? 0));
    for (const i of run) {
      const equals = lines[i]?.equals;
      const working = out[i] as string;
      if (equals !== undefined) out[i] = `${pad(working.slice(0, equals), at)}${working.slice(equals)}`;
    }
  }
  return out;
}

/** Bars keep their columns across blank lines, so that a fence reads as one table. */
function alignColumns(workings: readonly string[], lines: readonly Placed[], least: number): string[] {
  const bars = new Map<number, { readonly first: number; readonly second: number }>();
  for (const run of runs(lines, false)) {
    const withColumns = run.filter((i) => lines[i]?.columns !== undefined);
    const outside = lines[run[0] as number]?.block === 0;
    const first = Math.max(outside ? least - GAP : 0, ...withColumns.map((i) => width(workings[i] as string)));
    const referenced = withColumns.filter((i) => lines[i]?.columns?.reference !== undefined);
    const second = Math.max(0, ...referenced.map((i) => width(lines[i]?.columns?.note ?? "")));
    for (const i of withColumns) bars.set(i, { first, second });
  }
  return lines.map((line, i) => {
    const indent = "  ".repeat(line.indent);
    const working = workings[i] as string;
    const { columns, comment } = line;
    if (columns !== undefined) {
      const { first, second } = bars.get(i) ?? { first: width(working), second: width(columns.note) };
      const note = columns.reference === undefined ? columns.note : `${pad(columns.note, second)} | ${columns.reference}`;
      return `${indent}${pad(working, first)}${" ".repeat(GAP)}| ${note}`.trimEnd();
    }
    if (comment === undefined) return hasWorking(line) ? `${indent}${working}`.trimEnd() : "";
    return hasWorking(line) ? `${indent}${working}  ${comment}` : `${indent}${comment}`;
  });
}
