// A csv text as a typed table: what its heads say, its cells in SI.

import type { Entry, Type } from "../check/index.ts";
import { typeOfUnit } from "../check/index.ts";
import type { Diagnostic } from "../diagnostics/index.ts";
import type { CsvTable } from "../notebook/index.ts";
import type { TableValue, Value } from "../run/index.ts";
import { literal, parseUnit, type Unit, unitFault } from "../units/index.ts";

export interface CsvEntry {
  readonly entry: Entry;
  readonly value: TableValue;
  readonly diagnostics: readonly Diagnostic[];
}

/** Ranges of the diagnostics count from the csv text's start. */
export function csvEntry(name: string, table: CsvTable): CsvEntry {
  const diagnostics: Diagnostic[] = [...table.diagnostics];
  const units = table.heads.map((head): Unit | "text" | undefined => {
    if (head.unit === undefined) return "text";
    const read = parseUnit(head.unit, { leadingOne: true });
    if ("unit" in read) return read.unit;
    diagnostics.push(unitFault(read.problem, head.unitRange ?? head.nameRange, head.unit));
    return undefined;
  });
  const columns = table.heads.map((head, i) => ({ name: head.name, type: columnType(units[i]) }));
  const faulty = diagnostics.some((diagnostic) => diagnostic.severity === "fault");
  const value: TableValue = {
    shape: "table",
    heads: table.heads.map((head) => head.name),
    columns: table.columns.map((column, i) => column.map((cell) => cellValue(cell, units[i]))),
    rows: table.rows.length,
  };
  const entry: Entry = faulty
    ? { entry: "faulty", name }
    : { entry: "value", name, type: { type: "table", columns }, closed: false, input: true };
  return { entry, value, diagnostics };
}

const columnType = (unit: Unit | "text" | undefined): Type =>
  unit === undefined ? { type: "unknown" } : unit === "text" ? { type: "text" } : typeOfUnit(unit);

function cellValue(cell: number | string | null, unit: Unit | "text" | undefined): Value {
  if (typeof cell !== "number" || unit === undefined || unit === "text") return cell;
  return literal(String(cell), unit);
}
