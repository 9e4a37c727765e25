// Tables: literals by their heads, rows kept by a condition, groups with their own columns.

import { faults } from "../diagnostics/index.ts";
import type { Expression, GroupUse, TableHead, TableLiteral, WhereUse } from "../syntax/index.ts";
import { literal, type Unit } from "../units/index.ts";
import { fits } from "./agree.ts";
import { type Context, constant, faulty, newSlot, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { typeOfHead, unitOfHead } from "./read-type.ts";
import { say } from "./say.ts";
import { inferTruth } from "./truth.ts";
import type { Type } from "./types.ts";

type TableType = Extract<Type, { type: "table" }>;

export function inferTable(expression: TableLiteral, context: Context): Core {
  const types = expression.heads.map((head) => typeOfHead(head, context));
  const units = expression.heads.map((head) => (head.unit === undefined ? undefined : unitOfHead(head, context)));
  const columns = expression.heads.map((head, i) =>
    expression.rows.map((row) => cell(row[i], head, types[i] ?? { type: "unknown" }, units[i], context)),
  );
  const type: TableType = {
    type: "table",
    columns: expression.heads.map((head, i) => ({ name: head.name.text, type: types[i] ?? { type: "unknown" } })),
  };
  return node(context, { op: "table", heads: expression.heads.map((head) => head.name.text), columns, range: expression.range, type });
}

/** A cell is a literal: a bare number in the unit of its head, a literal with a unit of its own, a text, a truth, or empty. */
function cell(expression: Expression | undefined, head: TableHead, type: Type, unit: Unit | undefined, context: Context): Core {
  const at = expression?.range ?? head.range;
  if (expression === undefined || expression.kind === "none") return constant(at, { type: "maybe", of: type }, null);
  const number = expression.kind === "unary" && expression.operator === "-" ? expression.of : expression;
  if (number.kind === "number" && number.unit === undefined && unit !== undefined) {
    return constant(at, type, literal((number === expression ? "" : "-") + number.digits, unit), unit);
  }
  if (!isLiteral(expression)) return faulty(context, at, faults.lookupIsTable(at, {}));
  const core = context.infer(expression, context, type);
  if (core.type.type === "unknown" || type.type === "unknown") return core;
  if ("type" in fits(context, core.type, type)) return core;
  const advice = type.type === "text" ? "Put it in quotes, or give the head a unit such as [1]." : undefined;
  return faulty(context, at, faults.cellDoesNotFit(at, { column: head.name.text, wanted: say(type), given: say(core.type), advice }));
}

const isLiteral = (expression: Expression): boolean =>
  expression.kind === "number" ||
  expression.kind === "text" ||
  expression.kind === "truth" ||
  expression.kind === "hole" ||
  (expression.kind === "unary" && expression.operator !== "not" && isLiteral(expression.of));

function tableOf(expression: Expression, context: Context, place: string): { readonly core: Core; readonly type: TableType } | undefined {
  const core = context.infer(expression, context);
  if (core.type.type === "table") return { core, type: core.type };
  if (core.type.type !== "unknown")
    report(context, faults.wrongType(expression.range, { place, wanted: "a table", given: say(core.type) }));
  return undefined;
}

export function inferWhere(expression: WhereUse, context: Context): Core {
  const table = tableOf(expression.of, context, "where");
  if (table === undefined) return faulty(context, expression.range);
  const names = table.type.columns.map((column) => column.name);
  const slots = names.map(() => newSlot(context));
  const inner: Context = { ...context, columns: { names, types: table.type.columns.map((column) => column.type), slots } };
  const condition = inferTruth(expression.condition, inner, "where");
  return node(context, { op: "where", of: table.core, columns: names, slots, condition, range: expression.range, type: table.type });
}

export function inferGroup(expression: GroupUse, context: Context): Core {
  const table = tableOf(expression.of, context, "group");
  if (table === undefined) return faulty(context, expression.range);
  const names = table.type.columns.map((column) => column.name);
  const by: { readonly name: string; readonly type: Type }[] = [];
  for (const key of expression.by) {
    const column = table.type.columns.find((candidate) => candidate.name === key.name || candidate.name === key.text);
    if (column === undefined) report(context, faults.noColumn(key.range, { name: key.text }));
    else by.push(column);
  }
  const slots = names.map(() => newSlot(context));
  const inner: Context = {
    ...context,
    columns: { names, types: table.type.columns.map((column) => ({ type: "list", of: column.type })), slots },
  };
  const fields = expression.fields.map((field) => ({ name: field.name.text, value: inner.infer(field.value, inner) }));
  const columns = [...by, ...fields.map((field) => ({ name: field.name, type: field.value.type }))];
  return node(context, {
    op: "group",
    of: table.core,
    by: by.map((column) => column.name),
    columns: names,
    slots,
    fields,
    range: expression.range,
    type: { type: "table", columns },
  });
}
