// Published quantities of fasteners (strength classes, products, holes) as expressions of the language.

import { type Inputs, MissingInput } from "./inputs.ts";
import type { Expression } from "./quantities.ts";
import { screwNamed } from "./screw-text.ts";

/** A row names its class as `class 8.8 d>16`: 20 mm stands for "above 16", 10 mm for any other size. */
const metric = (call: string): Expression => {
  return (i) => {
    const d = i.text.includes("d>16") ? "20 mm" : "10 mm";
    return `${call}(property_class("${metricClass(i)}"), ${d})`;
  };
};

const stainless = (call: string): Expression => {
  return (i) => `${call}(property_class("A2-${found(i, /class (\d+)/)}"), 6 mm)`;
};

/** `SAE J429 grade 2; over 3/4..1-1/2 in`: the upper end of the range stands for all of it. */
const inch = (call: string): Expression => {
  return (i) => {
    const end = found(i, /\.\.\s*([\d/-]+) in/);
    const [whole = 0, over = 0, under = 1] = end.includes("/")
      ? end.includes("-")
        ? end.split(/[-/]/).map(Number)
        : [0, ...end.split("/").map(Number)]
      : [Number(end)];
    return `${call}(property_class("grade ${found(i, /grade ([\d.]+)/)}"), ${whole + over / under} in)`;
  };
};

const either = (one: RegExp, then: Expression, other: Expression): Expression => {
  return (i) => (one.test(i.text) ? then(i) : other(i));
};

const nominal = (field: string): Expression => {
  return (i) => `(match (property_class("${metricClass(i)}").${field}) { none: 0 MPa, some v: v })`;
};

export const fastenerEntries: readonly (readonly [string, Expression])[] = [
  ["Rm nominal", nominal("R_m_nominal")],
  ["Rm min", either(/^A\d/, stainless("least_tensile_strength"), metric("least_tensile_strength"))],
  ["yield nominal", nominal("R_e_nominal")],
  ["yield min (ReL / Rpf / Rp0.2)", metric("least_yield_strength")],
  ["proof stress Sp", metric("proof_stress")],
  ["Rp0.2 min", stainless("least_yield_strength")],
  ["yield min", inch("least_yield_strength")],
  ["tensile min", inch("least_tensile_strength")],
  ["proof stress", inch("proof_stress")],
  [
    "minimum ultimate tensile load Fm,min = As,nom*Rm,min",
    (i) => `printed_ultimate_load(${thread(i)}, property_class("${metricClass(i)}"))`,
  ],
  ["proof load Fp = As,nom*Sp", (i) => `printed_proof_load(${thread(i)}, property_class("${metricClass(i)}"))`],
  ["minimum tensile load", (i) => `screw_tensile_capacity(${screwNamed(i)})`],
  ["proof load", (i) => `screw_proof_capacity(${screwNamed(i)})`],
  [
    "nut proof load",
    (i) =>
      `nut_capacity(Nut { thread = ${thread(i)}, kind = "hexagon", standard = "the row", s = 1 mm, m = 1 mm, grade = ${nutClass(i)} })`,
  ],
  ["hex head height k nominal", (i) => `hex_head(${thread(i)}).k`],
  [
    "hex width across flats s (nom=max)",
    (i) => `single(unique([hex_head(${thread(i)}).s, hex_nut(${thread(i)}).s, thin_nut(${thread(i)}).s]))`,
  ],
  ["nut height m max", (i) => `hex_nut(${thread(i)}).m`],
  ["nut s min", (i) => known(`hex_nut(${thread(i)}).s_min`)],
  ["nut e min", (i) => known(`hex_nut(${thread(i)}).e`)],
  ["nut m min", (i) => known(`hex_nut(${thread(i)}).m_min`)],
  ["thin nut height m max", (i) => `thin_nut(${thread(i)}).m`],
  ["insert lock nut height h max", (i) => `lock_nut(${thread(i)}).m`],
  ["insert lock nut thread height m min", (i) => known(`lock_nut(${thread(i)}).m_min`)],
  ["head diameter dk max (plain)", (i) => `socket_head(${thread(i)}).d_k`],
  ["head diameter dk max", (i) => `${socketed(i)}(${thread(i)}).d_k`],
  ["head height k max", (i) => `${socketed(i)}(${thread(i)}).k`],
  ["hex socket s nominal", (i) => `${socketed(i)}(${thread(i)}).s`],
  ["countersunk head theoretical dk max", (i) => `countersunk_head(${thread(i)}).d_k`],
  ["countersunk head height k max", (i) => `countersunk_head(${thread(i)}).k`],
  ["countersunk head dk min (actual)", (i) => known(`countersunk_head(${thread(i)}).d_k_min`)],
  ["square thin nut s", (i) => `thin_square_nut(${thread(i)}).s`],
  ["square thin nut m", (i) => `thin_square_nut(${thread(i)}).m`],
  ["square nut s", (i) => `square_nut(${thread(i)}).s`],
  ["square nut m", (i) => `square_nut(${thread(i)}).m`],
  ["washer inner diameter d1 min", (i) => `${washer(i)}.d_1`],
  ["washer outer diameter d2 max", (i) => `${washer(i)}.d_2`],
  ["washer thickness h nominal", (i) => `${washer(i)}.h`],
  ["clearance hole fine H12", (i) => `clearance_hole(${thread(i)}, fit = "fine")`],
  ["clearance hole medium H13", (i) => `clearance_hole(${thread(i)})`],
  ["clearance hole coarse H14", (i) => `clearance_hole(${thread(i)}, fit = "coarse")`],
];

/** A value that a record may lack; a missing one shows as zero and fails. */
const known = (value: string): string => `(match (${value}) { none: 0 mm, some v: v })`;

const socketed = (i: Inputs): string =>
  ({ "4762": "socket_head", "7380-1": "button_head", "10642": "countersunk_head" })[found(i, /ISO (4762|7380-1|10642)/)] ?? "";

const washer = (i: Inputs): string =>
  `washer(${thread(i)}, series = "${{ "7089": "normal", "7093-1": "large", "7092": "small" }[found(i, /ISO (7089|7092|7093-1)/)]}")`;

const metricClass = (i: Inputs): string => found(i, /class ([\d.]+)/);

function thread(i: Inputs): string {
  return `thread("${found(i, /^(M[\d.]+(?:x[\d.]+)?|#?\d[\d/-]*-\d+(?:\.\d+)?(?: UN[A-Z]+)?)/)}")`;
}

/** The table read lists class 12 in the regular style up to M4 and in the high style above. */
function nutClass(i: Inputs): string {
  const name = found(i, /class (\d+)/);
  const high = name === "12" && Number(found(i, /^M([\d.]+)/)) > 4;
  return high ? `nut_class("12", style = "high")` : `nut_class("${name}")`;
}

function found(i: Inputs, pattern: RegExp): string {
  const match = pattern.exec(i.text)?.[1];
  if (match === undefined) throw new MissingInput(`no ${pattern.source} in "${i.text}"`);
  return match;
}
