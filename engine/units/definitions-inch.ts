// The rows of the unit table: inch, pound and gravitational units.

import { type Definition, derived } from "./definitions.ts";

const agreement = "International Yard and Pound Agreement, 1959: 1 in = 0.0254 m, 1 lb = 0.45359237 kg";
const gravitational = `${agreement}; standard acceleration 9.80665 m/s^2 (3rd CGPM, 1901)`;
const customary = "NIST Handbook 44, appendix C: 1 US gallon = 231 in^3";

/** Values come from mathjs except where `exact` says otherwise. */
export const inchDefinitions: readonly Definition[] = [
  { symbol: "in", words: ["inch", "inches"], prefixes: "u", from: "in", description: "inch", ucum: [["[in_i]", 1]] },
  { symbol: "ft", words: ["foot", "feet"], from: "ft", description: "foot", ucum: [["[ft_i]", 1]] },
  { symbol: "yd", words: ["yard"], from: "yd", description: "yard", ucum: [["[yd_i]", 1]] },
  { symbol: "mi", words: ["mile"], from: "mi", description: "mile", ucum: [["[mi_i]", 1]] },
  {
    symbol: "mil",
    aliases: ["thou"],
    from: "mil",
    description: "thousandth of an inch, not a millimetre",
    ucum: [["[mil_i]", 1]],
  },
  {
    symbol: "rd",
    words: ["rod"],
    like: "m",
    exact: derived.rod,
    source: `${agreement}; 1 rod = 16.5 ft`,
    description: "rod",
    ucum: [
      ["33", 1],
      ["[ft_i]", 1],
      ["2", -1],
    ],
  },
  {
    symbol: "acre",
    words: ["acre"],
    like: "m^2",
    exact: derived.acre,
    source: `${agreement}; 1 acre = 43560 ft^2 of the international foot (the survey foot was retired in 2022, NIST and NGS, 85 FR 62698)`,
    description: "acre of 43560 ft^2",
    ucum: [
      ["43560", 1],
      ["[ft_i]", 2],
    ],
  },

  { symbol: "lb", from: "lb", description: "pound, a mass", ucum: [["[lb_av]", 1]] },
  { symbol: "oz", words: ["ounce"], from: "oz", description: "ounce, a mass", ucum: [["[oz_av]", 1]] },
  { symbol: "gr", words: ["grain"], from: "grain", description: "grain, a mass", ucum: [["[gr]", 1]] },
  {
    symbol: "slug",
    words: ["slug"],
    like: "g",
    exact: derived.slug,
    source: `${gravitational}; 1 slug = 1 lbf·s^2/ft`,
    description: "slug, a mass",
    ucum: [
      ["[lbf_av]", 1],
      ["s", 2],
      ["[ft_i]", -1],
    ],
  },

  { symbol: "lbf", prefixes: "k", from: "lbf", description: "pound-force", ucum: [["[lbf_av]", 1]] },
  {
    symbol: "ozf",
    like: "N",
    exact: derived.ounceForce,
    source: `${gravitational}; 1 ozf = lbf/16`,
    description: "ounce-force",
    ucum: [
      ["[lbf_av]", 1],
      ["16", -1],
    ],
  },
  {
    symbol: "kip",
    words: ["kip"],
    like: "N",
    exact: derived.kip,
    source: `${gravitational}; 1 kip = 1000 lbf`,
    description: "kip, 1000 lbf",
    ucum: [
      ["10*", 3],
      ["[lbf_av]", 1],
    ],
  },
  {
    symbol: "tonf",
    like: "N",
    exact: derived.tonForce,
    source: `${gravitational}; short ton-force, 2000 lbf`,
    description: "short ton-force, 2000 lbf",
    ucum: [
      ["2000", 1],
      ["[lbf_av]", 1],
    ],
  },
  {
    symbol: "gf",
    prefixes: "k",
    like: "N",
    exact: derived.gramForce,
    source: "standard acceleration 9.80665 m/s^2 (3rd CGPM, 1901) × 1 g",
    description: "gram-force",
    ucum: [["gf", 1]],
  },
  {
    symbol: "pdl",
    words: ["poundal"],
    like: "N",
    exact: derived.poundal,
    source: `${agreement}; 1 poundal = 1 lb·ft/s^2`,
    description: "poundal, a force",
    ucum: [
      ["[lb_av]", 1],
      ["[ft_i]", 1],
      ["s", -2],
    ],
  },

  {
    symbol: "psi",
    prefixes: "k M",
    like: "Pa",
    exact: derived.psi,
    source: `${gravitational}; 1 psi = 1 lbf/in^2`,
    description: "pound-force per square inch",
    ucum: [["[psi]", 1]],
  },
  {
    symbol: "ksi",
    like: "Pa",
    exact: derived.ksi,
    source: `${gravitational}; 1 ksi = 1000 lbf/in^2`,
    description: "1000 psi",
    ucum: [
      ["10*", 3],
      ["[psi]", 1],
    ],
  },
  {
    symbol: "Msi",
    like: "Pa",
    exact: derived.megapsi,
    source: `${gravitational}; 1 Msi = 1e6 lbf/in^2`,
    description: "1 000 000 psi",
    ucum: [
      ["10*", 6],
      ["[psi]", 1],
    ],
  },
  {
    symbol: "hp",
    words: ["horsepower"],
    like: "W",
    exact: derived.horsepower,
    source: `${gravitational}; 1 hp = 550 ft·lbf/s`,
    description: "mechanical horsepower, 550 ft·lbf/s",
    ucum: [["[HP]", 1]],
  },
  {
    symbol: "Btu",
    aliases: ["BTU"],
    kind: "energy",
    from: "BTU",
    description: "British thermal unit, International Table",
    ucum: [["[Btu_IT]", 1]],
  },

  {
    symbol: "gal",
    words: ["gallon"],
    from: "gal",
    description: "US gallon, 231 in^3",
    ucum: [["[gal_us]", 1]],
  },
  { symbol: "quart", words: ["quart"], from: "quart", description: "US liquid quart", ucum: [["[qt_us]", 1]] },
  { symbol: "pint", words: ["pint"], from: "pint", description: "US liquid pint", ucum: [["[pt_us]", 1]] },
  { symbol: "cup", words: ["cup"], from: "cup", description: "US cup", ucum: [["[cup_us]", 1]] },
  { symbol: "floz", from: "floz", description: "US fluid ounce", ucum: [["[foz_us]", 1]] },
  {
    symbol: "tablespoon",
    words: ["tablespoon"],
    like: "m^3",
    exact: derived.tablespoon,
    source: `${agreement}; ${customary}; 1 tablespoon = 1/256 gallon`,
    description: "US tablespoon",
    ucum: [["[tbs_us]", 1]],
  },
  {
    symbol: "teaspoon",
    words: ["teaspoon"],
    like: "m^3",
    exact: derived.teaspoon,
    source: `${agreement}; ${customary}; 1 teaspoon = 1/768 gallon`,
    description: "US teaspoon",
    ucum: [["[tsp_us]", 1]],
  },
  {
    symbol: "bbl",
    like: "m^3",
    exact: derived.barrel,
    source: `${agreement}; ${customary}; petroleum barrel of 42 gallons (API)`,
    description: "petroleum barrel, 42 gal",
    ucum: [["[bbl_us]", 1]],
  },
];
