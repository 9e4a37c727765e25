// Literals and full texts: one rounding from exact factors, and back without loss.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromSI, fullNumber, literal, showQuantity, toSI, unitOne, unitSymbols } from "../../engine/units/index.ts";
import { unit } from "./helpers.ts";

describe("literals round once from the exact product", () => {
  it.each([
    ["12.7", "mm", 0.0127],
    ["5", "degC", 278.15],
    ["-1", "degC", 272.15],
    ["-40", "degF", 233.15],
    ["278.15", "K abs", 278.15],
    ["1", "in^2", 0.00064516],
    ["0.1", "km", 100],
    ["1e-3", "m", 0.001],
    ["1e−3", "m", 0.001],
    ["35", "%", 0.35],
    ["0.3", "%", 0.003],
    ["7", "%", 0.07],
    ["180", "deg", Math.PI],
    ["1", "rev", 2 * Math.PI],
    ["0", "in", 0],
    ["2.5", "kN/mm", 2.5e6],
    ["1", "psi", 6894.757293168362],
    ["0.000000000000000000000001", "km", 1e-21],
  ])("%s %s is %d", (digits, text, si) => {
    expect(literal(digits, unit(text))).toBe(si);
  });

  it("is what the float of the digits is, without a unit", () => {
    expect(literal("0.1", undefined)).toBe(0.1);
    expect(literal("0.1", unitOne)).toBe(0.1);
  });

  it("handles sizes beyond float64 without hanging", () => {
    expect(literal("1e400", unit("mm"))).toBe(Number.POSITIVE_INFINITY);
    expect(literal("1e999999999", unit("mm"))).toBe(Number.POSITIVE_INFINITY);
    expect(literal("1e-999999999", unit("km"))).toBe(0);
    expect(literal("1e310", unit("mm"))).toBe(1e307);
    expect(literal("5e-324", undefined)).toBe(5e-324);
    expect(literal("2.4703282292062328e-321", unit("mm"))).toBe(5e-324);
    expect(literal("1.7976931348623157e311", unit("mm"))).toBe(Number.MAX_VALUE);
  });

  it("agrees with the decimal text where the factor is a power of ten", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 20n }), fc.integer({ min: 0, max: 12 }), (whole, places) => {
        const digits = whole.toString().padStart(places + 1, "0");
        const text = places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
        expect(literal(text, unit("mm"))).toBe(Number(`${text}e-3`));
        expect(literal(text, unit("MN"))).toBe(Number(`${text}e6`));
        expect(literal(text, unit("mm^2"))).toBe(Number(`${text}e-6`));
      }),
      { numRuns: 2000 },
    );
  });

  it("takes irrational roots and powers of pi to the last bit", () => {
    expect(literal("1", unit("mm^(1/2)"))).toBe(0.03162277660168379);
    expect(literal("4", unit("m^(1/2)"))).toBe(4);
    expect(literal("1", unit("cm^(1/2)"))).toBe(0.1);
    expect(literal("1", unit("deg^2"))).toBe(0.0003046174197867086);
    expect(literal("1", unit("rad/deg"))).toBe(57.29577951308232);
  });
});

const anyUnit = fc.constantFrom(
  ...unitSymbols().map(({ shown }) => unit(shown)),
  ...["N/mm^2", "ft·lbf", "°/s", "rev/min", "mm^(1/2)", "lb/in^3", "K abs", "degR abs", "in^-3", "1"].map(unit),
);
const usual = fc.double({ min: -1e12, max: 1e12, noNaN: true, noDefaultInfinity: true });
const finite = fc.double({ noNaN: true, noDefaultInfinity: true });

describe("what is printed in full reads back to the same value (law 8)", () => {
  it("for values of usual size, in every unit", () => {
    fc.assert(
      fc.property(usual, anyUnit, (value, u) => {
        expect(literal(fullNumber(value, u), u) === value).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  it("for every float64, smallest and largest included", () => {
    fc.assert(
      fc.property(fc.oneof(finite, fc.constantFrom(5e-324, Number.MAX_VALUE, -5e-324, 2.2250738585072014e-308)), anyUnit, (value, u) => {
        expect(literal(fullNumber(value, u), u) === value).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it("and is what was typed, up to 15 digits", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999_999 }), fc.integer({ min: -6, max: 6 }), anyUnit, (whole, exponent, u) => {
        const value = literal(`${whole}e${exponent}`, u);
        // A point near 0 K on a scale far from it holds fewer digits.
        if (u.point)
          expect(Number(fullNumber(value, u))).toBeCloseTo(whole * 10 ** exponent, -Math.ceil(Math.log10(Math.max(1, value))) + 13);
        else expect(Number(fullNumber(value, u))).toBe(Number(`${whole}e${exponent}`));
      }),
      { numRuns: 3000 },
    );
  });

  it("has a plain minus and no grouping, for programs", () => {
    expect(showQuantity(-1234.5, unit("N"), 3)).toEqual({ number: "−1235", unit: "N", text: "−1235 N", full: "-1234.5" });
  });
});

describe("computed numbers", () => {
  it("go to SI and back in one rounding each way", () => {
    fc.assert(
      fc.property(usual, anyUnit, (value, u) => {
        fc.pre(value === 0 || Math.abs(value) > 1e-200);
        const there = fromSI(value, u);
        const scale = Math.abs(value) + Math.abs(literal("0", u));
        expect(Math.abs(toSI(there, u) - value)).toBeLessThanOrEqual(scale * 5e-16);
      }),
      { numRuns: 2000 },
    );
  });

  it("convert points with their offset", () => {
    expect(fromSI(literal("5", unit("degC")), unit("degF"))).toBeCloseTo(41, 12);
    expect(fullNumber(literal("5", unit("degC")), unit("degF"))).toBe("41");
    expect(toSI(5, unit("degC"))).toBe(278.15);
    expect(fromSI(0, unit("K abs"))).toBe(0);
  });

  it("pass what is not finite through", () => {
    expect(fromSI(Number.NaN, unit("mm"))).toBeNaN();
    expect(toSI(Number.POSITIVE_INFINITY, unit("in"))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("speed", () => {
  it("reads a usual literal in about a microsecond", () => {
    const mm = unit("mm");
    const started = process.hrtime.bigint();
    let sum = 0;
    for (let i = 0; i < 200_000; i += 1) sum += literal("12.75", mm);
    const each = Number(process.hrtime.bigint() - started) / 200_000;
    expect(sum).toBeGreaterThan(0);
    // Generous: shared machines; the aim is 1 µs.
    expect(each).toBeLessThan(5000);
  });
});
