// Tightening, clamped joints, strength and groups through the language: what they refuse, what they mark, what must agree.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

function value(expression: string, as?: string): unknown {
  const { result, diagnostics } = session.evaluate(expression, as === undefined ? {} : { as });
  if (result === undefined) throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return typeof result.value === "number" ? Number(result.shown.full.replace("−", "-")) : result.value;
}

const number = (expression: string, as?: string): number => Number(value(expression, as));
const codes = (expression: string): readonly string[] => session.evaluate(expression, {}).diagnostics.map((one) => one.code);
const outside = (expression: string): number => session.evaluate(expression, {}).result?.outside.length ?? Number.NaN;

test("fits made on metals are refused for plastic", () => {
  for (const expression of [
    'fit_stiffness("steel", 3 GPa, 5 mm, 20 mm)',
    "exponential_stiffness(3 GPa, 5 mm, 20 mm, 0.79, 0.63)",
    'vdi_cone_slope(20 mm, 10 mm, 40 mm, "through", 3 GPa)',
    'embedding("below 10 µm", "tension", 2, 1, 3 GPa, 6 mm)',
    "en_bearing_resistance(2, 0.6, 50 MPa, 5 mm, 5 mm, 1.25)",
    "en_punching_resistance(10 mm, 5 mm, 50 MPa, 1.25)",
    "plastic_moment(20 mm, 5 mm, 40 MPa)",
  ])
    expect(codes(expression), expression).toEqual(["requirement-broken"]);
  expect(codes('fit_stiffness("plastic", 70 GPa, 5 mm, 20 mm)')).toEqual(["key-missing"]);
  expect(codes('limiting_pressure("PA6", "VDI 2230 2003")')).toEqual(["requirement-broken"]);
});

test("a rule beyond what it was made for is marked", () => {
  expect(outside('nut_compliance(thread("M5"), 200 GPa, "nut")')).toBe(0);
  expect(outside('nut_compliance(thread("M5"), 3 GPa, "tapped")')).toBe(1);
  expect(outside('embedding("below 10 µm", "tension", 2, 1, 70 GPa, 3 mm)')).toBe(1);
  expect(outside('assembly_preload(thread("1/4-20 UNC"), 640 MPa, 0.12, 0.9, "2001-2015")')).toBe(1);
  expect(outside('assembly_preload(thread("M6"), 640 MPa, 0.12, 1.1, "2001-2015")')).toBe(1);
});

test("a variant that was not named is refused", () => {
  expect(codes('assembly_preload(thread("M6"), 640 MPa, 0.12, 0.9)')).toEqual(["missing-argument"]);
  expect(codes('assembly_preload(thread("M6"), 640 MPa, 0.12, 0.9, "2003")')).toEqual(["not-a-choice"]);
  expect(codes('separation_load(1 kN, 0.5, 0.3, "both")')).toEqual(["not-a-choice"]);
  expect(codes('preload_left(1 kN, [5 %], "max")')).toEqual(["not-a-choice"]);
});

test("tightened to a share of yield with the torsion of its own friction, a screw reaches that share", () => {
  const stress = number('tightening_stress(assembly_preload(thread("M8"), 640 MPa, 0.12, 0.9, "1986"), thread("M8"), 0.12, "1986")', "MPa");
  expect(Math.abs(stress / 576 - 1)).toBeLessThan(0.003);
});

test("the force in a screw has no step where the joint opens", () => {
  const at = (load: number): number => number(`screw_force(1000 N, ${load} N, 1, 0.8)`, "N");
  expect(at(4999.999)).toBeCloseTo(at(5000.001), 1);
  expect(at(6000)).toBe(6000);
  expect(number('separation_load(1000 N, 1, 0.8, "load shared")', "N")).toBeCloseTo(5000, 9);
  expect(number("clamp_left(1000 N, 5000 N, 1, 0.8)", "N")).toBeCloseTo(0, 9);
});

test("a stack does not change when a layer is cut in two or the whole is turned over", () => {
  const stack = (t: string, E: string): number => number(`stack_compliance(round_stack(${t}, ${E}, 16 mm, 5.5 mm, 10 mm))`, "mm/N");
  const whole = stack("[2 mm, 13 mm, 5 mm]", "[205 GPa, 3 GPa, 70 GPa]");
  expect(stack("[2 mm, 4 mm, 9 mm, 5 mm]", "[205 GPa, 3 GPa, 3 GPa, 70 GPa]") / whole).toBeCloseTo(1, 10);
  expect(stack("[5 mm, 13 mm, 2 mm]", "[70 GPa, 3 GPa, 205 GPa]") / whole).toBeCloseTo(1, 10);
  expect(
    number(
      'load_factor_of_compliances(screw_compliance(thread("M5"), 205 GPa, 0 mm, 20 mm, "socket", "nut", 205 GPa), stack_compliance(round_stack([20 mm], [3 GPa], 16 mm, 5.5 mm, 10 mm)))',
    ),
  ).toBeGreaterThan(0.8);
});

test("a torque window says when it is empty and what closes it", () => {
  const window = "window_of_scatter(800 N, PreloadLimits { strip = 900 N, crush = 1000 N, yield = 5 kN }, 1 mm, 25 %, 0 N·m)";
  expect(value(`${window}.empty`)).toBe(true);
  expect(value(`${window}.governs`)).toBe("stripping");
  const turning =
    "window_of_scatter(300 N, PreloadLimits { strip = 900 N, crush = 1000 N, yield = 5 kN, turn = 0.5 N·m }, 1 mm, 25 %, 0 N·m)";
  expect(value(`${turning}.governs`)).toBe("turning of the insert");
  expect(value(`${turning}.empty`)).toBe(false);
});

test("a rotating moment on a square finds its diagonal, 41 % above the side", () => {
  const square = "grid_pattern(2, 2, 60 mm, 60 mm)";
  const side = number(`max(tensions(${square}, 0 N, 10 N·m, 0 N·m))`, "N");
  expect(number(`worst_tension_of_rotating_moment(${square}, 10 N·m)`, "N") / side).toBeCloseTo(Math.SQRT2, 10);
  expect(Math.abs(number(`worst_direction(${square})`, "deg")) % 90).toBeCloseTo(45, 8);
});

test("forces of a group balance the load, with equal and with unequal screws", () => {
  const pattern = "list_pattern([0 mm, 70 mm, 10 mm, 40 mm], [0 mm, 5 mm, 55 mm, 30 mm])";
  const along = (f: string): readonly number[] => [1, 2, 3, 4].map((i) => number(`${f}[${i}]`, "N"));
  const [xs, ys] = [
    [0, 70, 10, 40],
    [0, 5, 55, 30],
  ];
  const moment = (fx: readonly number[], fy: readonly number[]): number =>
    fx.reduce((sum, _, i) => sum + (xs?.[i] ?? 0) * (fy[i] ?? 0) - (ys?.[i] ?? 0) * (fx[i] ?? 0), 0);
  const sum = (f: readonly number[]): number => f.reduce((total, one) => total + one, 0);
  const call = `weighted_plane_forces(${pattern}, [1, 2, 1.5, 3], 100 N, -40 N, 90 mm, 20 mm)`;
  const [fx, fy] = [along(`${call}.x`), along(`${call}.y`)];
  expect(sum(fx)).toBeCloseTo(100, 8);
  expect(sum(fy)).toBeCloseTo(-40, 8);
  expect(moment(fx, fy)).toBeCloseTo(90 * -40 - 20 * 100, 6);
  const pull = along(`tensions(${pattern}, 80 N, 3 N·m, -2 N·m)`);
  expect(sum(pull)).toBeCloseTo(80, 8);
  expect(sum(pull.map((one, i) => one * ((ys?.[i] ?? 0) - 22.5)))).toBeCloseTo(3000, 6);
  expect(-sum(pull.map((one, i) => one * ((xs?.[i] ?? 0) - 30)))).toBeCloseTo(-2000, 6);
  expect(codes("tensions(grid_pattern(3, 1, 40 mm, 0 mm), 0 N, 1 N·m, 0 N·m)")).toEqual(["requirement-broken"]);
});

test("a load multiplier brings its rule to 1", () => {
  for (const rule of ["shank in shear plane", "thread in shear plane", "EN 1993-1-8"]) {
    const k = number(`load_multiplier("${rule}", 0.3, 0.45)`);
    expect(number(`interaction("${rule}", ${k} * 0.3, ${k} * 0.45)`)).toBeCloseTo(1, 8);
  }
});
