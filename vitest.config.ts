// Unit and property tests: everything under test/ that needs no browser.

import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/browser/**"],
    testTimeout: 30_000,
  },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
});
