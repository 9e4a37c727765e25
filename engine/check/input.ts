// What counts as an input: a right side that is a signed literal, a text or truth, or a list, table or record of such.

import type { Expression } from "../syntax/index.ts";
import { dimensionless, type Unit } from "../units/index.ts";
import type { Core } from "./core.ts";

export function isInput(expression: Expression): boolean {
  switch (expression.kind) {
    case "number":
    case "text":
    case "truth":
    case "none":
    case "table":
      return true;
    case "unary":
      return expression.operator !== "not" && expression.of.kind === "number";
    case "scatter":
      return isInput(expression.nominal);
    case "list":
      return expression.items.every(isInput);
    case "record":
      return expression.fields.every((field) => isInput(field.value));
    default:
      return false;
  }
}

/** The unit a literal was written in, through a sign, a spread or a list of such. */
export function literalUnit(core: Core): Unit | undefined {
  switch (core.op) {
    case "constant":
      // A unit that cancels to a bare factor (s·kHz) is not shown: the reader would take the magnitude for the number.
      return core.unit?.dimension === dimensionless && core.unit.kind === "any" ? undefined : core.unit;
    case "negate":
      return literalUnit(core.of);
    case "scatter":
      return literalUnit(core.nominal);
    case "list":
      return core.items[0] === undefined ? undefined : literalUnit(core.items[0]);
    default:
      return undefined;
  }
}
