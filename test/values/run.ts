// Runs published-value files through the public language and compares row by row.

import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import papaparse from "papaparse";
import type { Session } from "../../engine/session/index.ts";
import { MissingInput, readInputs, unitOf } from "./inputs.ts";
import { expressionOf } from "./quantities.ts";

export interface Row {
  readonly file: string;
  readonly id: string;
  readonly quantity: string;
  readonly inputs: string;
  readonly expected: string;
  readonly unit: string;
  readonly tolerance: string;
  readonly toleranceKind: string;
}

export interface Outcome {
  readonly row: Row;
  readonly state: "passed" | "failed" | "skipped";
  readonly expression: string;
  /** The value got, or the fault that came instead. */
  readonly got: string;
}

const COLUMNS = ["id", "quantity", "inputs", "expected", "unit", "tolerance", "tolerance_kind", "source", "how_known", "note"];
/** Room for the one rounding of reading a decimal and converting it; far below any tolerance a table can state. */
const READING = 1e-12;

/** Every row of every file in these folders (or files), and the csv files that are not of this kind. */
export function collectRows(paths: readonly string[]): { readonly rows: readonly Row[]; readonly passedOver: readonly string[] } {
  const rows: Row[] = [];
  const passedOver: string[] = [];
  for (const file of paths.flatMap(csvFiles)) {
    const read = readRows(file, readFileSync(file, "utf8"));
    if (read === undefined) passedOver.push(file);
    else rows.push(...read);
  }
  return { rows, passedOver };
}

export function readRows(file: string, text: string): readonly Row[] | undefined {
  const { data, meta } = papaparse.parse<Readonly<Record<string, string>>>(text.replace(/^\uFEFF/, ""), {
    header: true,
    skipEmptyLines: true,
  });
  if (!COLUMNS.slice(0, 7).every((column) => meta.fields?.includes(column))) return undefined;
  return data.map((cells) => ({
    file,
    id: cells.id ?? "",
    quantity: cells.quantity ?? "",
    inputs: cells.inputs ?? "",
    expected: (cells.expected ?? "").trim(),
    unit: cells.unit ?? "",
    tolerance: cells.tolerance ?? "",
    toleranceKind: (cells.tolerance_kind ?? "").trim(),
  }));
}

export function runRow(session: Session, row: Row): Outcome {
  const makeExpression = expressionOf(row.id, row.quantity);
  if (makeExpression === undefined) return { row, state: "skipped", expression: "", got: "" };
  let expression: string;
  try {
    expression = makeExpression(readInputs(row.inputs));
  } catch (problem) {
    if (!(problem instanceof MissingInput)) throw problem;
    return { row, state: "failed", expression: "", got: problem.message };
  }
  const expected = row.expected.split(/\s+[/;]\s+/);
  const parts = expected.map((one, i) => compare(session, row, expected.length === 1 ? expression : `(${expression})[${i + 1}]`, one));
  return {
    row,
    state: parts.every((part) => part.agrees) ? "passed" : "failed",
    expression,
    got: parts.map((part) => part.got).join(" / "),
  };
}

function compare(session: Session, row: Row, expression: string, expected: string): { readonly agrees: boolean; readonly got: string } {
  const unit = unitOf(row.unit);
  const { result, diagnostics } = session.evaluate(expression, unit === "" ? {} : { as: unit });
  const faults = diagnostics.filter((one) => one.severity === "fault");
  if (result === undefined || faults.length > 0)
    return { agrees: false, got: faults.map((one) => `${one.code}: ${one.message}`).join("; ") || "no value" };
  if (typeof result.value !== "number") return { agrees: String(result.value) === expected, got: String(result.value) };
  const got = Number(result.shown.full.replace("−", "-"));
  const wanted = Number(expected.replace("−", "-"));
  return { agrees: Math.abs(got - wanted) <= allowed(row, wanted), got: result.shown.full };
}

/** Largest difference that still agrees; not a number (so that nothing agrees) when the row states none. */
function allowed(row: Row, wanted: number): number {
  const slack = READING * Math.abs(wanted);
  if (row.toleranceKind === "exact") return slack;
  if (row.tolerance.trim() === "") return Number.NaN;
  const tolerance = Number(row.tolerance);
  if (row.toleranceKind === "relative") return tolerance * Math.abs(wanted) + slack;
  return row.toleranceKind === "absolute" ? tolerance + slack : Number.NaN;
}

function csvFiles(path: string): readonly string[] {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return path.endsWith(".csv") ? [path] : [];
  return readdirSync(path, { withFileTypes: true })
    .filter((entry) => entry.name !== "node_modules")
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => csvFiles(join(path, entry.name)));
}
