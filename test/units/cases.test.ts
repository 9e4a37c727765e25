// Faults seen elsewhere, by their ids, as far as units, literals and display can show them; the language shows the rest.

import { describe, expect, it } from "vitest";
import {
  chooseUnit,
  clashAdvice,
  divide,
  fromSI,
  fullNumber,
  kindOfProduct,
  kindOfQuotient,
  kindsAgree,
  literal,
  metricSet,
  multiply,
  showMargin,
  showNumber,
  showQuantity,
  siSet,
  toSI,
  typographic,
} from "../../engine/units/index.ts";
import { agree, problem, unit } from "./helpers.ts";

const si = (digits: string, text: string): number => literal(digits, unit(text));
/** As the pad prints an SI value in a unit. */
const shown = (value: number, text: string, digits = 6): string => showQuantity(value, unit(text), digits).text;

describe("temperature", () => {
  it("F004: 5 °C is 41 °F and 278.15 K", () => {
    expect(shown(si("5", "degC"), "degF")).toBe("41 °F");
    expect(shown(si("5", "degC"), "K abs")).toBe("278.15 K abs");
  });
  it("F005: -1 °C is 272.15 K", () => {
    expect(si("-1", "degC")).toBe(272.15);
  });
});

describe("unit conversion", () => {
  it("F011: lb/gal times ft against psi is mass against force, with the ways out named", () => {
    const product = multiply(unit("lb/gal").dimension, unit("ft").dimension);
    expect(product).not.toBe(unit("psi").dimension);
    const advice = clashAdvice(product, unit("psi").dimension, "lb/gal·ft", "psi");
    expect(advice).toContain("lbf");
    expect(advice).toContain("standard gravity");
  });
  it("F012: 100 kN is 22.48 kip, and kip is no mass", () => {
    expect(shown(si("100", "kN"), "kip", 4)).toBe("22.48 kip");
    expect(unit("kip").dimension).toBe(unit("lbf").dimension);
    expect(si("1", "kip")).toBe(si("1000", "lbf"));
  });
  it("F013: psi has one value by each of its names", () => {
    expect(shown(si("1", "psi"), "Pa", 13)).toBe("6894.757293168 Pa");
    expect(si("1", "psi")).toBe(si("1", "lbf/in^2"));
    expect(si("1", "ksi")).toBe(si("1000", "psi"));
  });
  it("F015: lbf is a force, ft·lbf a moment or energy", () => {
    expect(unit("lbf").dimension).toBe(unit("N").dimension);
    expect(unit("ft·lbf").dimension).toBe(unit("J").dimension);
    expect(unit("ft·lbf").kind).toBe("any");
  });
  it("F016: 1000 psi is 6.894757 MPa, the base set is coherent SI", () => {
    expect(shown(si("1000", "psi"), "MPa", 7)).toBe("6.894757 MPa");
    expect(agree(si("1", "N"), si("1", "kg·m/s^2"))).toBe(true);
  });
  it("F017: 600 MPa is 87 023 psi", () => {
    expect(shown(si("600", "MPa"), "psi", 5)).toBe("87023 psi");
  });
  it("F019: 1 ft times 1 m is 0.3048 m2", () => {
    expect(si("1", "ft") * si("1", "m")).toBe(0.3048);
    expect(si("1", "ft·m")).toBe(0.3048);
  });
  it("F020: changing the shown unit alters no value", () => {
    const value = si("12.7", "mm");
    for (const text of ["in", "m", "ft", "µm", "mil"]) expect(si(fullNumber(value, unit(text)), text)).toBe(value);
  });
  it("F021: 1 cm3 and 9.99999999999998e-07 m3 have one dimension and agree within a relative tolerance", () => {
    expect(unit("cm^3").dimension).toBe(unit("m^3").dimension);
    expect(agree(si("1", "cm^3"), si("9.99999999999998e-07", "m^3"), 1e-12)).toBe(true);
  });
  it("F022: 1 in2 is 645.16 mm2", () => {
    expect(shown(si("1", "in^2"), "mm^2")).toBe("645.16 mm²");
  });
  it("F023: 4.4 in·lbf is 0.497 N·m, and a torque is shown with its full unit in N·m", () => {
    const value = si("4.4", "in·lbf");
    const chosen = chooseUnit(unit("in·lbf").dimension, "torque", metricSet, false);
    expect(showQuantity(value, chosen, 3).text).toBe("0.497 N·m");
  });
  it("F024: kgf·cm is accepted and 5 of it are 0.490 N·m", () => {
    expect(shown(si("5", "kgf·cm"), "N·m", 5)).toBe("0.49033 N·m");
  });
  it("F025: a bare 3 is no length", () => {
    expect(divide(unit("N·m").dimension, unit("1").dimension)).not.toBe(unit("N").dimension);
    expect(clashAdvice(unit("1").dimension, unit("mm").dimension, "", "mm")).toContain("mm");
    expect(shown(si("0.5", "N·m") / (0.2 * si("3", "mm")), "N", 3)).toBe("833 N");
  });
});

describe("unit display", () => {
  it("F026: a unit that was asked for stays: 14.8733 J in ft·lbf is 10.97", () => {
    expect(shown((230 * 3.88) / 60, "ft·lbf", 4)).toBe("10.97 ft·lbf");
  });
  it("F027: 0.5 N times 1 m shows as N·m, never J", () => {
    const { dimension } = unit("N·m");
    const kind = kindOfProduct(unit("N").dimension, "any", unit("m").dimension, "any");
    for (const set of [siSet, metricSet]) expect(typographic(chooseUnit(dimension, kind, set, false))).toBe("N·m");
    expect(typographic(chooseUnit(dimension, "energy", siSet, false))).toBe("J");
  });
  it("F028: 2 J/(K·g) times 2 K shows 4 J/g when asked, and no foreign unit by itself", () => {
    const dimension = multiply(unit("J/(K·g)").dimension, unit("K").dimension);
    expect(dimension).toBe(unit("J/g").dimension);
    expect(shown(si("2", "J/(K·g)") * si("2", "K"), "J/g")).toBe("4 J/g");
    expect(chooseUnit(dimension, "any", siSet, false).text).toBe("m^2/s^2");
  });
  it("F029: 2 J/(K·g) times 2 g is 4 J/K, cancelled", () => {
    const dimension = multiply(unit("J/(K·g)").dimension, unit("g").dimension);
    expect(typographic(chooseUnit(dimension, "any", siSet, false))).toBe("J/K");
    expect(shown(si("2", "J/(K·g)") * si("2", "g"), "J/K")).toBe("4 J/K");
  });
  it("F030: 10 mg/mL times 100 mL is 1000 mg", () => {
    expect(shown(si("10", "mg/mL") * si("100", "mL"), "mg")).toBe("1000 mg");
  });
  it("F031: 1 mile/gallon has no fractional power", () => {
    expect(chooseUnit(unit("mile/gallon").dimension, "any", siSet, false).text).toBe("m^-2");
  });
  it("F032: 50 ksi asked in ksi is 50 ksi", () => {
    expect(showQuantity(si("50", "ksi"), unit("ksi"), 6)).toEqual({ number: "50", unit: "ksi", text: "50 ksi", full: "50" });
  });
});

describe("angle and silent coercion", () => {
  it("F036: 720 deg/s is no Hz; divided by a revolution it is 2 per second", () => {
    expect(kindsAgree(unit("deg/s").kind, unit("Hz").kind)).toBeUndefined();
    expect(
      kindsAgree(kindOfQuotient(unit("deg/s").dimension, unit("deg/s").kind, unit("rev").dimension, unit("rev").kind), "frequency"),
    ).toBe("frequency");
    expect(si("720", "deg/s") / si("1", "cycle")).toBeCloseTo(2, 14);
  });
  it("F038: V/mV is 1000", () => {
    expect(si("1", "V/mV")).toBe(1000);
  });
  it("F039: exp(-(150 nm)/(1.6e-7 m)) is 0.3916", () => {
    expect(Math.exp(-si("150", "nm") / si("1.6e-7", "m"))).toBeCloseTo(0.3916, 4);
  });
  it("F040: sqrt(1 m / 1 cm) is 10", () => {
    expect(Math.sqrt(si("1", "m") / si("1", "cm"))).toBe(10);
  });
  it("F041: sin((pi/2) cm/m) is 0.01571", () => {
    expect(Math.sin((Math.PI / 2) * si("1", "cm/m"))).toBeCloseTo(0.01571, 5);
  });
  it("F042: 3 s·kHz is 3000", () => {
    expect(si("3", "s·kHz")).toBe(3000);
  });
});

describe("percent and parser", () => {
  it("F047: 10 % and 20 % are 30 %", () => {
    expect(shown(si("10", "%") + si("20", "%"), "%")).toBe("30 %");
  });
  it("F059: gramm, inchy and degrees C are refused with the nearest symbol", () => {
    expect(problem("gramm")).toMatchObject({ problem: "unknown", nearest: "gram" });
    expect(problem("inchy")).toMatchObject({ problem: "unknown", nearest: "inch" });
    expect(problem("degrees C")).toMatchObject({ problem: "unknown", nearest: "degC", mend: "degC" });
    expect(problem("W/(m·deg C)")).toMatchObject({ problem: "unknown", nearest: "degC" });
  });
  it("F060: pt is not in the set", () => {
    expect(problem("pt")).toMatchObject({ problem: "unknown" });
    expect(problem("pt").advice).toContain("pint");
  });
  it("F061: both micro signs and u are micro, one is written", () => {
    for (const text of ["\u00b5m", "\u03bcm", "um"]) expect(unit(text).text).toBe("\u00b5m");
  });
  it("F065: 0.001 is 0.001", () => {
    expect(literal("0.001", undefined)).toBe(0.001);
  });
});

describe("precision/rounding", () => {
  it("F067: 4.35 x 100 shows 435, the value is untouched", () => {
    expect(showNumber(4.35 * 100, 6)).toBe("435");
    expect(fullNumber(4.35 * 100, unit("1"))).toBe("434.99999999999994");
  });
  it("F068: 1.005 to three digits is 1.01: half away from zero on the decimal text", () => {
    expect(showNumber(1.005, 3)).toBe("1.01");
    expect(showMargin(1.005)).toBe("1.01");
    expect(shown(si("1.005", "mm"), "mm", 3)).toBe("1.01 mm");
  });
  it("F069: 1 cm + 1 mm shows like 1 mm + 1 cm", () => {
    const [a, b] = [si("1", "cm"), si("1", "mm")];
    expect(shown(a + b, "m")).toBe(shown(b + a, "m"));
    expect(shown(a + b, "m")).toBe("0.011 m");
  });
  it("F070: a margin of -0.004 at two decimals is shown with more digits", () => {
    expect(showMargin(-0.004)).toBe("−0.004");
  });
  it("F072: -0.4 N is never -0", () => {
    expect(shown(si("-0.4", "N"), "N", 1)).toBe("−0.4 N");
    expect(showMargin(-0.4, 0)).toBe("−0.4");
    expect(showNumber(-0, 3)).toBe("0");
  });
  it("F094: the full digits go with a copy", () => {
    const third = 1 / 3;
    const { full } = showQuantity(toSI(third, unit("mm")), unit("mm"), 4);
    expect(si(full, "mm")).toBe(toSI(third, unit("mm")));
    expect(fromSI(si(full, "mm"), unit("mm"))).toBeCloseTo(third, 15);
  });
});
