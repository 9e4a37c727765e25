// The PDF as poppler and qpdf see it: pages, running heads, contents, outline, tags, fonts, attachments, and what is refused.

import { inflateSync } from "node:zlib";
import { beforeAll, describe, expect, test } from "vitest";
import { PackageRefused } from "../../engine/package/index.ts";
import { calc, FILE } from "../sheet/helper.ts";
import { pagesOf, pdfInfo, pdfOf, pdfText, read } from "./helper.ts";

const long = `---
title: Bracket & "frame" of a <long> jig
number: C-1
revision: B
status: in preparation
date: 2026-05-01
creator: A. Author
checker: C. Checker
project: Orchard arm
---

# Purpose

Show that it holds.

${Array.from({ length: 12 }, (_, i) => `# Part ${i + 1}\n\n${"Some words that fill a line of prose and then a little more of it. ".repeat(6)}\n\n${calc(...Array.from({ length: 5 }, (__, k) => `x_${i}_${k} = ${k + 1} N / (2 * ${i + 1}) | a share of it`))}`).join("\n")}
`;

let pdf: Uint8Array;
let pages: readonly string[];

beforeAll(async () => {
  pdf = await pdfOf(long);
  pages = pagesOf(pdf);
}, 60_000);

test("is well-formed, tagged, titled, dated by the notebook", () => {
  expect(read("qpdf", ["--check", "PDF"], pdf)).toContain("No syntax or stream encoding errors");
  const info = pdfInfo(pdf);
  expect(info.get("Title")).toBe('C-1 Bracket & "frame" of a <long> jig');
  expect(info.get("Author")).toBe("A. Author");
  expect(info.get("Tagged")).toBe("yes");
  expect(info.get("CreationDate")).toMatch(/May\s+1 .*2026/);
  expect(info.get("Page size")).toContain("A4");
  expect(Number(info.get("Pages"))).toBe(pages.length);
  expect(pages.length).toBeGreaterThan(4);
});

test("every page is identified: number, revision, project, names, date, page x of y", () => {
  pages.forEach((page, i) => {
    for (const words of ["C-1", "rev. B", "in preparation", "Orchard arm", "originator A. Author", "checker C. Checker", "2026-05-01"])
      expect(page).toContain(words);
    expect(page).toMatch(new RegExp(`\\s${i + 1} ?/ ?${pages.length}\\s*$`));
  });
});

test("the contents name the page that each heading stands on", () => {
  const contents = pages.slice(0, 2).join("\n");
  for (let part = 1; part <= 12; part += 1) {
    const at = pages.findIndex((page, i) => i > 0 && new RegExp(`^\\s*${part + 2}\\s+Part ${part}$`, "m").test(page));
    const told = new RegExp(`Part ${part}\\s+(\\d+)`).exec(contents)?.[1];
    expect(told).toBe(
      String((at === -1 ? pages.findIndex((page) => new RegExp(`^\\s*${part + 2}\\s+Part ${part}$`, "m").test(page)) : at) + 1),
    );
  }
});

test("no heading stands at the foot of a page without its text", () => {
  for (const page of pages) {
    const lines = page
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== "");
    const body = lines.slice(
      0,
      lines.findIndex((line) => line.startsWith("C-1 rev. B")),
    );
    expect(body.at(-1)).not.toMatch(/^\d+\s+Part \d+$/);
  }
});

test("the tree for readers by ear has headings, tables, and formulas with words", () => {
  const tree = read("pdfinfo", ["-struct", "PDF"], pdf);
  expect(tree.match(/^\s*H1 /gm)?.length).toBeGreaterThanOrEqual(14);
  expect(tree.match(/^\s*Formula/gm)?.length).toBe(60);
  expect(tree).toMatch(/TR\n\s+TH/);
  const spoken = read("qpdf", ["--qdf", "--object-streams=disable", "PDF", "-"], pdf);
  expect(spoken).toMatch(/\/Alt \(.*x_0_0|\/Alt <feff/i);
});

test("the outline leads to the headings, the source is attached whole", () => {
  const plain = read("qpdf", ["--qdf", "--object-streams=disable", "PDF", "-"], pdf);
  expect(plain.match(/\/Title \(.*Part \d+\)/g)).toHaveLength(12);
  expect(read("pdfdetach", ["-list", "PDF"], pdf)).toContain(FILE);
  const stream = plain.slice(plain.indexOf("/Type /EmbeddedFile"));
  expect(stream).toContain("Bracket &");
});

test("every font is embedded as a subset", () => {
  const rows = read("pdffonts", ["PDF"], pdf).trim().split("\n").slice(2);
  expect(rows.length).toBeGreaterThan(3);
  for (const row of rows) expect(row).toMatch(/^[A-Z]{6}\+Jointwright.*\byes yes yes\b/);
});

test("the same notebook gives the same bytes; Letter gives its own pages", async () => {
  expect(Buffer.compare(Buffer.from(await pdfOf(long)), Buffer.from(pdf))).toBe(0);
  expect(pdfInfo(await pdfOf(long, "letter")).get("Page size")).toContain("612 x 792");
});

describe("what is refused", () => {
  test("a sign without a glyph, named with its place", async () => {
    const refused = await pdfOf(`# Purpose\n\nA snowman ☃ stands here.\n`).catch((fault: unknown) => fault);
    expect(refused).toBeInstanceOf(PackageRefused);
    expect((refused as PackageRefused).problems).toEqual([expect.stringContaining("No glyph for ☃ (U+2603)")]);
  });
});

describe("what would be cut elsewhere", () => {
  test("a word longer than the page is broken, a formula longer than its column goes on below", async () => {
    const name = "a".repeat(150);
    const made = await pdfOf(
      `# Purpose\n\n${"x".repeat(400)}\n\n${calc(
        `${name} = 2 N`,
        `b = ${Array.from({ length: 30 }, () => name.slice(0, 40))
          .map(() => name)
          .join(" + ")}`,
      )}`,
    );
    const words = pdfText(made).replace(/\s/g, "");
    expect(words).toContain("x".repeat(400));
    expect(words).toContain(name);
  });
  test("a text in the working that fills pages is split over them", async () => {
    const made = await pdfOf(`\`\`\`csv t | long cells\na\n${"word ".repeat(3000)}\n\`\`\`\n`);
    expect(pdfText(made).match(/word/g)).toHaveLength(3000);
  });
});

test("streams are compressed", () => {
  const at = Buffer.from(pdf).indexOf("/FlateDecode");
  const start = Buffer.from(pdf).indexOf("stream\n", at) + 7;
  expect(() => inflateSync(Buffer.from(pdf).subarray(start, Buffer.from(pdf).indexOf("\nendstream", start)))).not.toThrow();
});
