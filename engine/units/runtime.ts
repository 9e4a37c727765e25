// The definitions of mathjs's unit runtime, read once: float factor and dimension vector of a unit by its name there.

// The package offers its unit class only through its whole entry, which takes seconds to load in Node; this file of it takes milliseconds.
import { createUnitClass } from "../../node_modules/mathjs/lib/esm/type/unit/Unit.js";
import { broken } from "../base/index.ts";
import { type Dimension, dimensionFrom } from "./dimension.ts";
import { rational } from "./rational.ts";

/** mathjs counts its vectors in this order; "ANGLE" is no base of ours (the kind tells angles apart), "BIT" is not used. */
const bases = ["mass", "length", "time", "current", "temperature", "luminosity", "amount"] as const;

/** What mathjs says of a unit: its float factor to SI and its dimension. Throws for a name that mathjs does not have. */
export function runtimeDefinition(name: string): { readonly value: number; readonly dimension: Dimension } {
  const unit = unitClass.UNITS[name];
  if (unit === undefined || typeof unit.value !== "number") return broken(`mathjs has no plain unit ${name}`);
  const vector = unit.dimensions;
  return { value: unit.value, dimension: dimensionFrom(bases.map((base, i) => [base, rational(vector[i] ?? 0)])) };
}

const unused = (): never => broken("mathjs arithmetic was called");

/** Stands for mathjs's fraction class, with which its table writes 5/9; no unit we read from it is made so. */
const fraction = (n: number, d: number): { readonly n: number; readonly d: number } => ({ n, d });

const operations = [
  "addScalar",
  "subtractScalar",
  "multiplyScalar",
  "divideScalar",
  "pow",
  "abs",
  "fix",
  "round",
  "equal",
  "isNumeric",
  "format",
];

const unitClass = createUnitClass({
  ...Object.fromEntries(operations.map((name) => [name, unused])),
  config: { number: "number" },
  number: unused,
  BigNumber: unused,
  Complex: { I: undefined },
  // Called with `new`, so it must not be an arrow.
  Fraction: function Fraction(n: number, d: number) {
    return fraction(n, d);
  },
});
