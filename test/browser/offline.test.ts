// With no network the page opens again after its first visit, calculates and keeps what is typed.

import { expect, test } from "vitest";
import { openPage } from "./harness.ts";

test("after the first visit the page opens and calculates with no server", async () => {
  const bench = await openPage();
  const { page } = bench;
  const outputs = () => page.locator(".jw-output").count();
  await page.getByRole("button", { name: /^Bracket for a feeler arm/ }).click();
  await bench.poll(outputs, (count) => count > 3);
  await bench.poll(
    () => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.active?.state ?? "none"),
    (state) => state === "activated",
  );
  await bench.stopServer();
  await page.reload();
  expect(await page.title()).toMatch(/Jointwright/);
  await bench.poll(outputs, (count) => count > 3);
  // A template that was never opened is there too.
  await page.keyboard.press("Control+k");
  await page.keyboard.type("start page");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Tapped thread/ }).click();
  await page.locator(".jw-output", { hasText: "TappedHole" }).first().waitFor();
  await bench.close();
}, 60_000);
