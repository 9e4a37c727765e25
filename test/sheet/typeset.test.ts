// Formulas on paper: what they look like in MathML and as text, and where they break.

import { describe, expect, test } from "vitest";
import { equationRows, mathml, type Typeset, typeset, typesetText } from "../../engine/sheet/index.ts";
import { type Maths, symbolOf } from "../../engine/trace/index.ts";

const n = (text: string, unit = ""): Maths => ({ kind: "number", text, unit });
const product = (...factors: readonly Maths[]): Maths => ({ kind: "product", factors });
const sum = (...of: readonly Maths[]): Maths => ({ kind: "sum", terms: of.map((each) => ({ minus: false, of: each })) });
const said = (maths: Maths): string => typesetText(typeset(maths)).trim();

describe("a formula as text", () => {
  test.each<[string, Maths, string]>([
    ["letters side by side", product(n("2"), symbolOf("a")), "2 a"],
    ["numbers with a sign between", product(n("2"), n("70", "mm")), "2 × 70 mm"],
    ["a number behind a letter with a sign", product(symbolOf("a"), n("3")), "a × 3"],
    [
      "a sum inside a product in brackets",
      product(symbolOf("mu"), sum(symbolOf("F_V"), n("2", "N"))),
      "μ × (F_V + 2 N)".replace(" × ", " "),
    ],
    [
      "a fraction with its parts in brackets where they are long",
      { kind: "fraction", over: sum(n("1"), n("2")), under: symbolOf("d") },
      "(1 + 2) / d",
    ],
    ["a power of a quantity in brackets", { kind: "power", base: n("5", "mm"), exponent: n("2") }, "(5 mm)^2"],
    ["a minus in front of a sum", { kind: "negative", of: sum(n("1"), n("2")) }, "−(1 + 2)"],
    ["a long name as words", symbolOf("stress_area"), "stress area"],
    ["a Greek letter with its index", symbolOf("tau_max"), "τ_max"],
    ["tens as powers", n("5.2e−7", "m/N"), "5.2 × 10^(−7) m/N"],
    ["limits", { kind: "spread", nominal: n("8", "mm"), form: "limits", spread: [n("0.1", "mm")] }, "8 mm ± 0.1 mm"],
    ["a degree without room", n("45", "°"), "45°"],
  ])("%s", (_, maths, text) => {
    expect(said(maths)).toBe(text);
  });

  test("a branch that was taken says why, one that is not yet known shows both", () => {
    const cases = { kind: "cases", condition: symbolOf("c"), met: n("1"), otherwise: n("2") } as const;
    expect(said({ ...cases, taken: "met" })).toBe("1 since c");
    expect(said({ ...cases, taken: "otherwise" })).toBe("2 since not c");
    expect(said(cases)).toBe("1 if c; 2 otherwise");
  });
});

describe("a formula as MathML", () => {
  test("one letter slants by itself, an index of several stands upright", () => {
    expect(mathml(typeset(symbolOf("F_max")), false)).toBe('<math alttext="F_max"><msub><mi>F</mi><mi>max</mi></msub></math>');
  });
  test("texts of a notebook cannot end the markup", () => {
    const html = mathml(typeset({ kind: "text", text: '"</mtext><script>' }), true);
    expect(html).not.toContain("<script");
    expect(html).toContain("&lt;script&gt;");
  });
  test("fractions and roots nest", () => {
    const html = mathml(typeset({ kind: "fraction", over: symbolOf("M"), under: { kind: "root", degree: 2, of: n("2") } }), true);
    expect(html).toContain("<mfrac><mi>M</mi><msqrt><mn>2</mn></msqrt></mfrac>");
  });
});

describe("breaking", () => {
  const measure = (set: Typeset): number => typesetText(set).length;
  const rows = (maths: readonly Maths[], width: number): readonly string[] =>
    equationRows({ left: typeset(symbolOf("x")), sides: maths.map(typeset) }, width, measure).map(({ of }) => typesetText(of).trim());

  test("symbols and numbers share a row where there is room", () => {
    expect(rows([sum(symbolOf("a"), symbolOf("b")), sum(n("1"), n("2"))], 40)).toEqual(["x = a + b = 1 + 2"]);
  });
  test("else each has its own", () => {
    expect(rows([sum(symbolOf("a"), symbolOf("b")), sum(n("1"), n("2"))], 12)).toEqual(["x = a + b", "= 1 + 2"]);
  });
  test("a long sum breaks before a sign, a call behind a comma, and no row is wider than the width", () => {
    const long = sum(...Array.from({ length: 12 }, (_, i) => symbolOf(`F_${i}`)));
    const call: Maths = { kind: "call", name: symbolOf("f"), arguments: Array.from({ length: 20 }, (_, i) => symbolOf(`a${i}`)) };
    for (const maths of [long, call, { kind: "fraction", over: long, under: call } as const]) {
      const found = equationRows({ sides: [typeset(maths)] }, 30, measure);
      expect(found.length).toBeGreaterThan(1);
      for (const row of found) expect(row.indent + measure(row.of)).toBeLessThanOrEqual(30);
      expect(
        found
          .map(({ of }) => typesetText(of))
          .join("")
          .replace(/[\s()/]/g, ""),
      ).toBe(said(maths).replace(/[\s()/]/g, ""));
    }
    expect(rows([long], 20)[1]).toMatch(/^\+ /);
  });
});
