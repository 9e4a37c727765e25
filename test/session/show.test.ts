// Values as lines show them: long lists in short, with their count said.

import { expect, test } from "vitest";
import { open } from "./helper.ts";

test("a list shows six items, and in full up to a thousand", () => {
  const opened = open("a = 1 mm .. 1000 mm step 1 mm\nb = 1 mm .. 1001 mm step 1 mm");
  const [a, b] = [opened.line("a").value, opened.line("b").value];
  expect(a?.text).toMatch(/^\[.*, … 1000 items\] /);
  expect(a?.full.split(", ")).toHaveLength(1000);
  expect(a?.full).not.toContain("…");
  expect(b?.full).toContain(", … 1001 items]");
});

test("a list of the greatest length answers an edit at once", () => {
  const opened = open("n = 99999\na = 1 .. n step 1");
  opened.session.snapshot("a.joint.md");
  const before = process.cpuUsage();
  opened.session.edit("a.joint.md", [{ from: 12, to: 13, insert: "8" }]);
  const snapshot = opened.session.snapshot("a.joint.md");
  const { user } = process.cpuUsage(before);
  expect(snapshot.changed.find((line) => line.id === "a")?.value?.text).toContain("89999 items");
  expect(user).toBeLessThan(400_000);
});
