// A quantity as it is shown: rounded for reading, and in full so that it reads back to the same float64.

import { scaledRound } from "./exact.ts";
import { exactFromSI, fromSI, literal } from "./literal.ts";
import type { Unit } from "./model.ts";
import { type Decimal, decimalOf, fullText, showDecimal, showNumber } from "./number-text.ts";
import { typographic } from "./unit.ts";

/** `number` and `unit` apart for a column, `text` both, `full` the shortest decimal that reads back to the same float64. */
export interface ShownQuantity {
  readonly number: string;
  readonly unit: string;
  readonly text: string;
  readonly full: string;
}

/** Shows an SI value in a unit with at most `digits` significant digits. `full` has a plain minus and never a grouping. */
export function showQuantity(value: number, unit: Unit, digits: number): ShownQuantity {
  const name = typographic(unit);
  if (!Number.isFinite(value)) {
    const words = showNumber(value, digits);
    return { number: words, unit: name, text: joined(words, name), full: String(value) };
  }
  const full = fullDecimal(value, unit);
  const number = showDecimal(full, Math.max(1, Math.trunc(digits)));
  return { number, unit: name, text: joined(number, name), full: fullText(full) };
}

/** A space between number and unit, except before the degree of an angle (SI Brochure 5.4.3). */
export const joined = (number: string, unit: string): string =>
  unit === "" ? number : unit.startsWith("°") && !/^°[CF]/.test(unit) ? `${number}${unit}` : `${number} ${unit}`;

/** The shortest decimal text of an SI value in a unit for which `literal` gives the same float64. */
export const fullNumber = (value: number, unit: Unit): string =>
  Number.isFinite(value) ? fullText(fullDecimal(value, unit)) : String(value);

/** 15 significant digits always survive the way through float64, so a shorter text is among them, a longer one is sought beyond. */
const surviving = 15;

function fullDecimal(value: number, unit: Unit): Decimal {
  if (value === 0 && unit.offset.n === 0n) return decimalOf("0");
  const near = fromSI(value, unit);
  if (Number.isFinite(near) && unit.offset.n === 0n) {
    for (const candidate of [Number(near.toPrecision(surviving)), near]) {
      const text = String(candidate);
      if (Number.isFinite(candidate) && literal(text, unit) === value) return decimalOf(text);
    }
  }
  return searched(value, unit);
}

/**
 * Rounds the exact quotient to more and more places until it reads back. Places count from the size of the value on the
 * unit's absolute scale: near 0 °C the digits that float64 holds are those of 273.15.
 */
function searched(value: number, unit: Unit): Decimal {
  const exact = exactFromSI(value, unit);
  const size = unit.offset.n === 0n ? exact : exactFromSI(value, { ...unit, offset: { n: 0n, d: 1n, pi: 0 } });
  const magnitude = size.n === 0n ? 1 : size.n.toString().replace("-", "").length - size.d.toString().length;
  for (let places = surviving - 2 - magnitude; ; places += 1) {
    const scaled = scaledRound(exact, places);
    const decimal = decimalOf(`${scaled}e${-places}`);
    if (literal(fullText(decimal), unit) === value) return decimal;
  }
}
