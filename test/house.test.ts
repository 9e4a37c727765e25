// What the house promises of itself: exact versions, one test command, a browser found or missed in words.

import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import { findBrowser } from "./browser/find-browser.mjs";

const read = (name: string): string => readFileSync(new URL(`../${name}`, import.meta.url), "utf8");
const manifest = JSON.parse(read("package.json"));

test("every version is exact, and the lock file has it", () => {
  const lock = JSON.parse(read("package-lock.json"));
  for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
    expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
    expect(lock.packages[`node_modules/${name}`]?.version, name).toBe(version);
  }
});
test("the scripts that the documents name are there", () => {
  const named = [...`${read("README.md")}${read("DEVELOPERS.md")}`.matchAll(/npm (?:run )?(?:-s )?(start|test|[a-z]+)\b(?= |`|$)/gm)].map(
    ([, name]) => name ?? "",
  );
  expect(named.length).toBeGreaterThan(5);
  expect([...new Set(named)].filter((name) => !(name in manifest.scripts) && !["run", "install"].includes(name))).toEqual([]);
});
test("continuous integration runs npm test and nothing less", () => {
  const lines = read(".ci/run")
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"));
  expect(lines.at(-1)).toBe("npm test");
  expect(lines[0]).toBe("set -euo pipefail");
});
test("every link in the documents leads to a file", () => {
  for (const page of ["README.md", "DEVELOPERS.md"]) {
    for (const [, target] of read(page).matchAll(/\]\((?!https?:)([^)#]+)/g)) expect(read(target ?? "").length, target).toBeGreaterThan(0);
  }
});
test("every path that DEVELOPERS.md names is there", () => {
  const paths = [...read("DEVELOPERS.md").matchAll(/`((?:editor|engine|stdlib|test|notebooks)(?:\/[a-z0-9.-]+)*)`/g)].map(
    ([, path]) => path ?? "",
  );
  expect(paths.length).toBeGreaterThan(30);
  expect([...new Set(paths)].filter((path) => !existsSync(new URL(`../${path}`, import.meta.url)))).toEqual([]);
});

describe("the browser", () => {
  const before = process.env.JOINTWRIGHT_BROWSER;
  afterEach(() => {
    if (before === undefined) delete process.env.JOINTWRIGHT_BROWSER;
    else process.env.JOINTWRIGHT_BROWSER = before;
  });
  test("the one that is named is taken", () => {
    const file = fileURLToPath(import.meta.url);
    process.env.JOINTWRIGHT_BROWSER = file;
    expect(findBrowser()).toBe(file);
  });
  test("one that is named and not there is said, not passed over", () => {
    process.env.JOINTWRIGHT_BROWSER = "/nowhere/chrome";
    expect(() => findBrowser()).toThrow(/JOINTWRIGHT_BROWSER names \/nowhere\/chrome/);
  });
});
