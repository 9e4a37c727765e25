// Limits of size, engagement and drills as a user asks for them: classes, marks outside the tables, refusals.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);
const evaluate = (expression: string, as?: string) => session.evaluate(expression, as === undefined ? {} : { as });
const number = (expression: string, as: string): number => Number(evaluate(expression, as).result?.shown.full.replace("−", "-"));
const text = (expression: string): unknown => evaluate(expression).result?.value;
const outside = (expression: string): number => evaluate(expression).result?.outside.length ?? Number.NaN;
const refusal = (expression: string): string => {
  const { result, diagnostics } = evaluate(expression);
  expect(result, expression).toBeUndefined();
  return diagnostics.map((one) => `${one.message} ${one.hint ?? ""}`).join(" ");
};

test("a class text is taken apart, and the partner that is not written is the usual one", () => {
  expect(text('external_class(thread("M6")).name')).toBe("6g");
  expect(text('external_class(thread("M6-6H")).name')).toBe("6g");
  expect(text('internal_class(thread("M6-6g")).name')).toBe("6H");
  expect(text('internal_class(thread("M6-4H5H/5g6g")).name')).toBe("4H5H");
  expect(text('internal_class(thread("M6-4H5H/5g6g")).crest_grade')).toBe(5);
  expect(text('external_class(thread("M6-4H5H/5g6g")).name')).toBe("5g6g");
  expect(text('unified_external_limits(thread("1/4-20 UNC-3B")).class')).toBe("2A");
  expect(text('unified_internal_limits(thread("1/4-20 UNC-3A/1B")).class')).toBe("1B");
});

test("limits stand by the table without a mark, and by formula with one", () => {
  expect(outside('metric_external_limits(thread("M6"))')).toBe(0);
  expect(text('metric_internal_limits(thread("M10")).known')).not.toBe("formula");
  expect(outside("metric_external_limits(metric_thread(6 mm, 0.9 mm))")).toBeGreaterThan(0);
  expect(text("metric_external_limits(metric_thread(6 mm, 0.9 mm)).known")).toBe("formula");
  expect(number("external_major_tolerance(0.9 mm, 6).value", "um")).toBe(160);
  expect(outside("external_major_tolerance(1 mm, 6)")).toBe(0);
});

test("a grade or position that is none is refused", () => {
  expect(refusal("external_major_tolerance(1 mm, 5)")).toMatch(/grades of the major diameter/i);
  expect(refusal('metric_external_limits(thread("1/4-20 UNC"))')).toMatch(/inch screws/i);
  expect(refusal('unified_internal_limits(thread("M6"))')).toMatch(/metric nut/i);
  expect(refusal('external_limits(thread("M6") with { class = "2A" })')).toMatch(/no class of a metric screw/i);
  expect(refusal("normal_engagement(metric_thread(6 mm, 0.9 mm))")).toMatch(/size and pitch in the table/i);
});

test("areas at least material, at basic sizes and in the hole as measured fall in that order", () => {
  const least = number('internal_shear_area(thread("M5"), 8 mm)', "mm^2");
  expect(least).toBeCloseTo((8 / 0.8) * Math.PI * 4.826 * (0.4 + (4.826 - 4.605) / Math.sqrt(3)), 6);
  expect(number('basic_internal_shear_area(thread("M5"), 8 mm)', "mm^2")).toBeGreaterThan(1.3 * least);
  expect(number('external_shear_area_in_hole(thread("M5"), 8 mm, 4.2 mm)', "mm^2")).toBeGreaterThan(
    number('external_shear_area_in_hole(thread("M5"), 8 mm, 4.4 mm)', "mm^2"),
  );
  expect(refusal('external_shear_area_in_hole(thread("M5"), 8 mm, 5 mm)')).toMatch(/holds nothing/i);
});

test("the reductions of steel threads are refused where nobody measured them", () => {
  expect(refusal("nut_dilation_factor(11 mm, 8 mm)")).toMatch(/nothing to extrapolate/i);
  expect(refusal("nut_bending_factor(0.3)")).toMatch(/nothing to extrapolate/i);
});

test("the nearest drill is marked outside its series", () => {
  expect(text('nearest_drill(0.201 in, "number").name')).toBe("#7");
  expect(text('nearest_drill(0.201 in, "letter").name')).toBe("A");
  expect(outside('nearest_drill(0.201 in, "number")')).toBe(0);
  expect(outside('nearest_drill(0.201 in, "letter")')).toBe(1);
});
