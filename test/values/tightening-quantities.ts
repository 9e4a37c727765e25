// Expressions for the published values of tightening, by quantity.

import type { Inputs } from "./inputs.ts";
import { after, type Entry } from "./joint-inputs.ts";
import { screwNamed, threadNamed } from "./screw-text.ts";

const friction = (i: Inputs): string => /mu(?:_[GK])?\s*=\s*(?:mu_[GK]\s*=\s*)?([\d.]+)/.exec(i.text)?.[1] ?? after(i, "mu");

function preload(i: Inputs, edition: "1986" | "2001-2015", utilisation = i.text.includes("nu=") ? after(i, "nu") : "0.9"): string {
  return `screw_yield_preload(${screwNamed(i)}, ${friction(i)}, ${utilisation}, "${edition}")`;
}

/** The mean diameter of the bearing face is stated; a ring of 1.2 and 0.8 times it has just that. */
const torque = (i: Inputs): string => {
  const D_Km = after(i, "D_Km", "mm");
  const screw = screwNamed(i, `1.2 * ${D_Km}`);
  return `tightening_torque(${screw}, ${preload(i, "2001-2015")}, ${friction(i)}, ${friction(i)}, 0.8 * ${D_Km})`;
};

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
  ["long-form K", (i) => `nut_factor_screw_form(${threadNamed(i)}, ${after(i, "f")}, ${after(i, "fc")})`],
  ["preload 75 % of proof", (i) => `screw_proof_preload(${screwNamed(i)}, 75 %)`],
];
