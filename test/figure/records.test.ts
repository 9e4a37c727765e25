// What natives and drawings read by name is what the library's records declare, field by field.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { sectionRecords } from "../../engine/figure/index.ts";
import { figureFields, library } from "../../stdlib/index.ts";

const read = (name: string): string => readFileSync(new URL(`../../stdlib/${name}`, import.meta.url), "utf8");
const declarations = [...library.modules.map(({ text }) => text), read("drawings.joint.md")].join("\n");

function declared(record: string): readonly string[] {
  const body = new RegExp(`^record ${record} \\{\\n([^}]*)\\n\\}`, "m").exec(declarations)?.[1];
  if (body === undefined) throw new Error(`the library has no record ${record}`);
  return body.split("\n").map((line) => /^ {2}(\w+)(?::| =)/.exec(line)?.[1] ?? `? ${line}`);
}

test.each([...Object.entries(sectionRecords), ...Object.entries(figureFields)])("%s", (record, fields) => {
  expect(fields).toEqual(declared(record));
});
