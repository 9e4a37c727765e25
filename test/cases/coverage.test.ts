// Every case of these areas has a test with its id in the title.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import ids from "./data/ids.json" with { type: "json" };

test("each case of the listed areas is the title of a test", () => {
  const here = new URL(".", import.meta.url);
  const titles = readdirSync(here)
    .filter((name) => name.endsWith(".test.ts"))
    .flatMap((name) => [...readFileSync(new URL(name, here), "utf8").matchAll(/\btest\("(F\d{3})\b/g)].map((match) => match[1]));
  const wanted = Object.values(ids).flat();
  expect(wanted.filter((id) => !titles.includes(id))).toEqual([]);
  expect([...titles].sort()).toEqual([...wanted].sort());
});
