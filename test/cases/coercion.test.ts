// What a careless program turns into a plain number (area "silent coercion").

import { expect, test } from "vitest";
import { calc, evaluate, faultsOf, notebook, wordsOf } from "./helper.ts";

test("F038 a ratio of unlike prefixes keeps its factor", () => {
  expect(evaluate("1 V / 1 mV").number).toBeCloseTo(1000, 10);
});

test("F039 an exponential sees the value, not the digits typed", () => {
  expect(evaluate("exp(-(150 nm) / (1.6e-7 m))").number).toBeCloseTo(Math.exp(-0.9375), 12);
});

test("F040 a root sees the value, not the digits typed", () => {
  expect(evaluate("sqrt(1 m / 1 cm)").number).toBeCloseTo(10, 12);
});

test("F041 a sine sees the value, not the digits typed", () => {
  expect(evaluate("sin(pi / 2 * 1 rad * (1 cm / 1 m))").number).toBeCloseTo(Math.sin(Math.PI / 200), 12);
});

test("F042 a product that cancels keeps its prefix", () => {
  expect(evaluate("3 s * 1 kHz").number).toBeCloseTo(3000, 9);
  expect(evaluate("3 s·kHz").si).toBeCloseTo(3000, 9);
  expect(evaluate("3 s·kHz").text).toBe("3000");
  expect(evaluate("3 s·kHz == 3000").value).toBe(true);
});

test("F043 a length where a number is wanted is refused by the name of the parameter", () => {
  expect(faultsOf("exp(5 mm)")).toEqual(["wrong-argument"]);
  expect(wordsOf("exp(5 mm)")).toContain("x of exp");
  const read = notebook(calc("formula twice(share: Number) = 2 * share", "y = twice(5 mm)"));
  expect(read.faults("y")).toEqual(["wrong-argument"]);
  expect(read.output("y").diagnostics[0]?.message).toContain("share");
});

test("F046 numbers sort by size", () => {
  expect(evaluate("sort([10, 9, 1])").value).toEqual([1, 9, 10]);
});
