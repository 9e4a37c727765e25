// Kinds: what a dimension cannot tell apart, and how they go through products, quotients and powers.

import { type Dimension, dimensionFrom, dimensionless, divide, power } from "./dimension.ts";
import type { Kind, Rational } from "./model.ts";
import { rational } from "./rational.ts";

const perTime = dimensionFrom([["time", rational(-1)]]);
const time = power(perTime, rational(-1));
const moment = dimensionFrom([
  ["mass", rational(1)],
  ["length", rational(2)],
  ["time", rational(-2)],
]);

/** The kinds of one dimension that exclude each other; "any" stands for each of them. Empty: the dimension has one meaning. */
export function kindsOf(dimension: Dimension): readonly Kind[] {
  if (dimension === dimensionless) return ["number", "angle"];
  if (dimension === moment) return ["torque", "energy"];
  if (dimension === perTime) return ["frequency", "rotational speed"];
  return [];
}

/** The kind of both, or undefined when they do not agree. For two of one dimension. */
export function kindsAgree(a: Kind, b: Kind): Kind | undefined {
  if (a === b || b === "any") return a;
  return a === "any" ? b : undefined;
}

/** A plain ratio ("any") may be an angle, so a side that an angle would turn into another kind becomes open. */
const scaledByRatio = (kind: Kind, opened: readonly Kind[]): Kind => (opened.includes(kind) ? "any" : kind);

export function kindOfProduct(a: Dimension, kindA: Kind, b: Dimension, kindB: Kind): Kind {
  if (kindA === "number") return kindB;
  if (kindB === "number") return kindA;
  if (kindA === "angle" || kindB === "angle") {
    const other = kindA === "angle" ? kindB : kindA;
    if (other === "torque") return "energy";
    return other === "frequency" ? "rotational speed" : "any";
  }
  if (a === dimensionless) return scaledByRatio(kindB, ["torque", "frequency"]);
  if (b === dimensionless) return scaledByRatio(kindA, ["torque", "frequency"]);
  // What turns for a time has turned by an angle; every other product of dimensions fits each kind.
  const turned = (kindA === "rotational speed" && b === time) || (kindB === "rotational speed" && a === time);
  return turned ? "angle" : "any";
}

export function kindOfQuotient(a: Dimension, kindA: Kind, b: Dimension, kindB: Kind): Kind {
  if (kindB === "number") return kindA;
  if (kindB === "angle") return kindA === "energy" ? "torque" : "any";
  if (b === dimensionless) return scaledByRatio(kindA, ["energy", "rotational speed", "angle", "number"]);
  return kindA === "angle" && divide(a, b) === perTime ? "rotational speed" : "any";
}

export function kindOfPower(_dimension: Dimension, kind: Kind, exponent: Rational): Kind {
  if (kind === "number" || (exponent.n === 1 && exponent.d === 1)) return kind;
  return exponent.n === 0 ? "number" : "any";
}
