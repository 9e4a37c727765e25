// Thread designations as a user types them, through the language.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

function value(expression: string, as?: string): unknown {
  const { result, diagnostics } = session.evaluate(expression, as === undefined ? {} : { as });
  if (result === undefined) throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return typeof result.value === "number" ? Number(result.shown.full.replace("−", "-")) : result.value;
}

function refusal(text: string): string {
  const { result, diagnostics } = session.evaluate(`thread("${text}")`, {});
  expect(result, text).toBeUndefined();
  return diagnostics.map((one) => `${one.message} ${one.hint ?? ""}`).join(" ");
}

test("a metric designation gives size, pitch, series, class and hand", () => {
  expect(value('thread("M6").P', "mm")).toBe(1);
  expect(value('thread("M6").series')).toBe("coarse");
  expect(value('thread("M8x1").P', "mm")).toBe(1);
  expect(value('thread("M8×1").series')).toBe("fine");
  expect(value('thread("M6-6g").class')).toBe("6g");
  expect(value('thread("M8x1-5g6g-LH").class')).toBe("5g6g");
  expect(value('thread("M8x1-5g6g-LH").hand')).toBe("left");
  expect(value('thread("M20-6H/6g").class')).toBe("6H/6g");
  expect(value('thread("M1.6").d', "mm")).toBe(1.6);
  expect(value('thread("M64").P', "mm")).toBe(6);
});

test("the coarse pitch may be written, the designation leaves it out", () => {
  expect(value('thread("M6x1").designation')).toBe("M6");
  expect(value('thread("M6x0.75").designation')).toBe("M6x0.75");
  expect(value('thread("M8×1.25-6g-LH").designation')).toBe("M8-6g-LH");
  expect(value('thread("1/4-20UNC-2A").designation')).toBe("1/4-20 UNC-2A");
  expect(value('thread("M6") == thread("M6x1")')).toBe(true);
});

test("Unified designations are read by size and threads per inch", () => {
  expect(value('thread("1/4-20 UNC").d', "in")).toBe(0.25);
  expect(value('thread("1/4-20").P', "mm")).toBe(1.27);
  expect(value('thread("1/4-28 UNF").series')).toBe("fine");
  expect(value('thread("#8-32").d', "in")).toBe(0.164);
  expect(value('thread("4-40").designation')).toBe("#4-40 UNC");
  expect(value('thread("1-64").d', "in")).toBe(0.073);
  expect(value('thread("1-8 UNC").d', "in")).toBe(1);
  expect(value('thread("1-1/2-6 UNC-2A").class')).toBe("2A");
  expect(value('thread("1/4-32 UNEF").series')).toBe("extra fine");
  expect(value('thread("2-1/2-8 UN-2B").series')).toBe("constant pitch");
  expect(value('thread("1/2-28 UN").designation')).toBe("1/2-28 UNEF");
  expect(value('thread("1/4-20 UNC-2A/2B").class')).toBe("2A/2B");
});

test("a size or pitch in no table is refused with what is near", () => {
  expect(refusal("M6.3")).toMatch(/M6\.3 is not a size of ISO 261.*M6 and M7/);
  expect(refusal("M65")).toMatch(/M64/);
  expect(refusal("M6x0.9")).toMatch(/M6x0\.9 is not in ISO 261.*M6 or M6x0\.75.*metric_thread\(6 mm, 0\.9 mm\)/);
  expect(refusal("M5.5")).toMatch(/no coarse pitch.*M5\.5x0\.5/);
  expect(refusal("1/4-21 UNC")).toMatch(/1\/4-20 UNC, 1\/4-28 UNF or 1\/4-32 UNEF.*unified_thread\(0\.25 in, 21\)/);
  expect(refusal("1/4-20 UNF")).toMatch(/is UNC, not UNF/);
  expect(refusal("#7-32")).toMatch(/not a size/);
});

test("text that is no designation is refused with what to write", () => {
  expect(refusal("m6")).toMatch(/"M6"/i);
  expect(refusal("6")).toMatch(/"M6"/);
  expect(refusal("M8X1")).toMatch(/"M8x1"/);
  expect(refusal("M8 x 1")).toMatch(/"M8x1"/);
  expect(refusal("M2,5")).toMatch(/decimal comma.*"M2\.5"/);
  expect(refusal("1/4")).toMatch(/threads per inch.*1\/4-20 UNC/);
  expect(refusal("M6-9z")).toMatch(/tolerance class/);
  expect(refusal("1/4-20 UNC-6g")).toMatch(/class of ASME B1\.1/);
  expect(refusal("washer")).toMatch(/not a thread designation/);
  expect(refusal("")).toMatch(/not a thread designation/);
});

test("threads of other families are told apart", () => {
  expect(refusal("MJ6x1")).toMatch(/MJ thread/);
  expect(refusal("Tr10x2")).toMatch(/trapezoidal/);
  expect(refusal("ST4.2")).toMatch(/tapping-screw/);
  expect(refusal("G1/4")).toMatch(/pipe/);
  expect(refusal("1/4-18 NPT")).toMatch(/pipe/);
  expect(refusal("M16xPh3P1.5")).toMatch(/several starts/);
  expect(refusal("1/4-27 UNS")).toMatch(/special Unified thread/);
  expect(refusal("1/4-28 UNJF")).toMatch(/UNJ thread/);
});

test("any pair may be given by numbers and is marked when it stands in no table", () => {
  const outside = (expression: string): readonly string[] => session.evaluate(expression, {}).result?.outside ?? ["no value"];
  expect(outside("metric_thread(6 mm, 1 mm)")).toEqual([]);
  expect(outside("metric_thread(6 mm, 0.9 mm)").length).toBe(1);
  expect(value("metric_thread(6 mm, 0.9 mm).series")).toBe("special");
  expect(value("metric_thread(6 mm, 0.9 mm).designation")).toBe("M6x0.9");
  expect(value("unified_thread(0.25 in, 21).designation")).toBe("1/4-21 UN");
  expect(value("unified_thread(1.125 in, 21).designation")).toBe("1-1/8-21 UN");
  expect(value("unified_thread(0.19 in, 21).designation")).toBe("0.19-21 UN");
  expect(session.evaluate("metric_thread(6 mm, 0 mm)", {}).result).toBeUndefined();
  expect(session.evaluate("metric_thread(1 mm, 2 mm)", {}).result).toBeUndefined();
});

test("a stress area is refused for the other system and marked beyond ISO 898-1", () => {
  expect(session.evaluate('iso_stress_area(thread("1/4-20 UNC"))', {}).diagnostics.map((one) => one.code)).toEqual(["requirement-broken"]);
  expect(session.evaluate('unified_stress_area(thread("M6"))', {}).diagnostics.map((one) => one.code)).toEqual(["requirement-broken"]);
  expect(session.evaluate('stress_area(thread("M39"))', {}).result?.outside).toEqual([]);
  expect(session.evaluate('stress_area(thread("M42"))', {}).result?.outside.length).toBe(1);
});

test("percentage and hole are each other's inverse on either base", () => {
  expect(value('trade_thread_percentage(thread("M5"), hole_for_trade_percentage(thread("M5"), 70 %))', "%")).toBeCloseTo(70, 10);
  expect(value('overlap_thread_percentage(thread("M5"), hole_for_overlap_percentage(thread("M5"), 70 %))', "%")).toBeCloseTo(70, 10);
});
