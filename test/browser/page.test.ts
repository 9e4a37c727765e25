// The page as a whole: it opens clean, asks no other host for anything, and its policy is at work.

import { expect, test } from "vitest";
import { openPage } from "./harness.ts";

test("the page opens without a console fault, a policy violation or a refused request, and asks this host alone", async () => {
  const bench = await openPage();
  const asked: string[] = [];
  bench.context.on("request", (request) => asked.push(request.url()));
  const page = await bench.newPage();
  const ready = await bench.poll(
    () => page.evaluate(() => document.readyState === "complete" && document.fonts.status === "loaded"),
    (done) => done,
  );
  expect(ready).toBe(true);
  expect(await page.title()).toMatch(/Jointwright/);
  expect(asked.length).toBeGreaterThan(1);
  expect(asked.filter((url) => !url.startsWith(bench.address) && !/^(blob|data):/.test(url))).toEqual([]);
  await bench.close();
});

test("script and style that stand in the page itself are refused", async () => {
  const bench = await openPage({ expected: [/content.security.policy/i, /TrustedScript/] });
  const outcome = await bench.page.evaluate(() => {
    const style = document.createElement("style");
    style.textContent = ":root { --smuggled: 1 }";
    document.head.append(style);
    let refused = false;
    try {
      document.createElement("script").text = "1";
    } catch {
      refused = true;
    }
    return { refused, smuggled: getComputedStyle(document.documentElement).getPropertyValue("--smuggled") };
  });
  expect(outcome).toEqual({ refused: true, smuggled: "" });
  await bench.poll(
    async () => bench.problems.length,
    (count) => count > 0,
  );
  await bench.close();
});
