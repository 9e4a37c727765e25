// `jointwright mark` and `status` over a real session: the mark stands in the file, what is missing is said with its line.

import { expect, test } from "vitest";
import { runCommand } from "../../engine/command/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { type TestWorld, worldOf } from "./world.ts";

const notebook = `---
title: Bracket
creator: A. Maker
---

\`\`\`calc
F = 340 N   | pull | given drawing 3
A = 12 mm^2 | area | assumed
s = F / A  as MPa
check s <= 40 MPa | strap
\`\`\`
`;

function world(): TestWorld {
  const library = { version: "1", modules: [], files: [], natives: {}, sources: "" };
  return worldOf({ files: { "a.joint.md": notebook }, createSession: () => createSession(library) });
}

const mark = ["mark", "a.joint.md", "strap", "--date", "2026-03-04", "--method", "compared"];

test("a mark goes into the file and is told by status", () => {
  const w = world();
  expect(runCommand([...mark, "--by", "B. Reader"], w)).toBe(0);
  expect(w.readFile("a.joint.md")).toContain("compared;B. Reader;2026-03-04");
  expect(runCommand(["status", "a.joint.md"], w)).toBe(0);
  expect(w.output()).toContain("stands  strap: compared, B. Reader 2026-03-04");
});

test("status says what a release still lacks, and at which line", () => {
  const w = world();
  expect(runCommand(["status", "a.joint.md", "--for", "released"], w)).toBe(1);
  expect(w.output()).toContain("A: an assumption that nobody confirmed");
  expect(w.output()).toContain("(line 8)");
  expect(w.output()).toContain("strap: a check that no checker has marked");
});

test("nobody marks his own work, a mark has a date, a method is one of four, and the file stays as it was", () => {
  const w = world();
  expect(runCommand([...mark, "--by", "a. maker"], w)).toBe(2);
  expect(runCommand(["mark", "a.joint.md", "strap", "--by", "B", "--date", "today", "--method", "compared"], w)).toBe(2);
  expect(runCommand(["mark", "a.joint.md", "strap", "--by", "B", "--date", "2026-03-04", "--method", "looked"], w)).toBe(2);
  expect(w.readFile("a.joint.md")).toBe(notebook);
});

test("a second entry of an input says whether it agrees", () => {
  const w = world();
  const entry = ["mark", "a.joint.md", "F", "--by", "B. Reader", "--date", "2026-03-04", "--entered"];
  expect(runCommand([...entry, "0.34 kN"], w)).toBe(0);
  expect(runCommand([...entry, "430 N"], w)).toBe(0);
  runCommand(["status", "a.joint.md"], w);
  expect(w.output()).toContain("agrees  F entered again as 0.34 kN");
  expect(w.output()).toContain("differs  F entered again as 430 N");
});
