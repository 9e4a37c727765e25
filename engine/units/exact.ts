// Exact arithmetic on factors and the one rounding to float64: big fractions, pi, decimal text.

import type { ExactFactor, Rational } from "./model.ts";

/** A fraction of big integers; the denominator is positive. */
export interface Big {
  readonly n: bigint;
  readonly d: bigint;
}

/** pi to 100 decimals (OEIS A000796), more than any rounding here can feel. */
const piDigits = 31415926535897932384626433832795028841971693993751058209749445923078164062862089986280348253421170679n;
const piScale = 10n ** 100n;

const tens: bigint[] = [];
export function ten(exponent: number): bigint {
  const known = tens[exponent];
  if (known !== undefined) return known;
  const made = 10n ** BigInt(exponent);
  if (exponent < 400) tens[exponent] = made;
  return made;
}

const absolute = (a: bigint): bigint => (a < 0n ? -a : a);

function gcd(a: bigint, b: bigint): bigint {
  let x = absolute(a);
  let y = absolute(b);
  while (y !== 0n) [x, y] = [y, x % y];
  return x;
}

/** n/d * pi^pi in lowest terms. */
export function factor(n: bigint, d = 1n, pi = 0): ExactFactor {
  const by = gcd(n, d) || 1n;
  return { n: n / by, d: d / by, pi };
}

export const factorOne = factor(1n);
export const factorZero = factor(0n);

/** An exact decimal ("0.45359237", "1.602176634e-19") as a factor. */
export function decimalFactor(text: string): ExactFactor {
  const { n, d } = bigFromDecimal(text);
  return factor(n, d);
}

export const multiplyFactor = (a: ExactFactor, b: ExactFactor): ExactFactor => factor(a.n * b.n, a.d * b.d, a.pi + b.pi);
export const divideFactor = (a: ExactFactor, b: ExactFactor): ExactFactor => factor(a.n * b.d, a.d * b.n, a.pi - b.pi);

/** Exact for whole powers and perfect roots; other roots to 400 bits behind the point, far below one rounding. */
export function powerFactor(a: ExactFactor, r: Rational): ExactFactor {
  const e = Math.abs(r.n);
  const whole = { n: a.n ** BigInt(e), d: a.d ** BigInt(e), pi: a.pi * e };
  const up = r.d === 1 ? whole : root(whole, r.d);
  return r.n < 0 ? factor(up.d, up.n, -up.pi) : factor(up.n, up.d, up.pi);
}

function root(a: ExactFactor, degree: number): ExactFactor {
  const keepsPi = a.pi % degree === 0;
  const { n, d } = keepsPi ? a : bigFactor(a);
  const pi = keepsPi ? a.pi / degree : 0;
  const top = floorRoot(n, degree);
  const bottom = floorRoot(d, degree);
  if (top ** BigInt(degree) === n && bottom ** BigInt(degree) === d) return { n: top, d: bottom, pi };
  return { n: floorRoot((n << (rootBits * BigInt(degree))) / d, degree), d: 1n << rootBits, pi };
}

const rootBits = 400n;

/** floor of the root of a positive integer, by Newton from above. */
function floorRoot(n: bigint, degree: number): bigint {
  if (n < 2n) return n;
  const k = BigInt(degree);
  let x = 1n << BigInt(Math.ceil(bitLength(n) / degree) + 1);
  for (;;) {
    const next = ((k - 1n) * x + n / x ** (k - 1n)) / k;
    if (next >= x) return x;
    x = next;
  }
}

/** A factor with pi multiplied out. */
export function bigFactor({ n, d, pi }: ExactFactor): Big {
  if (pi === 0) return { n, d };
  const e = BigInt(Math.abs(pi));
  return pi < 0 ? { n: n * piScale ** e, d: d * piDigits ** e } : { n: n * piDigits ** e, d: d * piScale ** e };
}

const decimalText = /^([+\-−]?)(\d+)(?:\.(\d+))?(?:[eE]([+\-−]?\d+))?$/;

/** Orders of magnitude outside which every float64 is zero or infinite, whatever unit of ours is applied. */
const magnitudeLimit = 3000;

/** Decimal text as an exact fraction; sizes no float64 can reach are cut to one just as far outside. Throws on other text. */
export function bigFromDecimal(text: string): Big {
  const parts = decimalText.exec(text);
  if (parts === null) throw new Error(`internal: no decimal number: ${text}`);
  const fraction = parts[3] ?? "";
  const sign = parts[1] === "-" || parts[1] === "−" ? -1n : 1n;
  const digits = BigInt((parts[2] as string) + fraction) * sign;
  if (digits === 0n) return { n: 0n, d: 1n };
  const exponent = Number((parts[4] ?? "0").replace("−", "-")) - fraction.length;
  const leading = exponent + absolute(digits).toString().length;
  if (leading > magnitudeLimit) return { n: sign * ten(magnitudeLimit), d: 1n };
  if (leading < -magnitudeLimit) return { n: 0n, d: 1n };
  return exponent < 0 ? { n: digits, d: ten(-exponent) } : { n: digits * ten(exponent), d: 1n };
}

function bitLength(a: bigint): number {
  const hex = a.toString(16);
  return hex.length * 4 - (Math.clz32(Number.parseInt(hex[0] as string, 16)) - 28);
}

const smallestExponent = -1074;

/** The float64 nearest to n/d (d positive), ties to even: the only place where an exact number is rounded. */
export function nearestDouble({ n, d }: Big): number {
  if (n === 0n) return 0;
  const top = absolute(n);
  // First guess at 2^e with 2^52 <= top/d / 2^e < 2^54; one more step makes it exact.
  let e = Math.max(bitLength(top) - bitLength(d) - 53, smallestExponent);
  for (;;) {
    const [up, down] = e < 0 ? [top << BigInt(-e), d] : [top, d << BigInt(e)];
    let q = up / down;
    if (q >= 1n << 53n) {
      e += 1;
      continue;
    }
    const twice = (up - q * down) * 2n;
    if (twice > down || (twice === down && (q & 1n) === 1n)) q += 1n;
    // q * 2^e: the product is exact, but 2^e alone may be out of range.
    const size = e > 971 ? Number.POSITIVE_INFINITY : Number(q) * 2 ** e;
    return n < 0n ? -size : size;
  }
}

const bits = new DataView(new ArrayBuffer(8));

/** A finite float64 as the exact fraction it is. */
export function bigFromDouble(value: number): Big {
  bits.setFloat64(0, value);
  const raw = bits.getBigUint64(0);
  const field = Number((raw >> 52n) & 0x7ffn);
  const stored = raw & 0xfffffffffffffn;
  const mantissa = field === 0 ? stored : stored | 0x10000000000000n;
  const signed = raw >> 63n === 1n ? -mantissa : mantissa;
  const e = Math.max(field, 1) - 1075;
  return e < 0 ? { n: signed, d: 1n << BigInt(-e) } : { n: signed << BigInt(e), d: 1n };
}

export const multiplyBig = (a: Big, b: Big): Big => ({ n: a.n * b.n, d: a.d * b.d });
export const divideBig = (a: Big, b: Big): Big => (b.n < 0n ? { n: -a.n * b.d, d: -(a.d * b.n) } : { n: a.n * b.d, d: a.d * b.n });
export const addBig = (a: Big, b: Big): Big => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });
export const subtractBig = (a: Big, b: Big): Big => ({ n: a.n * b.d - b.n * a.d, d: a.d * b.d });

/** a * 10^places to the nearest integer, half away from zero. */
export function scaledRound(a: Big, places: number): bigint {
  const n = places < 0 ? a.n : a.n * ten(places);
  const d = places < 0 ? a.d * ten(-places) : a.d;
  const half = (absolute(n) * 2n + d) / (d * 2n);
  return n < 0n ? -half : half;
}
