// What to do about two dimensions or kinds that do not fit, where the trade has a usual way out.

import { isCurrency } from "./currency.ts";
import { type Dimension, dimensionless, divide, power } from "./dimension.ts";
import { kindsAgree } from "./kinds.ts";
import type { Kind } from "./model.ts";
import { known } from "./quantities.ts";
import { rational } from "./rational.ts";

const acceleration = known("m/s^2").dimension;
const perAcceleration = power(acceleration, rational(-1));
const temperature = known("K").dimension;
const charge = known("C").dimension;
const capacitance = known("F").dimension;

const massSymbol = /(?<![\p{L}])(lb|oz|kg|g|mg|t)(?![\p{L}])/u;
const forceSymbols: Readonly<Record<string, string>> = { lb: "lbf", oz: "ozf", kg: "kgf", g: "gf", mg: "gf", t: "kN" };

/**
 * A sentence fragment, or undefined when there is nothing better than naming both sides. The unit texts, where known, are those
 * written on each side. Mass against force (in any product) offers the force unit or standard gravity.
 */
export function clashAdvice(a: Dimension, b: Dimension, unitTextA?: string, unitTextB?: string): string | undefined {
  const ratio = divide(a, b);
  if (ratio === acceleration || ratio === perAcceleration) {
    const massText = ratio === perAcceleration ? unitTextA : unitTextB;
    const symbol = massText === undefined ? undefined : massSymbol.exec(massText)?.[1];
    const swap = symbol === undefined ? "lbf or kgf for the force" : `${forceSymbols[symbol]} for ${symbol}`;
    return `one side counts mass, the other force: write ${swap}, or multiply the mass by standard gravity g_n`;
  }
  if ((a === temperature && b === charge) || (a === charge && b === temperature)) return "C is the coulomb: write degC for Celsius";
  if ((a === temperature && b === capacitance) || (a === capacitance && b === temperature))
    return "F is the farad: write degF for Fahrenheit";
  const currencies = [a, b].map((d) => d.exponents.map(([base]) => base).find(isCurrency));
  if (currencies[0] !== undefined && currencies[1] !== undefined && currencies[0] !== currencies[1]) {
    return `each currency is a dimension of its own: multiply by a rate of yours, in ${currencies[0]}/${currencies[1]}`;
  }
  if (a === dimensionless || b === dimensionless) {
    const text = a === dimensionless ? unitTextB : unitTextA;
    return text === undefined || text === ""
      ? "a bare number has no unit: write one behind it"
      : `a bare number has no unit: write one behind it, such as ${text}`;
  }
  return undefined;
}

/** The same for two kinds of one dimension; undefined when they agree. */
export function kindAdvice(a: Kind, b: Kind): string | undefined {
  if (kindsAgree(a, b) !== undefined) return undefined;
  const both = [a, b].sort().join(" and ");
  switch (both) {
    case "angle and number":
      return "write a unit of angle (deg, rad) behind the number, or divide the angle by 1 rad";
    case "energy and torque":
      return "an energy is a torque times an angle: multiply the torque by the angle, or divide the energy by 1 rad";
    case "frequency and rotational speed":
      return "one turn is 1 rev: multiply the frequency by 1 rev, or divide the rotational speed by 1 rev";
    default:
      return undefined;
  }
}
