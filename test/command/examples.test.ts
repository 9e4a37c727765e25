// The examples command over a small library: counts, failures, and numbers that no example holds.

import { expect, test } from "vitest";
import { runCommand } from "../../engine/command/index.ts";
import { createSession, type Library } from "../../engine/session/index.ts";
import { worldOf } from "./world.ts";

const small: Library = {
  version: "0",
  modules: [
    {
      name: "areas.joint.md",
      text: [
        "```calc",
        'use "data/k.csv" as ks',
        "formula disc(d: Length) = 0.785 * d^2 | area | @a 1",
        "formula bar(b: Length) = 1.5 * b | width | @a 2",
        "formula k_of(id: Text): Number = lookup(ks.id, ks.k, id) | factor | @a 3",
        "example disc(2 mm) == 3.14 mm^2 | two | @a 1",
        'example k_of("x") == 3 | x | @recomputed',
        'example k_of("y") == 5 | y | memory of a table',
        "```",
        "",
      ].join("\n"),
    },
  ],
  files: [{ name: "data/k.csv", text: "id;k [1]\nx;3\ny;4\nz;9\n" }],
  natives: {},
  sources: "- { id: a, type: book, title: A }",
};

const run = (...args: readonly string[]): { readonly code: number | Promise<number>; readonly output: string } => {
  const world = worldOf({ createSession: () => createSession(small), library: small });
  return { code: runCommand(args, world), output: world.output() };
};

test("counts examples by how they are known, names those that fail and formulas with none", () => {
  const { code, output } = run("examples");
  expect(code).toBe(1);
  expect(output.split("\n")[1]?.split(/\s{2,}/)).toEqual(["areas.joint.md", "3", "3", "2", "1", "1", "1", "bar"]);
  expect(output).toContain('fails: example k_of("y") == 5 | y | memory of a table  gives 4');
});

test("--perturb says which numbers no example notices", () => {
  const passing: Library = { ...small, files: [{ name: "data/k.csv", text: "id;k [1]\nx;3\ny;5\nz;9\n" }] };
  const world = worldOf({ createSession: () => createSession(passing), library: passing });
  runCommand(["examples", "areas", "--perturb"], world);
  expect(world.output()).toContain("constants of formulas: 1 of 2 noticed");
  expect(world.output()).toContain("not noticed: 1.5 in areas.joint.md:4");
  expect(world.output()).toContain("cells of data tables: 2 of 3 noticed");
  expect(world.output()).toContain("not noticed: 9 in data/k.csv:4  z;9");
});

test("a module that there is not is named with the nearest", () => {
  const world = worldOf({ createSession: () => createSession(small), library: small });
  expect(runCommand(["examples", "arias"], world)).toBe(2);
  expect(world.errors()).toContain("areas");
});
