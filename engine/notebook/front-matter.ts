// The title block: ISO 7200 fields, and what the notebook says of itself (units, digits, references).

import { nearest, type Range, range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { conflictFault, conflictMarks } from "./conflict.ts";
import { frontRange } from "./front-range.ts";
import type { Placed } from "./part.ts";
import { type Reference, readReferenceList } from "./reference.ts";
import { type Data, type DataEntry, readYamlMap } from "./yaml-data.ts";

/** Fields that are one text each; the first nine by ISO 7200. */
export const titleFields = [
  "title",
  "number",
  "revision",
  "status",
  "date",
  "creator",
  "checker",
  "approval_person",
  "owner",
  "project",
] as const;

export type TitleField = (typeof titleFields)[number];

/** What a status may say, in the order a document goes through them. */
export const statuses = ["in preparation", "under approval", "released", "superseded", "withdrawn"] as const;

export interface FrontMatter {
  /** Absent fields are empty text. */
  readonly title: Readonly<Record<TitleField, string>>;
  /** Quantity (e.g. `length`) to the unit it is shown in, as written. */
  readonly units: ReadonlyMap<string, Placed>;
  /** Three capital letters; whether there is such a currency the unit table knows. */
  readonly currency?: Placed;
  /** Significant digits shown, 1 to 15. */
  readonly digits?: number;
  /** The library version the notebook is pinned to. */
  readonly library?: Placed;
  readonly references: ReadonlyMap<string, Reference>;
  /** Inputs whose assumption stands although nobody has confirmed it, by name. */
  readonly acceptedAssumptions: readonly string[];
  /** What follows a superseded notebook, why one was withdrawn; empty text when nothing is said. */
  readonly supersededBy: string;
  readonly withdrawnBecause: string;
  /** Keys that mean nothing here, kept in the text; those with one text only. */
  readonly other: ReadonlyMap<string, string>;
  /** Place of each field's value. */
  readonly places: ReadonlyMap<string, Range>;
  readonly diagnostics: readonly Diagnostic[];
}

const FIELDS: readonly string[] = [
  ...titleFields,
  "units",
  "currency",
  "digits",
  "library",
  "references",
  "accepted_assumptions",
  "superseded_by",
  "withdrawn_because",
  "branch_of",
];

/** Reads the front matter of a notebook's text or of its front part; ranges count from that text's start. Without front matter all is empty. */
export function readFrontMatter(text: string): FrontMatter {
  const front = frontRange(text);
  const offset = front?.body.from ?? 0;
  const body = front === undefined ? "" : text.slice(front.body.from, front.body.to);
  const marks = conflictMarks(body, 0);
  const yaml = readYamlMap(withoutMarks(body, marks), offset);
  const diagnostics = [...marks.map(({ from, to }) => conflictFault(body, from, to, -offset)), ...yaml.diagnostics];

  const fields = new Map(yaml.entries.map((entry) => [entry.key, entry.value]));
  const textOf = (key: string): Placed | undefined => readText(key, fields.get(key), diagnostics);
  const title = Object.fromEntries(titleFields.map((key) => [key, textOf(key)?.text ?? ""])) as Record<TitleField, string>;
  checkStatus(fields.get("status"), diagnostics);
  checkDate(fields.get("date"), diagnostics);
  const currency = checked(textOf("currency"), /^[A-Z]{3}$/, faults.frontMatterCurrency, diagnostics);
  const digits = checked(textOf("digits"), /^(?:[1-9]|1[0-5])$/, faults.frontMatterDigits, diagnostics);
  const library = textOf("library");
  const units = readUnits(fields.get("units"), diagnostics);
  const list = fields.get("references");
  const references = list === undefined ? { references: new Map(), diagnostics: [] } : readReferenceList(list);
  diagnostics.push(...references.diagnostics);
  const other = readUnknown(yaml.entries, diagnostics);

  return {
    title,
    units,
    references: references.references,
    acceptedAssumptions: readNames(fields.get("accepted_assumptions"), diagnostics),
    supersededBy: textOf("superseded_by")?.text ?? "",
    withdrawnBecause: textOf("withdrawn_because")?.text ?? "",
    other,
    places: new Map(yaml.entries.map(({ key, value }) => [key, value.range])),
    diagnostics,
    ...(currency === undefined ? {} : { currency }),
    ...(digits === undefined ? {} : { digits: Number(digits.text) }),
    ...(library === undefined ? {} : { library }),
  };
}

/** Each mark line made a comment of the same length, so that both sides of the conflict are read and every place holds. */
function withoutMarks(body: string, marks: readonly Range[]): string {
  let clean = body;
  for (const { from } of marks) clean = `${clean.slice(0, from)}#${clean.slice(from + 1)}`;
  return clean;
}

/** A field's text; undefined when it is absent, empty, or a fault for being no text. */
function readText(key: string, value: Data | undefined, diagnostics: Diagnostic[]): Placed | undefined {
  if (value === undefined) return undefined;
  if (value.kind !== "text") {
    diagnostics.push(faults.frontMatterNotText(value.range, { key }));
    return undefined;
  }
  const text = value.text.trim();
  return text === "" ? undefined : { text, ...value.range };
}

type TextFault = (at: Range, slots: { readonly text: string }) => Diagnostic;

function checked(field: Placed | undefined, form: RegExp, fault: TextFault, diagnostics: Diagnostic[]): Placed | undefined {
  if (field === undefined || form.test(field.text)) return field;
  diagnostics.push(fault(range(field.from, field.to), { text: field.text }));
  return undefined;
}

function checkStatus(value: Data | undefined, diagnostics: Diagnostic[]): void {
  const field = readText("status", value, []);
  if (field === undefined || (statuses as readonly string[]).includes(field.text)) return;
  const at = range(field.from, field.to);
  const near = nearest(field.text, statuses);
  const mends = near === undefined ? [] : [{ label: near, changes: [{ ...at, insert: near }] }];
  diagnostics.push(faults.frontMatterStatus(at, { text: field.text, known: statuses.join(", ") }, { mends }));
}

function checkDate(value: Data | undefined, diagnostics: Diagnostic[]): void {
  const field = readText("date", value, []);
  if (field === undefined || isDate(field.text)) return;
  diagnostics.push(faults.frontMatterDate(range(field.from, field.to), { text: field.text }));
}

function readUnits(value: Data | undefined, diagnostics: Diagnostic[]): Map<string, Placed> {
  const units = new Map<string, Placed>();
  if (value === undefined || (value.kind === "text" && value.text === "")) return units;
  if (value.kind !== "map") {
    diagnostics.push(faults.frontMatterUnits(value.range, {}));
    return units;
  }
  for (const { key, value: unit } of value.entries) {
    if (unit.kind === "text" && unit.text.trim() !== "") units.set(key, { text: unit.text.trim(), ...unit.range });
    else diagnostics.push(faults.frontMatterUnits(unit.range, {}));
  }
  return units;
}

/** `[F_V, mu]`, or the same names in one text. */
function readNames(value: Data | undefined, diagnostics: Diagnostic[]): readonly string[] {
  if (value === undefined) return [];
  const texts = value.kind === "list" ? value.items : [value];
  return texts.flatMap((item) => {
    if (item.kind === "text") return item.text.split(/[\s,;]+/).filter((name) => name !== "");
    diagnostics.push(faults.frontMatterNotText(item.range, { key: "accepted_assumptions" }));
    return [];
  });
}

function readUnknown(entries: readonly DataEntry[], diagnostics: Diagnostic[]): Map<string, string> {
  const other = new Map<string, string>();
  for (const { key, keyRange, value } of entries) {
    if (FIELDS.includes(key)) continue;
    if (value.kind === "text") other.set(key, value.text);
    const near = nearest(key, FIELDS);
    const mends = near === undefined ? [] : [{ label: near, changes: [{ ...keyRange, insert: near }] }];
    diagnostics.push(faults.frontMatterUnknown(keyRange, { key, near }, { mends }));
  }
  return other;
}

/** `2026-02-28`: a day that the calendar has. */
function isDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return false;
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && 1 <= day && day <= days;
}
