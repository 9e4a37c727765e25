// Exponents that are written out: 2, -1, 0.5, (1/2), (-2/3).

import type { Expression } from "../syntax/index.ts";
import { type Rational, rational, rationalFromDecimal } from "../units/index.ts";

/** The exact value of a literal exponent, or undefined for anything that is computed from names. */
export function literalExponent(expression: Expression): Rational | undefined {
  if (expression.kind === "number") return expression.unit === undefined ? rationalFromDecimal(expression.digits) : undefined;
  if (expression.kind === "unary" && expression.operator !== "not") {
    const of = literalExponent(expression.of);
    if (of === undefined) return undefined;
    return expression.operator === "-" ? rational(-of.n, of.d) : of;
  }
  if (expression.kind === "binary" && expression.operator === "/") {
    const [top, bottom] = [literalExponent(expression.left), literalExponent(expression.right)];
    if (top === undefined || bottom === undefined || bottom.n === 0) return undefined;
    return rational(top.n * bottom.d, top.d * bottom.n);
  }
  return undefined;
}
