// Screws as records: sizes beyond the published rows, what is from memory says so, and the tables of fits hold together.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

function value(expression: string): number {
  const { result, diagnostics } = session.evaluate(expression, {});
  expect(
    diagnostics.map((one) => one.message),
    expression,
  ).toEqual([]);
  return Number(result?.shown.full.replace("−", "-"));
}

const rises = (numbers: readonly number[]): boolean => numbers.every((one, i) => i === 0 || (numbers[i - 1] ?? 0) < one);

const sizes = ["M3", "M4", "M5", "M6", "M8", "M10", "M12", "M16", "M20", "M24", "M30", "M36"];

test("loads, preloads and torques rise with the size for every steel class, and stay below the strength", () => {
  for (const grade of ["4.6", "5.8", "8.8", "10.9", "12.9"]) {
    const screws = sizes.map((size) => `hex_screw("${size}", "${grade}", 100 mm)`);
    const most = screws.map((screw) => value(`screw_tensile_capacity(${screw})`));
    const preloads = screws.map((screw) => value(`screw_yield_preload(${screw}, 0.12, 0.9, "2001-2015")`));
    const torques = screws.map((screw, i) =>
      value(`tightening_torque(${screw}, ${preloads[i]} N, 0.12, 0.12, clearance_hole(thread("${sizes[i]}")))`),
    );
    expect(rises(most) && rises(preloads) && rises(torques), grade).toBe(true);
    for (const [i, F] of preloads.entries()) {
      expect(F).toBeLessThan(0.9 * (most[i] ?? 0));
      // the short form with a factor near 0.16 is what such friction gives
      const K = (torques[i] ?? 0) / F / (Number(sizes[i]?.slice(1)) / 1000);
      expect(K, `${sizes[i]} ${grade}`).toBeGreaterThan(0.14);
      expect(K, `${sizes[i]} ${grade}`).toBeLessThan(0.19);
    }
  }
});

test("inch screws do the same", () => {
  const inch = ["1/4-20 UNC", "5/16-18 UNC", "3/8-16 UNC", "7/16-14 UNC", "1/2-13 UNC", "5/8-11 UNC", "3/4-10 UNC", "1-8 UNC"];
  for (const grade of ["grade 2", "grade 5", "grade 8"]) {
    expect(rises(inch.map((size) => value(`screw_tensile_capacity(hex_screw("${size}", "${grade}", 3 in))`))), grade).toBe(true);
    expect(rises(inch.slice(0, 7).map((size) => value(`screw_proof_capacity(socket_screw("${size}", "${grade}", 3 in))`)))).toBe(true);
  }
});

test("nuts of the class that fits a screw bear its least breaking load, coarse and fine", () => {
  for (const size of ["M6", "M8", "M10", "M12", "M16", "M8x1", "M10x1.25", "M12x1.5", "M16x1.5"]) {
    for (const grade of ["8.8", "10.9"]) {
      const nut = value(`nut_capacity(hex_nut(thread("${size}")) with { grade = least_nut_class(property_class("${grade}")) })`);
      expect(nut, `${size} ${grade}`).toBeGreaterThan(value(`screw_yield_capacity(hex_screw("${size}", "${grade}", 60 mm))`));
    }
  }
});

const provenance = (expression: string): string | undefined => {
  session.put("p.joint.md", `\`\`\`calc\nx = ${expression}\n\`\`\`\n`);
  session.snapshot("p.joint.md");
  return session.outputs("p.joint.md").find((one) => one.name === "x")?.marks?.provenance?.level;
};

test("a thread whose row is from memory says so, one whose row was read does not", () => {
  expect(provenance('pitch_diameter(thread("M1.1"))')).toBe("memory");
  expect(provenance("coarse_pitch(1.1 mm)")).toBe("memory");
  expect(provenance("is_iso_261(1.1 mm, 0.25 mm)")).toBe("memory");
  expect(provenance('pitch_diameter(thread("M6"))')).toBe("published");
  expect(provenance('nut_proof_load(thread("M8x1"), nut_class("8"))')).toBe("memory");
  expect(provenance('hole_limits(8 mm, "H", 7).upper')).toBe("memory");
});

test("the widths of the fits are the rounded multiples of the standard's formula", () => {
  const multiples = [7, 10, 16, 25, 40, 64, 100, 160, 250, 400];
  const steps = [
    [6, 10],
    [10, 18],
    [18, 30],
    [30, 50],
    [50, 80],
    [80, 120],
  ] as const;
  for (const [over, to] of steps) {
    const unit = value(`tolerance_unit(${Math.sqrt(over * to)} mm)`);
    for (const [i, multiple] of multiples.entries()) {
      const T = value(`standard_tolerance(${to} mm, ${i + 5})`);
      expect(Math.abs(T / (multiple * unit) - 1), `IT${i + 5} up to ${to} mm`).toBeLessThan(0.06);
    }
  }
});

test("what there is no table for is refused", () => {
  for (const expression of [
    'hole_limits(130 mm, "H", 7)',
    'hole_limits(8 mm, "P", 8)',
    'shaft_limits(8 mm, "u", 6)',
    'heat_set_insert("M5")',
    'head_bearing_diameter(socket_head(thread("1/4-20 UNC")))',
  ])
    expect(session.evaluate(expression, {}).result, expression).toBeUndefined();
});
