// Static types: dimensions by unification, kinds, points, polymorphic formulas and records, families, Maybe, tables.

import { describe, expect, it } from "vitest";
import { open } from "../session/helper.ts";

const codes = (text: string): readonly string[] => open(text).codes();
const shown = (text: string, name = "x"): string | undefined => {
  const opened = open(text);
  expect(opened.codes()).toEqual([]);
  return opened.line(name).value?.text;
};
const typed = (text: string, name = "x"): string | undefined => {
  const opened = open(text);
  expect(opened.codes()).toEqual([]);
  return opened.line(name).type;
};

describe("dimensions", () => {
  it.each([
    ["x = 3 N / 2 mm^2", "Pressure"],
    ["x = sqrt(4 mm^2)", "Length"],
    ["x = (4 mm^2)^(3/2)", "Volume"],
    ["x = 2 N * 3 mm", "Torque"],
    ["x = 3 mm / 2 mm", "Number"],
    ["x = 2^0.5", "Number"],
    ["x = [1 mm, 2 in]", "List Length"],
    ['x = "a"', "Text"],
    ["x = 1 < 2 < 3", "Truth"],
  ])("%s is %s", (text, type) => {
    expect(typed(text)).toBe(type);
  });

  it("of a bare parameter come from its use, and stay open where nothing says", () => {
    const opened = open(
      "formula square(x) = x * x\nformula hold(a: Length, b) = a + b\nx = square(3 mm) as mm^2\ny = square(2 N) as N^2\nz = hold(1 mm, 2 N)",
    );
    expect(opened.line("x").value?.text).toBe("9 mm²");
    expect(opened.line("y").value?.text).toBe("4 N²");
    expect(opened.line("z").diagnostics[0]).toMatchObject({ code: "wrong-argument" });
    expect(opened.line("z").diagnostics[0]?.message).toContain("b of hold");
  });

  it("are solved through roots and powers", () => {
    expect(shown("formula mean_diameter(a) = sqrt(4 * a / pi)\nx = mean_diameter(pi * 9 mm^2) as mm")).toBe("6 mm");
    expect(codes("formula f(a) = sqrt(a) + 1 mm\nx = f(4 mm)")).toEqual(["wrong-argument"]);
    expect(shown("formula f(a) = sqrt(a) + 1 mm\nx = f(4 mm^2) as mm")).toBe("3 mm");
  });

  it("whose powers no unit text may hold are still shown, in SI, until they are beyond all sense", () => {
    expect(shown("x = (2 m)^22")).toBe("4194304 m^22");
    expect(shown("x = (1 m)^30 / (1 s)^21")).toBe("1 m^30/s^21");
    expect(codes("x = (2 mm)^9999 * (2 mm)^9999")).toEqual(["exponent-too-large"]);
    expect(codes("x = (2 mm^20)^123456789.123456")).toEqual(["exponent-too-large"]);
    expect(codes("formula f(x) = x^9999\nformula g(x) = f(f(x))")).toEqual(["exponent-too-large"]);
    expect(codes(`x = ${"sqrt(".repeat(60)}3 m${")".repeat(60)}`)).toEqual(["exponent-too-large"]);
  });

  it("one fault shows once: what is unknown unifies silently", () => {
    expect(codes("a = 1 mm + 2 N\nb = a + 3 s\nc = b * a + 1")).toEqual(["sides-differ"]);
  });

  it("a mismatch of force and area offers the quotient, whose mend gives a right line", () => {
    const opened = open("F = 3 N\nA = 2 mm^2\np = F + A");
    const [fault] = opened.line("p").diagnostics;
    expect(fault?.message).toContain("Force (N)");
    const mend = fault?.mends[0];
    opened.session.edit("a.joint.md", mend?.changes ?? []);
    expect(opened.codes()).toEqual([]);
    expect(opened.line("p").type).toBe("Pressure");
  });
});

describe("kinds", () => {
  it.each([
    ["x = 90 deg + 90", "kinds-differ"],
    ["T: Torque = 3 J", "declared-result-differs"],
    ["x = sin(9)", "wrong-argument"],
    ["x = 5 Hz + 3 rad/s", "kinds-differ"],
    ["x = 720 deg/s as Hz", "unit-does-not-fit"],
    ["T: Torque = 3 N*m\nx = T + 2 J", "kinds-differ"],
    ["formula f(a, b) = a + b\nx = f(90 deg, 1)", "kinds-differ"],
  ])("%s is refused", (text, code) => {
    expect(codes(text)).toEqual([code]);
  });

  it.each([
    ["x = 2 * 3 N * 2 mm as N*mm", "12 N·mm"],
    ["x = 2 N*m + 3 J", "5 J"],
    ["x = (720 deg/s) / 1 rev as Hz", "2 Hz"],
    ["x = 2 rad * 3 mm as mm", "6 mm"],
    ["formula twice(a) = 2 * a\nx = twice(30 deg) + 30 deg as deg", "90°"],
    ["x = sin((pi/2) * 1 cm / 1 m)", "0.01571"],
    ["x = 5 N*m * 2 rad as J", "10 J"],
  ])("%s gives %s", (text, value) => {
    expect(shown(text)).toBe(value);
  });
});

describe("temperature points", () => {
  it.each([
    ["x = 5 degC as degF", "41 °F"],
    ["x = -1 degC as K abs", "272.2 K abs"],
    ["x = 30 degC - 10 degC", "20 K"],
    ["x = 30 degC + 5 K as degC", "35 °C"],
    ["x = mean([10 degC, 20 degC]) as degC", "15 °C"],
    ["x = absolute(20 degC)", "293.2 K"],
  ])("%s gives %s", (text, value) => {
    expect(shown(text)).toBe(value);
  });

  it.each([
    ["x = 10 degC + 20 degC", "points-do-not-add"],
    ["x = sum([10 degC, 20 degC])", "points-do-not-add"],
    ["x = 2 * 20 degC", "point-arithmetic"],
    ["x = sqrt(20 degC)", "wrong-argument"],
    ["dT: TemperatureDifference = 3 degC", "point-and-difference"],
    ["T: Temperature = 3 K", "point-and-difference"],
  ])("%s is refused", (text, code) => {
    expect(codes(text)).toEqual([code]);
  });
});

describe("records, families, Maybe", () => {
  const anchors =
    'record Tapped { L: Length }\nrecord Insert { D: Length, L: Length, face: "loaded" or "back" = "loaded" }\nfamily Anchor = Tapped or Insert\n';

  it("defaults, with, fields and choices", () => {
    const opened = open(`${anchors}a = Insert { D = 8 mm, L = 9 mm }\nb = a with { L = 12 mm }\nx = b.L as mm\ny = b.face`);
    expect(opened.codes()).toEqual([]);
    expect(opened.line("x").value?.text).toBe("12 mm");
    expect(opened.line("y").value?.text).toBe("loaded");
    expect(codes(`${anchors}a = Insert { D = 8 mm, L = 9 mm, face = "front" }`)).toEqual(["not-a-choice"]);
    expect(codes(`${anchors}a = Insert { D = 8 N, L = 9 mm }`)).toEqual(["sides-differ"]);
  });

  it("a member goes where its family is expected and match names every member", () => {
    const text = `${anchors}formula grip(a: Anchor): Length = match (a) { Tapped t: t.L, Insert i: i.L / 2 }\nx = grip(Insert { D = 8 mm, L = 9 mm }) as mm\ny = grip(Tapped { L = 5 mm }) as mm`;
    expect(shown(text)).toBe("4.5 mm");
    expect(shown(text, "y")).toBe("5 mm");
    expect(codes(`${anchors}formula grip(a: Anchor): Length = match (a) { Tapped t: t.L }`)).toEqual(["arm-missing"]);
    expect(codes(`${anchors}xs: List Anchor = [Tapped { L = 5 mm }, Insert { D = 8 mm, L = 9 mm }]`)).toEqual([]);
  });

  it("polymorphic in dimension", () => {
    const text = "record Span { lo, hi }\nformula width(s: Span) = s.hi - s.lo\na = Span { lo = 1 mm, hi = 3 mm }";
    const [fault] = open(`${text}\nb = Span { lo = 1 mm, hi = 3 N }\nx = width(b)`).line("x").diagnostics;
    expect(fault?.code).toBe("sides-differ");
    expect(fault?.message).toContain("the record Span of Length (mm) and Force (N)");
    expect(shown(`${text}\nx = a.hi - a.lo as mm`)).toBe("2 mm");
  });

  it("none must be opened before use", () => {
    expect(shown("a: Maybe Force = none\nx = match (a) { none: 1 N, some v: v }")).toBe("1 N");
    expect(codes("a: Maybe Force = none\nx = a + 1 N")).toEqual(["wrong-type"]);
  });
});

describe("formulas", () => {
  it("see no input of the notebook, only constants", () => {
    expect(codes("F = 3 kN\nformula half() = F / 2")).toEqual(["not-closed"]);
    expect(shown("k = 2 * pi\nformula f(d: Length) = k * d\nx = f(1 mm) as mm")).toBe("6.283 mm");
  });

  it("map over lists, take named arguments and defaults", () => {
    const opened = open("formula f(a: Length, k = 2) = k * a\nx = f([1 mm, 2 mm], k = 3) as mm\ny = f(1 mm) as mm");
    expect(opened.codes()).toEqual([]);
    expect(opened.line("x").value?.text).toBe("[3, 6] mm");
    expect(opened.line("y").value?.text).toBe("2 mm");
  });

  it("require stops, valid marks", () => {
    const text =
      "formula f(a: Length) = {\n  require 0 mm < a | a length above zero\n  valid a <= 5 mm | tried up to 5 mm\n  result = 2 * a\n}\n";
    expect(open(`${text}x = f(-1 mm)`).line("x").diagnostics[0]?.message).toContain("f");
    const marked = open(`${text}x = f(7 mm)\ny = x + 1 mm`);
    expect(marked.codes()).toEqual([]);
    expect(marked.line("y").marks?.outside[0]).toMatchObject({ formula: "f", note: "tried up to 5 mm" });
    expect(open(`${text}x = f(3 mm)`).line("x").marks?.outside ?? []).toEqual([]);
  });
});

describe("tables", () => {
  const pulls = 'pulls = table {\n  id | method | F [N]\n  "a" | "tapped" | 1480\n  "b" | "cut" | 1200\n  "c" | "tapped" | 1520\n}\n';

  it("where keeps rows, group counts them, columns are lists", () => {
    const opened = open(
      `${pulls}t = pulls where .F > 1.3 kN\nx = mean(t.F)\ng = group pulls by .method { n = count(.F), m = mean(.F) }\ny = g.n[1]\nz = g.m[2]`,
    );
    expect(opened.codes()).toEqual([]);
    expect(opened.line("x").value?.text).toBe("1500 N");
    expect(opened.line("y").value?.text).toBe("2");
    expect(opened.line("z").value?.text).toBe("1200 N");
  });

  it("a text in a number column is a fault at its cell", () => {
    expect(codes('t = table {\n  F [N]\n  "2"\n}')).toEqual(["cell-does-not-fit"]);
  });
});

describe("checks", () => {
  it("beyond the range of numbers give a verdict and no utilisation", () => {
    for (const [text, state] of [
      ["check 12 <= 2 factor 1.7e308 | c", "fails"],
      ["check 5e-324 <= 2 | c", "holds"],
    ] as const) {
      const { check } = open(text).line("c");
      expect(check?.state).toBe(state);
      expect([check?.utilisation, check?.margin]).toEqual([undefined, undefined]);
    }
  });

  it("give utilisation and margin, the factor applied once", () => {
    const { check } = open("F = 2 kN\ncheck F <= 4 kN factor 1.5 | c").line("c");
    expect(check).toMatchObject({ state: "holds", utilisation: 0.75, utilisationText: "0.75", marginText: "0.33" });
  });

  it("turned round are the same check", () => {
    const { check } = open("F = 2 kN\ncheck 4 kN >= F factor 1.5 | c").line("c");
    expect(check).toMatchObject({ state: "holds", utilisation: 0.75 });
  });

  it("a margin just below zero never reads as zero", () => {
    const { check } = open("F = 1.004\ncheck F <= 1 | c").line("c");
    expect(check?.state).toBe("fails");
    expect(check?.marginText).toBe("−0.004");
  });

  it("that hang on scatter hold nominally only", () => {
    expect(open("F = 2 kN ± 0.1 kN\ncheck F <= 4 kN | c").line("c").check?.state).toBe("nominal");
    expect(open("F = 5 kN ~ 0.1 kN of 4\ncheck F <= 4 kN | c").line("c").check?.state).toBe("fails");
  });

  it("of lists want all", () => {
    const opened = open("xs = [1 N, 2 N]\ncheck xs <= 3 N | c");
    const [fault] = opened.line("c").diagnostics;
    expect(fault?.code).toBe("check-wants-truth");
    opened.session.edit("a.joint.md", fault?.mends[0]?.changes ?? []);
    expect(opened.line("c").check?.state).toBe("holds");
  });
});

describe("a letter that is a unit and a name", () => {
  it("puts a fault on both lines and takes it away again", () => {
    const opened = open("d = 8 mm\nt = 3 d\nu = 2 N/A");
    expect(opened.codes()).toEqual(["name-or-unit", "unit-or-name"]);
    const at = opened.session.text("a.joint.md").indexOf("d = 8");
    opened.session.edit("a.joint.md", [{ from: at, to: at + 1, insert: "D" }]);
    expect(opened.codes()).toEqual([]);
  });
});
