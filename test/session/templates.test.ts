// The templates of the start page: one for each way of making a thread, each a notebook without a fault.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readFrontMatter } from "../../engine/notebook/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const FOLDER = new URL("../../notebooks/templates/", import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".joint.md"));
const texts = new Map(files.map((name) => [name, readFileSync(new URL(name, FOLDER), "utf8")]));
const session = createSession(library);

describe("templates", () => {
  test("every way of making a thread that the library knows has one, and each has a title of its own", () => {
    const kinds = session.evaluate("method_names()", {}).result?.value as readonly string[];
    const slugs = files.map((name) => name.replace(/^\d+-/, "").replace(".joint.md", ""));
    expect(kinds.filter((kind) => !slugs.includes(kind.replaceAll(" ", "-")))).toEqual([]);
    expect(new Set([...texts.values()].map((text) => readFrontMatter(text).title.title)).size).toBe(files.length);
  });
  for (const [name, text] of texts) {
    test(`${name} has no fault, and its checks are evaluated`, () => {
      session.put(name, text);
      const outputs = session.outputs(name);
      session.remove(name);
      const faults = outputs.flatMap(({ diagnostics }) => diagnostics.filter(({ severity }) => severity === "fault"));
      expect(faults.map(({ message }) => message)).toEqual([]);
      expect(outputs.filter(({ waitsFor }) => (waitsFor ?? []).length > 0)).toEqual([]);
      expect(outputs.some(({ check }) => check !== undefined)).toBe(true);
    });
  }
});
