// Display: numbers rounded for reading, margins, the unit that is chosen, preferences, names of dimensions.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chooseUnit,
  clashAdvice,
  describeDimension,
  dimensionFrom,
  dimensionless,
  inchSet,
  kindAdvice,
  kindsAgree,
  literal,
  metricSet,
  type Preferences,
  preferenceKeys,
  preferences,
  quantityNames,
  rational,
  sampleUnit,
  showMargin,
  showNumber,
  showQuantity,
  showUtilisation,
  siSet,
  typographic,
  type Unit,
  unitChoices,
} from "../../engine/units/index.ts";
import { unit } from "./helpers.ts";

describe("numbers for reading", () => {
  it.each([
    [434.99999999999994, 4, "435"],
    [434.99999999999994, 17, "434.99999999999994"],
    [1.005, 3, "1.01"],
    [2.675, 3, "2.68"],
    [-2.675, 3, "−2.68"],
    [0.1 + 0.2, 4, "0.3"],
    [9.9996, 4, "10"],
    [999.96, 4, "1000"],
    [0, 4, "0"],
    [-0, 4, "0"],
    [12345.678, 4, "12346"],
    [1234567.8, 3, "1234568"],
    [12345678, 4, "1.235e7"],
    [9999999.9, 4, "1e7"],
    [0.00012345, 3, "0.000123"],
    [0.000012345, 3, "1.23e−5"],
    [0.000099999, 3, "0.0001"],
    [-1.5e-9, 4, "−1.5e−9"],
    [1e21, 4, "1e21"],
    [5e-324, 4, "5e−324"],
    [0.5, 1, "0.5"],
    [0.25, 1, "0.3"],
  ])("%d with %d digits is %s", (value, digits, text) => {
    expect(showNumber(value, digits)).toBe(text);
  });

  it("never shows a negative zero, trailing zeros or a text that a literal cannot read", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e308, max: 1e308 }), fc.integer({ min: 1, max: 17 }), (value, digits) => {
        const text = showNumber(value, digits);
        expect(text).toMatch(/^−?(0|[1-9]\d*)(\.\d*[1-9])?(e−?\d+)?$/);
        expect(text).not.toBe("−0");
        const back = literal(text, undefined);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(
          Math.abs(value) * 0.5000001 * 10 ** (1 - digits) + Math.abs(value) * Number.EPSILON + Number.MIN_VALUE,
        );
      }),
      { numRuns: 3000 },
    );
  });

  it("shows all digits when all are asked for", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(literal(showNumber(value, 17), undefined) === value).toBe(true);
      }),
    );
  });
});

describe("margins and utilisations", () => {
  it.each([
    [-0.004, "−0.004"],
    [-0.00499, "−0.005"],
    [-1e-9, "−1e−9"],
    [-0.4, "−0.40"],
    [0.004, "0.00"],
    [1.005, "1.01"],
    [0, "0.00"],
    [-0, "0.00"],
    [12, "12.00"],
  ])("margin %d is %s", (value, text) => {
    expect(showMargin(value)).toBe(text);
  });

  it("never shows a negative margin as zero, nor zero with a sign", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -10, max: 10 }), fc.integer({ min: 0, max: 4 }), (value, decimals) => {
        const text = showMargin(value, decimals);
        expect(text.startsWith("−")).toBe(value < 0);
        if (value < 0) expect(text).toMatch(/[1-9]/);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    [1.004, "1.004"],
    [1.0000001, "1.0000001"],
    [1, "1.00"],
    [0.876, "0.88"],
    [1.25, "1.25"],
    [0.999, "1.00"],
  ])("utilisation %d is %s", (value, text) => {
    expect(showUtilisation(value)).toBe(text);
  });
});

const chosen = (text: string, set: Preferences): string => {
  const { dimension, kind, point } = unit(text);
  return typographic(chooseUnit(dimension, kind, set, point));
};

const sample = preferences({ length: "mm", force: "N", stress: "MPa", torque: "N*m" }).preferences;

describe("the unit that is chosen", () => {
  it.each([
    ["m", "m", "mm", "in"],
    ["m^2", "m²", "mm²", "in²"],
    ["m^4", "m⁴", "mm⁴", "in⁴"],
    ["kN/m", "N/m", "N/mm", "lbf/in"],
    ["m/N", "m/N", "mm/N", "in/lbf"],
    ["Pa", "Pa", "MPa", "psi"],
    ["N·m", "N·m", "N·m", "in·lbf"],
    ["J", "J", "J", "ft·lbf"],
    ["W", "W", "W", "hp"],
    ["Hz", "Hz", "Hz", "Hz"],
    ["rpm", "rad/s", "rpm", "rpm"],
    ["1/s", "s⁻¹", "s⁻¹", "s⁻¹"],
    ["rad", "rad", "°", "°"],
    ["%", "", "", ""],
    ["degC", "°C", "°C", "°F"],
    ["K", "K", "K", "degF_diff"],
    ["1/K", "K⁻¹", "K⁻¹", "degF_diff⁻¹"],
    ["kg/m^3", "kg/m³", "g/cm³", "lb/in³"],
    ["N·mm^2", "N·m²", "N·mm²", "lbf·in²"],
    ["mi/gal", "m⁻²", "mm⁻²", "in⁻²"],
    ["MPa·m^(1/2)", "Pa·m^(1/2)", "MPa·m^(1/2)", "ksi·in^(1/2)"],
    ["EUR/kg", "EUR/kg", "EUR/kg", "EUR/lb"],
    ["mm/s", "m/s", "mm/s", "in/s"],
    ["W/(m·K)", "W/(m·K)", "W/(m·K)", "W/(m·K)"],
  ])("%s: SI %s, metric %s, inch %s", (text, si, metric, inch) => {
    expect([siSet, metricSet, inchSet].map((set) => chosen(text, set))).toEqual([si, metric, inch]);
  });

  it.each([
    ["m^2", "mm²"],
    ["N/m", "N/mm"],
    ["Pa", "MPa"],
    ["N·mm", "N·m"],
    ["kN", "N"],
    ["kg", "kg"],
    ["J", "J"],
  ])("%s follows from the sample notebook's units as %s", (text, expected) => {
    expect(chosen(text, sample)).toBe(expected);
  });

  it("composes stress of force and length where no stress is named", () => {
    expect(chosen("Pa", preferences({ length: "mm", force: "N" }).preferences)).toBe("MPa");
    expect(chosen("Pa", preferences({ length: "mm", force: "kgf" }).preferences)).toBe("kgf/mm²");
    expect(chosen("Pa", preferences({ length: "mm" }).preferences)).toBe("Pa");
  });

  it("never takes a fractional power of a derived unit", () => {
    const half = dimensionFrom([
      ["mass", rational(1, 2)],
      ["length", rational(1, 2)],
      ["time", rational(-1)],
    ]);
    expect(chooseUnit(half, "any", siSet, false).text).toBe("kg^(1/2)·m^(1/2)/s");
  });

  it("always has the dimension asked for and a kind that agrees", () => {
    const exponent = fc.tuple(fc.integer({ min: -4, max: 4 }), fc.constantFrom(1, 2)).map(([n, d]) => rational(n, d));
    const dimension = fc
      .array(fc.tuple(fc.constantFrom("length", "mass", "time", "temperature", "current", "EUR"), exponent), { maxLength: 4 })
      .map(dimensionFrom);
    fc.assert(
      fc.property(dimension, fc.constantFrom(siSet, metricSet, inchSet, sample), (d, set) => {
        expect(chooseUnit(d, "any", set, false).dimension).toBe(d);
        for (const choice of unitChoices(d, "any")) expect(choice.dimension).toBe(d);
      }),
      { numRuns: 2000 },
    );
    for (const { dimension: d, kind, point } of quantityNames.values()) {
      for (const set of [siSet, metricSet, inchSet, sample]) {
        const u: Unit = chooseUnit(d, kind, set, point);
        expect(u.dimension).toBe(d);
        expect(u.point).toBe(point);
        expect(kindsAgree(u.kind, kind)).toBeDefined();
      }
      expect(unitChoices(d, kind, point).length).toBeGreaterThan(0);
    }
  });

  it("offers only units of the kind", () => {
    const energy = unit("J");
    expect(unitChoices(energy.dimension, "torque")).not.toContain(energy);
    expect(unitChoices(energy.dimension, "energy")).toContain(energy);
    expect(unitChoices(unit("degC").dimension, "any", true)).toEqual(["degC", "K abs", "degF", "degR abs"].map(unit));
  });
});

describe("the units map of the front matter", () => {
  it("says what it could not take", () => {
    const { problems } = preferences({ lenght: "mm", force: "mm", stress: "Mpa", torque: "J", temperature: "K", moment: "N*m" });
    expect(problems.map(({ key, reason }) => [key, reason])).toEqual([
      ["lenght", "quantity"],
      ["force", "dimension"],
      ["stress", "unit"],
      ["torque", "dimension"],
    ]);
    expect(problems[0]).toMatchObject({ nearest: "length" });
  });

  it("takes every key that it lists, and kelvin as a point", () => {
    const units = new Map([...quantityNames].map(([, { unit: si }], i) => [preferenceKeys()[i] as string, si.text]));
    expect(preferences(Object.fromEntries(units)).problems).toEqual([]);
    const kelvin = preferences({ temperature: "K" }).preferences;
    expect(chooseUnit(unit("K").dimension, "any", kelvin, true).text).toBe("K abs");
  });
});

describe("names of dimensions", () => {
  it.each([
    ["N", "Force"],
    ["N·m", "Torque"],
    ["J", "Energy"],
    ["1/s", "Time^-1"],
    ["Hz", "Frequency"],
    ["rpm", "RotationalSpeed"],
    ["rad", "Angle"],
    ["%", "Number"],
    ["V/mV", "Number"],
    ["m^4", "SecondMomentOfArea"],
    ["m^2/s^3", "Length^2 · Time^-3"],
    ["N·m^2", "Force · Length^2"],
    ["N^2", "Force^2"],
    ["m^(1/2)", "Length^(1/2)"],
    ["EUR", "EUR"],
    ["EUR/kg", "Mass^-1 · EUR"],
    ["kg/s^3", "Force · Length^-1 · Time^-1"],
  ])("%s is %s", (text, name) => {
    expect(describeDimension(unit(text).dimension, unit(text).kind)).toBe(name);
  });

  it("says points and variables of inference", () => {
    expect(describeDimension(unit("K").dimension, "any", true)).toBe("Temperature");
    expect(describeDimension(unit("K").dimension, "any")).toBe("TemperatureDifference");
    const open = dimensionFrom([
      ["?7", rational(1)],
      ["?12", rational(-2)],
      ["length", rational(1)],
    ]);
    expect(describeDimension(open, "any")).toBe("Length · a^-2 · b");
  });

  it("shows a unit to write for each", () => {
    expect(typographic(sampleUnit(unit("N").dimension, "any"))).toBe("N");
    expect(typographic(sampleUnit(unit("m^2").dimension, "any"))).toBe("mm²");
  });
});

describe("quantities as shown", () => {
  it.each([
    ["30", "deg", "30°"],
    ["35", "%", "35 %"],
    ["23", "degC", "23 °C"],
    ["-5", "degC", "−5 °C"],
    ["0", "degC", "0 °C"],
    ["0.2", "1", "0.2"],
    ["9", "N·m", "9 N·m"],
    ["645.16", "mm^2", "645.16 mm²"],
    ["23e-6", "K^-1", "2.3e−5 K⁻¹"],
    ["2.5", "µm", "2.5 µm"],
  ])("%s %s shows as %s", (digits, text, shown) => {
    expect(showQuantity(literal(digits, unit(text)), unit(text), 5).text).toBe(shown);
  });
});

describe("advice", () => {
  it("knows the ways out of the usual clashes", () => {
    const advise = (a: string, b: string): string | undefined => clashAdvice(unit(a).dimension, unit(b).dimension, a, b);
    expect(advise("lb", "lbf")).toContain("write lbf for lb");
    expect(advise("N", "kg")).toContain("write kgf for kg");
    expect(advise("lb/in^2", "psi")).toContain("g_n");
    expect(advise("degC", "C")).toContain("write degC");
    expect(advise("K", "F")).toContain("write degF");
    expect(advise("EUR", "USD")).toContain("EUR/USD");
    expect(advise("1", "mm")).toContain("such as mm");
    expect(advise("mm", "N")).toBeUndefined();
    expect(clashAdvice(dimensionless, unit("mm").dimension)).toContain("bare number");
  });

  it("knows the ways between kinds", () => {
    expect(kindAdvice("angle", "number")).toContain("1 rad");
    expect(kindAdvice("torque", "energy")).toContain("angle");
    expect(kindAdvice("rotational speed", "frequency")).toContain("1 rev");
    expect(kindAdvice("any", "energy")).toBeUndefined();
  });
});
