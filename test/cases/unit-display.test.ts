// Units as shown (area "unit display").

import { expect, test } from "vitest";
import { calc, evaluate, notebook } from "./helper.ts";

test("F026 the unit asked for is the unit shown", () => {
  const got = evaluate("230 V * 3.88 A / (60 s^-1)", "ft·lbf");
  expect(got.number).toBeCloseTo(10.97, 2);
  expect(got.unit).toBe("ft·lbf");
});

test("F027 force times length shows as newton metres, never as joules", () => {
  expect(evaluate("0.5 N * 1 m").text).toBe("0.5 N·m");
});

test("F028 no unit appears that nobody used", () => {
  expect(evaluate("2 J/(K·g) * 2 K", "J/g").text).toBe("4 J/g");
  expect(evaluate("2 J/(K·g) * 2 K").unit).not.toMatch(/ft|in|h|lb/);
});

test("F029 what cancels is gone", () => {
  expect(evaluate("2 J/(K·g) * 2 g", "J/K").text).toBe("4 J/K");
  expect(evaluate("2 J/(K·g) * 2 g").unit).not.toMatch(/g\//);
});

test("F030 every way out shows the same text", () => {
  const read = notebook(`${calc("m_salt = 10 mg/mL * 100 mL as mg")}\nIn all {m_salt}.\n`);
  const live = read.outputs().find((one) => one.kind === "live");
  expect(read.text("m_salt")).toBe("1000 mg");
  expect(live?.value?.text).toBe("1000 mg");
  expect(read.session.evaluate("m_salt", { file: read.file }).result?.shown.text).toBe("1000 mg");
});

test("F031 no fractional power of a unit appears by itself", () => {
  expect(evaluate("1 mi / 1 gal").unit).toBe("m⁻²");
});

test("F032 a value asked for in its own unit comes back as it was", () => {
  expect(evaluate("50 ksi", "ksi").text).toBe("50 ksi");
});
