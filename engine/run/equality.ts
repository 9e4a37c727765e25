// The three equalities: bitwise (cut-off), numeric with a tolerance (`==` on quantities), exact (`==` on everything else).

import type { CompareOperator } from "../syntax/index.ts";
import type { Value } from "./value.ts";

/**
 * `==` on quantities: equal when they differ by at most this share of the larger one. `<=` is `<` or `==`; `<` excludes `==`.
 * There is no absolute part: nothing but zero equals zero, and 1e-9 m > 0 m.
 */
export const relativeTolerance = 1e-9;

/** Symmetric; both zero are equal; points compare in kelvin. */
export function equalNumbers(a: number, b: number): boolean {
  if (a === b) return true;
  return Math.abs(a - b) <= relativeTolerance * Math.max(Math.abs(a), Math.abs(b));
}

/** Same bits and structure: what an edit that changes nothing is recognised by. Tells 0 from -0; a formula equals only itself. */
export function sameValue(a: Value, b: Value): boolean {
  return same(a, b, Object.is);
}

/** `==` on texts, truths, records, lists and tables: the same parts, numbers exactly (0 and -0 are one number). */
export function equalValues(a: Value, b: Value): boolean {
  return same(a, b, (x, y) => x === y);
}

function same(a: Value, b: Value, leaf: (a: unknown, b: unknown) => boolean): boolean {
  if (a === b && typeof a === "object") return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return leaf(a, b);
  if (isList(a)) return isList(b) && sameList(a, b, leaf);
  if (isList(b) || a.shape !== b.shape) return false;
  if (a.shape === "record") return b.shape === "record" && a.record === b.record && sameList(a.fields, b.fields, leaf);
  if (a.shape === "figure") return b.shape === "figure" && a.figure === b.figure && sameList(a.parts, b.parts, leaf);
  if (a.shape !== "table" || b.shape !== "table") return false;
  const other = b.columns;
  return (
    a.rows === b.rows &&
    a.columns.length === other.length &&
    a.heads.every((head, i) => head === b.heads[i]) &&
    a.columns.every((column, i) => sameList(column, other[i] as readonly Value[], leaf))
  );
}

function sameList(a: readonly Value[], b: readonly Value[], leaf: (a: unknown, b: unknown) => boolean): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i += 1) if (!same(a[i] as Value, b[i] as Value, leaf)) return false;
  return true;
}

export const isList = (value: Value): value is readonly Value[] => Array.isArray(value);

/** One comparison of a chain on numbers, with the tolerance of `==` in all six. */
export function holds(operator: CompareOperator, a: number, b: number): boolean {
  switch (operator) {
    case "<":
      return a < b && !equalNumbers(a, b);
    case "<=":
      return a < b || equalNumbers(a, b);
    case ">":
      return b < a && !equalNumbers(a, b);
    case ">=":
      return b < a || equalNumbers(a, b);
    case "==":
      return equalNumbers(a, b);
    case "!=":
      return !equalNumbers(a, b);
  }
}
