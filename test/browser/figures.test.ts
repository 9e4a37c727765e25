// Figures in the pad in a real browser: under their line in whole rows, named for those who do not see them, resized by keys and
// pointer without moving what is above, in both themes.

import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { type Bench, openPage } from "./harness.ts";

const ROW = 24;

let bench: Bench | undefined;

afterEach(async () => {
  const open = bench;
  bench = undefined;
  await open?.close();
});

/** A blank pad with a curve in it, typed. */
async function withCurve(): Promise<Bench> {
  bench = await openPage({ width: 1280, height: 900 });
  const { page, poll } = bench;
  await page.getByRole("button", { name: /^Blank pad/ }).click();
  const lines = ["x = [0 mm, 1 mm, 2 mm", "y = [0 N, 5 N, 3 N", 'fig = line_plot(x, y, "A1"'];
  for (const [i, line] of lines.entries()) {
    if (i > 0) await page.keyboard.press("Enter");
    await page.keyboard.type(line);
    await page.keyboard.press("Escape");
    await page.keyboard.press("End");
  }
  await poll(
    () => page.locator(".jw-figure svg").count(),
    (count) => count === 1,
  );
  return bench;
}

const height = (page: Page): Promise<number> => page.locator(".jw-figure").evaluate((element) => element.getBoundingClientRect().height);
const top = (page: Page): Promise<number> => page.locator(".jw-figure").evaluate((element) => element.getBoundingClientRect().top);

test("a figure stands under its line in whole rows, says what it shows, and is resized without moving what is above", async () => {
  const { page, poll } = await withCurve();
  const first = await height(page);
  expect(first % ROW).toBe(0);
  await page.getByRole("img", { name: /^Curve: A1\. y \(N\) over x \(mm\)/ }).waitFor();

  const place = await top(page);
  const grip = page.getByRole("separator", { name: /^Height of the figure fig/ });
  await grip.focus();
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  await poll(
    () => height(page),
    (now) => now === first - 2 * ROW,
  );
  expect(await grip.evaluate((element) => element.matches(":focus"))).toBe(true);
  expect(await top(page)).toBe(place);

  const box = await grip.boundingBox();
  if (box === null) throw new Error("the grip is on the page");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + 3 * ROW, { steps: 4 });
  await page.mouse.up();
  await poll(
    () => height(page),
    (now) => now === first + ROW,
  );
  expect(await top(page)).toBe(place);
});

test("a figure follows its numbers, and both themes colour it", async () => {
  const { page, poll } = await withCurve();
  const stroke = (): Promise<string> =>
    page
      .locator(".jw-figure .jw-stroke-series1")
      .first()
      .evaluate((element) => getComputedStyle(element).stroke);
  await page.emulateMedia({ colorScheme: "light" });
  const light = await stroke();
  await page.emulateMedia({ colorScheme: "dark" });
  await poll(stroke, (dark) => dark !== light);

  await page.keyboard.press("Control+End");
  await page.keyboard.press("ArrowUp");
  const texts = (): Promise<string[]> => page.locator(".jw-figure text").allTextContents();
  expect(await texts()).toContain("5");
  await page.locator(".cm-line", { hasText: "y = [0" }).click();
  await page.keyboard.press("Home");
  for (let i = 0; i < 10; i += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Shift+ArrowRight");
  await page.keyboard.type("9");
  await poll(texts, (now) => now.includes("9") || now.includes("10"));
});
