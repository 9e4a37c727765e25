// What is told of the name under the pointer.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const text = ["```calc", 'A_s = stress_area(thread("M6"))', "formula half(t: Thread): Area = stress_area(t) / 2 | a half", "```", ""].join(
  "\n",
);
const session = createSession(library);
session.put("a.joint.md", text);
session.snapshot("a.joint.md");

test("a called formula shows its working with the numbers of the line, down to the pitch and the clauses", () => {
  const hover = session.hover("a.joint.md", text.indexOf("stress_area"));
  expect(hover?.citation).toBe("ISO 898-1, 9.1.6.1");
  const working = (hover?.working ?? []).map((line) => line.trim());
  expect(working).toContain("result = t.d − 3 / 4 · triangle_height(t.P)");
  expect(working).toContain("= √3 / 2 · 0.001 m");
  expect(working.some((line) => line.startsWith("stress_area_of_diameters") && line.endsWith("@iso898 9.1.6.1"))).toBe(true);
  expect(working.some((line) => line.includes("valid 1.6 mm <= 0.006 m <= 39 mm: holds"))).toBe(true);
});

test("where no number stands, a formula shows its steps as they are written", () => {
  const hover = session.hover("a.joint.md", text.lastIndexOf("stress_area"));
  expect(hover?.working).toEqual(["result = if t.system == Unified then unified_stress_area(t) else iso_stress_area(t)"]);
});

test("a value has no working of its own here", () => {
  const hover = session.hover("a.joint.md", text.indexOf("A_s"));
  expect(hover?.head).toBe("A_s: Area");
  expect(hover?.working).toBeUndefined();
});
