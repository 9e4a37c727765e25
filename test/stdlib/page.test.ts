// The page of the library is the one its modules make, and every entry says what it is.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { libraryEntries, libraryPage } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

test("stdlib/LIBRARY.md is fresh; npm run library makes it", () => {
  expect(readFileSync(new URL("../../stdlib/LIBRARY.md", import.meta.url), "utf8")).toBe(libraryPage(library));
});

test("every formula has its types, a note, a source and an example", () => {
  const formulas = libraryEntries(library).filter((entry) => entry.kind === "formula");
  expect(formulas.length).toBeGreaterThan(20);
  for (const entry of formulas) {
    expect(entry.head, entry.name).toMatch(/\): \S/);
    expect(entry.note, entry.name).not.toBe("");
    expect(entry.citation, entry.name).not.toBe("");
    expect(entry.examples.length, entry.name).toBeGreaterThan(0);
  }
});
