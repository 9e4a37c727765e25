// The demonstration notebooks of the repository: no fault, every check holds, every example passes.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const folder = new URL("../../notebooks/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".joint.md"));

test("there is a demonstration notebook", () => {
  expect(names).toContain("drill-guide.joint.md");
});

for (const name of names) {
  test(`${name} has no fault and its checks hold`, () => {
    const session = createSession(library);
    const text = readFileSync(new URL(name, folder), "utf8");
    session.put(name, text);
    const { counts } = session.snapshot(name);
    const outputs = session.outputs(name);
    expect(outputs.flatMap((one) => one.diagnostics.map((d) => `${d.code}: ${d.message} (${text.slice(d.from, d.to)})`))).toEqual([]);
    expect(outputs.filter((one) => (one.waitsFor ?? []).length > 0).map((one) => one.name)).toEqual([]);
    expect(counts.checks).toBe(text.match(/^check /gm)?.length ?? 0);
    expect(outputs.filter((one) => one.check !== undefined && one.check.state !== "holds").map((one) => one.check?.title)).toEqual([]);
    expect(outputs.filter((one) => one.example !== undefined && one.example.state !== "passes").map((one) => one.id)).toEqual([]);
    expect(outputs.filter((one) => one.kind === "live").every((one) => one.value !== undefined)).toBe(true);
  });
}

/** Numbers of a notebook's names, in the unit they are shown in. */
function numbersOf(file: string): (name: string) => number {
  const session = createSession(library);
  session.put(file, readFileSync(new URL(file, folder), "utf8"));
  session.snapshot(file);
  const outputs = session.outputs(file);
  return (name) => Number(outputs.find((one) => one.name === name)?.value?.full.replace("−", "-"));
}

test("the lid of the degassing box gives the numbers worked out by hand", () => {
  const number = numbersOf("vacuum-box-lid.joint.md");
  const F_purge = 0.4 * (Math.PI / 4) * 260 ** 2;
  expect(number("F_purge")).toBeCloseTo(F_purge, 6);
  expect(number("F_A")).toBeCloseTo(F_purge / 12 + (2 * 60_000) / (150 * 12), 6);
  expect(number("F_K")).toBeCloseTo((4 * Math.PI * 260) / 12, 6);
  expect(number("grip")).toBeCloseTo(1.6 + 16 + 18 + 1.6, 9);
  // screw: half a diameter each of head and engaged thread, 28 mm shank, 9.2 mm thread, 0.4 d of nut
  const root = (Math.PI / 4) * (8 - (17 / 12) * (Math.sqrt(3) / 2) * 1.25) ** 2;
  const shank = 16 * Math.PI;
  const delta_S = (0.5 * 8 + 28 + 0.4 * 8) / (205_000 * shank) + (0.5 * 8 + 9.2) / (205_000 * root);
  const delta_P = 1 / (1 / number("Phi") - 1);
  expect(number("F_Z") * delta_S * (1 + delta_P)).toBeCloseTo(0.0125, 9);
  expect(number("F_cold")).toBeCloseTo((25 * 18 * (23e-6 - 11.7e-6)) / (delta_S * (1 + delta_P)), 3);
  const arm = (mu: number): number => 0.16 * 1.25 + 0.58 * mu * (8 - (3 / 4) * (Math.sqrt(3) / 2) * 1.25) + (mu * (11.63 + 8.4)) / 4;
  expect(number("F_V_min")).toBeCloseTo((15_000 * 0.94) / arm(0.16), 3);
  expect(number("F_V_max")).toBeCloseTo((15_000 * 1.06) / arm(0.08), 3);
});

test("the toggle clamp's base gives the numbers worked out by hand", () => {
  const number = numbersOf("toggle-clamp-base.joint.md");
  expect(number("F_t")).toBeCloseTo(320 / 4 + (320 * 3.25 * 0.75) / 2.25 + (90 * 1.5 * 0.625) / 1.5625, 6);
  const square = 4 * (0.75 ** 2 + 0.625 ** 2);
  const turn = 90 * 3.25;
  expect(number("V")).toBeCloseTo(Math.hypot((turn * 0.625) / square, 90 / 4 + (turn * 0.75) / square), 6);
  expect(number("L_e")).toBeCloseTo(1 - 0.375 - 2 / 20, 9);
  const area = (Math.PI / 4) * (0.25 - (9 / 8) * (Math.sqrt(3) / 2) * 0.05) ** 2;
  expect(number("F_i")).toBeCloseTo(0.75 * 85_000 * area, 4);
  expect(number("T")).toBeCloseTo(0.2 * 0.75 * 85_000 * area * 0.25, 4);
  expect(number("F_min")).toBeCloseTo(0.75 * 85_000 * area * 0.75 * 0.95, 4);
});

test("the drill guide gives the numbers worked out by hand", () => {
  const number = numbersOf("drill-guide.joint.md");
  expect(number("F_t")).toBeCloseTo((180 * 55) / 140, 6);
  expect(number("F_V")).toBeCloseTo(1200, 6);
  expect(number("F_S")).toBeCloseTo(1200 + 0.8 * ((180 * 55) / 140), 6);
  expect(number("tau")).toBeCloseTo(2440 / (0.875 * Math.PI * 5 * 10), 6);
  expect(number("T_slip")).toBeCloseTo(4 * 0.15 * 540 * (0.07 / Math.SQRT2), 6);
});
