// Percent (area "percent").

import { expect, test } from "vitest";
import { evaluate, faultsOf } from "./helper.ts";

test("F047 percents add as numbers", () => {
  expect(evaluate("10 % + 20 %", "%").text).toBe("30 %");
});

test("F049 % is percent only; the remainder is a function with a name", () => {
  expect(faultsOf("10 % 3")).toEqual(["percent-only"]);
  expect(evaluate("mod(10, 3)").number).toBe(1);
});

test("F050 % between two numbers is refused", () => {
  expect(faultsOf("3 * 3 % 9")).toEqual(["percent-only"]);
  expect(evaluate("mod(3 * 3, 9)").number).toBe(0);
});
