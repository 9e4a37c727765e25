// Types as written: quantity names of ISO 80000, units in brackets, lists, Maybe, tables, choices, records, families.

import { nearest } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import type { TableHead, TypeExpression } from "../syntax/index.ts";
import type { Unit } from "../units/index.ts";
import { quantityNames } from "../units/index.ts";
import { type Context, report } from "./context.ts";
import { dottedName } from "./infer-name.ts";
import { readUnit, typeOfUnit } from "./infer-number.ts";
import type { Type } from "./types.ts";

const plain: Readonly<Record<string, Type>> = { Text: { type: "text" }, Truth: { type: "truth" }, Figure: { type: "figure" } };

export function readType(expression: TypeExpression, context: Context): Type {
  switch (expression.kind) {
    case "unit": {
      const unit = readUnit(expression.unit, context, true);
      return unit === undefined ? { type: "unknown" } : typeOfUnit(unit);
    }
    case "list":
    case "maybe":
      return { type: expression.kind, of: readType(expression.of, context) };
    case "choices":
      return { type: "text", choices: expression.values.map((value) => value.value) };
    case "columns":
      return { type: "table", columns: expression.heads.map((head) => ({ name: head.name.name, type: typeOfHead(head, context) })) };
    case "hole":
      return { type: "unknown" };
    case "named":
      return readNamed(expression, context);
  }
}

/** A column's type comes from its head alone; without a unit it is text. */
export function typeOfHead(head: TableHead, context: Context): Type {
  if (head.unit === undefined) return { type: "text" };
  const unit = unitOfHead(head, context);
  return unit === undefined ? { type: "unknown" } : typeOfUnit(unit);
}

export const unitOfHead = (head: TableHead, context: Context): Unit | undefined =>
  head.unit === undefined ? undefined : readUnit(head.unit, context, true);

function readNamed(expression: Extract<TypeExpression, { kind: "named" }>, context: Context): Type {
  const name = dottedName(expression.name, context);
  const word = name ?? "";
  if (expression.name.kind === "name") {
    const simple = plain[word];
    if (simple !== undefined) return simple;
    const quantity = quantityNames.get(word);
    if (quantity !== undefined && context.scope.find(word) === undefined) {
      return quantity.point ? { type: "point" } : { type: "quantity", dimension: quantity.dimension, kind: quantity.kind };
    }
    // One of the currencies: its dimension is open.
    if (word === "Money") return { type: "quantity", dimension: context.solver.fresh(), kind: "any" };
  }
  const found = name === undefined ? undefined : context.scope.find(name);
  if (found?.entry.entry === "record")
    return { type: "record", name: found.entry.name, arguments: found.entry.variables.map(() => context.solver.fresh()) };
  if (found?.entry.entry === "family") return { type: "family", name: found.entry.name };
  if (found?.entry.entry === "faulty") return { type: "unknown" };
  const near = nearest(word, [...quantityNames.keys(), ...Object.keys(plain), "Money", ...context.scope.names()]);
  const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...expression.range, insert: near }] }];
  report(context, faults.unknownType(expression.range, { name: word === "" ? "this" : word, nearest: near }, { mends }));
  return { type: "unknown" };
}
