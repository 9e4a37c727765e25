// Walking expressions: what stands directly inside one, and everything below it, outer before inner.

import { assertNever } from "../base/index.ts";
import type { Expression, FieldValue, Scatter } from "./tree.ts";

const valuesOf = (fields: readonly FieldValue[]): readonly Expression[] => fields.map((field) => field.value);

function spreadParts(spread: Scatter["spread"]): readonly Expression[] {
  switch (spread.kind) {
    case "limits":
      return [spread.by];
    case "unequal":
      return [spread.plus, spread.minus];
    case "share":
      return [spread.share, spread.of];
    case "deviation":
      return spread.count === undefined ? [spread.by] : [spread.by, spread.count];
  }
}

const and = (first: readonly Expression[], last: Expression | undefined): readonly Expression[] =>
  last === undefined ? first : [...first, last];

/** The expressions directly inside one, in the order of the text. Callees and the types of records are among them. */
export function children(node: Expression): readonly Expression[] {
  switch (node.kind) {
    case "number":
    case "text":
    case "truth":
    case "none":
    case "name":
    case "column":
    case "hole":
      return [];
    case "member":
    case "unary":
      return [node.of];
    case "binary":
      return [node.left, node.right];
    case "compare":
      return node.operands;
    case "if":
      return [node.condition, node.then, node.otherwise];
    case "call":
      return [node.callee, ...node.arguments.map((argument) => argument.value)];
    case "list":
      return node.items;
    case "comprehension":
      return and([node.element, node.source], node.condition);
    case "accumulate":
      return [node.start, node.source, node.body];
    case "index":
      return [node.of, node.index];
    case "range":
      return and([node.from, node.to], node.step);
    case "record":
      return [node.type, ...valuesOf(node.fields)];
    case "with":
    case "group":
      return [node.of, ...valuesOf(node.fields)];
    case "table":
      return node.rows.flat();
    case "where":
      return [node.of, node.condition];
    case "match":
      return [node.of, ...node.arms.map((arm) => arm.body)];
    case "scatter":
      return [node.nominal, ...spreadParts(node.spread)];
    case "study":
      return [...node.subjects, ...node.axes.map((axis) => axis.values)];
    case "solve":
      return [node.from, node.to, node.condition];
    default:
      return assertNever(node);
  }
}

/** Calls `visitor` on the expression and all inside it, outer before inner; `false` keeps it from going inside. */
export function visit(node: Expression, visitor: (node: Expression) => boolean | undefined): void {
  if (visitor(node) === false) return;
  for (const child of children(node)) visit(child, visitor);
}
