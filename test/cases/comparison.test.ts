// Comparison (area "comparison").

import { expect, test } from "vitest";
import { calc, evaluate, notebook } from "./helper.ts";

test("F073 equality has a relative tolerance and agrees with the other comparisons", () => {
  expect(evaluate("10 angstrom == 1 nm").value).toBe(true);
  expect(evaluate("10 angstrom <= 1 nm and 10 angstrom >= 1 nm").value).toBe(true);
  expect(evaluate("10 * 0.1 nm == 1 nm and 10 * 0.1 nm <= 1 nm and 10 * 0.1 nm >= 1 nm").value).toBe(true);
  expect(evaluate("0.1 + 0.2 == 0.3").value).toBe(true);
  expect(evaluate("0.1 + 0.2 > 0.3").value).toBe(false);
});

test("F074 equality does not hang on the value", () => {
  expect(evaluate("678.0 ug/mL == 678000.0 ng/mL").value).toBe(true);
  expect(evaluate("999 ug/mL == 999000 ng/mL").value).toBe(true);
});

test("F075 half a metre is less than one", () => {
  expect(evaluate("0.5 m < 1 m").value).toBe(true);
  expect(evaluate("0.5 m > 1 m").value).toBe(false);
  expect(evaluate("0.5 m < 60 cm").value).toBe(true);
});

test("F076 a small value is still more than zero", () => {
  expect(evaluate("1e-9 m > 0 m").value).toBe(true);
  expect(evaluate("1e-9 m == 0 m").value).toBe(false);
});

test("F078 a check without a value is open and never passes", () => {
  const read = notebook(calc("none_left = 0 N", "load = 0 N", "ratio = load / none_left", "check ratio <= 1"));
  expect(read.faults("ratio")).toEqual(["divide-by-zero"]);
  expect(read.line("check ratio").check?.state).toBe("open");
  expect(read.line("check ratio").check?.margin).toBeUndefined();
  expect(read.snapshot().counts).toMatchObject({ checks: 1, open: 1 });
});
