// Decimal text to SI float64 and back: one rounding from exact factors in each direction.

import { addBig, type Big, bigFactor, bigFromDecimal, bigFromDouble, divideBig, multiplyBig, nearestDouble, subtractBig } from "./exact.ts";
import type { Unit } from "./model.ts";

const safe = Number.MAX_SAFE_INTEGER;
const plainDecimal = /^\d+(?:\.(\d+))?$/;

/**
 * The SI value of a decimal text in a unit, rounded once from the exact product; for points the offset is applied.
 * `digits` may carry a sign (a point's minus belongs to it) and an exponent. Beyond float64: infinity, which the caller reports.
 */
export function literal(digits: string, unit: Unit | undefined): number {
  if (unit === undefined || (!unit.point && isOne(unit))) return positive(Number(digits.replaceAll("−", "-")));
  if (unit.factor.pi === 0 && !hasOffset(unit)) {
    const quick = quickLiteral(digits, unit);
    if (quick !== undefined) return quick;
  }
  return nearestDouble(exactToSI(bigFromDecimal(digits), unit));
}

const isOne = (unit: Unit): boolean => unit.factor.pi === 0 && unit.factor.n === 1n && unit.factor.d === 1n && !hasOffset(unit);
const hasOffset = (unit: Unit): boolean => unit.offset.n !== 0n;

/** No negative zero comes out of a text. */
const positive = (value: number): number => (value === 0 ? 0 : value);

/** When numerator and denominator are whole float64, IEEE division rounds the exact quotient once. */
function quickLiteral(digits: string, unit: Unit): number | undefined {
  if (digits.length > 16) return undefined;
  const parts = plainDecimal.exec(digits);
  if (parts === null) return undefined;
  const places = parts[1]?.length ?? 0;
  const whole = Number(places === 0 ? digits : digits.replace(".", ""));
  const top = whole * Number(unit.factor.n);
  const bottom = 10 ** places * Number(unit.factor.d);
  return top <= safe && bottom <= safe ? top / bottom : undefined;
}

/** (x + offset) * factor */
function exactToSI(x: Big, unit: Unit): Big {
  const shifted = hasOffset(unit) ? addBig(x, unit.offset) : x;
  return multiplyBig(shifted, bigFactor(unit.factor));
}

/** x such that (x + offset) * factor = value, exactly. */
export function exactFromSI(value: number, unit: Unit): Big {
  const plain = divideBig(bigFromDouble(value), bigFactor(unit.factor));
  return hasOffset(unit) ? subtractBig(plain, unit.offset) : plain;
}

/** An SI value in a unit, rounded once. Not finite stays as it is. */
export function fromSI(value: number, unit: Unit): number {
  if (!Number.isFinite(value)) return value;
  if (unit.factor.pi === 0 && !hasOffset(unit)) {
    const { n, d } = unit.factor;
    if (n === 1n && d <= safe) return value * Number(d);
    if (d === 1n && n <= safe) return value / Number(n);
  }
  return nearestDouble(exactFromSI(value, unit));
}

/** A computed number in a unit as an SI value, rounded once. Not finite stays as it is. */
export function toSI(value: number, unit: Unit): number {
  if (!Number.isFinite(value)) return value;
  if (unit.factor.pi === 0 && !hasOffset(unit)) {
    const { n, d } = unit.factor;
    if (d === 1n && n <= safe) return value * Number(n);
    if (n === 1n && d <= safe) return value / Number(d);
  }
  return nearestDouble(exactToSI(bigFromDouble(value), unit));
}
