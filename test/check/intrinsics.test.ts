// The language's own functions: typed by engine/check, computed by engine/run, by the same names and numbers of arguments.

import { expect, test } from "vitest";
import { intrinsicTypes } from "../../engine/check/index.ts";
import { intrinsics } from "../../engine/run/index.ts";

test("both tables have the same names", () => {
  expect(Object.keys(intrinsicTypes).sort()).toEqual(Object.keys(intrinsics).sort());
});

test.each(Object.keys(intrinsicTypes))("%s takes as many arguments when it is checked as when it is computed", (name) => {
  const { least, most } = intrinsicTypes[name] ?? {};
  expect({ least, most }).toEqual({ least: intrinsics[name]?.least, most: intrinsics[name]?.most });
});
