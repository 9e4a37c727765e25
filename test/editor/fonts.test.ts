// The committed fonts: every symbol the product can show has a glyph in every face, under names of our own.

import { readdirSync, readFileSync } from "node:fs";
import subsetFont from "subset-font";
import { describe, expect, test } from "vitest";
import { codePointsOf, namesOf, withNames } from "../../editor/fonts/sfnt.mjs";
import { ALL, GROUPS } from "../../editor/fonts/symbols.mjs";

const folder = new URL("../../editor/fonts/", import.meta.url);

interface Rule {
  readonly family: string;
  readonly style: string;
  readonly weight: string;
  readonly file: string;
  readonly points: ReadonlySet<number>;
}

function pointsIn(ranges: string): Set<number> {
  const points = new Set<number>();
  for (const part of ranges.split(",")) {
    const [, from, to] = /^\s*U\+([0-9A-F]+)(?:-([0-9A-F]+))?$/.exec(part) ?? [];
    for (let point = Number.parseInt(from ?? "", 16); point <= Number.parseInt(to ?? from ?? "", 16); point += 1) points.add(point);
  }
  return points;
}

const rules: readonly Rule[] = [...readFileSync(new URL("fonts.css", folder), "utf8").matchAll(/@font-face \{([^}]*)\}/g)].map(
  ([, body]) => {
    const field = (name: string) => new RegExp(`${name}: ([^;]*);`).exec(body ?? "")?.[1] ?? "";
    return {
      family: field("font-family").slice(1, -1),
      style: field("font-style"),
      weight: field("font-weight"),
      file: /url\("\.\/(.*?)"\)/.exec(body ?? "")?.[1] ?? "",
      points: pointsIn(field("unicode-range")),
    };
  },
);

const faces = new Map<string, Rule[]>();
for (const rule of rules) {
  const key = `${rule.family} ${rule.weight} ${rule.style}`;
  faces.set(key, [...(faces.get(key) ?? []), rule]);
}
const files = readdirSync(folder).filter((name) => name.endsWith(".woff2"));
const read = async (file: string) =>
  Buffer.from(
    await subsetFont(readFileSync(new URL(file, folder)), null, {
      targetFormat: "sfnt",
      keepAllGlyphs: true,
      preserveNameIds: [13, 14, 16, 17],
    }),
  );

const missing = (symbols: string, points: ReadonlySet<number>) => [...symbols].filter((symbol) => !points.has(symbol.codePointAt(0) ?? 0));

test("the style sheet names every file, and only files that are there", () => {
  expect([...new Set(rules.map(({ file }) => file))].sort()).toEqual(files.sort());
});

test("the faces are those the design asks for", () => {
  expect([...faces.keys()]).toEqual([
    "Jointwright Sans 400 normal",
    "Jointwright Sans 500 normal",
    "Jointwright Sans 600 normal",
    "Jointwright Sans Condensed 400 normal",
    "Jointwright Sans Condensed 500 normal",
    "Jointwright Sans Condensed 600 normal",
    "Jointwright Mono 400 normal",
    "Jointwright Mono 500 normal",
    "Jointwright Serif 400 normal",
    "Jointwright Serif 400 italic",
    "Jointwright Serif 600 normal",
    "Jointwright Math 400 normal",
  ]);
});

describe.each([...faces])("%s", (_, parts) => {
  test.each(Object.entries(GROUPS))("has a glyph for each of %s", (_group, symbols) => {
    expect(missing(symbols, new Set(parts.flatMap(({ points }) => [...points])))).toEqual([]);
  });
  test("each file has the glyphs that the style sheet says it has", async () => {
    for (const { file, points } of parts) expect(missing(String.fromCodePoint(...points), codePointsOf(await read(file)))).toEqual([]);
  });
  test("no symbol has two files", () => {
    expect(parts.flatMap(({ points }) => [...points]).length).toBe(new Set(parts.flatMap(({ points }) => [...points])).size);
  });
});

test.each(files)("%s is named by us, keeps its copyright and licence, and does not use the reserved name", async (file) => {
  const names = namesOf(await read(file));
  expect(names.get(0)).toMatch(/Copyright|\(c\)/i);
  expect(names.get(1)).toMatch(/^Jointwright/);
  expect(names.get(13)).toMatch(/licen[cs]e/i);
  for (const id of [1, 3, 4, 6, 16]) expect(names.get(id) ?? "").not.toMatch(/plex|dejavu|vera|bitstream/i);
});

test("a font without a symbol is seen to lack it, and a rename is read back", async () => {
  const few = Buffer.from(await subsetFont(readFileSync(new URL("sans-400.woff2", folder)), "AB", { targetFormat: "sfnt" }));
  expect(missing("ABC", codePointsOf(few))).toEqual(["C"]);
  expect(namesOf(withNames(few, new Map([[1, "Other"]])))).toEqual(new Map([[1, "Other"]]));
});

test("the catalogue of faults and the library show nothing that has no glyph", () => {
  const root = new URL("../../", import.meta.url);
  const catalogue = new URL("engine/diagnostics/catalogue/", root);
  const texts = readdirSync(catalogue).map((name) => readFileSync(new URL(name, catalogue), "utf8"));
  const library = new URL("stdlib/", root);
  for (const name of readdirSync(library)) if (name.endsWith(".joint.md")) texts.push(readFileSync(new URL(name, library), "utf8"));
  const known = new Set([...ALL].map((symbol) => symbol.codePointAt(0) ?? 0)).add(9).add(10);
  expect([...new Set(texts.flatMap((text) => missing(text, known)))]).toEqual([]);
});
