// Records as tables: one that is written out field by field, and one that was computed.

import { readReference } from "../notebook/index.ts";
import { type Columns, type Expression, type FieldDeclaration, type FieldValue, printExpression } from "../syntax/index.ts";
import type { Book, BookLine } from "./book.ts";
import { headCell } from "./grid-tables.ts";
import { cell, emphasis, nameText, text } from "./inlines.ts";
import { isLiteral, literalText } from "./inputs.ts";
import type { Cell, Column, TableBlock } from "./model.ts";
import { isRecordList, isRecordText, recordName, wholeValue } from "./shown-value.ts";

/** A record written out: a row a field, those of records inside it by their path. */
export function recordTable(
  line: BookLine,
  name: string,
  fields: readonly FieldValue[],
  columns: Columns | undefined,
  book: Book,
): TableBlock {
  const { output } = line;
  const rows = fieldRows(name, "", fields, columns, book);
  const faults = output.diagnostics.filter(({ severity }) => severity === "fault").map(({ message }) => message);
  const title = [`${name}: ${output.type ?? "record"}`, output.note, ...faults].filter((part) => part !== "").join("; ");
  return {
    kind: "table",
    id: `record-${name}`,
    caption: title,
    columns: [
      { head: cell("Field"), align: "left", share: 2 },
      { head: cell("Value"), align: "left", share: 2.4 },
      { head: cell("Note"), align: "left", share: 3 },
      { head: cell("Reference"), align: "left", share: 1.8 },
    ],
    rows,
  };
}

function fieldRows(
  name: string,
  path: string,
  fields: readonly FieldValue[],
  columns: Columns | undefined,
  book: Book,
): readonly (readonly Cell[])[] {
  return fields.flatMap((field): readonly (readonly Cell[])[] => {
    const own = field.columns ?? columns;
    const at = path === "" ? field.name.text : `${path}.${field.name.text}`;
    if (field.value.kind === "record") {
      const head = [cell(at), cell(printExpression(field.value.type)), noteCell(field.columns), []];
      return [head, ...fieldRows(name, at, field.value.fields, own, book)];
    }
    const items = field.value.kind === "list" ? field.value.items : [];
    if (items.some((item) => item.kind === "record"))
      return items.flatMap((item, i) => {
        if (item.kind !== "record") return [[cell(`${at}[${i + 1}]`), cell(printExpression(item)), [], []]];
        const head = [cell(`${at}[${i + 1}]`), cell(printExpression(item.type)), noteCell(field.columns), []];
        return [head, ...fieldRows(name, `${at}[${i + 1}]`, item.fields, own, book)];
      });
    const written = printExpression(field.value);
    const cited = cell(own?.reference === undefined ? "" : book.cite(readReference(own.reference)));
    if (isLiteral(field.value)) return [[cell(at), cell(literalText(field.value)), noteCell(field.columns), cited]];
    const { result } = book.session.evaluate(`${name}.${at}`, { file: book.file });
    const shown = result?.shown.text ?? "";
    return [[cell(at), fieldValue(field.value, `${name}.${at}`, shown, written, book), noteCell(field.columns), cited]];
  });
}

/** What a field comes to, and below it how it is written; a record that has a name of its own is told where that name is. */
function fieldValue(value: Expression, path: string, shown: string, written: string, book: Book): Cell {
  if (shown === "" || same(shown, written)) return cell(written);
  const below: Cell = [{ kind: "break" }, emphasis(written)];
  // A list of names that each have their own place.
  if (value.kind === "list" && value.items.every((item) => item.kind === "name") && isRecordList(shown)) return [text(written)];
  if (value.kind === "name" && (isRecordText(shown) || isRecordList(shown)))
    return [text(written), { kind: "break" }, emphasis(recordName(shown))];
  return [...wholeValue(path, shown, book), ...below];
}

const noteCell = (columns: Columns | undefined): Cell =>
  columns?.note === undefined || columns.note === "" ? [] : [emphasis(columns.note)];

const bare = (written: string): string => written.replace(/["\s]/g, "").replaceAll("*", "·").replaceAll("^2", "²").replaceAll("^3", "³");
const same = (shown: string, written: string): boolean => bare(shown) === bare(written);

/** The fields of a computed record, with what its declaration says of each. */
export function heldFields({ output, tree }: BookLine, book: Book): readonly TableBlock[] {
  const name = tree.kind === "definition" ? tree.name.name : "";
  if (name === "" || output.value === undefined || !isRecordText(output.value.text)) return [];
  const { result } = book.session.evaluate(name, { file: book.file });
  const value = result?.value as { readonly record?: string } | undefined;
  const fields = value?.record === undefined ? undefined : declaredFields(value.record, book);
  if (fields === undefined) return [];
  const rows = fields.flatMap(({ name: field, columns }): readonly (readonly Cell[])[] => {
    const shown = book.session.evaluate(`${name}.${field.name}`, { file: book.file }).result?.shown.text ?? "";
    if (shown === "" || shown === "none") return [];
    // A list of records has its rows in a table of their own.
    if (output.grid !== undefined && isRecordList(shown)) return [];
    return [[headCell(field.name, ""), wholeValue(`${name}.${field.name}`, shown, book), noteCell(columns)]];
  });
  const columns: readonly Column[] = [
    { head: cell("Field"), align: "left", share: 1.2 },
    { head: cell("Value"), align: "left", share: 3 },
    { head: cell("What it is"), align: "left", share: 3 },
  ];
  return rows.length === 0
    ? []
    : [{ kind: "table", id: `fields-${name}`, caption: `${nameText(name)}: ${output.type ?? "record"}`, columns, rows }];
}

/** Fields as the record is declared, in the library or in this notebook. */
function declaredFields(record: string, book: Book): readonly FieldDeclaration[] | undefined {
  const short = record.slice(record.lastIndexOf("#") + 1);
  const own = [...book.lines.values()].find(({ tree }) => tree.kind === "recordDeclaration" && tree.name.name === short)?.tree;
  const tree = own ?? book.index.statement(short)?.tree;
  return tree?.kind === "recordDeclaration" ? tree.fields : undefined;
}
