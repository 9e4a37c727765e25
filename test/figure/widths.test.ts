// The table of advance widths says what the committed fonts say, and what the browser's own measure says.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { widthsSource } from "../../editor/fonts/widths.mjs";
import { textWidth } from "../../engine/figure/index.ts";

test("the committed table is made from the committed fonts", async () => {
  expect(readFileSync(new URL("../../engine/figure/sans-widths.generated.ts", import.meta.url), "utf8")).toBe(await widthsSource());
});

test("digits are all of one width, so that columns of numbers stand", () => {
  const widths = [..."0123456789"].map((digit) => textWidth(digit, 1000));
  expect(new Set(widths)).toEqual(new Set([600]));
});

test("a text is as wide as its letters, and bold is wider", () => {
  expect(textWidth("N·m", 10)).toBeCloseTo(textWidth("N", 10) + textWidth("·", 10) + textWidth("m", 10), 12);
  expect(textWidth("strip", 10, 600)).toBeGreaterThan(textWidth("strip", 10));
});
