// `npm run shots`: a picture of each state of the pad, into a folder that git ignores, to be looked at.

import { mkdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { closeBrowser, openPage } from "./harness.ts";

const FOLDER = fileURLToPath(new URL("../../.shots/", import.meta.url));
const NOTEBOOK = readFileSync(new URL("./shots.joint.md", import.meta.url), "utf8");

interface Shot {
  readonly name: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: true;
  readonly print?: true;
  /** With the start page instead of the notebook. */
  readonly start?: true;
  readonly steps?: (page: Page) => Promise<void>;
}

const onLine = async (page: Page, text: string): Promise<void> =>
  page
    .locator(".cm-line", { hasText: text })
    .first()
    .click({ position: { x: 200, y: 10 } });
const onTab = async (page: Page, name: string): Promise<void> => page.getByRole("tab", { name }).click();

const SHOTS: readonly Shot[] = [
  { name: "wide" },
  { name: "trace-open", steps: (page) => onLine(page, "cylinder that strips") },
  { name: "dark", dark: true, steps: (page) => onLine(page, "stripping force") },
  {
    name: "fault-and-failing-check",
    height: 1400,
    steps: async (page) => {
      await onLine(page, "engagement");
      await onTab(page, "Faults");
    },
  },
  { name: "check-traced", height: 1400, steps: (page) => onLine(page, "first damage") },
  { name: "checks", steps: (page) => onTab(page, "Checks") },
  { name: "outline", steps: (page) => onTab(page, "Outline") },
  {
    name: "library",
    steps: async (page) => {
      await onTab(page, "Library");
      await page.getByLabel("Search the library").fill("mm^2");
      await page.locator(".library-row").first().waitFor();
    },
  },
  {
    name: "library-card",
    steps: async (page) => {
      await onTab(page, "Library");
      await page.getByLabel("Search the library").fill("internal thread shear area");
      await page.locator(".library-row button").first().click();
      await page.getByText("Examples").waitFor();
    },
  },
  {
    name: "module",
    steps: async (page) => {
      await page.locator(".cm-line", { hasText: "cylinder that strips" }).click({ position: { x: 320, y: 10 } });
      await page.keyboard.press("F4");
      await page.locator(".reader-host").waitFor();
    },
  },
  { name: "review", steps: (page) => onTab(page, "Review") },
  {
    name: "unit-chooser",
    steps: async (page) => {
      await onLine(page, "moment on the face");
      await page.keyboard.press("Alt+u");
    },
  },
  { name: "inch", steps: async (page) => void (await page.getByLabel("Units shown").selectOption("inch")) },
  { name: "commands", steps: (page) => page.keyboard.press("Control+k") },
  { name: "help", steps: (page) => page.keyboard.press("F1") },
  { name: "find", steps: async (page) => onLine(page, "engagement").then(() => page.keyboard.press("Control+f")) },
  { name: "narrow", width: 480, height: 1000 },
  { name: "narrow-panel", width: 700, height: 900, steps: (page) => page.getByRole("button", { name: "Panel" }).click() },
  { name: "middle", width: 1000, height: 800 },
  { name: "print", width: 794, height: 1123, print: true, steps: (page) => page.locator(".title-title input").focus() },
  { name: "start", start: true },
];

async function main(only: readonly string[]): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const bench = await openPage();
  for (const shot of SHOTS) {
    if (only.length > 0 && !only.includes(shot.name)) continue;
    const { page } = bench;
    await page.setViewportSize({ width: shot.width ?? 1440, height: shot.height ?? 860 });
    await page.emulateMedia({ colorScheme: shot.dark === true ? "dark" : "light", media: "screen" });
    await page.goto(bench.address);
    await page.locator(".top-bar").waitFor();
    if (shot.start !== true) {
      await page.evaluate(openFile(NOTEBOOK));
      await page.keyboard.press("Control+o");
      await bench.poll(
        () => page.locator(".jw-output").count(),
        (count) => count > 5,
      );
    } else if ((await page.locator(".start").count()) === 0) {
      await page.keyboard.press("Control+k");
      await page.keyboard.type("start page");
      await page.keyboard.press("Enter");
    }
    await shot.steps?.(page);
    if (shot.print === true) await page.emulateMedia({ media: "print" });
    await page.waitForTimeout(600);
    await page.screenshot({ path: `${FOLDER}${shot.name}.png` });
    console.log(`.shots/${shot.name}.png`);
  }
  await bench.close();
  await closeBrowser();
}

/** A file of the page's own disk stands in for the one that the system's picker would give. As text: the page has its own globals. */
const openFile = (text: string): string => `(async () => {
  const handle = await (await navigator.storage.getDirectory()).getFileHandle("wrist-bracket.joint.md", { create: true });
  const stream = await handle.createWritable();
  await stream.write(${JSON.stringify(text)});
  await stream.close();
  window.showOpenFilePicker = async () => [handle];
})()`;

await main(process.argv.slice(2));
