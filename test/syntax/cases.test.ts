// Rows of the reference's list of faults seen elsewhere, areas parser and percent, as far as reading alone decides them.

import { expect, test } from "vitest";
import type { NumberLiteral } from "../../engine/syntax/index.ts";
import { codesOf, grouped, mended, valueIn } from "./read.ts";

test("F047 10 % + 20 % is a sum of two shares, never a share of the first", () => {
  expect(grouped("10% + 20%")).toBe("(10<%> + 20<%>)");
});

test("F049 10 % 3 is refused and the remainder is offered by name", () => {
  expect(codesOf("x = 10 % 3")).toEqual(["percent-only"]);
  expect(mended("x = 10 % 3")).toEqual(["x = mod(10, 3)"]);
});

test("F050 3 x 3 % 9 is refused twice over, never read left to right in silence", () => {
  expect(codesOf("x = 3 x 3 % 9")).toEqual(["times-letter"]);
  expect(mended("x = 3 x 3 % 9")).toEqual(["x = 3 * 3 % 9"]);
  expect(codesOf("x = 3 * 3 % 9")).toEqual(["percent-only"]);
});

test("F051 a number and its unit are one value: 3 m / 4 m has no square metres", () => {
  expect(grouped("3 m / 4 m")).toBe("(3<m> / 4<m>)");
});

test("F052 what follows a number is a unit, never a name of the notebook: 10 k / 10 k", () => {
  expect(grouped("10 k / 10 k")).toBe("(10<k> / 10<k>)");
});

test("F053 (2)(3)+4 is refused", () => {
  expect(codesOf("x = (2)(3)+4")).toEqual(["side-by-side"]);
  expect(mended("x = (2)(3)+4")).toEqual(["x = (2) * (3)+4"]);
});

test("F054 1/2x and 1/2(x) are both refused", () => {
  expect(codesOf("y = 1/2x")).toEqual(["fraction-with-unit"]);
  expect(codesOf("y = 1/2(x)")).toEqual(["side-by-side"]);
});

test("F059 gramm, inchy and degrees C reach the units as they were written", () => {
  expect(["5 gramm", "5 inchy", "5 degrees C"].map((text) => (valueIn(text) as NumberLiteral).unit?.text)).toEqual([
    "gramm",
    "inchy",
    "degrees C",
  ]);
});

test("F060 1 pt reaches the units, which know no such symbol", () => {
  expect((valueIn("1 pt") as NumberLiteral).unit?.text).toBe("pt");
});

test("F061 both micro signs are read as part of a unit", () => {
  expect(["2.5 \u00b5m", "2.5 \u03bcm"].map((text) => (valueIn(text) as NumberLiteral).unit?.text)).toEqual(["\u00b5m", "\u03bcm"]);
});

test("F063 13,379.70 is refused and no digit is dropped", () => {
  expect(codesOf("x = 13,379.70")).toEqual(["comma-number"]);
  expect(mended("x = 13,379.70")).toEqual(["x = 13379.70"]);
});

test("F065 0.001 keeps its point", () => {
  expect((valueIn("0.001") as NumberLiteral).digits).toBe("0.001");
});
