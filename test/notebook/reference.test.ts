// engine/notebook: references and what stands in the reference column.

import { describe, expect, it } from "vitest";
import { applyChanges } from "../../engine/base/index.ts";
import {
  citation,
  formatReference,
  provenanceLevels,
  type Reference,
  readReference,
  readSourceFile,
  readSources,
  shortCitation,
  unknownKeys,
} from "../../engine/notebook/index.ts";

const sources = `
- id: iso965
  type: standard
  number: ISO 965-1
  title: ISO general purpose metric screw threads, tolerances
  issued: { date-parts: [[2013, 9]] }
- { id: alder, type: article-journal, title: Pull-out of inserts, author: [{ family: Alder, given: Ann Bea }, { family: Birch, given: C. }],
    issued: 2020-05, container-title: Invented journal, volume: 12, issue: 3, page: 1-9, DOI: 10.0000/invented }
- id: crew
  author:
    - literal: The crew
    - name: Second
    - family: Hoek
      non-dropping-particle: van
  issued: { year: 2021 }
  title: Three hands
  edition: 2
  publisher: Invented press
- id: long
  title: A long title of a report that nobody would want to read in a narrow column
  URL: https://example.org/long
- id: bare
`;

const of = (id: string): Reference => {
  const found = readSources(sources).get(id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};

describe("sources", () => {
  it("are read from a list or from `references`, each record on its own", () => {
    expect([...readSources(sources).keys()]).toEqual(["iso965", "alder", "crew", "long", "bare"]);
    expect([...readSources("references:\n  - { id: a }\n  - { id: b }\n").keys()]).toEqual(["a", "b"]);
    expect([...readSources("references:\n- id: a\n- id: b\n").keys()]).toEqual(["a", "b"]);
    expect(readSources("").size).toBe(0);
  });

  it("that are broken leave the others and say where", () => {
    const { references, diagnostics } = readSourceFile('- id: a\n- id: "b\n- id: c\n- title: no id\n- id: a\n');
    expect([...references.keys()]).toEqual(["a", "c"]);
    expect(diagnostics.map(({ code }) => code)).toEqual(["front-matter-unclosed", "reference-no-id", "reference-twice"]);
  });

  it.each([
    ["iso965", "ISO 965-1"],
    ["alder", "Alder and Birch 2020"],
    ["crew", "The crew et al. 2021"],
    ["long", "A long title of a report that nobody…"],
    ["bare", "bare"],
  ])("%s is cited as %s", (id, wanted) => {
    expect(shortCitation(of(id))).toBe(wanted);
  });

  it.each([
    ["iso965", "ISO 965-1: ISO general purpose metric screw threads, tolerances. 2013."],
    ["alder", "A. B. Alder, C. Birch: Pull-out of inserts. Invented journal 12(3), p. 1-9. 2020. doi:10.0000/invented"],
    ["crew", "The crew, Second, van Hoek: Three hands. edition 2, Invented press, 2021."],
    ["long", "A long title of a report that nobody would want to read in a narrow column. https://example.org/long"],
    ["bare", "bare."],
  ])("%s is listed in full", (id, wanted) => {
    expect(formatReference(of(id))).toBe(wanted);
  });
});

describe("the reference column", () => {
  it.each([
    ["test own pulls", "test", "own pulls"],
    ["@iso965 table 2", "published", "table 2"],
    ["@iso965", "published", ""],
    ["supplier data sheet", "supplier", "data sheet"],
    ["given drawing 31", "given", "drawing 31"],
    ["practice", "practice", ""],
    ["memory: of a lecture", "memory", "of a lecture"],
    ["assumed", "assumed", ""],
    ["drawing 31", "unsourced", "drawing 31"],
    ["tested by hand", "unsourced", "tested by hand"],
    ["@", "unsourced", "@"],
  ])("reads %j", (text, level, place) => {
    expect(readReference(text)).toMatchObject({ level, items: [{ level, place, range: { from: 0, to: text.length } }], confirmed: false });
  });

  it("takes nothing as unsourced", () => {
    expect(readReference("  ")).toMatchObject({ level: "unsourced", items: [], text: "" });
  });

  it("takes several citations, the strongest giving the level", () => {
    const text = "memory; @iso965, table 2 ; given drawing";
    const column = readReference(text);
    expect([column.level, column.key]).toEqual(["published", "iso965"]);
    expect(column.items.map(({ range }) => text.slice(range.from, range.to))).toEqual(["memory", "@iso965, table 2", "given drawing"]);
    expect(provenanceLevels.indexOf("test")).toBeLessThan(provenanceLevels.indexOf("unsourced"));
  });

  it("keeps an assumption one although it is confirmed", () => {
    expect(readReference("assumed; confirmed @log7 page 3")).toMatchObject({ level: "assumed", confirmed: true, key: "log7" });
    expect(readReference("assumed 0.8, confirmed by trial")).toMatchObject({ level: "assumed", confirmed: true });
    expect(readReference("assumed not yet unconfirmed")).toMatchObject({ confirmed: false });
  });

  it("ends a key before punctuation", () => {
    const keys = ["@iso965: table", "@iso965.", "@iso965, table", "@a.b-c:d table"].map((text) => readReference(text).key);
    expect(keys).toEqual(["iso965", "iso965", "iso965", "a.b-c:d"]);
  });

  it("notices keys that no reference has, at their place, with the nearest", () => {
    const text = "test own; @iso956 table 2";
    const [notice, ...more] = unknownKeys(readReference(text), readSources(sources));
    expect(more).toEqual([]);
    expect(notice).toMatchObject({ code: "reference-unknown", severity: "notice", hint: "Did you mean `@iso965`?" });
    expect(text.slice(notice?.range.from, notice?.range.to)).toBe("@iso956");
    expect(applyChanges(text, notice?.mends[0]?.changes ?? [])).toBe("test own; @iso965 table 2");
    expect(unknownKeys(readReference("@iso965"), readSources(sources))).toEqual([]);
  });

  it.each([
    ["@iso965 table 2", "ISO 965-1, table 2"],
    ["@iso965", "ISO 965-1"],
    ["@other page 3", "@other, page 3"],
    ["test own pulls; @alder", "test own pulls; Alder and Birch 2020"],
    ["assumed; confirmed @iso965 table 2", "assumed; confirmed ISO 965-1, table 2"],
    ["drawing 31", "drawing 31"],
    ["", ""],
  ])("shows %j as %j", (text, wanted) => {
    expect(citation(readReference(text), readSources(sources))).toBe(wanted);
  });
});
