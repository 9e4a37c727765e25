// The catalogue: every wrong sample raises its fault, no right sample does, and the generated files are fresh.

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { generate, readCatalogue } from "../../engine/diagnostics/generate.ts";
import { entries } from "../../engine/diagnostics/index.ts";
import { FILE, open } from "../session/helper.ts";

const OTHER = /```file (\S+)\n([\s\S]*?)```\n?/g;

/** A sample as a notebook and the files beside it. */
function codesOf(sample: string): readonly string[] {
  const files: Record<string, string> = {};
  const notebook = sample.replace(OTHER, (_, name: string, text: string) => {
    files[name] = text;
    return "";
  });
  return open(notebook, files).codes();
}

describe("each entry of the catalogue", () => {
  it.each(entries.filter((entry) => entry.wrong !== "").map((entry) => [entry.code, entry] as const))(
    "%s is raised by its wrong sample and not by its right one",
    (code, entry) => {
      const wrong = entry.wrong.replaceAll("main.joint.md", FILE);
      expect(codesOf(wrong)).toContain(code);
      const right = codesOf(entry.right);
      expect(right).not.toContain(code);
      if (entry.severity === "fault")
        expect(right.filter((other) => entries.find((each) => each.code === other)?.severity === "fault")).toEqual([]);
    },
  );

  it.each(entries.map((entry) => [entry.code, entry] as const))("%s says what it is in plain words", (_, entry) => {
    expect(entry.text.length).toBeGreaterThan(0);
    expect(entry.wrong !== "" || (entry.shown ?? "") !== "").toBe(true);
    expect(entry.wrong === "" || entry.right !== "").toBe(true);
  });
});

it("the generated files are those that the catalogue makes", () => {
  for (const [name, text] of Object.entries(generate(readCatalogue()))) {
    expect(readFileSync(new URL(`../../engine/diagnostics/${name}`, import.meta.url), "utf8"), name).toBe(text);
  }
});
