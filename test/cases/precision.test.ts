// Digits shown and digits kept (area "precision/rounding").

import { expect, test } from "vitest";
import { calc, evaluate, notebook } from "./helper.ts";

const digits = (count: number, ...lines: readonly string[]): string => ["---", `digits: ${count}`, "---", calc(...lines)].join("\n");

test("F067 the shown number is clean and the kept one untouched", () => {
  const got = evaluate("4.35 * 100");
  expect(got.text).toBe("435");
  expect(got.si).toBe(4.35 * 100);
});

test("F068 halves of the decimal text go away from zero", () => {
  expect(notebook(digits(3, "x = 1.005")).text("x")).toBe("1.01");
  expect(notebook(digits(3, "x = -1.005")).text("x")).toBe("−1.01");
  expect(notebook(digits(3, "x = 1.005")).number("x")).toBe(1.005);
});

test("F069 the order of a sum does not show", () => {
  expect(evaluate("1 cm + 1 mm", "m").text).toBe(evaluate("1 mm + 1 cm", "m").text);
  expect(evaluate("1 cm + 1 mm", "m").text).toBe("0.011 m");
});

test("F070 a negative margin never shows as zero and the verdict comes from the full value", () => {
  const check = notebook(calc("check 1.00001 N <= 1 N")).line("check").check;
  expect(check?.state).toBe("fails");
  expect(check?.margin).toBeLessThan(0);
  expect(check?.marginText).toMatch(/^−.*[1-9]/);
  expect(notebook(calc("check 1.004 N <= 1 N")).line("check").check?.marginText).toMatch(/^−.*[1-9]/);
});

test("F072 a small negative value keeps its digits and zero has no sign", () => {
  expect(notebook(digits(1, "F = -0.4 N as N")).text("F")).toBe("−0.4 N");
  expect(evaluate("0 N * -1", "N").text).toBe("0 N");
});
