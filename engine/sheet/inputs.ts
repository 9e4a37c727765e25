// The inputs of a notebook, field by field, with where each comes from: the input list, and the assumptions among them.

import { type ReferenceColumn, readReference } from "../notebook/index.ts";
import type { LineOutput } from "../session/index.ts";
import { type Columns, type Expression, type FieldValue, printExpression } from "../syntax/index.ts";
import type { Book, BookLine } from "./book.ts";
import { expressionMaths } from "./expression-maths.ts";
import { typeset, typesetText } from "./typeset.ts";

export interface InputRow {
  /** `F_feed`, or the path of a field: `wrist.anchor.D`. */
  readonly name: string;
  readonly value: string;
  /** SI value, unit and UCUM code of a quantity, for the machine files. */
  readonly si?: number;
  readonly inUnit?: number;
  readonly unit?: string;
  readonly ucum?: string;
  /** `60 N to 400 N` */
  readonly bounds: string;
  readonly note: string;
  readonly reference: ReferenceColumn;
  readonly citation: string;
  /** An assumption that nobody has confirmed. */
  readonly unverified: boolean;
}

export function inputRows(book: Book): readonly InputRow[] {
  const rows: InputRow[] = [];
  for (const line of book.lines.values()) rows.push(...lineInputs(line, book));
  for (const output of book.outputs) {
    if (output.kind !== "csv" || output.value === undefined) continue;
    const part = book.notebook.parts[book.notebook.starts.indexOf(output.from)];
    const reference = readReference(part?.kind === "csv" ? (part.reference?.text ?? "") : "");
    rows.push(rowOf(output.name ?? "", output.value.text, "", output.note, reference, book));
  }
  return rows;
}

function lineInputs({ tree, output }: BookLine, book: Book): readonly InputRow[] {
  if (tree.kind !== "definition") return [];
  const { value, name, columns } = tree;
  const nominal = value.kind === "scatter" ? value.nominal : value;
  if (nominal.kind === "record") return fieldInputs(name.name, nominal.fields, columns, book);
  if (!isLiteral(value) || output.value === undefined) return [];
  const spread = value.kind === "scatter" ? ` ${spreadText(value)}` : "";
  const { unit } = output.value;
  const bounds = tree.within === undefined ? "" : `${boundText(tree.within.from, unit, book)} to ${boundText(tree.within.to, unit, book)}`;
  return [
    {
      ...rowOf(name.name, `${output.value.text}${spread}`, bounds, output.note, readReference(columns?.reference ?? ""), book),
      ...numbers(name.name, book),
    },
  ];
}

/** Literal fields of a record that is written out; those that name another value are inputs elsewhere. */
function fieldInputs(path: string, fields: readonly FieldValue[], columns: Columns | undefined, book: Book): readonly InputRow[] {
  return fields.flatMap((field): readonly InputRow[] => {
    const own = field.columns ?? columns;
    const name = `${path}.${field.name.name}`;
    if (field.value.kind === "record") return fieldInputs(name, field.value.fields, own, book);
    if (field.value.kind === "list" && field.value.items.some((item) => item.kind === "record"))
      return field.value.items.flatMap((item, i) =>
        item.kind === "record" ? fieldInputs(`${name}[${i + 1}]`, item.fields, own, book) : [],
      );
    if (!isLiteral(field.value)) return [];
    return [
      {
        ...rowOf(name, literalText(field.value), "", field.columns?.note ?? "", readReference(own?.reference ?? ""), book),
        ...numbers(name, book),
      },
    ];
  });
}

/** With units and signs as they are set. */
export const literalText = (expression: Expression): string => typesetText(typeset(expressionMaths(expression))).trim();

/** A bound in the unit that the value is shown in, so that the two can be compared. */
function boundText(bound: Expression, unit: string, book: Book): string {
  const { result } = book.session.evaluate(printExpression(bound), { file: book.file, ...(unit === "" ? {} : { as: unit }) });
  return result?.shown.text ?? literalText(bound);
}

function spreadText(value: Extract<Expression, { kind: "scatter" }>): string {
  const { spread } = value;
  switch (spread.kind) {
    case "limits":
      return `± ${literalText(spread.by)}`;
    case "unequal":
      return `+${literalText(spread.plus)} / −${literalText(spread.minus)}`;
    case "share":
      return `± ${literalText(spread.share)} of ${literalText(spread.of)}`;
    case "deviation":
      return `~ ${literalText(spread.by)}${spread.count === undefined ? "" : ` of ${literalText(spread.count)}`}`;
  }
}

function numbers(name: string, book: Book): Partial<InputRow> {
  const { result } = book.session.evaluate(name, { file: book.file });
  if (result === undefined || result.si === undefined) return {};
  const { si, inUnit, unit, ucum } = result;
  return {
    si,
    ...(inUnit === undefined ? {} : { inUnit }),
    ...(unit === undefined ? {} : { unit }),
    ...(ucum === undefined ? {} : { ucum }),
  };
}

function rowOf(name: string, value: string, bounds: string, note: string, reference: ReferenceColumn, book: Book): InputRow {
  const unverified = reference.level === "assumed" && !reference.confirmed;
  return { name, value, bounds, note, reference, citation: book.cite(reference), unverified };
}

/** A number, text or truth, signed or not, or a list of such: what is put in and not computed. */
export function isLiteral(value: Expression): boolean {
  switch (value.kind) {
    case "number":
    case "text":
    case "truth":
    case "none":
      return true;
    case "unary":
      return isLiteral(value.of);
    case "list":
      return value.items.every(isLiteral);
    case "scatter":
      return isLiteral(value.nominal);
    default:
      return false;
  }
}

export type ResultRow = { readonly output: LineOutput; readonly name: string };

/** Definitions that are computed. */
export function computedLines(book: Book): readonly BookLine[] {
  return [...book.lines.values()].filter(({ tree, output }) => {
    if (tree.kind !== "definition" || output.value === undefined) return false;
    const nominal = tree.value.kind === "scatter" ? tree.value.nominal : tree.value;
    return nominal.kind !== "record" && !isLiteral(tree.value);
  });
}
