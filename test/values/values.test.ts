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
  "polymer/check-values.csv": 61,
  "worked-examples.csv": 93,
};

test("every file of published values is counted", () => {
  const files = readdirSync(data, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".csv"));
  expect(files.map((name) => name.replaceAll("\\", "/")).sort()).toEqual(Object.keys(rowCounts).sort());
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

test("rows of joints are read by their own inputs: other numbers of a known kind give other answers", () => {
  for (const cells of [
    '"x8","bolt circle under bending moment, worst bolt","M=24000 lbf*in; R=5 in; N=8; F=2M/(R N)",1200,lbf,1e-9,relative,,,',
    '"x9","lap joint 8-40: net tension","F=5 kip; w=2.5 in; two 0.5 in holes; t=0.25 in",13.3333333,kpsi,1e-6,relative,,,',
    '"JT-086","net section","Anet=12(300-4*22)=2544 mm2; 0.9 Anet fu/1.1; fu=360",749.323636,kN,1e-6,relative,,,',
    '"x10","four-bolt bracket, in plane","V=12 kN; e=120 mm; bolts at (+-50,+-20) mm",9.535777,kN,1e-6,relative,,,',
    '"x11","bracket, tilting edge","P=4 kN; e=200 mm; rows at 20 and 100 mm from the edge; 3 bolts a row",2564.102564,N,1e-6,relative,,,',
    '"x12","equivalent T-stub, mode 2","t=12; fy=275; leff=90; m=35; n=40 mm; sum Ft=200 kN; gM0=1",130.426667,kN,1e-6,relative,,,',
    '"x13","margin, separation","Ppmin=1500 N; PtL=500 N; FSsep=1.4; FF=1.15",0.86335404,-,1e-6,relative,,,',
    '"x14","preload window, minimum","T=3 N*m; K=0.2; d=6 mm; Gamma=0.3; relaxation 4 %; creep 10 % (multiplicative)",1512,N,1e-6,relative,,,',
    '"x15","frustum stack: steel washer on polymer","washer E=205000 t=2; polymer E=3000 to 16 mm grip; dh=5.5; D0=10 each side; 30 deg cones meeting at 8 mm",29173.8641,N/mm,1e-6,relative,,,',
    '"x16","tightening torque M_A","M10x1.5; class 5.8; mu_G=mu_K=0.13; nu=0.9; D_Km=12.815 mm",33.6205145,N m,1e-6,relative,,,',
    '"x17","proof load","1/2-13 UNC; SAE grade 8",17027.95113,lbf,1e-6,relative,,,',
  ])
    expect(run(cells), cells).toBe("passed");
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
