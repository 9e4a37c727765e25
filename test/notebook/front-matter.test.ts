// engine/notebook: the title block, read and changed.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyChanges } from "../../engine/base/index.ts";
import { editFrontMatter, type FrontPath, type FrontValue, readFrontMatter } from "../../engine/notebook/index.ts";

const sample = readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8");

/** Codes with the text they mark. */
const faultsOf = (yaml: string): string[] => {
  const text = `---\n${yaml}\n---\n`;
  return readFrontMatter(text).diagnostics.map(({ code, range }) => `${code} "${text.slice(range.from, range.to)}"`);
};

describe("reading", () => {
  it("gives the fields of the sample with their places", () => {
    const front = readFrontMatter(sample);
    expect(front.diagnostics).toEqual([]);
    expect(front.title).toMatchObject({ number: "CALC-014", revision: "B", status: "in preparation", project: "Orchard arm", checker: "" });
    expect([...front.units].map(([key, { text }]) => `${key} ${text}`)).toEqual(["length mm", "force N", "stress MPa", "torque N*m"]);
    expect(front.currency?.text).toBe("EUR");
    expect(front.references.get("iso965")).toMatchObject({ type: "standard", number: "ISO 965-1" });
    const stress = front.units.get("stress");
    expect(sample.slice(stress?.from, stress?.to)).toBe("MPa");
    const place = front.places.get("revision");
    expect(sample.slice(place?.from, place?.to)).toBe("B");
  });

  it("takes every scalar as text", () => {
    const front = readFrontMatter("---\nnumber: 007\nrevision: no\ntitle: 1E5\nowner: 2026-01-02\ncreator: null\n---\n");
    expect(front.title).toMatchObject({ number: "007", revision: "no", title: "1E5", owner: "2026-01-02", creator: "null" });
  });

  it("is empty without front matter", () => {
    expect(readFrontMatter("# Text\n")).toMatchObject({ diagnostics: [], title: { title: "" } });
    expect(readFrontMatter("---\n---\n").diagnostics).toEqual([]);
    expect(readFrontMatter("---\n# only a comment\n---\n").diagnostics).toEqual([]);
  });

  it("reads the fields round a broken one", () => {
    const front = readFrontMatter('---\ntitle: Wrist: bracket\nnumber: N1\nowner: "open\nrevision: B\nunits: { length: mm }\n---\n');
    expect(front.diagnostics.map(({ code }) => code)).toEqual(["front-matter-colon", "front-matter-unclosed"]);
    expect(front.title).toMatchObject({ number: "N1", revision: "B" });
    expect(front.units.get("length")?.text).toBe("mm");
  });

  it.each([
    ["digits: 0.5", 'front-matter-digits "0.5"'],
    ["digits: 0", 'front-matter-digits "0"'],
    ["digits: 16", 'front-matter-digits "16"'],
    ["digits: [3]", 'front-matter-not-text "[3]"'],
    ["status: in preperation", 'front-matter-status "in preperation"'],
    ["status: [a]", 'front-matter-not-text "[a]"'],
    ["date: 10/06/2025", 'front-matter-date "10/06/2025"'],
    ["date: 2025-02-29", 'front-matter-date "2025-02-29"'],
    ["currency: euro", 'front-matter-currency "euro"'],
    ["units: mm", 'front-matter-units "mm"'],
    ["units: { length: [mm] }", 'front-matter-units "[mm]"'],
    ["titel: x", 'front-matter-unknown "titel"'],
    ["revision: A\nrevision: B", 'front-matter-twice "revision"'],
    ["units: { length: mm, length: in }", 'front-matter-twice "length"'],
    ["units:\n\tlength: mm", 'front-matter-tab "\t"'],
    ["project: @arm", 'front-matter-character "@"'],
    ["creator: &me A\nchecker: *me", 'front-matter-alias "*me"'],
    ["Bracket", 'front-matter-line "Bracket"'],
    ["%YAML 9", 'front-matter-syntax "9"'],
    ["references: ISO", 'references-not-list "ISO"'],
    ["references:\n  - { number: x }", 'reference-no-id "{ number: x }"'],
    ["references:\n- { id: a }\n- { id: a, title: t }", 'reference-twice "{ id: a, title: t }"'],
  ])("faults %j at its place", (yaml, wanted) => {
    expect(faultsOf(yaml)).toEqual([wanted]);
  });

  it("takes 1 to 15 digits, real days and every status", () => {
    expect(readFrontMatter("---\ndigits: 15\n---\n").digits).toBe(15);
    expect(faultsOf("date: 2024-02-29")).toEqual([]);
    expect(
      ["in preparation", "under approval", "released", "superseded", "withdrawn"].flatMap((status) => faultsOf(`status: ${status}`)),
    ).toEqual([]);
  });

  it("offers the nearest key and status as a mend at the right place", () => {
    const text = "---\nrevison: B\nstatus: realeased\n---\n";
    const changes = readFrontMatter(text).diagnostics.flatMap(({ mends }) => mends[0]?.changes ?? []);
    const mended = applyChanges(
      text,
      changes.sort((a, b) => a.from - b.from),
    );
    expect(mended).toBe("---\nrevision: B\nstatus: released\n---\n");
  });

  it("F116: reads both sides of a conflict and faults its marks", () => {
    const yaml = "title: T\n<<<<<<< HEAD\nrevision: B\n=======\nrevision: C\n>>>>>>> other\nnumber: N";
    expect(faultsOf(yaml)).toEqual([
      'conflict-mark "<<<<<<< HEAD"',
      'conflict-mark "======="',
      'conflict-mark ">>>>>>> other"',
      'front-matter-twice "revision"',
    ]);
    expect(readFrontMatter(`---\n${yaml}\n---\n`).title).toMatchObject({ revision: "B", number: "N" });
  });

  it("keeps away from texts that would take the YAML reader down", () => {
    const shapes = [
      `a: ${"[".repeat(20_000)}`,
      `a:\n${" ".repeat(100_000)}b: c`,
      `a:\n  ${"- ".repeat(20_000)}x`,
      `a: ${"b: ".repeat(20_000)}`,
    ];
    for (const hostile of shapes) {
      const front = readFrontMatter(`---\n${hostile}\ntitle: T\n---\n`);
      expect([front.diagnostics.map(({ code }) => code), front.title.title]).toEqual([["front-matter-deep"], "T"]);
      expect(editFrontMatter(`---\n${hostile}\n---\n`, ["title"], "T")).toEqual([]);
    }
  });

  it("never throws, and keeps every place inside the text", () => {
    const piece = fc.constantFrom(
      "title",
      ":",
      " ",
      "\n",
      "  ",
      "{",
      "}",
      "[",
      "]",
      '"',
      "'",
      "a",
      "- ",
      "&x",
      "*x",
      "|",
      ">",
      "#",
      "!t",
      "?",
      ",",
      "%",
      "@",
      "`",
      "\t",
      "references:\n",
      "id: a",
      "---",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 25 }), (pieces) => {
        const text = `---\n${pieces.join("")}\n---\n`;
        for (const { range } of readFrontMatter(text).diagnostics) {
          expect(0 <= range.from && range.from <= range.to && range.to <= text.length).toBe(true);
        }
      }),
      { numRuns: 3000 },
    );
  });
});

describe("changing", () => {
  const set = (text: string, path: FrontPath, value: FrontValue | undefined) => applyChanges(text, editFrontMatter(text, path, value));
  const text =
    '---\ntitle: Wrist bracket   # short\n# next comes the number\nnumber: "C-14"\nunits: { length: mm, force: N }\nchecker:\nreferences:\n  - { id: log7, title: Load log }   # ours\n---\n\nText\n';

  it("touches only the text it puts in", () => {
    expect(editFrontMatter(text, ["title"], "Elbow bracket")).toEqual([{ from: 11, to: 24, insert: "Elbow bracket" }]);
    expect(set(text, ["number"], "C-15")).toBe(text.replace('"C-14"', '"C-15"'));
    expect(set(text, ["units", "length"], "in")).toBe(text.replace("length: mm", "length: in"));
    expect(set(text, ["references", 0, "title"], "Log")).toBe(text.replace("Load log", "Log"));
  });

  it("fills a field that was empty", () => {
    expect(set(text, ["checker"], "B. Birch")).toBe(text.replace("checker:\n", "checker: B. Birch\n"));
  });

  it("puts quotes round what YAML would read otherwise", () => {
    const value = 'Wrist: "second", #2';
    expect(readFrontMatter(set(text, ["title"], value)).title.title).toBe(value);
    expect(set(text, ["units", "length"], "a, b")).toContain('length: "a, b"');
  });

  it("puts a new field after the last", () => {
    expect(set(text, ["digits"], "4")).toBe(text.replace("# ours\n", "# ours\ndigits: 4\n"));
  });

  it("adds to a group and takes fields out, comments staying", () => {
    const more = set(text, ["units", "torque"], "N*m");
    expect(readFrontMatter(more).units.get("torque")?.text).toBe("N*m");
    expect(more).toContain("# next comes the number");
    expect(more).toContain("{ length: mm, force: N, torque: N*m }");
    const less = set(text, ["units"], undefined);
    expect(less).not.toContain("units");
    expect(less).toContain("# short");
    expect(readFrontMatter(less).title.number).toBe("C-14");
  });

  it("takes whole references in", () => {
    const more = set(text, ["references", 1], { id: "iso965", type: "standard", number: "ISO 965-1" });
    expect([...readFrontMatter(more).references.keys()]).toEqual(["log7", "iso965"]);
  });

  it("puts front matter on top of a notebook that has none", () => {
    expect(set("Text\n", ["title"], "Bracket")).toBe("---\ntitle: Bracket\n---\n\nText\n");
    expect(set("", ["title"], "Bracket")).toBe("---\ntitle: Bracket\n---\n");
    expect(set("---\n---\n", ["title"], "Bracket")).toBe("---\ntitle: Bracket\n---\n");
  });

  it("changes nothing where nothing is to change or YAML is broken", () => {
    expect(editFrontMatter(text, ["number"], "C-14")).toEqual([]);
    expect(editFrontMatter(text, ["owner"], undefined)).toEqual([]);
    expect(editFrontMatter("Text\n", ["owner"], undefined)).toEqual([]);
    expect(editFrontMatter('---\ntitle: "open\n---\n', ["owner"], "x")).toEqual([]);
  });

  it("gives back any text that is set, leaving the other fields as they were", () => {
    const value = fc
      .oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."ab 0:#,{}[]\"'|>-?&*!%@`\\\n.~") }))
      .map((given) => given.trim());
    const path = fc.constantFrom<FrontPath>(
      ["title"],
      ["number"],
      ["checker"],
      ["owner"],
      ["units", "length"],
      ["units", "mass"],
      ["references", 0, "title"],
    );
    fc.assert(
      fc.property(
        path,
        value.filter((given) => given !== "" && !given.includes("\uFEFF")),
        (at, given) => {
          const now = readFrontMatter(set(text, at, given));
          const before = readFrontMatter(text);
          expect(now.diagnostics.map(({ code }) => code)).toEqual([]);
          const [field, key] = at;
          if (field === "units") expect(now.units.get(String(key))?.text).toBe(given);
          else if (field === "references") expect(now.references.get("log7")?.title).toBe(given);
          else expect(now.title).toEqual({ ...before.title, [String(field)]: given });
        },
      ),
      { numRuns: 1500 },
    );
  });
});
