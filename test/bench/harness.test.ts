// The bench's own arithmetic: medians, the measurement thrown away, refusals.

import { expect, test } from "vitest";
import { bench, median, registered, runCase, shown } from "./harness.ts";

test("the median of an odd and an even number of samples", () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 3, 2])).toBe(2.5);
  expect(() => median([])).toThrow();
});
test("the first measurement is thrown away, the others are kept in order", async () => {
  let count = 0;
  const figure = await runCase({ name: "n", unit: "1", measure: () => ++count, times: 3 });
  expect(figure).toEqual({ name: "n", unit: "1", value: 3, samples: [2, 3, 4] });
});
test("a measurement that is no number is refused", async () => {
  await expect(runCase({ name: "n", unit: "1", measure: () => Number.NaN, times: 1 })).rejects.toThrow(/n:/);
});
test("a name is registered once", () => {
  bench("once", "1", () => 1);
  expect(registered().map(({ name }) => name)).toContain("once");
  expect(() => bench("once", "1", () => 1)).toThrow(/once/);
});
test("four digits", () => expect([0.0012344, 12345, 2].map(shown)).toEqual(["0.001234", "12350", "2"]));
