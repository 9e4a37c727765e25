// Which numbers are put in on paper: records and long texts keep their names, for nobody reads them inside a formula.

import type { Maths } from "../trace/index.ts";

const LONGEST_TEXT = 36;

/** The formula with numbers, or undefined where nothing but records would be put in. `numbers` has the shape of `symbols` but for names. */
export function putIn(symbols: Maths, numbers: Maths | undefined): Maths | undefined {
  if (numbers === undefined) return undefined;
  const merged = merge(symbols, numbers) as Maths;
  return JSON.stringify(merged) === JSON.stringify(symbols) ? undefined : merged;
}

function merge(symbols: unknown, numbers: unknown): unknown {
  if (isText(numbers) && (numbers.text.includes("{") || numbers.text.length > LONGEST_TEXT)) return symbols ?? numbers;
  if (Array.isArray(symbols) && Array.isArray(numbers) && symbols.length === numbers.length)
    return numbers.map((part, i) => merge(symbols[i], part));
  if (!isObject(symbols) || !isObject(numbers) || symbols.kind !== numbers.kind) return numbers;
  return Object.fromEntries(Object.entries(numbers).map(([key, part]) => [key, merge(symbols[key], part)]));
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is Extract<Maths, { readonly kind: "text" }> => isObject(value) && value.kind === "text";
