// Published tables through the public language: every row passes.

import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { readInputs, unitOf } from "./inputs.ts";
import { collectRows, readRows, runRow } from "./run.ts";

const session = createSession(library);
const data = fileURLToPath(new URL("data", import.meta.url));

/** How many rows each file holds, so that none is dropped silently. */
const rowCounts: Readonly<Record<string, number>> = {
  "01_basic_profile.csv": 186,
  "02_metric_tolerances.csv": 632,
  "03_unified_inch.csv": 511,
  "04_stress_area.csv": 80,
  "05_shear_engagement.csv": 46,
  "06_tap_drill.csv": 61,
  "07_property_classes.csv": 223,
  "08_hardware.csv": 227,
  "09_tightening.csv": 333,
  "worked-examples.csv": 93,
};

test("every file of published values is counted", () => {
  expect(readdirSync(data).sort()).toEqual(Object.keys(rowCounts).sort());
});

for (const [file, count] of Object.entries(rowCounts)) {
  test(`every published row of ${file} passes`, () => {
    const { rows, passedOver } = collectRows([join(data, file)]);
    expect(passedOver).toEqual([]);
    expect(rows.length).toBe(count);
    const outcomes = rows.map((row) => runRow(session, row));
    expect(outcomes.filter((one) => one.state !== "passed").map((one) => `${one.row.id} ${one.expression} gives ${one.got}`)).toEqual([]);
  });
}

const row = (cells: string): string => `id,quantity,inputs,expected,unit,tolerance,tolerance_kind,source,how_known,note\n${cells}\n`;
const run = (cells: string): string | undefined => readRows("x.csv", row(cells))?.map((one) => runRow(session, one).state)[0];

test("a wrong value, a missing tolerance and a value outside its tolerance fail", () => {
  expect(run("x1,coarse pitch P,d=5 mm,0.9,mm,0,absolute,,,")).toBe("failed");
  expect(run("x2,coarse pitch P,d=5 mm,0.8,mm,,absolute,,,")).toBe("failed");
  expect(run("x3,coarse pitch P,d=5 mm,0.8001,mm,0.00001,relative,,,")).toBe("failed");
  expect(run("x4,coarse pitch P,d=5 mm,0.8001,mm,0.001,relative,,,")).toBe("passed");
  expect(run("x5,coarse pitch P,D=5 mm,0.8,mm,0,absolute,,,")).toBe("failed");
  expect(run("x6,coarse pitch P,d=5.2 mm,0.8,mm,0,absolute,,,")).toBe("failed");
});

test("an unknown quantity is skipped and a file of another kind is passed over", () => {
  expect(run("x7,weight of a thread,d=5 mm,0.8,mm,0,absolute,,,")).toBe("skipped");
  expect(readRows("y.csv", "a,b\n1,2\n")).toBeUndefined();
});

test("inputs are read as engineers write them", () => {
  expect(readInputs("D=0.073 in; n=64; drill #53 = 0.0595 in").value("hole")).toBe("0.0595 in");
  expect(readInputs("drill #53").value("hole")).toBe("0.0595 in");
  expect(readInputs("drill 1/16").value("hole")).toBe("0.0625 in");
  expect(readInputs("drill F").value("hole")).toBe("0.257 in");
  expect(readInputs("drill 1.30mm = 0.0512 in").value("hole")).toBe("0.0512 in");
  expect(readInputs("M3x0.5; hole 2.5").value("hole", "mm")).toBe("2.5 mm");
  expect(readInputs("Es,min=0.2127 in (class 2A)").value("Es,min")).toBe("0.2127 in");
  expect(readInputs("A=84.3 mm2").value("A")).toBe("84.3 mm^2");
  expect(unitOf("-")).toBe("");
});
