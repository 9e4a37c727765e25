// Reading what was typed (area "parser").

import { expect, test } from "vitest";
import { calc, evaluate, faultsOf, notebook, wordsOf } from "./helper.ts";

test("F051 a unit binds tighter than a division", () => {
  expect(evaluate("3 m / 4 m").number).toBe(0.75);
});

test("F052 a number beside a name is no product", () => {
  const read = notebook(calc("k = 1000", "x = 10 k / 10 k"));
  expect(read.faults("x")[0]).toBe("unit-unknown");
  expect(read.output("x").value).toBeUndefined();
});

test("F053 brackets side by side are no product", () => {
  expect(faultsOf("(2)(3)+4")).toEqual(["side-by-side"]);
});

test("F054 a number against a name or a bracket is refused in both spellings", () => {
  const refused = notebook(calc("x = 4", "a = 1/2x", "b = 1/2(x)"));
  expect(refused.output("a").value).toBeUndefined();
  expect(refused.faults("a")).toContain("fraction-with-unit");
  expect(refused.output("b").value).toBeUndefined();
  expect(refused.faults("b")).toEqual(["side-by-side"]);
  const written = notebook(calc("x = 4", "a = 1/2 * x", "b = 1/2*(x)"));
  expect([written.number("a"), written.number("b")]).toEqual([2, 2]);
});

test("F059 an unknown unit offers the nearest known one", () => {
  expect(faultsOf("3 gramm")).toEqual(["unit-unknown"]);
  expect(faultsOf("3 inchy")).toEqual(["unit-unknown"]);
  expect(wordsOf("3 inchy")).toMatch(/\b(in|inch)\b/);
  expect(wordsOf("3 gramm")).toMatch(/\b(g|gram)\b/);
  expect(faultsOf("3 degrees C").length).toBeGreaterThan(0);
});

test("F060 an ambiguous symbol is no unit", () => {
  expect(faultsOf("1 pt")).toEqual(["unit-ambiguous"]);
});

test("F061 both micro signs and u are one unit, written one way", () => {
  const texts = ["2.5 \u00b5m", "2.5 \u03bcm", "2.5 um"].map((text) => evaluate(text, text.slice(4)));
  expect(texts.map((one) => one.si)).toEqual([2.5e-6, 2.5e-6, 2.5e-6]);
  expect(new Set(texts.map((one) => one.text)).size).toBe(1);
});

test("F063 a comma inside a number is refused, no digit is dropped", () => {
  expect(faultsOf("13,379.70")).toEqual(["comma-number"]);
  expect(evaluate("13_379.70").number).toBe(13379.7);
});

test("F065 a point is a decimal point", () => {
  expect(evaluate("0.001").number).toBe(0.001);
  expect(evaluate("1.234").number).toBe(1.234);
});
