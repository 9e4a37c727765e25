// Arithmetic on bare numbers: the one place where a result is computed. Every evaluator calls these.
// A kernel answers NaN or an infinity where it has no result; whoever called it makes the fault.

/** A result or an argument that is NaN or infinite. */
export const unfinite = (x: number): boolean => x - x !== 0;

/** Small whole powers by products (each correctly rounded), the rest by the runtime. 0^0 is 1. */
export function power(base: number, exponent: number): number {
  if (exponent === 2) return base * base;
  if (exponent === 3) return base * base * base;
  if (exponent === 0.5) return Math.sqrt(base);
  if (exponent === -1) return 1 / base;
  // 1 to an infinite power and an infinity to the power 0 would hide a fault; both are caught before they come here.
  return base ** exponent;
}

/** The remainder that has the sign of the divisor: mod(-1, 3) is 2. */
export function modulo(a: number, b: number): number {
  const rest = a % b;
  return rest !== 0 && rest < 0 !== b < 0 ? rest + b : rest;
}

/** To the nearest multiple of a step, halves away from zero. */
export function roundTo(x: number, step: number): number {
  const count = x / step;
  return (count < 0 ? -Math.floor(-count + 0.5) : Math.floor(count + 0.5)) * step;
}

/** Counts that are whole within the tolerance of `==` are taken as whole, so that ceil(0.3 / 0.1) is 3. */
function nearWhole(count: number): number | undefined {
  const whole = Math.round(count);
  return Math.abs(count - whole) <= 1e-9 * Math.max(1, Math.abs(whole)) ? whole : undefined;
}

export function floorTo(x: number, step: number): number {
  const count = x / step;
  return (nearWhole(count) ?? Math.floor(count)) * step;
}

export function ceilTo(x: number, step: number): number {
  const count = x / step;
  return (nearWhole(count) ?? Math.ceil(count)) * step;
}

/** The direction of the zero vector is not a number. */
export const directionOf = (y: number, x: number): number => (y === 0 && x === 0 ? Number.NaN : Math.atan2(y, x));

export const smaller = (a: number, b: number): number => Math.min(a, b);
export const larger = (a: number, b: number): number => Math.max(a, b);

/** Left to right with compensation (Neumaier), so that the order of the items hardly matters. */
export function sumOf(items: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const item of items) {
    const next = sum + item;
    lost += Math.abs(sum) >= Math.abs(item) ? sum - next + item : item - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** A second pass takes out what the first sum's rounding left. */
export function meanOf(items: readonly number[]): number {
  const first = sumOf(items) / items.length;
  return first + sumOf(items.map((item) => item - first)) / items.length;
}

/** Of a sample: divided by n - 1. Two passes with the correction of the mean's rounding. */
export function varianceOf(items: readonly number[]): number {
  const mean = meanOf(items);
  const squares = sumOf(items.map((item) => (item - mean) * (item - mean)));
  const rest = sumOf(items.map((item) => item - mean));
  return (squares - (rest * rest) / items.length) / (items.length - 1);
}

/** The middle one of the sorted items, or the mean of the two in the middle. */
export function medianOf(items: readonly number[]): number {
  const sorted = sortNumbers(items);
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : (sorted[half - 1] as number) / 2 + upper / 2;
}

/** Ascending by size (never by text); equal items keep their order. */
export const sortNumbers = (items: readonly number[]): readonly number[] => [...items].sort((a, b) => a - b);

/** Share of the way from x0 to x1 times the rise, exact at both ends. */
export function between(x0: number, x1: number, y0: number, y1: number, x: number): number {
  if (x === x1) return y1;
  return y0 + (y1 - y0) * ((x - x0) / (x1 - x0));
}
