// Marks that travel with a value: where it comes from, which limits of validity are broken, what is only nominal.

import type { Value } from "./value.ts";

/** Strongest first. */
export const provenanceLevels = ["test", "published", "supplier", "given", "practice", "memory", "assumed", "unsourced"] as const;

export type ProvenanceLevel = (typeof provenanceLevels)[number];

export interface Provenance {
  readonly level: ProvenanceLevel;
  /** The reference as written. */
  readonly text: string;
  /** The input that brought it. */
  readonly from: string;
}

/** A `valid` of a formula that did not hold. */
export interface OutsideLimit {
  readonly formula: string;
  /** The condition as written. */
  readonly limit: string;
  readonly note?: string;
}

export interface Mark {
  readonly shape: "mark";
  /** The weakest that reached the value; absent for one made of bare numbers alone. */
  readonly provenance?: Provenance;
  readonly outside: readonly OutsideLimit[];
  readonly nominalOnly: boolean;
}

/**
 * The marks of a value, in its shape. A part carries what its place hangs on, so taking it out adds nothing.
 * A `Mark` stands for a whole value whose parts all have the same, so that most values share one object; `own` is what the choice or number of the parts hangs on.
 */
export type Marks =
  | Mark
  | { readonly shape: "record"; readonly own: Mark; readonly fields: readonly Marks[] }
  | { readonly shape: "list"; readonly own: Mark; readonly items: readonly Marks[] }
  | { readonly shape: "table"; readonly own: Mark; readonly columns: readonly (readonly Marks[])[] }
  /** A formula brings the marks of its needs, in their order, to each of its calls. */
  | { readonly shape: "formula"; readonly own: Mark; readonly needs: readonly Marks[] };

export interface Marked {
  readonly value: Value;
  readonly marks: Marks;
}

const nothingOutside: readonly OutsideLimit[] = [];

/** Of a bare literal. */
export const unmarked: Mark = { shape: "mark", outside: nothingOutside, nominalOnly: false };

export const nominalMark: Mark = { shape: "mark", outside: nothingOutside, nominalOnly: true };

export const provenanceMark = (provenance: Provenance): Mark => ({
  shape: "mark",
  provenance,
  outside: nothingOutside,
  nominalOnly: false,
});

export const outsideMark = (limit: OutsideLimit): Mark => ({ shape: "mark", outside: [limit], nominalOnly: false });

const rank = (provenance: Provenance | undefined): number => (provenance === undefined ? -1 : provenanceLevels.indexOf(provenance.level));

const sameLimit = (a: OutsideLimit, b: OutsideLimit): boolean => a.formula === b.formula && a.limit === b.limit && a.note === b.note;

/** Both marks in one: the weaker provenance (of equals the first), every broken limit once. Gives one of the two back where it can. */
export function joinMark(a: Mark, b: Mark): Mark {
  if (a === b || b === unmarked) return a;
  if (a === unmarked) return b;
  const provenance = rank(a.provenance) < rank(b.provenance) ? b.provenance : a.provenance;
  const outside = joinOutside(a.outside, b.outside);
  const nominalOnly = a.nominalOnly || b.nominalOnly;
  if (provenance === a.provenance && outside === a.outside && nominalOnly === a.nominalOnly) return a;
  if (provenance === b.provenance && outside === b.outside && nominalOnly === b.nominalOnly) return b;
  return { shape: "mark", ...(provenance === undefined ? {} : { provenance }), outside, nominalOnly };
}

function joinOutside(a: readonly OutsideLimit[], b: readonly OutsideLimit[]): readonly OutsideLimit[] {
  if (a === b || b.length === 0) return a;
  if (a.length === 0) return b;
  const more = b.filter((limit) => !a.some((other) => sameLimit(other, limit)));
  if (more.length === 0) return a;
  return a.every((limit) => b.some((other) => sameLimit(other, limit))) ? b : [...a, ...more];
}

/** Everything that reached any part of a value, as one mark: what a line shows. */
export function wholeMark(marks: Marks): Mark {
  switch (marks.shape) {
    case "mark":
      return marks;
    case "record":
      return marks.fields.reduce<Mark>((all, part) => joinMark(all, wholeMark(part)), marks.own);
    case "list":
      return marks.items.reduce<Mark>((all, part) => joinMark(all, wholeMark(part)), marks.own);
    case "table":
      return marks.columns.reduce<Mark>(
        (all, column) => column.reduce<Mark>((sum, part) => joinMark(sum, wholeMark(part)), all),
        marks.own,
      );
    case "formula":
      return marks.own;
  }
}

/** The marks with one more mark on every part. */
export function addMark(marks: Marks, mark: Mark): Marks {
  if (mark === unmarked) return marks;
  const add = (part: Marks): Marks => addMark(part, mark);
  switch (marks.shape) {
    case "mark":
      return joinMark(marks, mark);
    case "record":
      return { shape: "record", own: joinMark(marks.own, mark), fields: marks.fields.map(add) };
    case "list":
      return { shape: "list", own: joinMark(marks.own, mark), items: marks.items.map(add) };
    case "table":
      return { shape: "table", own: joinMark(marks.own, mark), columns: marks.columns.map((column) => column.map(add)) };
    case "formula":
      return { shape: "formula", own: joinMark(marks.own, mark), needs: marks.needs };
  }
}

/** Parts that all carry the very mark of the whole need no structure. */
const uniform = (own: Mark, parts: readonly Marks[]): boolean => parts.every((part) => part === own);

export function listMarks(own: Mark, items: readonly Marks[]): Marks {
  const first = items[0];
  if (own === unmarked && first !== undefined && first.shape === "mark" && uniform(first, items)) return first;
  return uniform(own, items) ? own : { shape: "list", own, items };
}

export function recordMarks(own: Mark, fields: readonly Marks[]): Marks {
  const first = fields[0];
  if (own === unmarked && first !== undefined && first.shape === "mark" && uniform(first, fields)) return first;
  return uniform(own, fields) ? own : { shape: "record", own, fields };
}

export function tableMarks(own: Mark, columns: readonly (readonly Marks[])[]): Marks {
  const first = columns[0]?.[0];
  if (own === unmarked && first !== undefined && first.shape === "mark" && columns.every((column) => uniform(first, column))) return first;
  return columns.every((column) => uniform(own, column)) ? own : { shape: "table", own, columns };
}

/** What choosing a part hangs on, before its own marks. */
export const ownMark = (marks: Marks): Mark => (marks.shape === "mark" ? marks : marks.own);

export function fieldMarks(marks: Marks, field: number): Marks {
  return marks.shape === "record" ? (marks.fields[field] ?? marks.own) : ownMark(marks);
}

export function itemMarks(marks: Marks, item: number): Marks {
  return marks.shape === "list" ? (marks.items[item] ?? marks.own) : ownMark(marks);
}

export function columnMarks(marks: Marks, column: number): Marks {
  if (marks.shape !== "table") return ownMark(marks);
  return listMarks(marks.own, marks.columns[column] ?? []);
}

export function cellMarks(marks: Marks, column: number, row: number): Marks {
  return marks.shape === "table" ? (marks.columns[column]?.[row] ?? marks.own) : ownMark(marks);
}

export function needMarks(marks: Marks, need: number): Marks {
  return marks.shape === "formula" ? (marks.needs[need] ?? unmarked) : unmarked;
}

/** Equal marks: what the marks node of a name is cut off by. */
export function sameMarks(a: Marks, b: Marks): boolean {
  if (a === b) return true;
  if (a.shape === "mark") return b.shape === "mark" && sameMark(a, b);
  if (b.shape === "mark" || !sameMark(a.own, b.own)) return false;
  if (a.shape === "record") return b.shape === "record" && sameAll(a.fields, b.fields);
  if (a.shape === "list") return b.shape === "list" && sameAll(a.items, b.items);
  if (a.shape === "formula") return b.shape === "formula" && sameAll(a.needs, b.needs);
  if (b.shape !== "table" || a.columns.length !== b.columns.length) return false;
  const columns = b.columns;
  return a.columns.every((column, i) => sameAll(column, columns[i] as readonly Marks[]));
}

const sameAll = (a: readonly Marks[], b: readonly Marks[]): boolean =>
  a.length === b.length && a.every((part, i) => sameMarks(part, b[i] as Marks));

function sameMark(a: Mark, b: Mark): boolean {
  if (a === b) return true;
  const [p, q] = [a.provenance, b.provenance];
  const provenance = p === q || (p !== undefined && q !== undefined && p.level === q.level && p.text === q.text && p.from === q.from);
  if (!provenance || a.nominalOnly !== b.nominalOnly || a.outside.length !== b.outside.length) return false;
  return a.outside.every((limit, i) => sameLimit(limit, b.outside[i] as OutsideLimit));
}

const levelWords: Readonly<Record<string, ProvenanceLevel>> = {
  test: "test",
  supplier: "supplier",
  given: "given",
  practice: "practice",
  memory: "memory",
  assumed: "assumed",
  confirmed: "assumed",
};

/** Reads the reference column of an input: its first word says the level, `@` a publication; anything else names no source. */
export function readProvenance(reference: string | undefined, from: string): Provenance {
  const text = reference?.trim() ?? "";
  if (text.startsWith("@")) return { level: "published", text, from };
  const word = /^\p{L}+/u.exec(text)?.[0] ?? "";
  return { level: Object.hasOwn(levelWords, word) ? (levelWords[word] as ProvenanceLevel) : "unsourced", text, from };
}

/**
 * The marks of an input. `parts` are the provenances that fields of a record (by their place) have in columns of their own;
 * the others have that of the whole.
 */
export function inputMarks(value: Value, provenance: Provenance, parts?: readonly (Provenance | undefined)[]): Marks {
  const mark = provenanceMark(provenance);
  if (parts === undefined || typeof value !== "object" || value === null || !("fields" in value)) return mark;
  return recordMarks(
    unmarked,
    value.fields.map((_, i) => (parts[i] === undefined ? mark : provenanceMark(parts[i]))),
  );
}

/** A formula with the marks of what its body needs, in the order of `needs`. */
export const markFormula = (formula: Value, needs: readonly Marks[]): Marked => ({
  value: formula,
  marks: { shape: "formula", own: unmarked, needs },
});
