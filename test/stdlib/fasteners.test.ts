// Classes, products, holes and lengths through the language: what is refused, what is marked, and that the tables obey their own rules.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

function value(expression: string, as?: string): unknown {
  const { result, diagnostics } = session.evaluate(expression, as === undefined ? {} : { as });
  if (result === undefined) throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return typeof result.value === "number" ? Number(result.shown.full.replace("−", "-")) : result.value;
}

const outside = (expression: string): readonly string[] => session.evaluate(expression, {}).result?.outside ?? ["no value"];

function refusal(expression: string): string {
  const { result, diagnostics } = session.evaluate(expression, {});
  expect(result, expression).toBeUndefined();
  return diagnostics.map((one) => `${one.message} ${one.hint ?? ""}`).join(" ");
}

interface Row {
  readonly [head: string]: string;
}

function rowsOf(file: string): readonly Row[] {
  const [head = "", ...lines] = (library.files.find((one) => one.name === file)?.text ?? "").trim().split("\n");
  const heads = head.split(";").map((one) => one.replace(/ \[.*\]$/, ""));
  return lines.map((line) => Object.fromEntries(line.split(";").map((cell, i) => [heads[i] ?? "", cell])));
}

const number = (row: Row, head: string): number => Number(row[head]);

test("a class of no table is refused with the one that is near", () => {
  expect(refusal('property_class("8.9")')).toMatch(/8\.9 is not in the table.*8\.8/);
  expect(refusal('property_class("A2-71")')).toMatch(/A2-70/);
  expect(refusal('property_class("grade 6")')).toMatch(/grade/);
  expect(refusal('nut_class("11")')).toMatch(/not in the table/);
  expect(refusal('nut_class("9", style = "regular")')).toMatch(/high/);
});

test("strengths change above the size where the standard changes them, and are marked beyond its last size", () => {
  expect(value('least_tensile_strength(property_class("8.8"), 16 mm)', "MPa")).toBe(800);
  expect(value('least_tensile_strength(property_class("8.8"), 16.01 mm)', "MPa")).toBe(830);
  expect(value('proof_stress(property_class("8.8"), 16 mm)', "MPa")).toBe(580);
  expect(outside('proof_stress(property_class("8.8"), 39 mm)')).toEqual([]);
  expect(outside('proof_stress(property_class("8.8"), 42 mm)').length).toBe(1);
  expect(outside('proof_stress(property_class("8.8"), 1.2 mm)').length).toBe(1);
  expect(outside('proof_stress(property_class("9.8"), 18 mm)').length).toBe(1);
  expect(outside('least_yield_strength(property_class("A4-80"), 30 mm)').length).toBe(1);
  expect(outside('ultimate_load(thread("M42"), property_class("8.8"))').length).toBeGreaterThan(0);
  expect(outside('ultimate_load(thread("1/4-20 UNC"), property_class("8.8"))').length).toBe(1);
  expect(outside('ultimate_load(thread("1/4-20 UNC"), property_class("grade 8"))')).toEqual([]);
});

test("stainless classes have no proof stress, and a load from it is refused", () => {
  expect(refusal('proof_load(thread("M6"), property_class("A2-70"))')).toMatch(/has_proof_stress/);
  expect(value('yield_load(thread("M6"), property_class("A2-70"))', "N")).toBeCloseTo(20.123376 * 450, 1);
});

test("a steel of one's own is a class like any other", () => {
  const own = 'PropertyClass { name = "Ti", standard = "maker", bands = [StrengthBand { d_max = 8 mm, R_m = 895 MPa, R_e = 828 MPa }] }';
  expect(value(`yield_load(thread("M6"), ${own})`, "N")).toBeCloseTo(20.123376 * 828, 1);
  expect(outside(`yield_load(thread("M6"), ${own})`)).toEqual([]);
  expect(outside(`yield_load(thread("M10"), ${own})`).length).toBe(1);
});

test("nominal strengths are what the class says", () => {
  for (const row of rowsOf("data/iso-898-1.csv")) {
    const [x = 0, y = 0] = (row.class ?? "").split(".").map(Number);
    expect(number(row, "R_m_nominal"), row.class).toBe(100 * x);
    expect(number(row, "R_e_nominal"), row.class).toBe(10 * x * y);
    expect(number(row, "R_m"), row.class).toBeGreaterThanOrEqual(100 * x);
    expect(number(row, "S_p"), row.class).toBeLessThan(number(row, "R_e"));
  }
});

test("printed loads are the product of area and strength within the rounding of the print", () => {
  const rows = rowsOf("data/iso-898-1-loads.csv");
  expect(rows.length).toBe(171);
  expect(new Set(rows.map((row) => `${row.d} ${row.class}`)).size).toBe(rows.length);
  for (const row of rows) {
    const call = `(thread("M${row.d}"), property_class("${row.class}"))`;
    const slack = (load: number): number => 0.009 * load;
    for (const [printed, formula] of [
      ["F_m", "ultimate_load"],
      ["F_p", "proof_load"],
    ] as const) {
      const product = Number(value(formula + call, "N"));
      expect(Math.abs(number(row, printed) - product), `${formula}${call}`).toBeLessThan(slack(product));
    }
  }
});

test("proof loads of nuts rise with size and class", () => {
  const rows = rowsOf("data/iso-898-2.csv");
  for (const kind of new Set(rows.map((row) => `${row.class} ${row.style}`))) {
    const loads = rows.filter((row) => `${row.class} ${row.style}` === kind).map((row) => number(row, "F_p"));
    expect(loads, kind).toEqual([...loads].sort((a, b) => a - b));
  }
  expect(refusal('nut_proof_load(thread("M20"), nut_class("12"))')).toMatch(/20 mm is not in the table.*16 mm/);
  expect(refusal('nut_proof_load(thread("M8x0.75"), nut_class("8"))')).toMatch(/not in the table/);
  expect(refusal('nut_proof_load(thread("1/4-20 UNC"), nut_class("8"))')).toMatch(/metric/);
});

test("a size that a product table lacks is refused with its neighbours", () => {
  expect(refusal('socket_head(thread("M7"))')).toMatch(/7 mm is not in the table.*6 mm and 8 mm/);
  expect(refusal('button_head(thread("M2"))')).toMatch(/3 mm/);
  expect(refusal('washer(thread("M2"), series = "large")')).toMatch(/3 mm/);
  expect(refusal('square_nut(thread("M4"))')).toMatch(/5 mm/);
  expect(refusal('thin_square_nut(thread("1/4-20 UNC"))')).toMatch(/ISO metric/);
  expect(refusal('washer(thread("1/4-20 UNC"), series = "large")')).toMatch(/washer requires/);
  expect(refusal('clearance_hole(thread("M9"))')).toMatch(/8 mm and 10 mm/);
  expect(refusal("next_length(510 mm)")).toMatch(/next_length requires/);
});

test("a screw is written as a record of its parts", () => {
  const screw = 'Screw { thread = thread("M5"), grade = property_class("8.8"), head = socket_head(thread("M5")) }';
  expect(value(`${screw}.head.d_k`, "mm")).toBe(8.5);
  expect(value(`${screw}.grade.name`)).toBe("8.8");
  expect(refusal(`length_past_grip(${screw}, 4 mm)`)).toMatch(/screw_length requires/);
  expect(value(`length_past_grip(${screw} with { length = 12 mm }, 4 mm)`, "mm")).toBeCloseTo(8, 12);
  expect(refusal(`length_past_grip(${screw} with { length = 12 mm }, 14 mm)`)).toMatch(/length_past_grip requires/);
  expect(value('(hex_nut(thread("M6")) with { grade = nut_class("8") }).m', "mm")).toBe(5.2);
});

test("a countersunk head has no flat bearing face and says so", () => {
  expect(refusal('head_bearing_diameter(countersunk_head(thread("M6")))')).toMatch(/head_bearing_diameter requires/);
  expect(refusal('head_bearing_area(hex_head(thread("M6")), 9 mm)')).toMatch(/ring_area requires/);
});

test("a value from memory has that provenance, cell by cell", () => {
  const provenance = (expression: string): string => session.evaluate(expression, {}).result?.provenance ?? "";
  expect(value('flange_head(thread("M6")).known')).toMatch(/^memory/);
  expect(provenance('flange_head(thread("M6")).k')).toMatch(/^memory/);
  expect(value('hex_head(thread("M5")).known')).toBe("memory (l_min) (l_max)");
  expect(provenance('hex_head(thread("M5")).k')).toMatch(/^published/);
  expect(provenance('hex_head(thread("M42")).k')).toMatch(/^memory/);
  expect(provenance('clearance_hole(thread("M5"))')).toMatch(/^published/);
  expect(provenance('clearance_hole(thread("M36"))')).toMatch(/^memory/);
  expect(provenance('washer(thread("M8"), series = "small").d_2')).toMatch(/^memory/);
  expect(provenance('proof_load(thread("M6"), property_class("8.8"))')).toMatch(/^published/);
  expect(provenance('proof_load(thread("M6"), property_class("4.6"))')).toMatch(/^memory/);
  expect(provenance('least_yield_strength(property_class("A5-70"), 6 mm)')).toMatch(/^memory/);
  expect(provenance('least_yield_strength(property_class("A4-70"), 6 mm)')).toMatch(/^published/);
});

const productFiles = library.files
  .filter((file) => /^data\/(?:iso-(?:4|7|10642|273)|din-|asme-b18)/.test(file.name))
  .map((file) => file.name);

test("sizes of every product table rise, and no cell falls as the thread grows", () => {
  expect(productFiles.length).toBe(21);
  for (const file of productFiles) {
    const rows = rowsOf(file);
    for (const head of Object.keys(rows[0] ?? {}).filter((one) => one !== "how_known")) {
      const cells = rows.map((row) => number(row, head));
      expect(cells, `${file} ${head}`).toEqual([...cells].sort((a, b) => a - b));
    }
    const sizes = rows.map((row) => row.d);
    expect(new Set(sizes).size, file).toBe(sizes.length);
    for (const row of rows) expect(row.how_known, file).toMatch(/^(?:read|memory(?: \(\w+\))+)$/);
  }
});

test("hexagons, countersinks, washers and holes obey the rules of their standards", () => {
  for (const row of rowsOf("data/iso-4032.csv")) {
    expect(number(row, "e"), row.d).toBeCloseTo(1.13 * number(row, "s_min"), 1);
    expect(number(row, "d_w"), row.d).toBeLessThan(number(row, "s_min"));
    expect(number(row, "m_min"), row.d).toBeLessThan(number(row, "m"));
  }
  for (const row of rowsOf("data/iso-10642.csv")) {
    expect(number(row, "k"), row.d).toBeCloseTo((number(row, "d_k") - number(row, "d")) / 2, 6);
    expect(number(row, "d_k_min"), row.d).toBeLessThan(number(row, "d_k"));
  }
  for (const file of ["data/iso-7089.csv", "data/iso-7092.csv", "data/iso-7093-1.csv", "data/asme-b18-22-1.csv"]) {
    for (const row of rowsOf(file))
      expect(number(row, "d") < number(row, "d_1") && number(row, "d_1") < number(row, "d_2"), file).toBe(true);
  }
  for (const file of ["data/iso-273.csv", "data/asme-b18-2-8.csv"]) {
    for (const row of rowsOf(file)) {
      const holes = [number(row, "d"), number(row, "fine"), number(row, "medium"), number(row, "coarse")];
      expect(holes, `${file} ${row.d}`).toEqual([...new Set(holes)].sort((a, b) => a - b));
    }
  }
  for (const file of ["data/iso-4014.csv", "data/iso-4762.csv", "data/din-6921.csv"]) {
    for (const row of rowsOf(file)) expect(number(row, "d_w"), `${file} ${row.d}`).toBeGreaterThan(number(row, "d"));
  }
});
