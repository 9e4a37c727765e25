// Tables, lists of records and ledgers as rows of shown cells.

import { type Entry, ledgerFields, type Type } from "../check/index.ts";
import {
  joinMark,
  type Mark,
  type Marks,
  ownMark,
  type RecordValue,
  type TableValue,
  unmarked,
  type Value,
  wholeMark,
} from "../run/index.ts";
import { showUtilisation, type Unit } from "../units/index.ts";
import { type ShowOptions, showValue } from "./show.ts";
import type { Grid, GridColumn, GridRow, Shown, ShownMarks } from "./snapshot.ts";

const ROWS = 200;

interface Column {
  readonly head: string;
  readonly type: Type;
  readonly unit: Unit | undefined;
}

type Row = { readonly values: readonly Value[]; readonly mark: Mark };

/** The grid of a value, undefined where it has no rows; `shownMarks` reduces a mark to what a line shows. */
export function gridOf(
  value: Value,
  type: Type,
  marks: Marks,
  options: ShowOptions,
  shownMarks: (marks: Marks) => ShownMarks | undefined,
): Grid | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (Array.isArray(value)) return ofRecords(value as readonly Value[], type, marks, options, shownMarks);
  const held = value as RecordValue | TableValue | { readonly shape: "figure" | "formula" };
  if (held.shape === "table") return ofTable(held, type, marks, options, shownMarks);
  if (held.shape !== "record") return undefined;
  const fields = options.record(held.record)?.fields ?? [];
  const lists = fields.flatMap((field, at) => (isRecords(field.type) ? [at] : []));
  const [at] = lists;
  const field = fields[at ?? -1];
  if (lists.length !== 1 || at === undefined || field === undefined) return undefined;
  const items = held.fields[at] as readonly Value[];
  return ofRecords(items, field.type, marks.shape === "record" ? (marks.fields[at] ?? marks.own) : marks, options, shownMarks);
}

const isRecords = (type: Type): type is Extract<Type, { type: "list" }> => type.type === "list" && type.of.type === "record";

function ofRecords(
  items: readonly Value[],
  type: Type,
  marks: Marks,
  options: ShowOptions,
  shownMarks: (marks: Marks) => ShownMarks | undefined,
): Grid | undefined {
  if (!isRecords(type) || type.of.type !== "record") return undefined;
  const entry = options.record(type.of.name);
  if (entry === undefined) return undefined;
  const order = columnOrder(entry);
  const columns = order.map((at): Column => {
    const field = entry.fields[at];
    return { head: field?.name ?? "", type: field?.type ?? { type: "unknown" }, unit: field?.unit };
  });
  const rows = items.slice(0, ROWS).map((item, i): Row => {
    const { fields } = item as RecordValue;
    return {
      values: order.map((at) => fields[at] ?? null),
      mark: markOfRow(marks.shape === "list" ? (marks.items[i] ?? marks.own) : marks, order),
    };
  });
  return made(columns, rows, items.length, options, shownMarks);
}

/** Which fields are shown and in which order: those of a mode as a reviewer reads them, of any other record all. */
function columnOrder(entry: Extract<Entry, { entry: "record" }>): readonly number[] {
  const known = ledgerFields(entry.fields.map((field) => field.name));
  return known ?? entry.fields.map((_, at) => at);
}

/** What reached the shown fields alone. */
function markOfRow(marks: Marks, order: readonly number[]): Mark {
  if (marks.shape !== "record") return wholeMark(marks);
  return order.reduce<Mark>((all, at) => joinMark(all, wholeMark(marks.fields[at] ?? unmarked)), marks.own);
}

function ofTable(
  table: TableValue,
  type: Type,
  marks: Marks,
  options: ShowOptions,
  shownMarks: (marks: Marks) => ShownMarks | undefined,
): Grid {
  const types = type.type === "table" ? type.columns : [];
  const columns = table.heads.map((head, at): Column => ({ head, type: types[at]?.type ?? { type: "unknown" }, unit: undefined }));
  const count = Math.min(table.rows, ROWS);
  const rows = Array.from({ length: count }, (_, row): Row => {
    const mark =
      marks.shape === "table"
        ? marks.columns.reduce<Mark>((all, column) => joinMark(all, wholeMark(column[row] ?? unmarked)), marks.own)
        : ownMark(marks);
    return { values: table.columns.map((column) => column[row] ?? null), mark };
  });
  return made(columns, rows, table.rows, options, shownMarks);
}

function made(
  columns: readonly Column[],
  rows: readonly Row[],
  count: number,
  options: ShowOptions,
  shownMarks: (marks: Marks) => ShownMarks | undefined,
): Grid {
  const told = columns.map((_, at) => at).filter((at) => rows.some(({ values }) => says(values[at] ?? null)));
  const shown = rows.map(({ values }) => told.map((at) => cell(values[at] ?? null, columns[at] as Column, options)));
  const heads = told.map((at, place): GridColumn => {
    const units = [...new Set(shown.flatMap((cells) => (cells[place]?.number === "" ? [] : [cells[place]?.unit ?? ""])))];
    const numeric = shown.some((cells) => cells[place]?.number !== "");
    return { head: columns[at]?.head ?? "", unit: units.length === 1 ? (units[0] ?? "") : "", numeric };
  });
  return {
    columns: heads,
    rows: shown.map((cells, i): GridRow => {
      const marks = shownMarks(rows[i]?.mark ?? unmarked);
      return {
        cells: cells.map((one, at) => (heads[at]?.unit === "" ? one : { ...one, text: one.number === "" ? one.text : one.number })),
        ...(marks === undefined ? {} : { marks }),
      };
    }),
    count,
  };
}

/** An empty text, a missing value and a list without items say nothing. */
const says = (value: Value): boolean => value !== null && value !== "" && !(Array.isArray(value) && value.length === 0);

const ratio = (value: number): Pick<Shown, "text" | "number"> => ({ text: showUtilisation(value), number: showUtilisation(value) });

const nothing: Shown = { text: "", number: "", unit: "", full: "" };

/** A record that only wraps one quantity is shown as that quantity, so that amounts of unlike kinds stand in one column. */
function cell(value: Value, column: Column, options: ShowOptions): Shown {
  if (value === null) return nothing;
  if (column.head === "utilisation" && typeof value === "number")
    return { ...showValue(value, column.type, column.unit, options), ...ratio(value) };
  if (typeof value === "object" && !Array.isArray(value) && (value as RecordValue).shape === "record") {
    const { record, fields } = value as RecordValue;
    const field = options.record(record)?.fields[0];
    if (fields.length === 1 && field !== undefined) return showValue(fields[0] ?? null, field.type, field.unit, options);
  }
  return showValue(value, column.type, column.unit, options);
}
