// Dimensions and kinds: the laws of an abelian group, and what products do with torque, angle and turning.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addRational,
  dimensionFrom,
  dimensionless,
  dimensionOf,
  divide,
  divideRational,
  exponentBetween,
  exponentOf,
  kindOfPower,
  kindOfProduct,
  kindOfQuotient,
  kindsAgree,
  length,
  mass,
  multiply,
  multiplyRational,
  negateRational,
  power,
  rational,
  rationalFromDecimal,
  time,
  withinExponentLimit,
} from "../../engine/units/index.ts";
import { unit } from "./helpers.ts";

const fraction = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 6 })).map(([n, d]) => rational(n, d));
const base = fc.constantFrom("length", "mass", "time", "temperature", "EUR", "?1", "?12", "?2");
const dimension = fc.array(fc.tuple(base, fraction), { maxLength: 5 }).map(dimensionFrom);

describe("dimensions are an abelian group with rational powers", () => {
  it("products commute, associate, have a neutral and an inverse", () => {
    fc.assert(
      fc.property(dimension, dimension, dimension, (a, b, c) => {
        expect(multiply(a, b)).toBe(multiply(b, a));
        expect(multiply(multiply(a, b), c)).toBe(multiply(a, multiply(b, c)));
        expect(multiply(a, dimensionless)).toBe(a);
        expect(divide(a, a)).toBe(dimensionless);
        expect(multiply(divide(a, b), b)).toBe(a);
        expect(divide(dimensionless, divide(a, b))).toBe(divide(b, a));
      }),
    );
  });

  it("powers add, multiply and undo each other", () => {
    fc.assert(
      fc.property(dimension, fraction, fraction, (a, r, s) => {
        expect(multiply(power(a, r), power(a, s))).toBe(power(a, addRational(r, s)));
        expect(power(power(a, r), s)).toBe(power(a, multiplyRational(r, s)));
        if (r.n !== 0) expect(power(power(a, r), divideRational(rational(1), r))).toBe(a);
        expect(power(a, negateRational(r))).toBe(divide(dimensionless, power(a, r)));
      }),
    );
  });

  it("finds the power between two dimensions", () => {
    fc.assert(
      fc.property(dimension, fraction, (a, r) => {
        if (a !== dimensionless) expect(exponentBetween(power(a, r), a)).toEqual(r);
      }),
    );
    expect(exponentBetween(multiply(length, mass), length)).toBeUndefined();
  });

  it("is one object for equal vectors, sorted, without zeros", () => {
    const made = dimensionFrom([
      ["time", rational(-2)],
      ["length", rational(1)],
      ["mass", rational(1)],
      ["EUR", rational(0)],
    ]);
    expect(made).toBe(unit("N").dimension);
    expect(made.exponents.map(([name]) => name)).toEqual(["length", "mass", "time"]);
    expect(dimensionOf("EUR")).toBe(unit("EUR").dimension);
    expect(exponentOf(made, "time")).toEqual({ n: -2, d: 1 });
    expect(exponentOf(made, "current")).toEqual({ n: 0, d: 1 });
  });

  it("tells exponents that no physics has", () => {
    expect(withinExponentLimit(unit("N").dimension)).toBe(true);
    expect(withinExponentLimit(power(length, rational(100_000)))).toBe(false);
  });
});

describe("fractions", () => {
  it.each([
    ["0.5", { n: 1, d: 2 }],
    ["-2", { n: -2, d: 1 }],
    ["1.25", { n: 5, d: 4 }],
    ["0", { n: 0, d: 1 }],
  ])("%s from decimal text", (text, expected) => {
    expect(rationalFromDecimal(text)).toEqual(expected);
  });

  it("refuses what is no plain decimal", () => {
    expect(rationalFromDecimal("1e3")).toBeUndefined();
    expect(rationalFromDecimal("x")).toBeUndefined();
    expect(rationalFromDecimal("0.1234567")).toBeUndefined();
  });
});

describe("kinds", () => {
  const moment = unit("N·m").dimension;
  const rate = unit("s^-1").dimension;
  const none = dimensionless;

  it.each([
    ["N·m", "any"],
    ["ft·lbf", "any"],
    ["1/s", "any"],
    ["J", "energy"],
    ["kWh", "energy"],
    ["Hz", "frequency"],
    ["rpm", "rotational speed"],
    ["rad/s", "rotational speed"],
    ["deg/s", "rotational speed"],
    ["rev/min", "rotational speed"],
    ["rad", "angle"],
    ["deg", "angle"],
    ["rev", "angle"],
    ["%", "number"],
    ["ppm", "number"],
    ["1", "number"],
    ["V/mV", "any"],
    ["mm/in", "any"],
    ["J/rad", "torque"],
    ["Hz·rev", "rotational speed"],
    ["rpm·min", "angle"],
    ["%/K", "any"],
    ["rad·m", "any"],
  ] as const)("%s is of kind %s", (text, kind) => {
    expect(unit(text).kind).toBe(kind);
  });

  it("a number keeps the kind of the other side", () => {
    expect(kindOfProduct(none, "number", moment, "torque")).toBe("torque");
    expect(kindOfProduct(rate, "frequency", none, "number")).toBe("frequency");
    expect(kindOfQuotient(moment, "energy", none, "number")).toBe("energy");
    expect(kindOfProduct(none, "number", none, "angle")).toBe("angle");
    expect(kindOfProduct(none, "number", none, "number")).toBe("number");
  });

  it("torque times angle is energy, energy per angle torque", () => {
    expect(kindOfProduct(moment, "torque", none, "angle")).toBe("energy");
    expect(kindOfProduct(none, "angle", moment, "torque")).toBe("energy");
    expect(kindOfQuotient(moment, "energy", none, "angle")).toBe("torque");
  });

  it("angle per time turns, turning for a time is an angle", () => {
    expect(kindOfQuotient(none, "angle", time, "any")).toBe("rotational speed");
    expect(kindOfProduct(rate, "rotational speed", time, "any")).toBe("angle");
    expect(kindOfProduct(time, "any", rate, "rotational speed")).toBe("angle");
    expect(kindOfQuotient(none, "number", time, "any")).toBe("any");
    expect(kindOfProduct(rate, "frequency", time, "any")).toBe("any");
  });

  it("ratios are open, and open what an angle would change", () => {
    expect(kindOfQuotient(none, "angle", none, "angle")).toBe("any");
    expect(kindOfQuotient(rate, "rotational speed", rate, "rotational speed")).toBe("any");
    expect(kindOfQuotient(length, "any", length, "any")).toBe("any");
    expect(kindOfProduct(none, "any", moment, "torque")).toBe("any");
    expect(kindOfProduct(none, "any", moment, "energy")).toBe("energy");
    expect(kindOfQuotient(moment, "torque", none, "any")).toBe("torque");
    expect(kindOfQuotient(moment, "energy", none, "any")).toBe("any");
  });

  it("an angle times a length is a length", () => {
    expect(kindOfProduct(none, "angle", length, "any")).toBe("any");
  });

  it("unlike kinds do not agree, any agrees with each", () => {
    expect(kindsAgree("angle", "number")).toBeUndefined();
    expect(kindsAgree("torque", "energy")).toBeUndefined();
    expect(kindsAgree("frequency", "rotational speed")).toBeUndefined();
    expect(kindsAgree("any", "torque")).toBe("torque");
    expect(kindsAgree("energy", "any")).toBe("energy");
    expect(kindsAgree("any", "any")).toBe("any");
    expect(kindsAgree("angle", "angle")).toBe("angle");
  });

  it("powers lose the kind, except a number's and the first", () => {
    expect(kindOfPower(none, "number", rational(2))).toBe("number");
    expect(kindOfPower(none, "angle", rational(2))).toBe("any");
    expect(kindOfPower(moment, "torque", rational(1))).toBe("torque");
    expect(kindOfPower(moment, "torque", rational(0))).toBe("number");
  });
});
