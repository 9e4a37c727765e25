// Every number in a formula or a table of the library is held by an example: one per cent more makes one fail.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
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

for (const { name, text } of library.modules) {
  test(`one per cent more in any constant of ${name} makes an example fail`, () => {
    const session = createSession(library);
    for (const file of library.files) session.put(file.name, file.text);
    session.put(name, text);
    session.snapshot(name);
    const used = library.files.filter((file) => text.includes(`use "${file.name}"`));
    const constants = [...constantsOfModule(name, text), ...used.flatMap((file) => constantsOfTable(file.name, file.text))];
    expect(constants.length).toBeGreaterThan(0);
    const failing = (): number => session.outputs(name).filter((one) => one.kind === "example" && one.example?.state !== "passes").length;
    expect(failing()).toBe(0);
    const unheld = constants.filter(({ file, from, to }) => {
      const written = session.text(file).slice(from, to);
      const more = String(Number(written) * 1.01);
      session.edit(file, [{ from, to, insert: more }]);
      session.snapshot(name);
      const held = failing() > 0;
      session.edit(file, [{ from, to: from + more.length, insert: written }]);
      return !held;
    });
    expect(unheld.map((one) => `${one.file}: ${session.text(one.file).slice(one.from, one.to)} in ${one.line}`)).toEqual([]);
  });
}
