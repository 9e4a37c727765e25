// The commands that write sheets and packages, verify and compare them, over a world in memory.

import { describe, expect, test } from "vitest";
import { printFont } from "../../editor/fonts/files.ts";
import { runCommand } from "../../engine/command/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { calc, noLibrary } from "../sheet/helper.ts";
import { worldOf } from "./world.ts";

const holding = `---\ntitle: Bracket\nnumber: C-1\n---\n\n# Purpose\n\nShow it.\n\n${calc("F = 10 N | load | given", "check F <= 30 N factor 2 | it holds")}`;
const failing = holding.replace("30 N", "12 N");

const worldWith = (files: Readonly<Record<string, string>>) =>
  worldOf({ createSession: () => createSession(noLibrary), library: noLibrary, files, printFonts: printFont, colour: false });

describe("package and verify", () => {
  test("a package is made beside its notebook and agrees with it", async () => {
    const world = worldWith({ "w/a.joint.md": holding });
    expect(await runCommand(["package", "w/a.joint.md"], world)).toBe(0);
    expect([...world.binary.keys()]).toEqual(["w/a.zip"]);
    expect(world.output()).toMatch(/^made: w\/a\.zip\n {2}[0-9a-f]{12} {2}sheet\.pdf, \d+ bytes\n/);
    expect(await runCommand(["verify", "w/a.zip"], world)).toBe(0);
    expect(world.output()).toContain("AGREES  6 files with the digest of the manifest, 2 values recomputed, 0 differences");
  });

  test("a failing check makes a package all the same, and the code says so", async () => {
    const world = worldWith({ "w/a.joint.md": failing });
    expect(await runCommand(["package", "w/a.joint.md", "--out", "b.zip", "--paper", "letter"], world)).toBe(1);
    expect(world.errors()).toContain("fails: it holds");
    expect(world.binary.has("b.zip")).toBe(true);
  });

  test("what cannot be set is named and nothing is written", async () => {
    const world = worldWith({ "w/a.joint.md": holding.replace("Show it.", "Show 漢.") });
    expect(await runCommand(["package", "w/a.joint.md"], world)).toBe(2);
    expect(world.errors()).toContain("not made: No glyph for 漢");
    expect(world.binary.size).toBe(0);
  });

  test("misuse is one sentence and code 2", async () => {
    const world = worldWith({ "a.joint.md": holding });
    expect(await runCommand(["package", "a.joint.md", "--paper", "a5"], world)).toBe(2);
    expect(await runCommand(["package", "missing.joint.md"], world)).toBe(2);
    expect(await runCommand(["verify", "a.joint.md"], world)).toBe(2);
    expect(await runCommand(["verify", "missing.zip"], world)).toBe(2);
    expect(await runCommand(["sheet", "a.joint.md", "--out", "a.doc"], world)).toBe(2);
    expect(await runCommand(["compare", "a.joint.md", "missing.zip"], world)).toBe(2);
    for (const words of [
      "value of --paper",
      "Cannot read missing.joint.md",
      "a.joint.md: This is no archive",
      "Cannot read missing.zip",
      "ends in .html or .pdf",
    ])
      expect(world.errors()).toContain(words);
  });
});

test("sheet writes HTML or PDF", async () => {
  const world = worldWith({ "w/a.joint.md": holding });
  expect(await runCommand(["sheet", "w/a.joint.md"], world)).toBe(0);
  expect(await runCommand(["sheet", "w/a.joint.md", "--out", "x.pdf", "--units", "inch"], world)).toBe(0);
  expect(new TextDecoder().decode(world.binary.get("w/a.html")?.subarray(0, 15))).toBe("<!doctype html>");
  expect(new TextDecoder("latin1").decode(world.binary.get("x.pdf")?.subarray(0, 5))).toBe("%PDF-");
});

describe("compare", () => {
  test("a package and a notebook, by values", async () => {
    const world = worldWith({ "a.joint.md": holding, "b.joint.md": failing.replace("# Purpose", "#  Purpose") });
    await runCommand(["package", "a.joint.md"], world);
    expect(await runCommand(["compare", "a.zip", "a.joint.md"], world)).toBe(0);
    expect(await runCommand(["compare", "a.zip", "b.joint.md", "--json"], world)).toBe(1);
    const { differences } = JSON.parse(world.output().slice(world.output().indexOf("{"))) as {
      differences: readonly { kind: string; name: string; change: number }[];
    };
    expect(differences.map(({ kind, name }) => [kind, name])).toEqual([["check", "it holds"]]);
    expect(differences[0]?.change).toBeCloseTo(1.5, 12);
  });
});
