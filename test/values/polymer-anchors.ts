// Expressions for the published values of threads in plastic.

import { type Inputs, MissingInput } from "./inputs.ts";
import { after, type Entry, or } from "./joint-inputs.ts";

/** `M5x0.8` or `M8` anywhere among the inputs. */
function thread(i: Inputs): string {
  const designation = /\bM\d+(?:\.\d+)?(?:x\d+(?:\.\d+)?)?/.exec(i.text)?.[0];
  if (designation === undefined) throw new MissingInput(`no thread in "${i.text}"`);
  return `thread("${designation}")`;
}

/** A number that follows a word, with `=` or without. */
function said(i: Inputs, word: string): string {
  const found = new RegExp(`\\b${word}\\s*=?\\s*(\\d+(?:\\.\\d+)?)`).exec(i.text)?.[1];
  if (found === undefined) throw new MissingInput(`no ${word} in "${i.text}"`);
  return found;
}

/** Depth over pitch; a row that names a metric thread has its pitch in the designation. */
function shapeFactor(i: Inputs): string {
  const pitch = /\bpitch\b/.test(i.text) ? `${said(i, "pitch")} mm` : `${thread(i)}.P`;
  return `thread_shape_factor(${said(i, "depth")} mm, ${pitch})`;
}

/** The worked screw M3 in PETG; a row that says only what it adds takes the rest from there. */
const stripped = (i: Inputs): string =>
  `thread_torque_of_pull(${or(i, "F", "N", "1157 N")}, ${or(i, "p", "mm", "0.5 mm")}, ${or(i, "r", "mm", "1.3375 mm")}, ${or(i, "f", "", "0.2")})`;

export const polymerAnchorEntries: readonly Entry[] = [
  [
    "internal-thread strip area, nominal ISO profile A = 0.875*pi*d*Le",
    (i) => `nominal_strip_area(${thread(i)}.d, ${after(i, "Le", "mm")})`,
  ],
  ["external-thread strip area A = 0.75*pi*D1*Le", (i) => `basic_external_shear_area(${thread(i)}, ${after(i, "Le", "mm")})`],
  ["thread shape factor TSF = 0.5+0.57735*depth/pitch", shapeFactor],
  ["thread shape factor, coarse screw", shapeFactor],
  ["helical-coil STI tap major diameter = d + 1.29904 P", (i) => `wire_insert_major_diameter(${thread(i)})`],
  ["flank bearing area one turn = pi/4 (d^2 - hole^2)", (i) => `flank_area_per_turn(${thread(i)}.d, ${said(i, "hole")} mm)`],
  ["CV33", stripped],
  ["CV34", (i) => `${stripped(i)} + bearing_torque(${or(i, "F", "N", "1157 N")}, ${or(i, "f", "", "0.2")}, ${after(i, "Dm", "mm")})`],
  [
    "assembly torque-force, thread+head T=F(0.159P+0.578 mu d2+mu Dm/2)",
    (i) =>
      `plastic_tightening_torque(${after(i, "F", "N")}, ${after(i, "P", "mm")}, ${after(i, "d2", "mm")}, ${after(i, "mu")}, 60 deg, ${after(i, "mu")}, ${after(i, "Dm", "mm")})`,
  ],
  ["helical-coil/printed-thread ratio by diameter only", (i) => `3.41 kN * coil_ratio_by_diameter(${thread(i)})`],
];
