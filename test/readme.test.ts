// The README's tour is true: its samples run without faults and give what the text says.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { runCommand } from "../engine/command/index.ts";
import { createSession } from "../engine/session/index.ts";
import { library } from "../stdlib/index.ts";
import { worldOf } from "./command/world.ts";
import { callsOf, claimsOf, samplesOf } from "./readme.ts";

const samples = samplesOf(readFileSync(new URL("../README.md", import.meta.url), "utf8"));
const of = (kind: string): readonly string[] => samples.filter((one) => one.kind === kind).map(({ text }) => text);

const FILE = "tour.joint.md";
const REFERENCES = "---\nreferences:\n  - { id: loadlog, type: report, title: Load log (invented) }\n---\n\n";
const notebook =
  REFERENCES +
  of("calc")
    .map((text) => `\`\`\`calc\n${text}\`\`\`\n`)
    .join("\n");
const session = createSession(library);
session.put(FILE, notebook);
const outputs = session.outputs(FILE);

test("the tour has samples of each kind, and their lines are understood", () => {
  expect(of("calc").length).toBeGreaterThan(2);
  expect(of("text").length).toBe(of("calc").length);
  expect(of("console").length).toBeGreaterThan(0);
  expect(of("text").flatMap(claimsOf)).not.toContainEqual(expect.objectContaining({ shown: "(not understood)" }));
});

test("the samples run without faults, and every example passes", () => {
  const faults = outputs.flatMap(({ diagnostics, from, to }) =>
    diagnostics.filter(({ severity }) => severity === "fault").map(({ message }) => `${notebook.slice(from, to)}: ${message}`),
  );
  expect(faults).toEqual([]);
  const examples = outputs.flatMap(({ example }) => (example === undefined ? [] : [example.state]));
  expect(examples.length).toBeGreaterThan(0);
  expect(examples.filter((state) => state !== "passes")).toEqual([]);
});

describe("the results are those that the text shows", () => {
  test.each(of("text").flatMap(claimsOf))("$name: $shown", ({ name, shown }) => {
    const output = outputs.find((one) => one.name === name || one.check?.title === name);
    const state = { holds: "HOLDS", fails: "FAILS", nominal: "HOLDS (nominal only)", open: "NOT EVALUATED" }[
      output?.check?.state ?? "open"
    ];
    expect(output?.check === undefined ? output?.value?.text : state).toBe(shown);
  });
});

describe("the command line answers as the text shows", () => {
  test.each(of("console").flatMap(callsOf))("$args", ({ args, answer }) => {
    const world = worldOf({ createSession: () => createSession(library) });
    expect(runCommand(args, world)).toBe(0);
    expect(world.output()).toBe(`${answer}\n`);
  });
});
