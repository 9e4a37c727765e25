// The one table from a published quantity (or the id of a row that is one of a kind) to an expression of the language.

import { fastenerEntries } from "./fastener-quantities.ts";
import type { Inputs } from "./inputs.ts";
import { MissingInput } from "./inputs.ts";
import { jointEntries } from "./joint-quantities.ts";
import { polymerEntries } from "./polymer-quantities.ts";
import { strengthEntries } from "./strength-quantities.ts";
import { threadEntries } from "./thread-quantities.ts";
import { tighteningEntries } from "./tightening-quantities.ts";

export type Expression = (inputs: Inputs) => string;

/** Looks a row up by its id first, then by its quantity; spaces and case do not count. */
export function expressionOf(id: string, quantity: string): Expression | undefined {
  return table.get(key(id)) ?? table.get(key(quantity));
}

const entries: readonly (readonly [string, Expression])[] = [
  // ISO 261, 262
  ["coarse pitch P", (i) => `coarse_pitch(${i.value("d", "mm")})`],
  ["ISO 262 fine pitch is in series", (i) => `is_iso_262_fine(${i.value("d", "mm")}, ${i.value("P", "mm")})`],
  ["ISO 261 pitch is in series", (i) => `is_iso_261(${i.value("d", "mm")}, ${i.value("P", "mm")})`],
  // basic profile
  ["height of fundamental triangle H", (i) => `triangle_height(${i.value("P", "mm")})`],
  ["basic pitch diameter d2=D2", (i) => `pitch_diameter(${threadOf(i)})`],
  ["basic minor diameter D1", (i) => `minor_diameter(${threadOf(i)})`],
  ["minor diameter at root d3", (i) => `iso_root_diameter(${threadOf(i)})`],
  ["external thread height h3 (17/24 H)", (i) => `external_thread_height(${threadOf(i)})`],
  ["basic thread height H1 (5/8 H)", (i) => `basic_thread_height(${threadOf(i)})`],
  ["root radius R=H/6", (i) => `root_radius(${threadOf(i)})`],
  ["lead angle", (i) => `lead_angle(${threadOf(i)})`],
  ["exact constants", shareOfTriangle],
  ["basic pitch diameter (inch)", (i) => `pitch_diameter(${threadOf(i)})`],
  ["basic internal minor diameter (inch)", (i) => `minor_diameter(${threadOf(i)})`],
  ["UNR external minor diameter, D-1.190785/n (reference)", (i) => `unr_root_diameter(${threadOf(i)})`],
  // areas
  ["root area A3=pi/4*d3^2", (i) => `root_area(${threadOf(i)})`],
  ["nominal stress area As,nom", (i) => `iso_stress_area(${threadOf(i)})`],
  ["stress area (5 figures)", (i) => `iso_stress_area(${threadOf(i)})`],
  ["stress area from d2 and d3: pi/4*((d2+d3)/2)^2", (i) => `stress_area_of_diameters(${i.value("d2", "mm")}, ${i.value("d3", "mm")})`],
  ["tensile stress area (formula 1, up to 100 ksi)", (i) => `unified_stress_area(${threadOf(i)})`],
  ["tensile stress area (formula 1)", (i) => `unified_stress_area(${threadOf(i)})`],
  [
    "tensile stress area (formula 2, above 100 ksi): pi*(Esmin/2-0.16238/n)^2",
    (i) => `high_strength_stress_area(${threadOf(i)}, ${i.value("Es,min", "in")})`,
  ],
  // percentage of thread
  ["percent of full thread (base 1.299038/n)", (i) => `trade_thread_percentage(${threadOf(i)}, ${i.value("hole", "in")})`],
  ["percent of full thread (base 1.299038 P)", (i) => `trade_thread_percentage(${threadOf(i)}, ${i.value("hole", "mm")})`],
  [
    "percent thread (unified convention) = 100*(d-hole)/(1.299 P)",
    (i) => `trade_thread_percentage(${threadOf(i)}, ${i.value("hole", "mm")})`,
  ],
  [
    "same hole, other base: percent of H1 depth (base 1.082532 P)",
    (i) => `overlap_thread_percentage(${threadOf(i)}, ${i.value("hole", "mm")})`,
  ],
  ['tap drill printed for "75 % thread"', (i) => `hole_for_trade_percentage(${threadOf(i)}, 75 %)`],
  ['tap drill printed for "50 % thread"', (i) => `hole_for_trade_percentage(${threadOf(i)}, 50 %)`],
  ["standard tap drill (D - P, nearest 0.1)", (i) => `tap_drill(${threadOf(i)})`],
  ...threadEntries,
  ...tighteningEntries,
  ...jointEntries,
  ...strengthEntries,
  ...fastenerEntries,
  ...polymerEntries,
];

function key(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/g, " ");
}

const table: ReadonlyMap<string, Expression> = new Map(entries.map(([quantity, expression]) => [key(quantity), expression]));

/** `d=6 mm; P=1 mm`, `D=0.25 in; n=20` or a designation among the words. */
function threadOf(inputs: Inputs): string {
  if (inputs.has("P")) return `metric_thread(${inputs.value(inputs.has("d") ? "d" : "D", "mm")}, ${inputs.value("P", "mm")})`;
  if (inputs.has("n")) return `unified_thread(${inputs.value("D", "in")}, ${inputs.value("n")})`;
  const designation = inputs.words.find((word) => /^M\d|^#?\d[\d/-]*-\d/.test(word));
  if (designation === undefined) throw new MissingInput(`no thread in "${inputs.text}"`);
  return `thread("${designation}")`;
}

/** `5/8*H/P`, `H/2/P`, `13/12 H/P (what it is for)`: a share of the fundamental triangle for a pitch of one. */
function shareOfTriangle(inputs: Inputs): string {
  const share = /^([\d./]+)?\s*\*?\s*H(?:\s*\/\s*(\d+))?\s*\/\s*P\b/.exec(inputs.text);
  if (share === null) throw new MissingInput(`no share of H/P in "${inputs.text}"`);
  return `${share[1] ?? "1"} * triangle_height(1 mm) / ${share[2] ?? "1"} / 1 mm`;
}
