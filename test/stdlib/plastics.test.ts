// Plastics, print state and effective strength through the language: what is refused, what is marked, what must agree.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

const evaluated = (expression: string, as?: string) => session.evaluate(expression, as === undefined ? {} : { as });

function number(expression: string, as?: string): number {
  const { result, diagnostics } = evaluated(expression, as);
  if (typeof result?.value !== "number") throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return Number(result.shown.full.replace("−", "-"));
}

const codes = (expression: string): readonly string[] => evaluated(expression).diagnostics.map((one) => one.code);
const outside = (expression: string): number => evaluated(expression).result?.outside.length ?? Number.NaN;
const provenance = (expression: string): string => evaluated(expression).result?.provenance ?? "";

const part = (state: string, more = "hole = 5 mm, t = 20 mm", plastic = '"PLA"'): string =>
  `PrintedPart { material = plastic(${plastic}), state = PrintState { ${state} }, ${more} }`;
const strength = (plastic: string, state = "walls = 3", service = "cycles = 1"): string =>
  `part_strength(PrintedPart { material = plastic(${plastic}), state = PrintState { ${state} } }, Service { ${service} })`;
const cylinder = (of: string, r: number, from: number, to: number): number =>
  number(`cylinder_capacity(${of}, ${strength('"PLA"')}, ${r} mm, ${from} mm, ${to} mm)`, "N");

const rowsOf = (file: string): readonly (readonly string[])[] =>
  (library.files.find((one) => one.name === file)?.text ?? "")
    .trim()
    .split("\n")
    .map((line) => line.split(";"));

test("every row of the tables of plastics states its condition, how it is known and a source, least first", () => {
  const names = rowsOf("data/plastics.csv").map(([name]) => name);
  for (const file of ["plastic-stresses", "plastic-ratios", "plastic-temperatures", "plastic-expansion"]) {
    const [head = [], ...rows] = rowsOf(`data/${file}.csv`);
    expect(rows.length).toBeGreaterThan(2);
    const column = (start: string): number => head.findIndex((one) => one.startsWith(start));
    for (const row of rows) {
      const at = (start: string): string => row[column(start)] ?? "";
      expect(names, row.join(";")).toContain(at("plastic"));
      expect(Number(at("low")), row.join(";")).toBeLessThanOrEqual(Number(at("high")));
      expect(["read", "memory"], row.join(";")).toContain(at("how_known"));
      for (const cell of ["at", "source"]) expect(at(cell), row.join(";")).not.toBe("");
    }
  }
});

test("each plastic gives strengths or says that there are no data", () => {
  const refused = rowsOf("data/plastics.csv")
    .slice(1)
    .map(([name]) => name ?? "")
    .filter((name) => {
      const found = codes(strength(`"${name}"`));
      if (found.length > 0) expect(found, name).toEqual(["requirement-broken"]);
      return found.length > 0;
    });
  expect(refused).toEqual(["PEEK", "PEKK"]);
});

test("a polyamide is conditioned unless it is said to be dry, and a dry one falls in damp air", () => {
  expect(evaluated('plastic("PA12").condition').result?.value).toBe("conditioned");
  expect(evaluated('plastic("ABS", condition = "conditioned").condition').result?.value).toBe("not given");
  const dry = number(`${strength('"PA-CF", condition = "dry"', "walls = 3", "humidity = 5 %")}.sigma`, "MPa");
  const damp = number(`${strength('"PA-CF", condition = "dry"')}.sigma`, "MPa");
  expect(dry).toBe(110);
  expect(damp).toBe(number(`${strength('"PA-CF"')}.sigma`, "MPa"));
});

test("what is remembered says so, and a measured value put in takes its place", () => {
  expect(provenance('plastic("PLA").tau')).toContain("memory");
  expect(provenance('plastic("PLA").sigma_xy')).not.toContain("memory");
  expect(provenance('plastic("PETG").sigma_z')).toContain("memory");
  expect(provenance(`${strength('"PA-CF"')}.tau`)).toContain("memory");
  expect(provenance('plastic("PLA").T_limit')).toContain("memory");
  expect(number('(plastic("PETG") with { sigma_z = 21 MPa }).sigma_z', "MPa")).toBe(21);
});

test("heat takes strength away steadily, and nothing is told beyond the limit", () => {
  const at = (T: number): number => number(`temperature_share(plastic("PETG"), ${T} degC)`);
  expect([-10, 20, 23].map(at)).toEqual([1, 1, 1]);
  expect(at(40)).toBeGreaterThan(at(50));
  expect(at(75.9)).toBeGreaterThan(0);
  expect(codes('temperature_share(plastic("PETG"), 76 degC)')).toEqual(["requirement-broken"]);
  expect(codes('temperature_share(plastic("PA6"), 30 degC)')).toEqual(["requirement-broken"]);
  expect(outside('temperature_share(plastic("PA12"), 30 degC)')).toBe(1);
  expect(outside('temperature_share(plastic("PETG"), 30 degC)')).toBe(0);
});

test("beyond what is known a share is marked", () => {
  expect(outside('rate_share(Service { rate = "impact" })')).toBe(1);
  expect(outside("rate_share(Service { temperature = -5 degC })")).toBe(1);
  expect(outside('layer_share(plastic("ABS"), 0.3 mm, 0.4 mm)')).toBe(1);
  expect(outside('layer_share(plastic("ABS"), 0.2 mm, 0.4 mm)')).toBe(0);
  expect(outside('cycle_share(plastic("ABS"), Service { cycles = 2e6 })')).toBe(1);
  expect(outside('reassembly_share("self_cut_hole", 2)')).toBe(0);
  expect(outside('reassembly_share("self_cut_hole", 3)')).toBe(1);
  expect(outside('reassembly_share("heat_set_insert", 100)')).toBe(0);
  expect(outside('creep_ratio(plastic("PLA"), 30 day)')).toBe(1);
  expect(outside('creep_ratio(plastic("PC"), 30 day)')).toBe(0);
  expect(outside('moisture_share(plastic("PA6"), 90 %)')).toBe(1);
});

test("a lasting load, cycles and creep take more the longer they go on", () => {
  const creep = (hours: number): number => number(`creep_ratio(plastic("PC"), ${hours} h)`);
  const times = [0.5, 2, 24, 1000, 3000, 9000].map(creep);
  expect([...times].sort((a, b) => a - b)).toEqual(times);
  const cycles = [1, 10, 1e3, 1e6].map((n) => number(`cycle_share(plastic("PC"), Service { cycles = ${n} })`));
  expect(cycles[0]).toBe(1);
  expect([...cycles].sort((a, b) => b - a)).toEqual(cycles);
  const left = (k_P: number): number =>
    number(`1 * preload_retention(${part("walls = 3", "hole = 5 mm", '"PC"')}, Service { duration = 9000 h }, 20000 N/mm, ${k_P} N/mm)`);
  expect(left(2000)).toBeLessThan(left(50000));
  expect(left(50000)).toBeLessThan(1);
});

test("a screw that is turned over has the same strengths, and from along to across they pass over without a step", () => {
  for (const field of ["tau", "tau_layer", "sigma", "E", "hoop"]) {
    const at = (angle: number): number => number(`${strength('"PLA"', `screw_to_build = ${angle} deg`)}.${field}`, "MPa");
    expect(at(180), field).toBeCloseTo(at(0), 9);
    expect(at(120), field).toBeCloseTo(at(60), 9);
    for (const angle of [0, 30, 45, 89]) expect(Math.abs(at(angle + 0.01) / at(angle) - 1), `${field} at ${angle}`).toBeLessThan(0.001);
  }
});

test("pull at an angle never holds more than the stronger of both directions", () => {
  const at = (angle: number): number => number(`strength_at_angle(50 MPa, 20 MPa, 60 MPa, ${angle} deg)`, "MPa");
  for (const angle of [0, 15, 40, 65, 80, 90]) {
    expect(at(angle), `at ${angle}`).toBeGreaterThanOrEqual(20 - 1e-9);
    expect(at(angle), `at ${angle}`).toBeLessThanOrEqual(50 + 1e-9);
  }
  expect(number("strength_at_angle(50 MPa, 20 MPa, 5 MPa, 45 deg)", "MPa")).toBeCloseTo(2 / Math.hypot(1 / 20, 1 / 5), 9);
});

test("what two stretches of a cylinder carry adds up, walls and skins carry whole, infill less", () => {
  const one = part("infill = 30 %");
  for (const r of [3, 4.5]) expect(cylinder(one, r, 0, 4) + cylinder(one, r, 4, 20)).toBeCloseTo(cylinder(one, r, 0, 20), 6);
  const shear = (r: number): number => cylinder(one, r, 2, 12) / r;
  expect(shear(3)).toBeCloseTo(shear(3.8), 8);
  expect(shear(4) / shear(3)).toBeCloseTo(0.3 ** 1.5, 8);
  const solid = part("infill = 100 %");
  expect(cylinder(solid, 4, 2, 12) / 4).toBeCloseTo(shear(3), 6);
});

test("the weakest radius carries no more than any other that is tried", () => {
  for (const state of ["walls = 2", "walls = 6", "infill = 100 %", "screw_to_build = 90 deg, infill = 25 %"]) {
    const of = part(state);
    const r = number(`weakest_radius(${of}, ${strength('"PLA"')}, 3 mm, 8 mm, 0 mm, 10 mm)`, "mm");
    const least = cylinder(of, r, 0, 10);
    for (const other of [3, 3.37, 4.1, 5.2, 6.6, 8])
      expect(least, `${state} at ${other}`).toBeLessThanOrEqual(cylinder(of, other, 0, 10) + 1e-9);
  }
});

test("a part whose hole is not known, a stretch beyond it and a radius outside its boss are refused", () => {
  expect(codes(`effective_depth(${part("walls = 3", "t = 20 mm")}, 3 mm, 0 mm, 5 mm)`)).toEqual(["requirement-broken"]);
  expect(codes(`effective_depth(${part("walls = 3")}, 3 mm, 0 mm, 20.1 mm)`)).toEqual(["requirement-broken"]);
  expect(codes(`effective_depth(${part("walls = 3", "hole = 5 mm, boss = 12 mm")}, 6.1 mm, 0 mm, 5 mm)`)).toEqual(["requirement-broken"]);
  expect(codes(`foot_area(${part("walls = 3")}, 2.5 mm, 5 mm)`)).toEqual(["requirement-broken"]);
});

test("sparse polyamide is marked wherever it carries, its walls are not", () => {
  const nylon = part("walls = 3", "hole = 5 mm", '"PA12"');
  expect(outside(`solid_share_at(${nylon}, 6 mm, 5 mm)`)).toBe(1);
  expect(outside(`solid_share_at(${nylon}, 3 mm, 5 mm)`)).toBe(0);
  expect(outside(`solid_share_at(${part("infill = 10 %")}, 6 mm, 5 mm)`)).toBe(1);
});

test("a face is first damaged before it gives way, and a thicker skin never carries less", () => {
  const bearing = (state: string, skin: number, what: string): number =>
    number(`bearing_capacity_on_part(${part(state)}, ${strength('"PLA"')}, 40 mm^2, 25 mm, skin = ${skin} mm).${what}`, "N");
  for (const state of ["infill = 25 %", "infill = 60 %", 'pattern = "solid"']) {
    for (const skin of [0.4, 1, 3]) {
      expect(bearing(state, skin, "first")).toBeLessThanOrEqual(bearing(state, skin, "ultimate"));
      expect(bearing(state, skin, "first")).toBeLessThanOrEqual(bearing(state, skin + 0.4, "first"));
    }
  }
});

const setup =
  'PullSetup { kind = "tapped_hole", material = "PETG", d = 5 mm, L = 8 mm, hole = 4.2 mm, state = PrintState { walls = 4, infill = 40 % } }';
const found = `calibrate([1980 N, 2200 N, 2090 N], "0.875 pi d L", 110 mm^2, ${setup})`;
const used = (change: string, area = "0.875 pi d L"): string =>
  `calibrated_force(${found}, "${area}", 100 mm^2, ${setup} with { ${change} })`;

test("an effective strength with another area formula or plastic is refused", () => {
  expect(codes(used("L = 8 mm", "minimum material"))).toEqual(["requirement-broken"]);
  expect(codes(used('material = "PLA"'))).toEqual(["requirement-broken"]);
  expect(codes(used('condition = "conditioned"'))).toEqual(["requirement-broken"]);
});

test("outside what was tested its result is marked, once for each limit", () => {
  expect(outside(used("L = 8 mm"))).toBe(0);
  expect(outside(used('kind = "self_cut_hole"'))).toBe(1);
  expect(outside(used("d = 6 mm, L = 9 mm"))).toBe(2);
  expect(outside(used("hole = 4.3 mm"))).toBe(1);
  expect(outside(used("state = PrintState { walls = 4, infill = 30 % }"))).toBe(1);
  expect(outside(used("state = PrintState { walls = 4, layer = 0.3 mm }"))).toBe(1);
});

test("sets of another area, plastic or method do not pool", () => {
  const other = (from: string, to: string): string => `pooled_strength(${found}, ${found.replaceAll(from, to)})`;
  expect(codes(other("0.875 pi d L", "screw cylinder"))).toEqual(["requirement-broken"]);
  expect(codes(other("PETG", "PLA"))).toEqual(["requirement-broken"]);
  expect(codes(other("tapped_hole", "self_cut_hole"))).toEqual(["requirement-broken"]);
  expect(number(`${other("zzz", "")}.n`)).toBe(6);
});

test("chopped fibre along the lines raises neither the shear round a screw nor the bearing of the polyamide", () => {
  for (const condition of ["dry", "conditioned"])
    for (const one of ["tau", "sigma_c"])
      expect(number(`known_stress(plastic("PA6-CF", condition = "${condition}").${one})`, "MPa"), one).toBe(
        number(`known_stress(plastic("PA6", condition = "${condition}").${one})`, "MPa"),
      );
  expect(number('known_stress(plastic("PA6-CF").sigma_xy)', "MPa")).toBeGreaterThan(number('known_stress(plastic("PA6").sigma_xy)', "MPa"));
});
