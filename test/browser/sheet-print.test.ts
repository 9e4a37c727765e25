// The HTML sheet in a browser: its policy holds, nothing stands out of the page, and it prints to A4 and Letter with running heads.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { webFonts } from "../../editor/fonts/files.ts";
import { createSession } from "../../engine/session/index.ts";
import { makeSheet, sheetHtml } from "../../engine/sheet/index.ts";
import { library } from "../../stdlib/index.ts";
import { pagesOf } from "../package/helper.ts";
import { findBrowser } from "./find-browser.mjs";

const notebook = readFileSync(new URL("../../notebooks/drill-guide.joint.md", import.meta.url), "utf8");
const wide = `\n# Wide\n\n\`\`\`csv wide | many columns\nspecimen;${Array.from({ length: 24 }, (_, i) => `column${i} [N]`).join(";")}\n${Array.from({ length: 40 }, (_, row) => `P${row};${Array.from({ length: 24 }, (__, i) => 1000 * i + row).join(";")}`).join("\n")}\n\`\`\`\n`;

const folder = mkdtempSync(join(tmpdir(), "sheet-"));
const problems: string[] = [];
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const session = createSession(library);
  session.put("a.joint.md", notebook + wide);
  const file = join(folder, "sheet.html");
  writeFileSync(file, sheetHtml(makeSheet(session, library, "a.joint.md", { version: "9.9.9" }), webFonts()));
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error("no Chromium or Chrome found; see npm test");
  browser = await chromium.launch({ executablePath, args: ["--headless", "--no-sandbox", "--disable-gpu"] });
  page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
  page.on("console", (message) => problems.push(message.text()));
  page.on("pageerror", (fault) => problems.push(fault.message));
  page.on("request", (request) => {
    if (!/^(file|data):/.test(request.url())) problems.push(`asked for ${request.url()}`);
  });
  await page.goto(pathToFileURL(file).href);
  await page.evaluate(() => document.fonts.ready);
}, 120_000);

afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

test("opens from the disk without a complaint, in its own fonts", async () => {
  expect(problems).toEqual([]);
  const loaded = await page.evaluate(() =>
    [...document.fonts].filter(({ status }) => status === "loaded").map(({ family }) => family.replaceAll('"', "")),
  );
  expect(loaded).toEqual(expect.arrayContaining(["Jointwright Serif", "Jointwright Sans", "Jointwright Math"]));
});

test("nothing stands out of the sheet's width", async () => {
  const out = await page.evaluate(() => {
    const edge = (document.querySelector("main") as HTMLElement).getBoundingClientRect().right;
    return [...document.querySelectorAll("main *")]
      .filter((each) => each.getBoundingClientRect().right > edge + 1)
      .map((each) => `${each.tagName} ${each.textContent?.slice(0, 60) ?? ""}`);
  });
  expect(out).toEqual([]);
});

test.each(["A4", "Letter"])(
  "prints to %s: running heads, page x of y, heads of tables again, no head or heading left alone",
  async (format) => {
    const pages = pagesOf(new Uint8Array(await page.pdf({ format })));
    expect(pages.length).toBeGreaterThan(5);
    let tables = 0;
    pages.forEach((text, i) => {
      expect(text).toContain("CALC-007 Drill guide plate");
      expect(text).toMatch(new RegExp(`${i + 1} ?/ ?${pages.length}\\b`));
      const lines = text
        .split("\n")
        .map((line) => line.trim())
        .filter((line) => line !== "");
      const body = lines.slice(
        1,
        lines.findIndex((line) => line.startsWith("CALC-007 rev. A")),
      );
      expect(body.at(-1)).not.toMatch(/^(?:\d+|[A-G])\s{2,}\S/);
      if (/\bSPECIMEN\b/.test(text)) {
        tables += 1;
        expect((text.match(/\bP\d+\b/g) ?? text.match(/\bG\d\b/g) ?? []).length).toBeGreaterThanOrEqual(2);
      }
    });
    expect(tables).toBeGreaterThan(2);
    const all = pages.join("\n");
    for (let i = 0; i < 24; i += 1) expect(all).toMatch(new RegExp(`COLUMN${i}\\b`));
    expect(all).toContain("columns 1 and");
  },
  120_000,
);
