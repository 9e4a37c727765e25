// Dimensions: interned vectors of rational exponents over an open set of bases, with their group operations.

import type { Dimension, Rational } from "./model.ts";
import { addRational, equalRational, multiplyRational, negateRational, rational, rationalText } from "./rational.ts";

export type { Dimension } from "./model.ts";

type Exponents = Dimension["exponents"];

const interned = new Map<string, Dimension>();

/** Products and quotients of dimensions without variables, by left side; inference makes too many others to keep. */
const products = new Map<Dimension, Map<Dimension, Dimension>>();
const quotients = new Map<Dimension, Map<Dimension, Dimension>>();

function intern(exponents: Exponents): Dimension {
  let key = "";
  for (const [base, { n, d }] of exponents) key += `${base}:${n}/${d};`;
  const known = interned.get(key);
  if (known !== undefined) return known;
  const made: Dimension = { key, exponents };
  interned.set(key, made);
  return made;
}

/** No dimension: a number, a share, an angle. */
export const dimensionless: Dimension = intern([]);

/** One base to a power (1 when left out). The base may be any text without ":" and ";". */
export const dimensionOf = (base: string, exponent: Rational = rational(1)): Dimension =>
  exponent.n === 0 ? dimensionless : intern([[base, exponent]]);

/** The product of base^exponent over all pairs, in any order, a base may come again. */
export function dimensionFrom(pairs: Iterable<readonly [base: string, exponent: Rational]>): Dimension {
  const sums = new Map<string, Rational>();
  for (const [base, exponent] of pairs) {
    const before = sums.get(base);
    sums.set(base, before === undefined ? exponent : addRational(before, exponent));
  }
  return intern([...sums].filter(([, e]) => e.n !== 0).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Both lists are sorted by base, so one walk merges them. */
function merge(a: Exponents, b: Exponents, sign: 1 | -1): Dimension {
  const out: (readonly [string, Rational])[] = [];
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const left = a[i];
    const right = b[j];
    if (right === undefined || (left !== undefined && left[0] < right[0])) {
      out.push(left as readonly [string, Rational]);
      i += 1;
      continue;
    }
    const second = sign === 1 ? right[1] : negateRational(right[1]);
    if (left === undefined || right[0] < left[0]) {
      out.push([right[0], second]);
    } else {
      const sum = addRational(left[1], second);
      if (sum.n !== 0) out.push([left[0], sum]);
      i += 1;
    }
    j += 1;
  }
  return intern(out);
}

const hasVariable = (d: Dimension): boolean => d.key.includes("?");

function combined(cache: Map<Dimension, Map<Dimension, Dimension>>, a: Dimension, b: Dimension, sign: 1 | -1): Dimension {
  if (hasVariable(a) || hasVariable(b)) return merge(a.exponents, b.exponents, sign);
  let row = cache.get(a);
  if (row === undefined) {
    row = new Map();
    cache.set(a, row);
  }
  const known = row.get(b);
  if (known !== undefined) return known;
  const made = merge(a.exponents, b.exponents, sign);
  row.set(b, made);
  return made;
}

export function multiply(a: Dimension, b: Dimension): Dimension {
  if (a === dimensionless) return b;
  if (b === dimensionless) return a;
  return combined(products, a, b, 1);
}

export function divide(a: Dimension, b: Dimension): Dimension {
  if (b === dimensionless) return a;
  if (a === b) return dimensionless;
  return combined(quotients, a, b, -1);
}

/** Throws when an exponent leaves the safe integers; ask `withinExponentLimit` of what a user wrote. */
export function power(a: Dimension, r: Rational): Dimension {
  if (a === dimensionless || r.n === 0) return dimensionless;
  if (r.n === r.d) return a;
  return intern(a.exponents.map(([base, exponent]) => [base, multiplyRational(exponent, r)]));
}

const zero = rational(0);

export function exponentOf(d: Dimension, base: string): Rational {
  for (const [name, exponent] of d.exponents) if (name === base) return exponent;
  return zero;
}

/** Exponents beyond these bounds are no physics and would grow without end by repeated powers. */
export const smallExponent = ({ n, d }: Rational): boolean => Math.abs(n) <= 9999 && d <= 9999;

export const withinExponentLimit = (d: Dimension): boolean => d.exponents.every(([, exponent]) => smallExponent(exponent));

/** The seven bases of the SI. */
export const length = dimensionOf("length");
export const mass = dimensionOf("mass");
export const time = dimensionOf("time");
export const temperature = dimensionOf("temperature");
export const current = dimensionOf("current");
export const amount = dimensionOf("amount");
export const luminosity = dimensionOf("luminosity");

/** The r with b^r = a, for a dimension that is a power of another; undefined when there is none. */
export function exponentBetween(a: Dimension, b: Dimension): Rational | undefined {
  const first = b.exponents[0];
  if (first === undefined) return a === dimensionless ? zero : undefined;
  const top = exponentOf(a, first[0]);
  const r = rational(top.n * first[1].d, top.d * first[1].n);
  return power(b, r) === a ? r : undefined;
}

/** "length^2·time^-1": for tests and programs; people read `describeDimension`. */
export const dimensionKeyText = (d: Dimension): string =>
  d.exponents.map(([base, e]) => (equalRational(e, rational(1)) ? base : `${base}^${e.d === 1 ? e.n : `(${rationalText(e)})`}`)).join("·");
