// Numbers of the library are held by examples: one per cent more makes one fail. A sample here; all of them by
// `jointwright examples --perturb`.

import { expect, test } from "vitest";
import { perturb } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

/** Every how many numbers one is tried; the first of them shifts with nothing, so that a failure stays one. */
const EVERY = 41;

const sample = perturb(library, undefined, () => undefined, EVERY);
const missed = (kind: "constant" | "cell"): readonly string[] =>
  sample.filter((each) => each.kind === kind && !each.noticed).map((each) => `${each.number} in ${each.file}:${each.line}  ${each.text}`);

test("the sample holds constants and cells", () => {
  expect(sample.filter((each) => each.kind === "constant").length).toBeGreaterThan(5);
  expect(sample.filter((each) => each.kind === "cell").length).toBeGreaterThan(5);
});

test("a constant of a formula that is one per cent larger makes an example fail", () => {
  expect(missed("constant")).toEqual([]);
});

test("at least 95 % of the cells of data tables are noticed", () => {
  const cells = sample.filter((each) => each.kind === "cell");
  expect(missed("cell").length, missed("cell").join("\n")).toBeLessThanOrEqual(cells.length * 0.05);
});
