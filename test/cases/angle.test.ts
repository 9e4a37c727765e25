// Angles (area "angle").

import { expect, test } from "vitest";
import { evaluate, faultsOf } from "./helper.ts";

test("F033 an angle and a number do not share a list, and no conversion cuts digits", () => {
  expect(faultsOf("[30 deg, 2]")).toEqual(["kinds-differ"]);
  expect(evaluate("30 deg", "rad").number).toBeCloseTo(Math.PI / 6, 15);
});

test("F036 an angular speed is no frequency; dividing by a turn makes it one", () => {
  expect(faultsOf("720 deg/s", "Hz")).toEqual(["unit-does-not-fit"]);
  expect(evaluate("720 deg/s", "rpm").number).toBeCloseTo(120, 10);
  expect(evaluate("720 deg/s / 360 deg", "Hz").number).toBeCloseTo(2, 12);
});

test("F037 the unit of the argument decides, there is no mode", () => {
  expect(evaluate("sin(9 deg)").number).toBeCloseTo(0.15643446504, 10);
  expect(evaluate("sin(9 rad)").number).toBeCloseTo(0.41211848524, 10);
  expect(faultsOf("sin(9)")).toEqual(["wrong-argument"]);
});
