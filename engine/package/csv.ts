// The results as one csv file: a row an input, a result, a check.

import { utf8 } from "../base/index.ts";
import type { Results } from "./results.ts";

const HEADS = [
  "kind",
  "name",
  "text",
  "value",
  "unit",
  "UCUM",
  "SI value",
  "range",
  "state",
  "case",
  "factor",
  "demand",
  "capacity",
  "utilisation",
  "margin",
  "provenance",
  "reference",
  "validity",
  "note",
] as const;

type Row = Partial<Record<(typeof HEADS)[number], string | number>>;

export function resultsCsv(results: Results): Uint8Array {
  const rows: Row[] = [
    ...results.inputs.map(
      (input): Row => ({
        kind: "input",
        name: input.name,
        text: input.text,
        ...numbers(input),
        range: input.range ?? "",
        provenance: input.provenance,
        reference: input.reference ?? "",
        note: input.note ?? "",
      }),
    ),
    ...results.results.map(
      (result): Row => ({
        kind: "result",
        name: result.name,
        text: result.text,
        ...numbers(result),
        provenance: result.provenance ?? "",
        reference: result.reference ?? "",
        validity: result.validity === "within" ? "within" : result.validity.join("; "),
        note: result.note ?? "",
      }),
    ),
    ...results.checks.map(
      (check): Row => ({
        kind: check.ledger === undefined ? "check" : "mode",
        name: check.title,
        state: check.state,
        case: check.case ?? "",
        factor: check.factor ?? "",
        demand: check.demand ?? "",
        capacity: check.capacity ?? "",
        utilisation: check.utilisation ?? "",
        margin: check.margin ?? "",
        provenance: check.weakest ?? "",
        validity: check.validity,
        note: check.reason ?? "",
      }),
    ),
  ];
  return utf8(
    [HEADS.join(","), ...rows.map((row) => HEADS.map((head) => field(row[head] ?? "")).join(","))].map((line) => `${line}\r\n`).join(""),
  );
}

function numbers({
  value,
  unit,
  ucum,
  si,
}: {
  readonly value?: number | readonly number[];
  readonly unit?: string;
  readonly ucum?: string;
  readonly si?: number | readonly number[];
}): Row {
  const joined = (of: number | readonly number[] | undefined): string | number => (typeof of === "number" ? of : (of ?? []).join(" "));
  return { value: joined(value), unit: unit ?? "", UCUM: ucum ?? "", "SI value": joined(si) };
}

/** RFC 4180. A text that a spreadsheet would take for a formula gets an apostrophe in front; numbers stay numbers. */
function field(value: string | number): string {
  if (typeof value === "number") return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
