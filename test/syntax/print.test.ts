// engine/syntax: printing then parsing is the identity, and tidying changes spaces and nothing else.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseExpression, parseStatement, printExpression, printStatement, sameTree, tidy } from "../../engine/syntax/index.ts";
import { expression, statement } from "./arbitrary-tree.ts";
import { chunks, clean, fences } from "./read.ts";

const sample = readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8");

describe("printing then parsing is the identity", () => {
  test("on generated statements", () => {
    fc.assert(
      fc.property(statement, (tree) => {
        const printed = printStatement(tree, "");
        const { tree: again, diagnostics } = parseStatement(printed);
        expect(diagnostics, printed).toEqual([]);
        expect(sameTree(again, tree), `${printed}\n${JSON.stringify(again)}\n${JSON.stringify(tree)}`).toBe(true);
      }),
      { numRuns: 600 },
    );
  });

  test("on generated expressions", () => {
    fc.assert(
      fc.property(expression, (tree) => {
        const printed = printExpression(tree);
        const { expression: again, diagnostics } = parseExpression(printed);
        expect(diagnostics, printed).toEqual([]);
        expect(sameTree(again, tree), printed).toBe(true);
      }),
      { numRuns: 600 },
    );
  });

  test("on text that is tidied, and tidying twice changes nothing", () => {
    fc.assert(
      fc.property(fc.array(statement, { minLength: 1, maxLength: 4 }), (trees) => {
        const texts = trees.map((tree) => printStatement(tree, ""));
        const once = tidy(texts);
        for (const [i, tree] of trees.entries()) expect(sameTree(clean(once[i] as string), tree), once[i]).toBe(true);
        expect(tidy(once)).toEqual(once);
      }),
      { numRuns: 120 },
    );
  });
});

describe("tidy", () => {
  test("leaves the sample notebook as it is", () => {
    for (const fence of fences(sample)) expect(tidy(chunks(fence)).join("")).toBe(fence);
  });

  test("aligns = over adjacent one-line definitions and bars over the fence", () => {
    expect(tidy(["W=42 N|worst pose|@log7\n", "k_dyn=2.0|start\n", "\n", "M=k_dyn*W*a as N*m\n"]).join("")).toBe(
      "W     = 42 N                          | worst pose | @log7\nk_dyn = 2.0                           | start\n\nM = k_dyn * W * a  as N*m\n",
    );
  });

  test("a blank line handed over as a gap ends a run of =", () => {
    expect(tidy(["W=42 N", "k_dyn=2.0"], ["", "\n"])).toEqual(["W     = 42 N", "k_dyn = 2.0"]);
    expect(tidy(["W=42 N", "k_dyn=2.0"], ["", "\n\n"])).toEqual(["W = 42 N", "k_dyn = 2.0"]);
  });

  test("a chunk with a syntax fault comes back unchanged, its neighbours are tidied", () => {
    expect(tidy(["a=1\n", "b  =  2(3)\n", "cc=3\n"])).toEqual(["a  = 1\n", "b  =  2(3)\n", "cc = 3\n"]);
  });

  test("keeps line breaks, brackets and comments, indents by what is open", () => {
    const text = "x=f((a+b),A{\n # one\n a=1# two\n\n bb=(2)|n|r\n})\n  # three\n";
    expect(tidy([text])[0]).toBe("x = f((a + b), A {\n  # one\n  a = 1  # two\n\n  bb = (2)   | n | r\n})\n  # three\n");
  });

  test("never loses a comment", () => {
    fc.assert(
      fc.property(statement, fc.array(fc.nat(40), { maxLength: 4 }), (tree, places) => {
        const lines = printStatement(tree, "").split("\n");
        for (const place of places) lines.splice(1 + (place % lines.length), 0, `  # c${place}`);
        const text = lines.join("\n");
        if (parseStatement(text).diagnostics.length > 0) return;
        const out = tidy([text])[0] as string;
        expect(out.split("#").length).toBe(text.split("#").length);
        expect(sameTree(clean(out), clean(text)), out).toBe(true);
        expect(tidy([out])[0]).toBe(out);
      }),
      { numRuns: 120 },
    );
  });

  test("writes one form of a sign and keeps names and numbers as typed", () => {
    expect(tidy(["x=−τ_max×1_000÷2²≤3 mm\n"])[0]).toBe("x = -τ_max * 1_000 / 2^2 <= 3 mm\n");
    expect(tidy(["x = 2 m ^ 2\n", "y=9 N · m\n"])).toEqual(["x = 2 m ^ 2\n", "y = 9 N * m\n"]);
  });

  test("aligns the cells of a table and the fields of a record", () => {
    expect(tidy(['t=table{\n specimen|F [ N ]\n "A1"|12 kN\n}\n'])[0]).toBe('t = table {\n  specimen | F [N]\n  "A1"     | 12 kN\n}\n');
    expect(tidy(["j=A{\n a=1|x\n part=B{\n  q=2\n }\n bcd=3\n}\n"])[0]).toBe(
      "j = A {\n  a    = 1   | x\n  part = B {\n    q = 2\n  }\n  bcd  = 3\n}\n",
    );
  });

  test("keeps Windows line ends", () => {
    expect(tidy(["x=A{\r\n a=1\r\n}\r\n"])[0]).toBe("x = A {\r\n  a = 1\r\n}\r\n");
  });
});
