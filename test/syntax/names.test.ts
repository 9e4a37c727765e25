// engine/syntax: names and their one form, the names a statement uses, trees compared and walked, tokens for highlighting.

import { describe, expect, test } from "vitest";
import {
  children,
  greekSign,
  namesUsed,
  normalName,
  parseExpression,
  reservedWords,
  sameTree,
  softWords,
  type Token,
  tokens,
  visit,
} from "../../engine/syntax/index.ts";
import { clean } from "./read.ts";

describe("names", () => {
  test("a Greek letter folds when it is a whole segment", () => {
    expect(["τ_max", "tau_max", "Δ_T", "ΔT", "µ", "μ", "π", "ϕ_1", "e\u0301"].map(normalName)).toEqual([
      "tau_max",
      "tau_max",
      "Delta_T",
      "ΔT",
      "mu",
      "mu",
      "pi",
      "phi_1",
      "é",
    ]);
  });

  test("the sign of a letter's name reads back as that name", () => {
    for (const name of ["tau", "sigma", "Delta", "mu", "phi", "theta", "epsilon"]) expect(normalName(greekSign(name) as string)).toBe(name);
    expect(greekSign("F")).toBeUndefined();
  });

  test("the words are those of the language", () => {
    expect(reservedWords.length).toBe(24);
    expect(softWords.length).toBe(11);
  });
});

describe("names used", () => {
  test.each<[string, string[]]>([
    ["x = a + f(b, k = c)", ["a", "f", "b", "c"]],
    ["x = shop.F + y.D.e", ["shop", "shop.F", "y", "y.D"]],
    ["x: List shop.Insert = [Insert { D = d }]", ["shop", "shop.Insert", "Insert", "d"]],
    ["x = [p * q for p in ps where p > lo]", ["ps", "p", "q", "lo"].filter((one) => one !== "p")],
    ["x = accumulate s = s0 for p in ps: s + p * k", ["s0", "ps", "k"]],
    ["x = match (a) { Hole h: h.L + b, none: c }", ["a", "Hole", "b", "c"]],
    ["x = solve L in lo .. hi where F == G", ["lo", "hi", "L", "F", "G"]],
    ["x = study F over L in lo .. hi step 1", ["L", "F", "lo", "hi"]],
    ["x = t where .F > F_min", ["t", "F_min"]],
    ["x = group t by .m { n = count(.F) }", ["t", "count"]],
    ["x = 3 mm within lo .. hi", ["lo", "hi"]],
    [
      "formula f(a: Length, k = c) = {\n b = a * k * K\n result = solve y: Force in b .. z where g(y) == b\n}",
      ["Length", "c", "K", "b", "z", "Force", "g"].filter((one) => one !== "b"),
    ],
    ["record A { D: Length, e: Maybe B = d }", ["Length", "B", "d"]],
    ["family A = B or shop.C", ["B", "shop", "shop.C"]],
    ["example f(2) == y ± z", ["f", "y", "z"]],
    ["check a <= b factor c", ["a", "b", "c"]],
    ['use "a.joint.md" as shop', []],
  ])("%s", (text, names) => {
    expect([...namesUsed(clean(text))].sort()).toEqual([...names].sort());
  });
});

describe("trees", () => {
  test("are the same wherever they stand, and not when they say something else", () => {
    expect(sameTree(clean("x=a+1 mm|n"), clean("x  =  (a + 1 mm)   | n"))).toBe(true);
    for (const other of ["y = a + 1 mm | n", "x = a - 1 mm | n", "x = a + 1 in | n", "x = a + 1 mm", "x = a + 1 mm | m", "x = a + b | n"]) {
      expect(sameTree(clean("x = a + 1 mm | n"), clean(other)), other).toBe(false);
    }
  });

  test("are walked outer before inner", () => {
    const { expression } = parseExpression("f(a + 2, [b])");
    const kinds: string[] = [];
    visit(expression, (node) => {
      kinds.push(node.kind);
      return node.kind !== "list";
    });
    expect(kinds).toEqual(["call", "name", "binary", "name", "number", "list"]);
    expect(children(expression).length).toBe(3);
  });
});

describe("tokens", () => {
  const shown = (text: string): readonly string[] =>
    tokens(text).map((token: Token) => `${token.kind} ${text.slice(token.from, token.to)}`);

  test("know names, fields, types and units by their place", () => {
    expect(shown("x: [N/mm^2] = A { from = y.D } as ksi | note | @ref")).toEqual([
      ...["name x", "punctuation :", "bracket [", "unit N/mm^2", "bracket ]", "operator =", "type A", "bracket {"],
      ...["field from", "operator =", "name y", "punctuation .", "field D", "bracket }", "keyword as", "unit ksi"],
      ...["bar |", "note note", "bar |", "reference @ref"],
    ]);
  });

  test("soft words are keywords in their place and names elsewhere", () => {
    expect(shown("x = 1 .. 9 step step")).toEqual([
      "name x",
      "operator =",
      "number 1",
      "operator ..",
      "number 9",
      "keyword step",
      "name step",
    ]);
    expect(shown("f: List Length = a # c")).toEqual([
      "name f",
      "punctuation :",
      "type List",
      "type Length",
      "operator =",
      "name a",
      "comment # c",
    ]);
  });

  test("a statement that is broken does not disturb the next", () => {
    expect(shown('x = (\ny = "a')).toEqual(["name x", "operator =", "bracket (", "name y", "operator =", 'unknown "a']);
  });
});
