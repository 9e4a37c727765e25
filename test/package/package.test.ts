// Packages: what is in them, that they are the same twice, and that every change of one is named.

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { beforeAll, describe, expect, test } from "vitest";
import {
  compareResults,
  type MadePackage,
  type Manifest,
  makePackage,
  type Results,
  readPackage,
  readResults,
  verifyPackage,
} from "../../engine/package/index.ts";
import type { Library } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { calc, FILE, noLibrary, opened } from "../sheet/helper.ts";
import { options, packageOf, tampered } from "./helper.ts";

const text = `---
title: Bracket
number: C-1
revision: B
date: 2026-05-01
---

# Purpose

Show that it holds. The force is {G}.

${calc(
  "F = 10 N within 5 N .. 20 N | load | given",
  'n = "=1+2" | a name | given',
  "k = -1.5 | a factor | assumed",
  "xs = [1 mm, 2 mm] | lengths | test own",
  "G = 2 * F | twice",
  "ys = 2 * xs as mm | twice",
  "check G <= 30 N factor 1.2 | it holds",
  "check G <= 10 N | it fails",
)}
\`\`\`csv data | pulls | test own
a;F [N]
x;1
\`\`\`
`;

let made: MadePackage;
let files: Readonly<Record<string, Uint8Array>>;
const content = (name: string): string => strFromU8(files[name] ?? new Uint8Array());

beforeAll(async () => {
  made = await packageOf(text);
  files = unzipSync(made.bytes);
}, 60_000);

describe("contents", () => {
  test("all files are there, each with its size and digest in the manifest", () => {
    expect(Object.keys(files)).toEqual([
      "sheet.pdf",
      "sheet.html",
      "results.xlsx",
      "results.csv",
      "results.json",
      `source/${FILE}`,
      "manifest.json",
    ]);
    const manifest = JSON.parse(content("manifest.json")) as Manifest;
    expect(manifest.files.map(({ name }) => name)).toEqual(Object.keys(files).slice(0, -1));
    for (const { name, bytes, sha256 } of manifest.files) {
      const file = files[name] as Uint8Array;
      expect([file.length, createHash("sha256").update(file).digest("hex")]).toEqual([bytes, sha256]);
    }
    expect(content(`source/${FILE}`)).toBe(text);
  });

  test("JSON has values in SI and as shown, UCUM codes, sources, states and what was not evaluated", () => {
    const results = JSON.parse(content("results.json")) as Results;
    expect(results.inputs[0]).toEqual({
      name: "F",
      text: "10 N",
      si: 10,
      value: 10,
      unit: "N",
      ucum: "N",
      range: "5 N to 20 N",
      note: "load",
      reference: "given",
      provenance: "given",
    });
    expect(results.results.find(({ name }) => name === "ys")).toMatchObject({
      si: [0.002, 0.004],
      value: [2, 4],
      unit: "mm",
      ucum: "mm",
      validity: "within",
    });
    expect(results.checks.map(({ title, state }) => [title, state])).toEqual([
      ["it fails", "fails"],
      ["it holds", "holds"],
    ]);
    expect(results.checks[1]).toMatchObject({
      utilisation: 0.8,
      margin: 0.25,
      factor: 1.2,
      worstCase: "not evaluated",
      weakest: "given (F)",
    });
  });

  test("csv reads back, and no text in it is a formula", () => {
    const { data, errors } = Papa.parse<Record<string, string>>(content("results.csv"), { header: true, skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data.find(({ name }) => name === "n")?.text).toBe("'=1+2");
    expect(data.find(({ name }) => name === "k")).toMatchObject({ kind: "input", value: "-1.5", "SI value": "-1.5" });
    for (const row of data)
      for (const [head, value] of Object.entries(row))
        if (!["value", "SI value", "margin"].includes(head)) expect(value).not.toMatch(/^[=+\-@]/);
  });

  test("the workbook holds numbers as numbers, texts as texts, and no formula", () => {
    const book = unzipSync(files["results.xlsx"] as Uint8Array);
    const strings = [...strFromU8(book["xl/sharedStrings.xml"] as Uint8Array).matchAll(/<si><t[^>]*>([\s\S]*?)<\/t><\/si>/g)].map(
      ([, words]) => words,
    );
    const sheets = Object.keys(book)
      .filter((name) => /worksheets\/sheet\d+\.xml$/.test(name))
      .map((name) => strFromU8(book[name] as Uint8Array));
    expect(sheets.length).toBe(5);
    for (const sheet of sheets) expect(sheet).not.toMatch(/<f[ >]/);
    expect(strings).toContain("=1+2");
    const [inputs = ""] = sheets;
    expect(inputs).toMatch(/<c r="B2"[^>]*><v>10<\/v><\/c>/);
    expect(inputs).toMatch(/<c r="B4"[^>]*><v>-1.5<\/v><\/c>/);
  });
});

test("the same notebook and library give the same bytes", async () => {
  expect(Buffer.compare(Buffer.from((await packageOf(text)).bytes), Buffer.from(made.bytes))).toBe(0);
});

test("a session that shows other values than a clean start gives no package", async () => {
  const session = opened(text);
  const stale = {
    ...session,
    evaluate: (...args: Parameters<typeof session.evaluate>) => {
      const found = session.evaluate(...args);
      return args[0] === "G" && found.result?.si !== undefined ? { ...found, result: { ...found.result, si: found.result.si + 1 } } : found;
    },
  };
  await expect(makePackage(stale, noLibrary, FILE, options)).rejects.toThrow(
    "result G: computed from a clean start it is not what is shown",
  );
});

test("a file outside the notebook's folder is not taken along", async () => {
  const outside = calc('use "../shop.joint.md" as shop', "a = shop.b * 2");
  await expect(packageOf(outside, noLibrary, {}, { "../shop.joint.md": calc("b = 2 N") })).rejects.toThrow("lies outside the folder");
});

describe("verify", () => {
  const verify = (bytes: Uint8Array, over: Library = noLibrary, version = "9.9.9") => verifyPackage(bytes, over, { ...options, version });
  const found = async (bytes: Uint8Array, over?: Library, version?: string) =>
    (await verify(bytes, over, version)).findings.map(({ kind, name }) => `${kind} ${name}`);
  /** The manifest as it would be had the files always been so. */
  const consistent = (bytes: Uint8Array): Uint8Array => {
    const all = unzipSync(bytes);
    const manifest = JSON.parse(strFromU8(all["manifest.json"] as Uint8Array)) as Manifest;
    const listed = manifest.files.map(({ name }) => ({
      name,
      bytes: all[name]?.length ?? 0,
      sha256: createHash("sha256")
        .update(all[name] ?? new Uint8Array())
        .digest("hex"),
    }));
    return tampered(bytes, { "manifest.json": JSON.stringify({ ...manifest, files: listed }) });
  };

  test("a package as it was made agrees", async () => {
    expect(await verify(made.bytes)).toEqual({ findings: [], files: 6, values: 9, title: "C-1 B Bracket" });
  });

  const changed: readonly (readonly [string, () => Readonly<Record<string, string | Uint8Array | undefined>>, readonly string[]])[] = [
    [
      "a stated value",
      () => ({ "results.json": content("results.json").replace('"si": 20', '"si": 21') }),
      ["digest results.json", "value result G"],
    ],
    ["the sheet", () => ({ "sheet.html": content("sheet.html").replace("it fails", "it suits") }), ["digest sheet.html"]],
    ["the PDF", () => ({ "sheet.pdf": new Uint8Array([1, 2, 3]) }), ["digest sheet.pdf"]],
    ["a file taken out", () => ({ "results.csv": undefined }), ["missing results.csv"]],
    ["a file put in", () => ({ "note.txt": "hello" }), ["unlisted note.txt"]],
    ["the results unreadable", () => ({ "results.json": "{" }), ["digest results.json", "unreadable results.json"]],
  ];
  test.each(changed)("names %s", async (_, change, expected) => {
    expect(await found(tampered(made.bytes, change()))).toEqual(expected);
  });

  const hidden: readonly (readonly [string, () => Readonly<Record<string, string>>, readonly string[]])[] = [
    [
      "a stated value",
      () => ({ "results.json": content("results.json").replace('"si": 20', '"si": 21') }),
      ["value result G", "content results.json"],
    ],
    [
      "a stated check",
      () => ({ "results.json": content("results.json").replace('"state": "fails"', '"state": "holds"') }),
      ["value check it fails", "content results.json"],
    ],
    ["the sheet", () => ({ "sheet.html": content("sheet.html").replace("it fails", "it suits") }), ["content sheet.html"]],
    ["the csv", () => ({ "results.csv": content("results.csv").replace("it fails", "it suits") }), ["content results.csv"]],
  ];
  test.each(hidden)("names %s even when the manifest was changed to suit", async (_, change, expected) => {
    expect(await found(consistent(tampered(made.bytes, change())))).toEqual(expected);
  });

  test("names every value that a changed source moves", async () => {
    const names = await found(tampered(made.bytes, { [`source/${FILE}`]: text.replace("F = 10 N", "F = 11 N") }));
    expect(names).toEqual(
      expect.arrayContaining([
        `digest source/${FILE}`,
        "value input F",
        "value result G",
        "value check it holds",
        "content sheet.html",
        "content sheet.pdf",
        "content results.xlsx",
      ]),
    );
  });

  test("names another library and another program", async () => {
    expect(await found(made.bytes, { ...noLibrary, sources: "- { id: a, type: book, title: A }" })).toContain("version standard library");
    expect(await found(made.bytes, noLibrary, "9.9.10")).toContain("version Jointwright");
  });

  test("says plainly what is no package", async () => {
    await expect(verify(new Uint8Array([1, 2, 3]))).rejects.toThrow("no archive");
    await expect(verify(tampered(made.bytes, { "manifest.json": undefined }))).rejects.toThrow("no manifest.json");
    await expect(verify(tampered(made.bytes, { "manifest.json": '{"format":"other"}' }))).rejects.toThrow(
      "manifest of this package cannot be read",
    );
  });
});

describe("compare", () => {
  const side = (words: string) => ({
    results: readResults(opened(words), noLibrary, FILE, "9.9.9"),
    sources: [{ name: FILE, text: words }],
  });
  const compared = (words: string) => compareResults(side(text), side(words));

  test("a line that only moves, or is written another way, is no difference", () => {
    expect(compared(text)).toEqual([]);
    expect(
      compared(text.replace("G = 2 * F | twice\n", "").replace("n = ", "G = 2 * F | twice\nn = ").replace("10 N within", "10.0 N within")),
    ).toEqual([]);
  });

  test("an input moves with all that hangs on it, by how much", () => {
    const found = compared(text.replace("F = 10 N", "F = 11 N"));
    expect(found.map(({ kind, name }) => `${kind} ${name}`)).toEqual(["input F", "result G", "check it fails", "check it holds"]);
    expect(found[0]?.change).toBeCloseTo(0.1, 12);
  });

  test("digits that are not shown count", () => {
    expect(compared(text.replace("F = 10 N", "F = 10.0000001 N")).map(({ name }) => name)).toContain("G");
  });

  test("titles, texts, what came and went", () => {
    const found = compared(
      text
        .replace("revision: B", "revision: C")
        .replace("Show that it holds.", "Show that it lasts.")
        .replace("check G <= 10 N | it fails\n", "")
        .replace("G = 2 * F | twice", "G = 2 * F | twice\nnew = 3 N | added | assumed"),
    );
    expect(found).toEqual([
      { kind: "title", name: "revision", before: "B", after: "C" },
      { kind: "input", name: "new", before: "", after: "3 N; assumed" },
      { kind: "check", name: "it fails", before: expect.stringContaining("fails"), after: "" },
      { kind: "text", name: "paragraph", before: "Show that it holds. The force is {G}.", after: "Show that it lasts. The force is {G}." },
    ]);
  });
});

describe("the demo notebook over the whole library", () => {
  const notebook = readFileSync(new URL("../../notebooks/drill-guide.joint.md", import.meta.url), "utf8");
  test("is packaged, reads back, and states every check as the session judges it", async () => {
    const bytes = (await packageOf(notebook, library)).bytes;
    const { results, sources } = readPackage(bytes);
    expect(sources).toEqual([{ name: FILE, text: notebook }]);
    expect(results?.checks.map(({ state }) => state)).toEqual(["holds", "holds", "holds", "holds", "holds", "holds"]);
    expect(results?.faults).toEqual([]);
    expect((await verifyPackage(bytes, library, options)).findings).toEqual([]);
  });

  test("in inches shows inches and alters no value", async () => {
    const [metric, inch] = [await packageOf(notebook, library), await packageOf(notebook, library, { units: "inch" })];
    const html = strFromU8(unzipSync(inch.bytes)["sheet.html"] as Uint8Array);
    expect(html.includes("40.47 lbf")).toBe(true);
    expect(html.includes("in inch units")).toBe(true);
    expect(inch.results.results).toEqual(metric.results.results);
  });
});
