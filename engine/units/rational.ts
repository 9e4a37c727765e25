// Small exact fractions: the exponents of dimensions.

import { broken } from "../base/index.ts";
import type { Rational } from "./model.ts";

const gcd = (a: number, b: number): number => (b === 0 ? Math.abs(a) : gcd(b, a % b));

/** n/d in lowest terms. Throws when d is zero or a part is no safe integer. */
export function rational(n: number, d = 1): Rational {
  if (d === 0 || !Number.isSafeInteger(n) || !Number.isSafeInteger(d)) return broken(`no small fraction: ${n}/${d}`);
  if (d === 1) return { n: n === 0 ? 0 : n, d };
  const by = gcd(n, d) * Math.sign(d);
  return { n: n === 0 ? 0 : n / by, d: d / by };
}

export const addRational = (a: Rational, b: Rational): Rational => rational(a.n * b.d + b.n * a.d, a.d * b.d);

export const multiplyRational = (a: Rational, b: Rational): Rational => rational(a.n * b.n, a.d * b.d);

/** Throws when b is zero. */
export const divideRational = (a: Rational, b: Rational): Rational => rational(a.n * b.d, a.d * b.n);

export const negateRational = (a: Rational): Rational => ({ n: a.n === 0 ? 0 : -a.n, d: a.d });

export const equalRational = (a: Rational, b: Rational): boolean => a.n === b.n && a.d === b.d;

/** "0.5" to 1/2, "-2" to -2; undefined when it is no plain decimal or too long to be an exponent. */
export function rationalFromDecimal(text: string): Rational | undefined {
  const parts = /^([+-]?)(\d{1,9})(?:\.(\d{1,6}))?$/.exec(text);
  if (parts === null) return undefined;
  const fraction = parts[3] ?? "";
  const n = Number((parts[2] as string) + fraction);
  return rational(parts[1] === "-" ? -n : n, 10 ** fraction.length);
}

/** "2", "-1", "1/2". */
export const rationalText = (a: Rational): string => (a.d === 1 ? `${a.n}` : `${a.n}/${a.d}`);
