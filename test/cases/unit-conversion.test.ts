// Conversion between units (area "unit conversion").

import { expect, test } from "vitest";
import { calc, csv, evaluate, faultsOf, notebook, wordsOf } from "./helper.ts";

test("F011 mass where force is wanted names the clash and the mend", () => {
  expect(faultsOf("5 lb/gal * 10 ft", "psi")).toEqual(["unit-does-not-fit"]);
  expect(wordsOf("5 lb/gal * 10 ft", "psi")).toMatch(/lbf|gravity/);
  expect(evaluate("5 lb/gal * g_n * 10 ft", "psi").number).toBeCloseTo(2.5974026, 6);
});

test("F012 kip is a thousand pounds-force", () => {
  expect(evaluate("100 kN", "kip").number).toBeCloseTo(22.480894309971, 10);
  expect(faultsOf("100 kg", "kip")).toEqual(["unit-does-not-fit"]);
});

test("F013 psi has one exact value", () => {
  expect(evaluate("1 psi", "Pa").number).toBeCloseTo((0.45359237 * 9.80665) / 0.0254 ** 2, 9);
  expect(evaluate("1 lbf / 1 in^2", "Pa").number).toBeCloseTo(evaluate("1 psi", "Pa").number, 9);
});

test("F015 lbf is a force and ft·lbf a torque or an energy", () => {
  expect(evaluate("1 lbf", "N").number).toBeCloseTo(4.4482216152605, 12);
  expect(evaluate("1 ft·lbf", "N·m").number).toBeCloseTo(1.3558179483314, 12);
  expect(evaluate("1 ft·lbf", "J").number).toBeCloseTo(1.3558179483314, 12);
  expect(faultsOf("1 lbf", "J")).toEqual(["unit-does-not-fit"]);
});

test("F016 the base set is coherent SI", () => {
  expect(evaluate("1000 psi").si).toBeCloseTo(6894757.293168361, 6);
  expect(evaluate("1000 psi", "MPa").number).toBeCloseTo(6.894757293168361, 12);
});

test("F017 the unit table converts, nobody types a factor", () => {
  expect(evaluate("600 MPa", "psi").number).toBeCloseTo(87022.642633, 3);
});

test("F018 a column of numbers without a unit is refused", () => {
  const read = notebook(csv("log", "t [s];impulse", "1;2.5", "2;3.5") + calc("total = sum(log.impulse)"));
  expect(read.allFaults().length).toBeGreaterThan(0);
  expect(read.output("total").value).toBeUndefined();
  const headed = notebook(csv("log", "t [s];impulse [lbf·s]", "1;2.5", "2;3.5") + calc("total = sum(log.impulse) as N·s"));
  expect(headed.number("total")).toBeCloseTo(6 * 4.4482216152605, 10);
});

test("F019 showing a value does not change it", () => {
  const before = evaluate("1 ft * 1 m").si;
  evaluate("1 ft * 1 m", "ft^2");
  expect(evaluate("1 ft * 1 m").si).toBe(before);
  expect(evaluate("1 ft * 1 m", "m^2").number).toBeCloseTo(0.3048, 15);
});

test("F020 the shown unit of an input alters nothing that hangs on it", () => {
  const read = notebook(calc("L = 5 in as mm", "A = L * L as mm^2"));
  const before = read.number("A");
  const changed = read.edit("as mm\n", "as in\n");
  expect(read.number("L")).toBe(5);
  expect(read.number("A")).toBe(before);
  expect(changed.reran).not.toContain("A");
});

test("F021 a rounded factor is no other unit", () => {
  expect(evaluate("1 cm^3 == 9.99999999999998e-7 m^3").value).toBe(true);
});

test("F022 powers of a unit convert as powers", () => {
  expect(evaluate("1 in^2", "mm^2").number).toBeCloseTo(645.16, 10);
});

test("F023 a torque carries its whole unit", () => {
  expect(evaluate("4.4 in·lbf", "N·m").number).toBeCloseTo(0.4971332477, 9);
  expect(evaluate("4.4 ft·lbf", "N·m").number).toBeCloseTo(5.9655989727, 9);
  expect(evaluate("4.4 in·lbf", "in·lbf").unit).toMatch(/in.*lbf|lbf.*in/);
  expect(notebook(["---", "units: { torque: N*m }", "---", calc("T = 4.4 in·lbf * 1")].join("\n")).output("T").value?.unit).toBe("N·m");
});

test("F024 kgf·cm is a torque of its own", () => {
  expect(evaluate("5 kgf·cm", "N·m").number).toBeCloseTo(0.4903325, 12);
  expect(evaluate("5 N·cm", "N·m").number).toBeCloseTo(0.05, 12);
});

test("F025 a bare number does not stand for a length", () => {
  expect(evaluate("0.5 N·m / (0.2 * 3 mm)", "N").number).toBeCloseTo(833.3333333, 6);
  expect(faultsOf("0.5 N·m / (0.2 * 3)", "N")).toEqual(["unit-does-not-fit"]);
});
