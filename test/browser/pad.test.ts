// The pad in a real browser: the main job from an empty page to a saved notebook, two tabs, the keyboard's way out,
// accessibility in both themes, columns that stay aligned when lines wrap.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { afterEach, describe, expect, test } from "vitest";
import { type Bench, beginWith, type OpenOptions, openPage } from "./harness.ts";

let bench: Bench | undefined;

afterEach(async () => {
  const open = bench;
  bench = undefined;
  await open?.close();
});

async function open(options: OpenOptions = {}): Promise<Bench> {
  bench = await openPage(options);
  await bench.page.getByRole("button", { name: /^Bracket for a feeler arm/ }).click();
  await bench.poll(
    () => outputs(bench!.page),
    (rows) => rows.length > 3,
  );
  return bench;
}

/** What the output column says, as screen readers hear it. */
const outputs = (page: Page): Promise<string[]> => page.locator(".jw-output .jw-spoken").allTextContents();
const has = (start: string) => (rows: readonly string[]) => rows.some((row) => row.startsWith(start));
const kept = (page: Page): Promise<string | null> => page.locator(".top-kept").getAttribute("data-kept");

const write = (page: Page, lines: readonly string[]): Promise<void> => beginWith(bench!, page, lines);

/** Runs a command from the command list by its words. */
async function command(page: Page, words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.keyboard.type(words);
  await page.keyboard.press("Enter");
}

describe("the main job", () => {
  test("a wrong unit is seen and mended, what hangs on it follows, the notebook is saved and found again", async () => {
    const { page, context, poll } = await open();
    // The picker of the system cannot be driven from a test; a file of the page's own disk stands in for the chosen one.
    await context.addInitScript(() => {
      const choose = async (): Promise<FileSystemFileHandle> =>
        (await navigator.storage.getDirectory()).getFileHandle("bracket.joint.md", { create: true });
      Object.assign(window, { showSaveFilePicker: choose });
    });
    await page.reload();
    await page.locator(".top-name").waitFor();

    await write(page, ["b = 12 mmm | width | given drawing 7", "c = 2 * b", "check c <= 30 mm | fits the box"]);
    await poll(
      () => page.locator(".jw-message").allTextContents(),
      (messages) => messages.some((text) => text.includes("mmm")),
    );
    expect(await page.locator(".jw-wave-fault").first().textContent()).toContain("mmm");
    await poll(() => outputs(page), has("c waits for b"));
    expect(await page.locator(".count").first().textContent()).toContain("1 fault");

    await page.keyboard.press("Control+Home");
    await page.keyboard.press("Alt+Enter");
    await poll(() => outputs(page), has("b = 12 mm"));
    await poll(() => outputs(page), has("c = 24 mm"));
    await poll(() => outputs(page), has("fits the box: holds"));
    expect(await page.locator(".jw-message").count()).toBe(0);

    await page.keyboard.press("Home");
    for (let step = 0; step < 5; step += 1) await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Delete");
    await page.keyboard.type("6");
    await poll(() => outputs(page), has("c = 32 mm"));
    await poll(() => outputs(page), has("fits the box: fails"));
    await page.getByText("1 of 1 check fails").waitFor();

    await page.getByLabel("Title", { exact: true }).fill("Box for a bracket");
    await page.keyboard.press("Control+s");
    await page.locator(".top-kept", { hasText: "saved" }).waitFor();
    const onDisk = await page.evaluate(async () => {
      const handle = await (await navigator.storage.getDirectory()).getFileHandle("bracket.joint.md");
      return (await handle.getFile()).text();
    });
    expect(onDisk).toBe(
      "---\nunits: { length: mm, area: mm^2, force: N, stress: MPa, torque: N*m }\ntitle: Box for a bracket\n---\n```calc\nb = 16 mm | width | given drawing 7\nc = 2 * b\ncheck c <= 30 mm | fits the box\n```\n",
    );

    await poll(
      () => kept(page),
      (state) => state === "kept",
    );
    await page.reload();
    await poll(() => outputs(page), has("c = 32 mm"));
    expect(await outputs(page)).toContainEqual(expect.stringContaining("fits the box: fails"));
    expect(await page.getByLabel("Title", { exact: true }).inputValue()).toBe("Box for a bracket");
    expect(await page.locator(".top-file").textContent()).toBe("bracket.joint.md");
    expect(await page.locator(".jw-reference .jw-spoken").allTextContents()).toContainEqual(expect.stringContaining("drawing 7"));
    expect(await page.locator(".top-kept").textContent()).toContain("saved");
  });

  test("a notebook is opened from disk, and its line ends go back as they came", async () => {
    const { page, context, poll } = await open();
    await context.addInitScript(() => {
      const own = async (): Promise<FileSystemFileHandle> => {
        const handle = await (await navigator.storage.getDirectory()).getFileHandle("theirs.joint.md", { create: true });
        if ((await handle.getFile()).size === 0) {
          const stream = await handle.createWritable();
          await stream.write("```calc\r\nd = 3 mm\r\n```\r\n");
          await stream.close();
        }
        return handle;
      };
      Object.assign(window, { showOpenFilePicker: async () => [await own()] });
    });
    await page.reload();
    await page.locator(".top-name").waitFor();
    await page.keyboard.press("Control+o");
    await poll(() => outputs(page), has("d = 3 mm"));
    await page.keyboard.press("Control+End");
    await page.keyboard.type("Done.");
    await page.keyboard.press("Control+s");
    await page.locator(".top-kept", { hasText: "saved" }).waitFor();
    const onDisk = await page.evaluate(async () =>
      (await (await (await navigator.storage.getDirectory()).getFileHandle("theirs.joint.md")).getFile()).text(),
    );
    expect(onDisk).toBe("```calc\r\nd = 3 mm\r\n```\r\nDone.");
  });

  test("where a page may not write files, saving is a download", async () => {
    const { page, context } = await open();
    await context.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined }));
    await page.reload();
    await page.locator(".top-name").waitFor();
    const download = page.waitForEvent("download");
    await page.keyboard.press("Control+s");
    expect((await download).suggestedFilename()).toMatch(/\.joint\.md$/);
  });

  test("a line of prose becomes working with one key, and prose again", async () => {
    const { page, poll } = await open();
    await write(page, ["e = 1 mm"]);
    await page.keyboard.press("Control+End");
    await page.keyboard.type("f = 2 * e");
    await page.locator(".jw-offer").waitFor();
    await page.keyboard.press("Control+Enter");
    await poll(() => outputs(page), has("f = 2 mm"));
    await page.keyboard.press("Control+Enter");
    await poll(
      () => outputs(page),
      (rows) => !has("f = ")(rows),
    );
  });

  test("outputs that come and go while one types end in the order of the text", async () => {
    const { page, poll } = await open();
    await write(page, [
      't = thread("M5") | from the drawing | given',
      "A_s = stress_area(t)",
      "F = 2 N + 3 mm",
      "formula f(a: Length) = 2 * a",
      "x = f(3 mm)",
    ]);
    await poll(() => outputs(page), has("x = 6 mm"));
    const rows = await poll(
      () => outputs(page),
      (found) => found.length === 4,
    );
    expect(rows.map((row) => /^\w+/.exec(row)?.[0])).toEqual(["t", "A_s", "F", "x"]);
  });

  test("names of the notebook are offered while one types", async () => {
    const { page } = await open();
    await write(page, ["pitch_circle = 40 mm", "r = pit"]);
    await page.keyboard.type("c");
    await page.locator(".cm-completionLabel", { hasText: "pitch_circle" }).first().waitFor();
  });
});

describe("kept in the browser", () => {
  test("a change is kept within a second and found after the tab was closed", async () => {
    const { page, poll, newPage } = await open();
    await write(page, ["g = 7 mm"]);
    await poll(() => outputs(page), has("g = 7 mm"));
    await poll(
      () => kept(page),
      (state) => state === "kept",
      1500,
    );
    await page.close();
    const again = await newPage();
    await poll(() => outputs(again), has("g = 7 mm"));
  });

  test("a tab with nothing of its own follows; two that both changed overwrite nothing", async () => {
    const { page, poll, newPage } = await open();
    await write(page, ["h = 1 mm"]);
    await poll(
      () => kept(page),
      (state) => state === "kept",
    );
    const other = await newPage();
    await poll(() => outputs(other), has("h = 1 mm"));
    await page.keyboard.type("2");
    await page.keyboard.press("Backspace");
    await page.keyboard.press("Enter");
    await page.keyboard.type("i = 5 mm");
    await poll(() => outputs(other), has("i = 5 mm"));

    await other.locator(".cm-content").focus();
    await other.keyboard.press("Control+End");
    await Promise.all([page.keyboard.type(" + 1 mm"), other.keyboard.type("Theirs.")]);
    const notices = async (): Promise<number> => (await page.locator(".notice").count()) + (await other.locator(".notice").count());
    await poll(notices, (count) => count === 1);
    for (const tab of [page, other]) {
      await poll(
        () => kept(tab),
        (state) => state === "kept",
      );
    }
    await poll(() => outputs(page), has("i = 6 mm"));
    await poll(
      () => other.locator(".cm-line").allTextContents(),
      (lines) => lines.some((line) => line.includes("Theirs.")),
    );
    await command(page, "Start page");
    await poll(
      () => page.locator(".start .row").allTextContents(),
      (rows) => rows.filter((row) => row.includes("untitled")).length === 2,
    );
  });
});

describe("keyboard and screen reader", () => {
  test("Escape, then Tab, leaves the pad, and says so", async () => {
    const { page } = await open();
    await page.locator(".cm-content").focus();
    const inside = (): Promise<boolean> => page.evaluate(() => document.activeElement?.classList.contains("pad-host") ?? false);
    await page.keyboard.press("Tab");
    expect(await inside()).toBe(true);
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Escape");
    expect(await page.locator(".cm-announced").textContent()).toContain("Tab");
    await page.keyboard.press("Tab");
    const control = await page.evaluate(() => {
      const root = document.querySelector(".pad-host")?.shadowRoot;
      return root?.activeElement?.classList.contains("cm-content") ?? false;
    });
    expect(control).toBe(false);
  });

  test("outputs and references are lists; a changed output is announced", async () => {
    const { page, poll } = await open();
    await write(page, ["j = 3 mm", "k = 2 * j"]);
    await poll(() => outputs(page), has("k = 6 mm"));
    expect(await page.getByRole("list", { name: "Outputs" }).getByRole("listitem").count()).toBe(2);
    await page.keyboard.press("Control+Home");
    await page.keyboard.press("End");
    for (let step = 0; step < 3; step += 1) await page.keyboard.press("ArrowLeft");
    await page.keyboard.type("1");
    await poll(
      async () => (await page.locator(".cm-announced").textContent()) ?? "",
      (text) => text.includes("k = 62 mm"),
    );
  });

  const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  const findings = async (page: Page): Promise<string[]> => {
    await page.evaluate(axe);
    return page.evaluate(async () => {
      const { axe: checker } = window as unknown as {
        axe: {
          run(
            context: object,
            options: object,
          ): Promise<{ violations: { id: string; nodes: { target: unknown; failureSummary: string }[] }[] }>;
        };
      };
      const { violations } = await checker.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, failureSummary }) => `${id} ${JSON.stringify(target)} ${failureSummary}`),
      );
    });
  };

  for (const colorScheme of ["light", "dark"] as const) {
    test(`axe finds nothing in the ${colorScheme} theme, with a fault, a failing check and each panel`, async () => {
      const { page, poll } = await open();
      await page.emulateMedia({ colorScheme });
      await write(page, [
        "b = 12 mmm | width | given",
        "a = 4 mm within 1 mm .. 9 mm",
        "check a <= 3 mm | too far | assumed",
        "check a <= 5 mm | near",
      ]);
      await poll(
        () => page.locator(".jw-message").count(),
        (count) => count > 0,
      );
      expect(await findings(page)).toEqual([]);
      for (const panel of ["Outline", "Checks", "Trace", "Library", "Review", "Faults"]) {
        await page.getByRole("tab", { name: panel }).click();
        await page.getByText("Opening the library").waitFor({ state: "detached" });
        expect(await findings(page)).toEqual([]);
      }
      for (const words of ["Help", "Start page"]) {
        await command(page, words);
        expect(await findings(page)).toEqual([]);
        await page.keyboard.press("Escape");
      }
    });
  }
});

describe("columns", () => {
  const words = "a note that is long enough to need a row of its own beside such a working, and more than that";
  const lines = [
    `aa = 1 mm + 2 mm + 3 mm + 4 mm + 5 mm + 6 mm + 7 mm + 8 mm + 9 mm + 10 mm + 11 mm + 12 mm + 13 mm + 14 mm + 15 mm | ${words}`,
    "bb = 2 * aa | short | given",
    `cc = bb + aa + bb + aa + bb + aa + bb + aa + bb + aa + bb + aa + bb + aa + bb + aa + bb + aa + bb | ${words} | given`,
    "dd = 2 mmmm",
    "ee = cc + 1 mm",
    "check ee <= 4 m | last",
  ];
  test("each output stands at the first row of its line from 820 to 1280 pixels, and rows keep to the grid", async () => {
    const { page, poll } = await open({ width: 820 });
    await write(page, lines);
    await poll(() => outputs(page), has("last: holds"));
    await poll(
      () => page.locator(".jw-message").count(),
      (count) => count > 0,
    );
    for (const width of [820, 960, 1100, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      for (const focus of [true, false]) {
        await page.locator(focus ? ".cm-content" : ".title-title input").focus();
        const apart = await poll(
          () => measure(page),
          (rows) => rows.length === 5 && rows.every(({ by }) => by <= 4),
        );
        expect(apart.filter(({ by }) => by > 4)).toEqual([]);
      }
      const heights = await page.locator(".cm-line").evaluateAll((rows) => rows.map((row) => row.getBoundingClientRect().height));
      expect(heights.some((height) => height > 24)).toBe(true);
      expect(heights.filter((height) => height % 12 > 0.1 && height % 12 < 11.9)).toEqual([]);
    }
  });

  test("below 820 pixels the output stands under its line", async () => {
    const { page, poll } = await open({ width: 700 });
    await write(page, ["aa = 1 mm | one", "bb = 2 * aa | two"]);
    await poll(() => outputs(page), has("bb = 2 mm"));
    const rows = await poll(
      () => measure(page),
      (found) => found.length === 2,
    );
    for (const { by } of rows) expect(by).toBeCloseTo(24, 0);
  });

  /** How far the top of each output is below the top of the line that its name begins. */
  const measure = (page: Page): Promise<{ readonly name: string; readonly by: number }[]> =>
    page.evaluate(() => {
      const root = document.querySelector(".pad-host")?.shadowRoot;
      if (root === undefined || root === null) return [];
      const starts = new Map<string, number>();
      for (const line of root.querySelectorAll(".cm-line")) {
        const name = /^(\w+)/.exec(line.textContent ?? "")?.[1];
        if (name !== undefined) starts.set(name, line.getBoundingClientRect().top);
      }
      const found: { name: string; by: number }[] = [];
      for (const row of root.querySelectorAll(".jw-output")) {
        const spoken = row.querySelector(".jw-spoken")?.textContent ?? "";
        const name = spoken.startsWith("last: ") ? "check" : /^(\w+)(?: =|: fault)/.exec(spoken)?.[1];
        const start = name === undefined ? undefined : starts.get(name);
        if (name !== undefined && start !== undefined && name !== "dd")
          found.push({ name, by: Math.abs(row.getBoundingClientRect().top - start) });
      }
      return found;
    });
});
