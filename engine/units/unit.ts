// Makes units of their factors: normal spelling, typographic spelling, UCUM code. Interned by normal spelling.

import { type Dimension, dimensionless, divide, multiply, power } from "./dimension.ts";
import { factorOne, factorZero, multiplyFactor, powerFactor } from "./exact.ts";
import { kindOfPower, kindOfProduct, kindOfQuotient } from "./kinds.ts";
import type { Kind, Rational, Unit } from "./model.ts";
import { negateRational, rationalText } from "./rational.ts";
import type { Entry } from "./table.ts";

/** One factor of a unit: a symbol and its exponent as written (positive behind the "/"). */
export interface UnitFactor {
  readonly entry: Entry;
  readonly exponent: Rational;
}

const interned = new Map<string, Unit>();
const typographics = new WeakMap<Unit, string>();

/** No unit: a plain number. Its text "1" is what `[1]` in a table head says; it is never shown beside a number. */
export const unitOne: Unit = {
  text: "1",
  dimension: dimensionless,
  kind: "number",
  factor: factorOne,
  offset: factorZero,
  point: false,
  ucum: "1",
};
interned.set(unitOne.text, unitOne);
typographics.set(unitOne, "");

/** The unit with these factors above and below the line; with none above, the lower ones get negative exponents. */
export function unitOf(above: readonly UnitFactor[], below: readonly UnitFactor[] = []): Unit {
  if (above.length === 0 && below.length > 0) return unitOf(below.map((f) => ({ entry: f.entry, exponent: negateRational(f.exponent) })));
  if (above.length === 0) return unitOne;
  const text = spelled(above, below, plainPower);
  const known = interned.get(text);
  if (known !== undefined) return known;
  let dimension: Dimension = dimensionless;
  let kind: Kind = "number";
  let factor = factorOne;
  for (const { entry, exponent } of above) {
    const next = power(entry.dimension, exponent);
    kind = kindOfProduct(dimension, kind, next, kindOfPower(entry.dimension, entry.kind, exponent));
    dimension = multiply(dimension, next);
    factor = multiplyFactor(factor, powerFactor(entry.factor, exponent));
  }
  for (const { entry, exponent } of below) {
    const next = power(entry.dimension, exponent);
    kind = kindOfQuotient(dimension, kind, next, kindOfPower(entry.dimension, entry.kind, exponent));
    dimension = divide(dimension, next);
    factor = multiplyFactor(factor, powerFactor(entry.factor, negateRational(exponent)));
  }
  const only = above.length === 1 && below.length === 0 ? above[0] : undefined;
  const point = only?.entry.point === true && only.exponent.n === 1 && only.exponent.d === 1;
  const offset = point ? only.entry.offset : factorZero;
  const unit: Unit = { text, dimension, kind, factor, offset, point, ucum: ucumOf(above, below) };
  interned.set(text, unit);
  typographics.set(unit, spelled(above, below, raisedPower));
  return unit;
}

/** A temperature unit read as a point on its absolute scale: `278.15 K abs`. Undefined for units that have none. */
export function asPoint(unit: Unit): Unit | undefined {
  if (unit.point) return unit;
  if (unit.text !== "K" && unit.text !== "degR") return undefined;
  const text = `${unit.text} abs`;
  const known = interned.get(text);
  if (known !== undefined) return known;
  const made: Unit = { ...unit, text, point: true };
  interned.set(text, made);
  typographics.set(made, text);
  return made;
}

/** As it is set in print: "mm²", "N·m", "°C", "s⁻¹"; empty for a plain number. Reads back like the normal spelling. */
export const typographic = (unit: Unit): string => typographics.get(unit) ?? unit.text;

function spelled(above: readonly UnitFactor[], below: readonly UnitFactor[], raise: (exponent: Rational) => string): string {
  const join = (factors: readonly UnitFactor[]): string => factors.map((f) => f.entry.symbol + raise(f.exponent)).join("·");
  if (below.length === 0) return join(above);
  return below.length === 1 ? `${join(above)}/${join(below)}` : `${join(above)}/(${join(below)})`;
}

const plainPower = (e: Rational): string => (e.d !== 1 ? `^(${rationalText(e)})` : e.n === 1 ? "" : `^${e.n}`);

const raisedDigits = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const raisedPower = (e: Rational): string =>
  e.d !== 1 || e.n === 1
    ? plainPower(e)
    : String(e.n)
        .replace(/\d/g, (digit) => raisedDigits[Number(digit)] as string)
        .replace("-", "⁻");

/** UCUM code; empty where UCUM has none (fractional powers). */
function ucumOf(above: readonly UnitFactor[], below: readonly UnitFactor[]): string {
  const codes: [code: string, exponent: number][] = [];
  for (const [factors, sign] of [
    [above, 1],
    [below, -1],
  ] as const) {
    for (const { entry, exponent } of factors) {
      if (exponent.d !== 1) return "";
      for (const [code, e] of entry.ucum) codes.push([code, e * exponent.n * sign]);
    }
  }
  const one = ([code, e]: readonly [string, number]): string => {
    if (/^\d+$/.test(code)) return String(BigInt(code) ** BigInt(e));
    return e === 1 ? code : `${code}${e}`;
  };
  const tops = codes.filter(([code, e]) => e > 0 || code === "10*").map(one);
  const bottoms = codes.filter(([code, e]) => e < 0 && code !== "10*");
  if (tops.length === 0 && bottoms.every(([code]) => !/^\d+$/.test(code))) return bottoms.map(one).join(".");
  const lower = bottoms.map(([code, e]) => one([code, -e]));
  if (lower.length === 0) return tops.join(".");
  return `${tops.join(".") || "1"}/${lower.length === 1 ? lower[0] : `(${lower.join(".")})`}`;
}
