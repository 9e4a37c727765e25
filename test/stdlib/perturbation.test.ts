// Every number in a formula or a table of the library is held by an example: one per cent more makes one fail.

import { expect, test } from "vitest";
import { createSession, type Library } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

interface Constant {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly line: string;
}

/** Bounds of `valid` and `require` say where a formula serves and go into no result, so no example can hold them. */
const EXEMPT = /^\s*(?:valid|require)\b/;
/** A number with a fraction or an exponent part; not part of a name, not the exponent of a power, not the place of an item. */
const NUMBER = /(?<![\w.^"[-])\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.])/g;

function constantsOfModule(file: string, text: string): readonly Constant[] {
  const found: Constant[] = [];
  for (const fence of text.matchAll(/```calc\n([\s\S]*?)```/g)) {
    let at = fence.index + "```calc\n".length;
    let statement = "";
    for (const line of (fence[1] ?? "").split("\n")) {
      if (/^\w/.test(line)) statement = line;
      const working = line.split(" | ")[0] ?? "";
      const counts = /^(?:formula |\w+ *=)/.test(statement) && !EXEMPT.test(working);
      for (const match of counts ? working.matchAll(NUMBER) : []) {
        const isCondition = /count\([^)]*\) == $|0 < $/.test(working.slice(0, match.index)) || match[0] === "0";
        if (!isCondition) found.push({ file, from: at + match.index, to: at + match.index + match[0].length, line: line.trim() });
      }
      at += line.length + 1;
    }
  }
  return found;
}

function constantsOfTable(file: string, text: string): readonly Constant[] {
  const found: Constant[] = [];
  let at = 0;
  const [head = "", ...rows] = text.split("\n");
  const numeric = head.split(";").map((cell) => cell.includes("[") && !cell.startsWith("choice"));
  at += head.length + 1;
  for (const row of rows) {
    let cellAt = at;
    for (const [i, cell] of row.split(";").entries()) {
      if (numeric[i] === true && cell !== "") found.push({ file, from: cellAt, to: cellAt + cell.length, line: row });
      cellAt += cell.length + 1;
    }
    at += row.length + 1;
  }
  return found;
}

/** How many examples do not pass when the library's files read like this. */
function failing(changed: Library, examples: readonly string[]): number {
  const session = createSession(changed);
  session.put("examples.joint.md", ["```calc", ...examples, "```", ""].join("\n"));
  session.snapshot("examples.joint.md");
  return session.outputs("examples.joint.md").filter((one) => one.kind === "example" && one.example?.state !== "passes").length;
}

function withMore({ file, from, to }: Constant): Library {
  const change = (one: { readonly name: string; readonly text: string }): { readonly name: string; readonly text: string } => {
    if (one.name !== file) return one;
    const more = Number(one.text.slice(from, to)) * 1.01;
    return { name: one.name, text: one.text.slice(0, from) + more + one.text.slice(to) };
  };
  return { ...library, modules: library.modules.map(change), files: library.files.map(change) };
}

const examplesOf = (text: string): readonly string[] => text.match(/^example .*/gm) ?? [];
const say = (one: Constant): string => `${one.file}: ${one.line}`;

for (const { name, text } of library.modules) {
  test(`one per cent more in any constant of ${name} makes an example fail`, () => {
    const constants = constantsOfModule(name, text);
    expect(constants.length).toBeGreaterThan(0);
    expect(failing(library, examplesOf(text))).toBe(0);
    expect(constants.filter((one) => failing(withMore(one), examplesOf(text)) === 0).map(say)).toEqual([]);
  }, 60_000);

  test(`one per cent more in any cell of a table that ${name} uses makes an example fail`, () => {
    const sums = examplesOf(text).filter((line) => line.startsWith("example sum("));
    const cells = library.files
      .filter((file) => text.includes(`use "${file.name}"`))
      .flatMap((file) => constantsOfTable(file.name, file.text));
    expect(cells.filter((one) => failing(withMore(one), sums) === 0).map(say)).toEqual([]);
  }, 60_000);
}
