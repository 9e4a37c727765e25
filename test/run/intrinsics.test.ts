// The language's own functions.

import { describe, expect, test } from "vitest";
import type { Core } from "../../engine/check/index.ts";
import { equalNumbers, intrinsics, relativeTolerance, sameValue, type Value } from "../../engine/run/index.ts";
import { list, listOf, lit, native, number, text, truth, unit } from "./core-builder.ts";
import { resultOf } from "./evaluate.ts";

const xs = (...values: readonly number[]): Core => list(...values.map((value) => lit(value)));
const of = (name: string, ...args: readonly Core[]): Value => resultOf(unit([], native(name, args)));
const listed = (name: string, ...args: readonly Core[]): Value => resultOf(unit([], native(name, args, listOf(number))));

describe("numbers", () => {
  test("roots, sizes, steps", () => {
    expect(of("sqrt", lit(9))).toBe(3);
    expect(of("cbrt", lit(-8))).toBe(-2);
    expect(of("abs", lit(-8))).toBe(8);
    expect([of("sign", lit(-8)), of("sign", lit(0)), of("sign", lit(2))]).toEqual([-1, 0, 1]);
    expect([of("floor", lit(2.7)), of("ceil", lit(2.2)), of("round", lit(2.5)), of("round", lit(-2.5))]).toEqual([2, 3, 3, -3]);
    expect(of("ceil", lit(0.3), lit(0.1))).toBeCloseTo(0.3, 15);
    expect(of("floor", lit(0.3), lit(0.1))).toBeCloseTo(0.3, 15);
    expect(of("round", lit(0.0073), lit(0.0005))).toBeCloseTo(0.0075, 15);
  });
  test("a remainder has the sign of the divisor", () => {
    expect([of("mod", lit(10), lit(3)), of("mod", lit(-1), lit(3)), of("mod", lit(1), lit(-3)), of("mod", lit(9), lit(3))]).toEqual([
      1, 2, -2, 0,
    ]);
  });
  test("angles in radians, logarithms, hyperbolic", () => {
    expect(of("sin", lit(Math.PI / 6))).toBeCloseTo(0.5, 15);
    expect(of("atan2", lit(-1), lit(-1))).toBeCloseTo((-3 * Math.PI) / 4, 15);
    expect(of("exp", lit(-0.9375))).toBeCloseTo(0.391606, 6);
    expect([of("log10", lit(1000)), of("log2", lit(8)), of("ln", lit(1))]).toEqual([3, 3, 0]);
    expect(of("hypot", lit(3), lit(4))).toBe(5);
    expect(of("hypot", lit(2), lit(3), lit(6))).toBeCloseTo(7, 14);
    expect(of("absolute", lit(300))).toBe(300);
  });
  test("least and most of arguments or of a list", () => {
    expect([
      of("min", lit(3), lit(1), lit(2)),
      of("max", lit(3), lit(1)),
      of("min", xs(3, 1)),
      of("max", xs(3, 1)),
      of("max", lit(4)),
    ]).toEqual([1, 3, 1, 3, 4]);
  });
});

describe("lists", () => {
  test("numbers sort by size", () => {
    expect(listed("sort", xs(10, 9, 1))).toEqual([1, 9, 10]);
    expect(resultOf(unit([], native("sort", [list(lit("b"), lit("a"))], listOf(text))))).toEqual(["a", "b"]);
  });
  test("sums keep what plain addition loses", () => {
    expect(of("sum", xs(1, 1e16, -1e16))).toBe(1);
    expect(of("mean", xs(10000000.2, 10000000.1, 10000000.3))).toBe(10000000.2);
    expect(of("deviation", xs(10000000.2, 10000000.1, 10000000.3))).toBeCloseTo(0.1, 8);
    expect(of("variance", xs(1, 2, 3, 4))).toBeCloseTo(5 / 3, 15);
    expect([of("median", xs(5, 1, 3)), of("median", xs(4, 1, 3, 2))]).toEqual([3, 2.5]);
  });
  test("items and order", () => {
    expect([of("first", xs(1, 2)), of("last", xs(1, 2)), of("single", xs(7)), of("index_of", xs(4, 5), lit(5))]).toEqual([1, 2, 7, 2]);
    expect(listed("reverse", xs(1, 2, 3))).toEqual([3, 2, 1]);
    expect(listed("unique", xs(1, 2, 1))).toEqual([1, 2]);
    expect(listed("join", xs(1), xs(2, 3), xs(4))).toEqual([1, 2, 3, 4]);
    expect(listed("cumulative", xs(1, 2, 3))).toEqual([1, 3, 6]);
    expect(listed("independent", lit(5), lit(3))).toEqual([5, 5, 5]);
  });
  test("all, any, contains", () => {
    const said = (name: string, ...args: readonly Core[]): Value => resultOf(unit([], native(name, args, truth)));
    expect([said("all", list(lit(true), lit(true))), said("all", list(lit(true), lit(false)))]).toEqual([true, false]);
    expect([said("any", list(lit(false), lit(true))), said("any", list(lit(false)))]).toEqual([true, false]);
    expect([said("contains", lit("PA6-CF"), lit("CF")), said("contains", lit("PA6-CF"), lit("cf"))]).toEqual([true, false]);
  });
  test("tables: straight between points, exact on them; an equal key", () => {
    const [x, y] = [(): Core => xs(0.1, 0.2, 0.4), (): Core => xs(1, 3, 2)];
    expect(of("interpolate", x(), y(), lit(0.3))).toBeCloseTo(2.5, 14);
    expect([0.1, 0.2, 0.4].map((at) => of("interpolate", x(), y(), lit(at)))).toEqual([1, 3, 2]);
    expect(of("lookup", xs(3, 4), xs(30, 40), lit(4))).toBe(40);
  });
});

describe("the list of functions", () => {
  test("each says what it is and takes a sensible number of arguments", () => {
    for (const [name, { head, purpose, least, most }] of Object.entries(intrinsics)) {
      expect(head.startsWith(`${name}(`)).toBe(true);
      expect(purpose.endsWith(".")).toBe(true);
      expect(1 <= least && least <= most).toBe(true);
    }
    expect(intrinsics.constructor).toBeUndefined();
  });
});

describe("equality", () => {
  test("relative alone: nothing but zero equals zero", () => {
    expect([equalNumbers(0, 0), equalNumbers(0, 1e-300), equalNumbers(10e-10, 1e-9), equalNumbers(0.678, 0.678 * (1 + 1e-15))]).toEqual([
      true,
      false,
      true,
      true,
    ]);
    expect(equalNumbers(1, 1 + relativeTolerance * 0.9)).toBe(true);
    expect(equalNumbers(1, 1 + relativeTolerance * 1.1)).toBe(false);
    expect(equalNumbers(-1, 1)).toBe(false);
  });
  test("the cut-off is bitwise", () => {
    expect([sameValue(0, -0), sameValue([1, 2], [1, 2]), sameValue([1], [1, 2]), sameValue("1", 1), sameValue(null, 0)]).toEqual([
      false,
      true,
      false,
      false,
      false,
    ]);
    const r = (x: number): Value => ({ shape: "record", record: "R", fields: [x] });
    expect([sameValue(r(1), r(1)), sameValue(r(1), r(2)), sameValue(r(1), { ...(r(1) as object), record: "S" } as Value)]).toEqual([
      true,
      false,
      false,
    ]);
    const t = (x: number): Value => ({ shape: "table", heads: ["a"], columns: [[x]], rows: 1 });
    expect([sameValue(t(1), t(1)), sameValue(t(1), t(2))]).toEqual([true, false]);
  });
});
