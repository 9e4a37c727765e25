// What is printed and exported (area "export/print").

import { beforeAll, expect, test } from "vitest";
import { pagesOf, pdfOf, read } from "../package/helper.ts";
import { calc } from "../sheet/helper.ts";

beforeAll(() => {
  // The readers are asked once, so that a machine without them says so plainly.
  read("qpdf", ["--version"], new Uint8Array());
});

test("F127 a table of many columns loses none: it is set smaller, then in parts led by its first column", async () => {
  const heads = Array.from({ length: 30 }, (_, i) => `column${i} [N]`);
  const rows = Array.from({ length: 3 }, (_, row) => [`P${row}`, ...heads.map((_, i) => `${1000 + 100 * row + i}`)].join(";"));
  const pages = await pagesOf(
    await pdfOf(`\`\`\`csv wide | ${heads.length} columns\nspecimen;${heads.join(";")}\n${rows.join("\n")}\n\`\`\`\n`),
  );
  const text = pages.join("\n");
  for (let i = 0; i < heads.length; i += 1) {
    expect(text).toMatch(new RegExp(`\\bCOLUMN${i}\\b`));
    for (let row = 0; row < 3; row += 1) expect(text).toContain(String(1000 + 100 * row + i));
  }
  expect(text.match(/\(N\)/g)).toHaveLength(heads.length);
  const parts = text.match(/columns 1 and \d+ to \d+ of 31/g) ?? [];
  expect(parts.length).toBeGreaterThan(1);
  expect(text.match(/\bP1\b/g)).toHaveLength(parts.length);
});

test("F128 a table's head stands on a page with two of its rows at least, wherever the page ends", async () => {
  const made = await Promise.all(
    Array.from({ length: 6 }, (_, i) =>
      pdfOf(
        `# Purpose\n\n${Array.from({ length: 20 + i }, (__, k) => `Line ${k}.\n`).join("\n")}\n\n\`\`\`csv t | rows\nspecimen;F [N]\n${Array.from({ length: 60 }, (__, k) => `row${k};${k}`).join("\n")}\n\`\`\`\n`,
      ),
    ),
  );
  let seen = 0;
  for (const pdf of made)
    for (const page of pagesOf(pdf)) {
      if (!page.includes("SPECIMEN")) continue;
      seen += 1;
      expect(page.match(/\brow\d+\b/g)?.length).toBeGreaterThanOrEqual(2);
    }
  expect(seen).toBeGreaterThan(made.length);
});

test("F130 arrows, fractions and other signs have their glyphs; what has none is refused and named", async () => {
  const signs = "← ↑ → ↓ ⇒ ½ ¼ ¾ ± × ÷ ≤ ≥ ≠ ≈ √ ∑ ∞ Ø ⌀ ° ² ³ µ α Ω ● ▲ ◆ ✓";
  const pdf = await pdfOf(`# Purpose\n\n${signs}\n`);
  const text = pagesOf(pdf).join("\n");
  for (const sign of signs.split(" ")) expect(text).toContain(sign);
  for (const row of read("pdffonts", ["PDF"], pdf).trim().split("\n").slice(2)) expect(row).toMatch(/yes yes yes/);
  await expect(pdfOf("# Purpose\n\nA sign that no font here has: 漢.\n")).rejects.toThrow("No glyph for 漢 (U+6F22)");
});

test("F131 signs of mathematics in a figure come from an embedded subset, as text", async () => {
  const pdf = await pdfOf(
    calc("xs = [1 mm, 2 mm, 3 mm]", 'fig = line_plot(xs, [2 N, 3 N, 5 N], label = "τ ≤ ½ σ·√2") | stress √σ over length'),
  );
  expect(pagesOf(pdf).join("\n")).toContain("τ ≤ ½ σ·√2");
  for (const row of read("pdffonts", ["PDF"], pdf).trim().split("\n").slice(2)) expect(row).toMatch(/^[A-Z]{6}\+.*yes yes yes/);
});
