// Reading units: the grammar, its refusals with their mends, and one object for each unit.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { asPoint, currencyCodes, parseUnit, typographic, unitOne, unitSymbols } from "../../engine/units/index.ts";
import { problem, unit } from "./helpers.ts";

describe("the grammar of units", () => {
  it.each([
    ["N/mm^2", "N/mm^2", "N/mm²"],
    ["W/(m K)", "W/(m·K)", "W/(m·K)"],
    ["N*m", "N·m", "N·m"],
    ["N · m", "N·m", "N·m"],
    ["m^(1/2)", "m^(1/2)", "m^(1/2)"],
    ["m^(2/4)", "m^(1/2)", "m^(1/2)"],
    ["K^-1", "K^-1", "K⁻¹"],
    ["s⁻¹", "s^-1", "s⁻¹"],
    ["mm²", "mm^2", "mm²"],
    ["s^−2", "s^-2", "s⁻²"],
    ["N/(m)", "N/m", "N/m"],
    ["degC", "°C", "°C"],
    ["deg/s", "°/s", "°/s"],
    [" mm ", "mm", "mm"],
    ["kilonewton", "kN", "kN"],
    ["millimetres", "mm", "mm"],
    ["kgf·cm", "kgf·cm", "kgf·cm"],
    ["K abs", "K abs", "K abs"],
  ])("reads %j as %s, set as %s", (text, normal, set) => {
    expect(unit(text).text).toBe(normal);
    expect(typographic(unit(text))).toBe(set);
  });

  it("gives the same object for each spelling of a unit", () => {
    expect(unit("W/(m K)")).toBe(unit("W/(m·K)"));
    expect(unit("inches")).toBe(unit("in"));
    expect(unit("thou")).toBe(unit("mil"));
    expect(unit("micron")).toBe(unit("um"));
  });

  it("reads 1/K in a head, and as K^-1 everywhere", () => {
    expect(unit("1/K")).toBe(unit("K^-1"));
    expect(unit("1/(m K)")).toBe(unit("m^-1·K^-1"));
    expect(unit("1")).toBe(unitOne);
    expect(problem("1/K")).toMatchObject({ problem: "leading one", mend: "K^-1" });
    expect(problem("1")).toMatchObject({ problem: "leading one" });
  });

  it("reads kelvin and rankine as points only with abs", () => {
    expect(unit("K").point).toBe(false);
    expect(asPoint(unit("K"))).toBe(unit("K abs"));
    expect(asPoint(unit("degC"))).toBe(unit("degC"));
    expect(asPoint(unit("degR"))?.point).toBe(true);
    expect(asPoint(unit("mm"))).toBeUndefined();
    expect(asPoint(unit("degF_diff"))).toBeUndefined();
    expect(problem("mm abs")).toMatchObject({ problem: "point" });
  });

  it("tells points from differences", () => {
    expect(unit("degC").point).toBe(true);
    expect(unit("degC_diff").point).toBe(false);
    expect(unit("°F").point).toBe(true);
  });
});

describe("refusals", () => {
  it.each([
    ["W/m/K", "division", "W/(m·K)"],
    ["W/m K", "division", "W/(m·K)"],
    ["N/N", "twice", undefined],
    ["mm·mm", "twice", "mm^2"],
    ["N·m/N", "twice", "m"],
    ["in·inch", "twice", "in^2"],
    ["m^0.5", "exponent", "m^(1/2)"],
    ["mm2", "exponent", "mm^2"],
    ["N/mm2", "exponent", "N/mm^2"],
    ["m^0", "exponent", undefined],
    ["m^", "exponent", undefined],
    ["m^(1/0)", "exponent", undefined],
    ["m^400", "exponent", undefined],
    ["J/(kg·degC)", "point", "J/(kg·K)"],
    ["in/(ft·degF)", "point", "in/(ft·degF_diff)"],
    ["degC^2", "point", "K^2"],
    ["kdegF", "prefix", undefined],
    ["hm", "prefix", undefined],
    ["mkg", "unknown", "mg"],
    ["N.m", "syntax", "N·m"],
    ["N × m", "syntax", "N · m"],
    ["N * m", "syntax", "N*m"],
    ["N/ mm", "syntax", "N/mm"],
    ["m²K", "syntax", "m²·K"],
    ["(m)", "syntax", undefined],
    ["W/(m K", "syntax", undefined],
    ["m·", "syntax", undefined],
    ["·m", "syntax", undefined],
    ["", "syntax", undefined],
    ["5 mm", "syntax", undefined],
    ["lbs", "force as mass", undefined],
    ["pounds", "force as mass", undefined],
    ["ton", "force as mass", undefined],
    ["Nm", "unknown", "N·m"],
    ["KN", "unknown", "kN"],
    ["Mpa", "unknown", "MPa"],
    ["ft-lbf", "unknown", "ft·lbf"],
    ["psf", "unknown", "lbf/ft^2"],
    ["toString", "unknown", undefined],
    ["constructor", "unknown", undefined],
  ])("%j: %s, mended to %s", (text, kind, mend) => {
    const found = problem(text);
    expect(found.problem).toBe(kind);
    expect(found.mend).toBe(mend);
  });

  it("marks the wrong piece", () => {
    expect(problem("N/(mm·gramm)")).toMatchObject({ from: 6, to: 11, symbol: "gramm", nearest: "gram", mend: "N/(mm·gram)" });
    expect(problem("W/m/K")).toMatchObject({ from: 3, to: 4 });
  });

  it("offers no torque as nanometres: Nm is N·m", () => {
    expect(problem("Nm").nearest).toBe("N·m");
  });

  it("counts capital and small letters", () => {
    expect(unit("mN")).not.toBe(unit("MN"));
    expect(problem("n").problem).toBe("unknown");
  });
});

const symbol = fc.constantFrom(
  ...unitSymbols()
    .filter(({ point }) => !point)
    .map(({ symbol: typed }) => typed),
);
const exponent = fc.constantFrom("", "^2", "^-1", "^3", "^-2", "^(1/2)", "^(-3/2)", "²", "⁻¹");
const factor = fc.tuple(symbol, exponent).map(([name, raised]) => name + raised);
const joined = (list: fc.Arbitrary<string[]>): fc.Arbitrary<string> =>
  fc.tuple(list, fc.constantFrom(" ", "·", "*", " · ")).map(([factors, by]) => factors.join(by));
const unitText = fc.oneof(
  joined(fc.array(factor, { minLength: 1, maxLength: 3 })),
  fc
    .tuple(joined(fc.array(factor, { minLength: 1, maxLength: 3 })), joined(fc.array(factor, { minLength: 1, maxLength: 2 })))
    .map(([above, below]) => `${above}/(${below})`),
);

describe("properties", () => {
  it("parse(text of a unit) is that unit, also in its typographic form", () => {
    fc.assert(
      fc.property(unitText, (text) => {
        const read = parseUnit(text);
        if ("problem" in read) {
          expect(read.problem.problem).toBe("twice");
          return;
        }
        expect(unit(read.unit.text)).toBe(read.unit);
        expect(unit(typographic(read.unit))).toBe(read.unit);
      }),
      { numRuns: 2000 },
    );
  });

  it("never throws, keeps offsets inside the text, and offers only mends that read", () => {
    const piece = fc.constantFrom(
      "m",
      "N",
      "/",
      "(",
      ")",
      "^",
      "2",
      " ",
      "·",
      "*",
      "-",
      ".",
      "degC",
      "°",
      "C",
      "1",
      "k",
      "µ",
      "%",
      "abs",
      "²",
      "×",
      "x",
      "lbs",
    );
    const text = fc.oneof(
      fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join("")),
      fc.string({ maxLength: 12, unit: "binary" }),
    );
    fc.assert(
      fc.property(text, fc.boolean(), (typed, leadingOne) => {
        const read = parseUnit(typed, { leadingOne });
        if ("unit" in read) {
          expect(unit(read.unit.text)).toBe(read.unit);
          return;
        }
        const { from, to, mend } = read.problem;
        expect(0 <= from && from <= to && to <= typed.length).toBe(true);
        if (mend !== undefined) expect("unit" in parseUnit(mend)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it("gives a text the same answer each time", () => {
    expect(parseUnit("N/mm^2")).toBe(parseUnit("N/mm^2"));
    expect(currencyCodes.has(unit("EUR").text)).toBe(true);
  });
});
