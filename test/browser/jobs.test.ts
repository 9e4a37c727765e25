// Whole jobs as a person does them, with keys and pointer: from the blank template to a checked joint, mends, renaming, a drag
// that makes a check fail, units, the library. One browser serves them all; each begins with a new notebook.

import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, beginWith, openPage, paste } from "./harness.ts";

let bench: Bench;
let page: Page;

beforeAll(async () => {
  bench = await openPage({ width: 1280, height: 900 });
  page = bench.page;
});
afterAll(() => bench.close());

const outputs = (): Promise<string[]> => page.locator(".jw-output .jw-spoken").allTextContents();
const shows = (start: string): Promise<string[]> => bench.poll(outputs, (rows) => rows.some((row) => row.startsWith(start)), 20_000);
const text = (): Promise<string> =>
  page.evaluate(async () => {
    const root = document.querySelector(".pad-host")?.shadowRoot;
    return [...(root?.querySelectorAll(".cm-line") ?? [])].map((line) => line.textContent ?? "").join("\n");
  });

const activeLine = (): Promise<string> =>
  page.evaluate(() => document.querySelector(".pad-host")?.shadowRoot?.querySelector(".cm-activeLine")?.textContent ?? "");

const begin = (lines: readonly string[]): Promise<void> => beginWith(bench, page, lines);

async function command(words: string): Promise<void> {
  await page.keyboard.press("Control+k");
  await page.getByRole("combobox", { name: "Command" }).fill(words);
  await page.keyboard.press("Enter");
}

/** Puts the caret behind a piece of text that is on the screen, by searching for it. */
async function caretAt(piece: string): Promise<void> {
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("Control+f");
  await page.locator(".cm-search input[name=search]").waitFor();
  await page.keyboard.type(piece);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await page.keyboard.press("ArrowRight");
}

describe("a joint, from the blank template to its checks", () => {
  test("is written with keys alone, and each line answers", async () => {
    await page.getByRole("button", { name: /^Blank pad/ }).click();
    await bench.poll(
      () => page.evaluate(() => document.querySelector(".pad-host")?.shadowRoot?.activeElement !== null),
      (focused) => focused,
    );
    await page.keyboard.type('t = thread("M5');
    await page.keyboard.press("End");
    await shows("t = M5");
    await page.keyboard.press("Enter");
    await page.keyboard.type("L_e = 8 mm within 4 mm .. 14 mm | engagement | given drawing 3");
    await page.keyboard.press("Enter");
    await paste(page, "tau = 17 MPa | shear strength on that area | test own, 4 pulls");
    await page.keyboard.press("Enter");
    await paste(page, "F = tau * internal_shear_area(t, L_e) as N | strips the thread");
    await page.keyboard.press("Enter");
    await paste(page, "check 500 N <= F factor 2 | stripping");
    await page.keyboard.press("Escape");
    await shows("F = 1360 N");
    await shows("stripping: holds, utilisation 0.74");
    // Two empty lines leave the working; what follows is prose with a live value.
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await page.keyboard.type("# Verdict");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
    await paste(page, "The thread strips at {F as kN}.");
    await bench
      .poll(text, (shown) => shown.includes("The thread strips at 1.36 kN."), 20_000)
      .catch(async () => {
        // The caret stands in the braces until it leaves them.
        await page.keyboard.press("Control+Home");
        await bench.poll(text, (shown) => shown.includes("The thread strips at 1.36 kN."));
      });
    expect(await text()).toContain("Verdict");
    expect(await text()).not.toContain("# Verdict");
    await page.getByLabel("Title", { exact: true }).fill("Tapped M5");
    await bench.poll(
      () => page.title(),
      (title) => title.startsWith("Tapped M5"),
    );
  });
});

describe("mends", () => {
  const cases = [
    ["b = 12 mmm", "b = 12 mm"],
    ["c = 1,5 mm", "c = 1.5 mm"],
    ["d = 1/2 in", "d = 0.5 in"],
    ["e = 2 x 3", "e = 6"],
    ["width = 3 mm\nf = widht * 2", "f = 6 mm"],
  ] as const;
  test("five kinds of fault are put right by the offered fix", async () => {
    for (const [wrong, right] of cases) {
      await begin(wrong.split("\n"));
      await page.locator(".jw-mend").first().waitFor();
      await page.keyboard.press("Alt+Enter");
      await shows(right);
      expect(await page.locator(".jw-message-fault").count()).toBe(0);
    }
  });
});

describe("renaming", () => {
  test("a name changes in its line, in others, in a check and in prose, and one undo takes all back", async () => {
    await begin(["F_t = 20 N | load | given", "G = 2 * F_t", "check F_t <= 30 N factor 1.2 | strong enough"]);
    await page.keyboard.press("Control+End");
    await paste(page, "The load is {F_t} here.");
    await shows("G = 40 N");
    await page.keyboard.press("Control+Home");
    await page.keyboard.press("F2");
    const box = page.getByRole("dialog", { name: "Rename F_t" }).getByRole("textbox");
    await box.fill("G");
    await page.keyboard.press("Enter");
    await page.getByText("already has that name").waitFor();
    await box.fill("F_far");
    await page.keyboard.press("Enter");
    await shows("F_far = 20 N");
    await shows("G = 40 N");
    await shows("strong enough: holds, utilisation 0.80");
    await bench.poll(text, (shown) => shown.includes("The load is 20 N here."));
    await page.keyboard.press("Control+z");
    await shows("F_t = 20 N");
  });
});

describe("inputs", () => {
  test("a slider is dragged until the check fails; one undo takes the whole drag back", async () => {
    await begin(["L_e = 8 mm within 4 mm .. 14 mm | engagement | given", "check 6 mm <= L_e | deep enough"]);
    await shows("deep enough: holds");
    const slider = page.getByRole("slider", { name: /L_e/ });
    const box = await slider.boundingBox();
    if (box === null) throw new Error("no slider");
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width * 0.4, y);
    await page.mouse.down();
    for (let x = 0.4; x > 0.05; x -= 0.05) await page.mouse.move(box.x + box.width * x, y);
    await shows("deep enough: fails");
    await page.mouse.up();
    await page.locator(".cm-content").focus();
    await page.keyboard.press("Control+z");
    await shows("L_e = 8 mm");
    await shows("deep enough: holds");
  });
  test("a number in the text is dragged with Alt held, and stepped by a key", async () => {
    await begin(["W = 42 N | load | given", "M = 2 * W"]);
    await shows("M = 84 N");
    const number = page.locator(".jw-t-number", { hasText: "42" });
    const box = await number.boundingBox();
    if (box === null) throw new Error("no number");
    await page.keyboard.down("Alt");
    await page.mouse.move(box.x + 4, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + 4 + 30, box.y + box.height / 2, { steps: 5 });
    await page.mouse.up();
    await page.keyboard.up("Alt");
    await shows("M = 94 N");
    await caretAt("47");
    await page.keyboard.press("Alt+PageUp");
    await shows("M = 96 N");
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await shows("M = 84 N");
  });
});

describe("outputs", () => {
  test("a value is shown in another unit, written into its line; the whole notebook in inch units, written nowhere", async () => {
    await begin(["F = 2000 N | load | given", "G = 3 * F | three of them"]);
    await shows("G = 6000 N");
    await page.keyboard.press("Alt+u");
    await page
      .getByRole("dialog", { name: "Value of G" })
      .getByRole("button", { name: /^6 ?kN$/ })
      .click();
    await shows("G = 6 kN");
    expect(await text()).toContain("G = 3 × F as kN");
    await page.getByLabel("Units shown").selectOption("inch");
    await shows("G = 1349 lbf");
    expect(await text()).toContain("G = 3 × F as kN");
    await page.getByLabel("Units shown").selectOption("written");
    await shows("G = 6 kN");
    await page.getByLabel("Significant digits shown").selectOption("7");
    await page.locator(".cm-content").focus();
    await page.keyboard.press("Control+z");
    await page.keyboard.press("Control+z");
    await shows("G = 6000 N");
  });
  test("what waits leads to its cause; outputs and references are reached by keys", async () => {
    await begin(["a = 2 mmm | wrong | given", "b = 3 mm | right | given drawing 2", "c = a + b"]);
    await shows("c waits for a");
    await page.keyboard.press("Alt+o");
    const said = (): Promise<string> =>
      page.evaluate(() => document.querySelector(".pad-host")?.shadowRoot?.activeElement?.querySelector(".jw-spoken")?.textContent ?? "");
    expect(await said()).toBe("c waits for a");
    await page.keyboard.press("ArrowUp");
    expect(await said()).toBe("b = 3 mm");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await bench.poll(activeLine, (line) => line.startsWith("a = 2"));
  });
});

describe("panels", () => {
  test("a formula is found by its unit, opened, put in with named arguments, and traced step by step", async () => {
    await begin(['t = thread("M5") | thread | given', "L_e = 8 mm | engagement | given", "A = "]);
    await shows("L_e = 8 mm");
    await page.keyboard.press("Alt+l");
    await page.getByLabel("Search the library").fill("internal shear");
    await page
      .getByRole("button", { name: /^internal_shear_area/ })
      .first()
      .click();
    await page.getByRole("heading", { name: "internal_shear_area", exact: true }).waitFor();
    await page.getByRole("button", { name: "Put in at the caret" }).click();
    await bench.poll(
      text,
      (shown) => shown.includes("internal_shear_area(t = t, Le = Le)") || shown.includes("internal_shear_area(t = t, L_e = L_e)"),
    );
    await page.keyboard.press("Alt+t");
    await page.locator(".trace-call.outermost summary", { hasText: "internal shear area" }).waitFor();
    await page.locator(".trace-call .trace-call summary", { hasText: /^external limits/ }).click();
    await page.getByText("Feeds it").waitFor();
    await page.locator(".cm-content").focus();
    for (let step = 0; step < 3; step += 1) await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("F4");
    await bench.poll(activeLine, (line) => line.startsWith("L_e = 8 mm") || line.startsWith("Le = 8 mm"));
    await page.keyboard.press("Shift+F4");
    await bench.poll(activeLine, (line) => line.startsWith("A = "));
    await caretAt("internal_shear");
    await page.keyboard.press("F4");
    const reader = page.getByRole("dialog", { name: "Module engagement.joint.md" });
    await reader.locator(".jw-here", { hasText: "internal_shear_area" }).first().waitFor();
    await page.keyboard.press("Escape");
    expect(await reader.count()).toBe(0);
  });
  test("a command is found by two letters and run by Enter; Escape closes the list and gives the caret back", async () => {
    await begin(["a = 1 mm"]);
    await command("rv");
    await page.getByRole("tab", { name: "Review", selected: true }).waitFor();
    await page.getByText("no reference").waitFor();
    await page.keyboard.press("Control+k");
    await page.keyboard.press("Escape");
    await page.keyboard.type(" + 1 mm");
    await shows("a = 2 mm");
    await page.keyboard.press("F1");
    const help = page.getByRole("dialog", { name: "Help" });
    expect(await help.locator("dt").count()).toBeGreaterThan(35);
    await page.keyboard.press("Escape");
    expect(await help.count()).toBe(0);
  });
});

describe("room", () => {
  test("at 200 % zoom nothing needs sideways scrolling, and output stands under its line", async () => {
    await begin(["F = 2000 N | a load with a note that is long enough to wrap on a narrow page | given drawing 3", "G = 3 * F"]);
    await page.setViewportSize({ width: 640, height: 450 });
    await shows("G = 6000 N");
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wider).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});
