// Every symbol of the unit table against three independent tables: GNU units, the UCUM implementation, mathjs.

import { spawnSync } from "node:child_process";
import ucum from "@lhncbc/ucum-lhc";
import { describe, expect, it } from "vitest";
import { currencyCodes, exponentOf, fromSI, literal, parseUnit, type Unit, unitSymbols } from "../../engine/units/index.ts";
import { agree, unit } from "./helpers.ts";

const symbols = unitSymbols().filter(({ symbol }) => !currencyCodes.has(symbol));
const scales = symbols.filter(({ point }) => !point);

/** SI bases as GNU units writes them; ours is coherent SI. */
const gnuBases = { length: "m", mass: "kg", time: "s", temperature: "K", current: "A", amount: "mol", luminosity: "cd" } as const;

/** Names that GNU units has for our symbols, where they differ; the factor stands before it. */
const gnuNames: Readonly<Record<string, string>> = {
  "°": "degree",
  "%": "percent",
  // GNU units has rad for the absorbed dose.
  rad: "radian",
  mrad: "1e-3 radian",
  µrad: "1e-6 radian",
  Å: "angstrom",
  P: "poise",
  mP: "1e-3 poise",
  cP: "1e-2 poise",
  St: "stokes",
  mSt: "1e-3 stokes",
  cSt: "1e-2 stokes",
  degC_diff: "degC",
  degF_diff: "degF",
  degR: "degrankine",
  d: "day",
  h: "hour",
  t: "tonne",
  lb: "pound",
  gr: "grain",
  rd: "rod",
  pdl: "poundal",
  Btu: "btu",
  gf: "gram force",
  kgf: "kilogram force",
  ozf: "ounce force",
  klbf: "1000 lbf",
  ksi: "1000 psi",
  Msi: "1e6 psi",
  kpsi: "1e3 psi",
  Mpsi: "1e6 psi",
  T: "tesla",
  nT: "1e-9 tesla",
  µT: "1e-6 tesla",
  mT: "1e-3 tesla",
  // GNU units means the tropical year; ours is the Julian year, which the IAU and UCUM (a_j) use.
  year: "julianyear",
  month: "julianyear/12",
};

function gnuUnits(): string | undefined {
  const found = spawnSync("units", ["--version"], { encoding: "utf8" });
  return found.status === 0 ? found.stdout : undefined;
}

describe("against GNU units", () => {
  it("is run where it must be", () => {
    if (process.env.CI !== undefined && process.env.CI !== "")
      expect(gnuUnits(), "GNU units is not installed (Debian package units)").toBeDefined();
    else expect(symbols.length).toBeGreaterThan(150);
  });

  it.runIf(gnuUnits() !== undefined)("gives the same SI value for every symbol (not run where GNU units is not installed)", () => {
    const ask = scales.map(({ shown, dimension }) => {
      const have = gnuNames[shown] ?? shown.replace("µ", "u").replace("Ω", "ohm");
      const want = dimension.exponents.map(([base, e]) => `${gnuBases[base as keyof typeof gnuBases]}^${e.n}`).join(" ") || "1";
      return `1 ${have}\n${want}\n`;
    });
    const out = spawnSync("units", ["-t", "-q", "-o", "%.17g"], { input: ask.join(""), encoding: "utf8" });
    const answers = out.stdout.trim().split("\n");
    expect(answers, out.stdout).toHaveLength(scales.length);
    const differ = scales
      .map(({ shown }, i) => ({ shown, gnu: Number(answers[i]), ours: literal("1", unit(shown)) }))
      .filter(({ gnu, ours }) => !agree(gnu, ours));
    expect(differ).toEqual([]);
  });

  it.runIf(gnuUnits() !== undefined)("gives the same temperature points", () => {
    const ask = "tempC(37.5)\nK\ntempF(98.6)\nK\ntempF(-40)\nK\n";
    const out = spawnSync("units", ["-t", "-q", "-o", "%.17g"], { input: ask, encoding: "utf8" });
    const ours = [literal("37.5", unit("degC")), literal("98.6", unit("degF")), literal("-40", unit("degF"))];
    out.stdout
      .trim()
      .split("\n")
      .forEach((line, i) => {
        expect(agree(Number(line), ours[i] as number)).toBe(true);
      });
    expect(ours).toHaveLength(out.stdout.trim().split("\n").length);
  });
});

const utils = ucum.UcumLhcUtils.getInstance();

/** UCUM's base vector: gram, metre, second, coulomb, kelvin, candela, radian. Coulomb stands for current times time. */
function expectedUcum(u: Unit): { readonly magnitude: number; readonly bases: Record<string, number> } {
  const of = (base: string): number => exponentOf(u.dimension, base).n;
  const bases: Record<string, number> = {
    g: of("mass"),
    m: of("length"),
    s: of("time") - of("current"),
    C: of("current"),
    K: of("temperature"),
    cd: of("luminosity"),
  };
  return {
    magnitude: literal("1", u) * 1000 ** of("mass"),
    bases: Object.fromEntries(Object.entries(bases).filter(([, e]) => e !== 0)),
  };
}

/** Where UCUM's value is not ours, and the standard that ours follows. */
const ucumDiffers: Readonly<Record<string, string>> = {
  eV: "UCUM holds the CODATA value of 1986; the SI Brochure of 2019 makes 1.602176634e-19 J exact",
  meV: "as eV",
  keV: "as eV",
  MeV: "as eV",
  GeV: "as eV",
  mmHg: "UCUM rounds to 133.322 Pa; the conventional millimetre of mercury is 133.322387415 Pa (ISO 80000-4:2006)",
};

describe("against the UCUM reference implementation", () => {
  // UCUM counts a mole as a number of particles, so amounts have no common base.
  const comparable = scales.filter(({ dimension }) => exponentOf(dimension, "amount").n === 0);

  it("gives the same SI value for every code", () => {
    const differ = comparable.flatMap(({ shown }) => {
      const u = unit(shown);
      const answer = utils.convertToBaseUnits(u.ucum, 1);
      if (answer.status !== "succeeded") return [{ shown, code: u.ucum, ucum: Number.NaN, ours: 0 }];
      const { rad: _, ...bases } = answer.unitToExp;
      const ours = expectedUcum(u);
      const same = agree(answer.magnitude, ours.magnitude, 1e-13) && JSON.stringify(sorted(bases)) === JSON.stringify(sorted(ours.bases));
      return same ? [] : [{ shown, code: u.ucum, ucum: answer.magnitude, ours: ours.magnitude }];
    });
    expect(differ.map(({ shown }) => shown).sort(), JSON.stringify(differ)).toEqual(Object.keys(ucumDiffers).sort());
  });

  it("knows the code of every unit, amounts, points and compounds included", () => {
    const compounds = [
      "N/mm^2",
      "W/(m·K)",
      "kgf·cm",
      "ozf·in",
      "in·lbf",
      "lb/in^3",
      "slug·ft^2",
      "K^-1",
      "ksi·in^2",
      "kip/in",
      "rd^2",
      "m^-1·K^-1",
    ];
    const invalid = [...symbols.map(({ shown }) => shown), ...compounds]
      .map((text) => unit(text))
      .filter(({ ucum: code }) => utils.validateUnitString(code).status !== "valid")
      .map(({ text, ucum: code }) => `${text}: ${code}`);
    expect(invalid).toEqual([]);
  });

  it("gives the same value for compounds", () => {
    for (const text of ["W/(m·K)", "kgf·cm", "ozf·in", "lb/in^3", "slug·ft^2", "kip/in", "rd^2", "torr·ozf", "klbf·µin"]) {
      const u = unit(text);
      const answer = utils.convertToBaseUnits(u.ucum, 1);
      expect(agree(answer.magnitude, expectedUcum(u).magnitude, 1e-13), `${text} ${u.ucum}`).toBe(true);
    }
  });

  it("gives the same temperature points", () => {
    expect(utils.convertUnitTo("Cel", 5, "K").toVal).toBeCloseTo(literal("5", unit("degC")), 10);
    expect(utils.convertUnitTo("[degF]", 98.6, "K").toVal).toBeCloseTo(literal("98.6", unit("degF")), 10);
  });
});

const sorted = (bases: Record<string, number>): [string, number][] => Object.entries(bases).sort(([a], [b]) => (a < b ? -1 : 1));

/** Symbols of ours under their names in mathjs; the others have the same name or are not there. */
const mathjsNames: Readonly<Record<string, string>> = {
  "°": "deg",
  Ω: "ohm",
  Å: "angstrom",
  d: "day",
  rev: "cycle",
  Btu: "BTU",
  slug: "",
  week: "week",
  gr: "grain",
  P: "",
  St: "",
  ppm: "",
  rpm: "",
  "%": "",
  degC_diff: "",
  degF_diff: "",
  degR: "",
  ksi: "",
  Msi: "",
  ozf: "",
  gf: "",
  tonf: "",
  pdl: "",
};

/** Where the float of mathjs is not ours, and the defining standard. A unit that is named here must really differ. */
const mathjsDiffers: Readonly<Record<string, string>> = {
  psi: "1 lbf/in^2 from the pound and yard agreement of 1959 and 9.80665 m/s^2",
  hp: "550 ft·lbf/s of the same constants",
  kip: "1000 lbf of the same constants",
  torr: "101325/760 Pa (NIST SP 811)",
  mmHg: "133.322387415 Pa (ISO 80000-4:2006)",
  eV: "1.602176634e-19 J (SI Brochure 2019)",
  acre: "43560 ft^2 of the international foot (NIST Handbook 44)",
  bbl: "petroleum barrel, 42 gal; mathjs means a beer barrel",
  teaspoon: "gallon/768 (NIST Handbook 44); mathjs rounds to 5 mL",
  tablespoon: "gallon/256 (NIST Handbook 44); mathjs rounds to 15 mL",
  rd: "16.5 ft of the international foot",
};

describe("against mathjs, where the definitions come from", () => {
  it("gives the float64 of mathjs but for the listed differences", async () => {
    const { unit: other } = await import("mathjs");
    const differ = scales
      .filter(({ shown, prefixed }) => !prefixed && mathjsNames[shown] !== "")
      .flatMap(({ shown }) => {
        const name = mathjsNames[shown] ?? shown;
        const theirs = (other(1, name).toSI().toJSON() as { value: number }).value;
        return agree(theirs, literal("1", unit(shown)), 3e-16) ? [] : [shown];
      });
    expect(differ.sort()).toEqual(Object.keys(mathjsDiffers).sort());
  }, 30_000);
});

describe("the table itself", () => {
  it("names a source for every symbol", () => {
    expect(symbols.filter(({ source }) => source === "")).toEqual([]);
  });

  it("reads each symbol and its typed form as one unit", () => {
    for (const { symbol, shown } of unitSymbols()) expect(unit(symbol)).toBe(unit(shown));
  });

  it("gives one reading to each text: no symbol is also a prefix with another symbol", () => {
    const shown = new Map<string, number>();
    for (const each of unitSymbols()) shown.set(each.shown, (shown.get(each.shown) ?? 0) + 1);
    expect([...shown].filter(([, count]) => count > 1)).toEqual([]);
  });

  it("is exact for the constants that define the inch units", () => {
    expect(unit("lbf").factor).toEqual({ n: 8896443230521n, d: 2000000000000n, pi: 0 });
    expect(unit("psi").factor).toEqual({ n: 8896443230521n, d: 1290320000n, pi: 0 });
    expect(fromSI(literal("1", unit("mi")), unit("in"))).toBe(63360);
  });

  it("has every currency as a dimension of its own", () => {
    const dimensions = new Set([...currencyCodes].map((code) => unit(code).dimension));
    expect(dimensions.size).toBe(currencyCodes.size);
    expect(currencyCodes.size).toBeGreaterThan(150);
    expect("problem" in parseUnit("kEUR")).toBe(true);
  });
});
