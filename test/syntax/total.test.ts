// engine/syntax: any text gives a tree and tokens, without a throw and in bounded time.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Diagnostic } from "../../engine/diagnostics/index.ts";
import {
  namesUsed,
  parseExpression,
  parseHead,
  parseLive,
  parseStatement,
  printStatement,
  sameTree,
  tidy,
  tokens,
} from "../../engine/syntax/index.ts";
import { statement } from "./arbitrary-tree.ts";
import { chunks, fences } from "./read.ts";

const sample = fences(readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8")).flatMap(chunks);

const scraps = fc.constantFrom(
  ..."=|\n{}[]()#\"'.,:;+-*/^<>±~%°²é𝒜\u00a0\r\t \\",
  ...[
    "..",
    "==",
    "||",
    " if ",
    " then ",
    " else ",
    " in ",
    " where ",
    " as ",
    " with ",
    "table {",
    "match (a) {",
    " of ",
    " step ",
    " over ",
  ],
  ...["1,5", ".5", "12 mm", "N/m", "formula f(", "record A {", "check ", "use ", "example ", "x", "τ", "0", "+0.2/-0"],
);

const mutated = fc
  .tuple(
    fc.oneof(
      fc.constantFrom(...sample),
      statement.map((tree) => printStatement(tree, "")),
    ),
    fc.array(fc.tuple(fc.nat(400), fc.nat(4), scraps), { minLength: 1, maxLength: 3 }),
  )
  .map(([text, edits]) =>
    edits.reduce((out, [at, cut, insert]) => {
      const place = at % (out.length + 1);
      return out.slice(0, place) + insert + out.slice(place + cut);
    }, text),
  );
const any = fc.oneof(
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.array(scraps, { maxLength: 20 }).map((parts) => parts.join("")),
  mutated,
);

function inside(text: string, value: unknown): void {
  if (typeof value !== "object" || value === null) return;
  if ("from" in value && "to" in value && typeof value.from === "number" && typeof value.to === "number") {
    expect(
      0 <= value.from && value.from <= value.to && value.to <= text.length,
      `${JSON.stringify(value)} in ${JSON.stringify(text)}`,
    ).toBe(true);
  }
  for (const child of Object.values(value)) inside(text, child);
}

function sound(text: string, diagnostics: readonly Diagnostic[]): void {
  inside(text, diagnostics);
  for (const one of diagnostics) {
    expect(one.severity).toBe("fault");
    expect(one.message).not.toMatch(/undefined|EOF|Token/);
    for (const mend of one.mends) {
      for (const [i, change] of mend.changes.entries()) {
        const before = mend.changes[i - 1];
        expect(before === undefined || before.to <= change.from, `changes in order: ${text}`).toBe(true);
      }
    }
  }
}

describe("any text", () => {
  test("parses without a throw, every range inside the text", () => {
    fc.assert(
      fc.property(any, (text) => {
        const { tree, diagnostics } = parseStatement(text);
        inside(text, tree);
        sound(text, diagnostics);
        if (tree.kind === "broken") expect(diagnostics.length).toBeGreaterThan(0);
        expect(namesUsed(tree)).toBeInstanceOf(Array);
        sound(text, parseExpression(text).diagnostics);
        sound(text, parseHead(text).diagnostics);
        inside(text, parseLive(text));
      }),
      { numRuns: 1500 },
    );
  });

  test("has tokens in order, without overlap, that cover all but blanks", () => {
    fc.assert(
      fc.property(any, (text) => {
        let at = 0;
        for (const token of tokens(text)) {
          expect(at <= token.from && token.from < token.to && token.to <= text.length, JSON.stringify(text)).toBe(true);
          expect(
            text
              .slice(at, token.from)
              .replace(/[\u2000-\u200b]/g, "")
              .trim(),
            JSON.stringify(text),
          ).toBe("");
          at = token.to;
        }
        expect(
          text
            .slice(at)
            .replace(/[\u2000-\u200b]/g, "")
            .trim(),
        ).toBe("");
      }),
      { numRuns: 1000 },
    );
  });

  test("is tidied to the same trees and then stays as it is; with a fault it is left alone", () => {
    fc.assert(
      fc.property(mutated, (text) => {
        const { tree, diagnostics } = parseStatement(text);
        const out = tidy([text])[0] as string;
        if (diagnostics.length > 0) {
          expect(out).toBe(text);
          return;
        }
        const again = parseStatement(out);
        expect(again.diagnostics, out).toEqual([]);
        expect(sameTree(again.tree, tree), `${text}\n---\n${out}`).toBe(true);
        expect(tidy([out])[0]).toBe(out);
      }),
      { numRuns: 1000 },
    );
  });

  test("is read in time that does not explode with what repeats in it", () => {
    for (const piece of ["\\", '\\"', ")", "1,", "1_", "m ", "/m", "|", "'", "study, ", "(", "\n"]) {
      const text = `x = "${piece.repeat(2000)}`;
      for (const source of [text, text.replace('"', ""), text.replace('"', "1 ")]) expect(parseStatement(source).tree).toBeDefined();
    }
  }, 5_000);

  test("parses the same on its own and after others", () => {
    fc.assert(
      fc.property(any, any, (first, second) => {
        const alone = parseStatement(second);
        parseStatement(first);
        expect(parseStatement(second)).toEqual(alone);
      }),
      { numRuns: 300 },
    );
  });
});
