// Expressions for the published values of tightening, by quantity.

import type { Inputs } from "./inputs.ts";
import { MissingInput } from "./inputs.ts";
import { after, type Entry } from "./joint-quantities.ts";

function designation(inputs: Inputs): string {
  const found = /\bM\d+(?:\.\d+)?(?:x\d+(?:\.\d+)?)?/.exec(inputs.text)?.[0];
  if (found !== undefined) return `thread("${found}")`;
  const inch = /(?:#\d+|\d+(?:\/\d+)?)-\d+(?: UN[CF])?/.exec(inputs.text)?.[0];
  if (inch === undefined) throw new MissingInput(`no thread in "${inputs.text}"`);
  return `thread("${inch}")`;
}

/** Least 0.2 % proof strength: ISO 898-1 table 3 (8.8 by size), ISO 3506-1 for stainless steel, or the value written. */
function proofStrength(inputs: Inputs): string {
  const written = /(?:Rp(?:0\.2)?|=)\s*=?\s*(\d+(?:\.\d+)?)\s*MPa/.exec(inputs.text)?.[1];
  if (written !== undefined) return `${written} MPa`;
  const grade = /(?:class\s+|A\d\/A\d-|A\d-)(\d+(?:\.\d+)?)/.exec(inputs.text)?.[1] ?? "";
  const size = Number(/\bM(\d+(?:\.\d+)?)/.exec(inputs.text)?.[1] ?? Number.NaN);
  const strengths: Readonly<Record<string, number>> = {
    "8.8": size <= 16 ? 640 : 660,
    "10.9": 940,
    "12.9": 1100,
    "50": 210,
    "70": 450,
    "80": 600,
  };
  const strength = strengths[grade];
  if (strength === undefined) throw new MissingInput(`no strength in "${inputs.text}"`);
  return `${strength} MPa`;
}

const friction = (i: Inputs): string => /mu(?:_[GK])?\s*=\s*(?:mu_[GK]\s*=\s*)?([\d.]+)/.exec(i.text)?.[1] ?? after(i, "mu");

function preload(i: Inputs, edition: "1986" | "2001-2015", utilisation = i.text.includes("nu=") ? after(i, "nu") : "0.9"): string {
  return `assembly_preload(${designation(i)}, ${proofStrength(i)}, ${friction(i)}, ${utilisation}, "${edition}")`;
}

const torque = (i: Inputs): string =>
  `torque_long_form(${preload(i, "2001-2015")}, ${designation(i)}, ${friction(i)}, ${friction(i)}, ${after(i, "D_Km", "mm")})`;

export const tighteningEntries: readonly Entry[] = [
  ["assembly preload F_M,Tab", (i) => preload(i, "2001-2015")],
  ["assembly preload F_M", (i) => preload(i, "2001-2015")],
  ["assembly preload, OLD edition model", (i) => preload(i, "1986")],
  ["preload at 90 % of Rp0.2, stainless", (i) => preload(i, "2001-2015")],
  ["tightening torque M_A", torque],
  ["tightening torque, stainless, 90 % of Rp0.2", torque],
  ["minimum preload F_M,min = F_M,max/alpha_A", (i) => `lowest_preload(${after(i, "F_M,max", "kN")}, ${after(i, "alpha_A")})`],
  ["friction class range mu_G, mu_K", (i) => `friction_class_range("${i.words[0] ?? ""}")`],
  ["torque factor K", (i) => `nut_factor("${i.text.trim()}")`],
  ["torque short form T=K F d", (i) => `torque_short_form(${after(i, "F", "lbf")}, ${after(i, "K")}, ${after(i, "d", "in")})`],
  [
    "torque long form",
    (i) =>
      `torque_screw_form(${after(i, "F", "lbf")}, ${/dm=[^;]*?([\d.]+) in/.exec(i.text)?.[1]} in, 1 in / ${after(i, "n")}, ${after(i, "f")}, ${after(i, "fc")}, 1.25 * ${after(i, "d", "in")})`,
  ],
  ["long-form K", (i) => `nut_factor_screw_form(${designation(i)}, ${after(i, "f")}, ${after(i, "fc")})`],
  ["preload 75 % of proof", (i) => `preload_of_proof(${after(i, "At", "in^2")}, ${/([\d.]+) ksi/.exec(i.text)?.[1]} ksi, 75 %)`],
];
