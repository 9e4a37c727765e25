// engine/notebook: the samples of its catalogue, as far as this room alone can read them.

import { describe, expect, it } from "vitest";
import { type Diagnostic, entries } from "../../engine/diagnostics/index.ts";
import { placedChunks, readCsv, readFrontMatter, readNotebook, readReference, unknownKeys } from "../../engine/notebook/index.ts";

/** Everything this room says of a notebook. A statement's reference is what stands behind its second bar. */
function all(text: string): Diagnostic[] {
  const notebook = readNotebook(text);
  const front = readFrontMatter(text);
  const references = [...placedChunks(notebook)].map(({ chunk }) => readReference(chunk.text.split("|")[2] ?? ""));
  return [
    ...notebook.parts.flatMap((part) => [...part.diagnostics, ...(part.kind === "csv" ? readCsv(part.body).diagnostics : [])]),
    ...front.diagnostics,
    ...references.flatMap((reference) => unknownKeys(reference, front.references)),
  ];
}

const ours = entries.filter(({ area }) => area === "notebook");

describe.each(ours.filter(({ shown }) => shown === undefined))("$code", ({ code, wrong, right }) => {
  it("is what its wrong sample gives", () => {
    expect(all(wrong).map((found) => found.code)).toContain(code);
  });

  it("is gone in its right sample, with nothing in its place", () => {
    expect(all(right)).toEqual([]);
  });
});

it("every entry has samples or says why not", () => {
  expect(ours.length).toBeGreaterThan(40);
  expect(ours.filter(({ shown }) => shown !== undefined).map(({ code }) => code)).toEqual([
    "fence-open",
    "prose-too-long",
    "csv-too-large",
  ]);
});
