// What the rows of the unit table say of one unit, and the words that make rows.

import { decimalFactor, divideFactor, type factor, multiplyFactor } from "./exact.ts";
import type { Kind } from "./model.ts";

type Factor = ReturnType<typeof factor>;

/**
 * One unit. `symbol` is its normal spelling; `aliases` are other symbols, `words` its spelled names (which take the
 * spelled prefixes). The factor and dimension come from mathjs's unit of the name `from`, or are `exact`, in the
 * dimension of the unit `like`, named before it. Every number not from mathjs says its source in `source`.
 */
export interface Definition {
  readonly symbol: string;
  readonly aliases?: readonly string[];
  readonly words?: readonly string[];
  /** Prefixes that the trade uses with it, apart by spaces. */
  readonly prefixes?: string;
  readonly kind?: Kind;
  readonly from?: string;
  readonly like?: string;
  readonly exact?: Factor;
  /** Offset of a temperature point, in the unit itself. */
  readonly offset?: Factor;
  readonly source?: string;
  readonly description: string;
  /** UCUM factors: code and exponent. */
  readonly ucum: readonly (readonly [code: string, exponent: number])[];
}

/** The constants that the derived factors below are made of, each exact by definition. */
const pound = decimalFactor("0.45359237"); // kg, avoirdupois; International Yard and Pound Agreement, 1959
const inch = decimalFactor("0.0254"); // m; the same agreement
const gravity = decimalFactor("9.80665"); // m/s^2, standard acceleration; 3rd CGPM, 1901

const foot = multiplyFactor(inch, decimalFactor("12"));
const squareInch = multiplyFactor(inch, inch);
const poundForce = multiplyFactor(pound, gravity);
const cubicInch = multiplyFactor(squareInch, inch);

/** Exact factors of the inch and gravitational units, all from the three constants. */
export const derived = {
  poundForce,
  ounceForce: divideFactor(poundForce, decimalFactor("16")),
  kip: multiplyFactor(poundForce, decimalFactor("1000")),
  tonForce: multiplyFactor(poundForce, decimalFactor("2000")),
  poundal: multiplyFactor(pound, foot),
  slug: divideFactor(poundForce, foot),
  psi: divideFactor(poundForce, squareInch),
  ksi: multiplyFactor(divideFactor(poundForce, squareInch), decimalFactor("1e3")),
  megapsi: multiplyFactor(divideFactor(poundForce, squareInch), decimalFactor("1e6")),
  horsepower: multiplyFactor(multiplyFactor(poundForce, foot), decimalFactor("550")),
  kilogramForce: gravity,
  gramForce: divideFactor(gravity, decimalFactor("1000")),
  acre: multiplyFactor(multiplyFactor(foot, foot), decimalFactor("43560")),
  rod: multiplyFactor(foot, decimalFactor("16.5")),
  gallon: multiplyFactor(cubicInch, decimalFactor("231")),
  barrel: multiplyFactor(cubicInch, decimalFactor("9702")), // 42 gallons
  tablespoon: divideFactor(multiplyFactor(cubicInch, decimalFactor("231")), decimalFactor("256")),
  teaspoon: divideFactor(multiplyFactor(cubicInch, decimalFactor("231")), decimalFactor("768")),
} as const;
