// Temperature points and differences (area "temperature").

import { expect, test } from "vitest";
import { evaluate, faultsOf } from "./helper.ts";

test("F003 a Celsius point is not shown as a difference", () => {
  expect(faultsOf("3 degC", "degC_diff")).toEqual(["point-and-difference"]);
  expect(evaluate("3 degC - 0 degC", "degC_diff").number).toBeCloseTo(3, 12);
});

test("F004 a point converts with its offset", () => {
  expect(evaluate("5 degC", "degF").number).toBeCloseTo(41, 12);
  expect(evaluate("absolute(5 degC)", "K").number).toBeCloseTo(278.15, 12);
  expect(evaluate("5 degC", "K abs").number).toBeCloseTo(278.15, 12);
  expect(evaluate("5 degC == 278.15 K abs").value).toBe(true);
});

test("F005 a minus before a point literal belongs to the point", () => {
  expect(evaluate("absolute(-1 degC)", "K").number).toBeCloseTo(272.15, 12);
  expect(evaluate("-1 degC", "degF").number).toBeCloseTo(30.2, 12);
});

test("F008 points have a mean and no sum", () => {
  expect(evaluate("mean([10 degC, 20 degC])", "degC").number).toBeCloseTo(15, 12);
  expect(faultsOf("10 degC + 20 degC")).toEqual(["points-do-not-add"]);
  expect(faultsOf("sum([10 degC, 20 degC])")).toEqual(["points-do-not-add"]);
});
