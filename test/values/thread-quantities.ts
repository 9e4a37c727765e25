// Published quantities of thread tolerances, shear areas and engagement, as expressions of the language.

import { type Inputs, MissingInput } from "./inputs.ts";
import type { Expression } from "./quantities.ts";

const EXTERNAL = ["6g", "6e", "6f", "6h", "4h", "5h", "3h4h", "5g6g", "4g6g", "8g", "4h6h", "5h6h", "7g6g", "7h6h"];
const INTERNAL = ["6H", "5H", "4H", "4H5H", "7H", "6G", "7G", "5G", "8H", "8G"];

const metricLimits: readonly (readonly [string, Expression])[] = [
  ...EXTERNAL.flatMap((name): readonly (readonly [string, Expression])[] => [
    [`${name} major diameter max`, (i) => `metric_external_limits(${threadIn(i)}).major_max`],
    [`${name} major diameter min`, (i) => `metric_external_limits(${threadIn(i)}).major_min`],
    [`${name} minor diameter d1 max (flat root, d2max-0.433013P)`, (i) => `flat_root_max(${threadIn(i)})`],
    [`${name} minor diameter d3 min (rounded root, d2min-0.616025P)`, (i) => `rounded_root_min(${threadIn(i)})`],
  ]),
  ...INTERNAL.flatMap((name): readonly (readonly [string, Expression])[] => [
    [`${name} minor diameter min`, (i) => `metric_internal_limits(${threadIn(i)}).minor_min`],
    [`${name} minor diameter max`, (i) => `metric_internal_limits(${threadIn(i)}).minor_max`],
  ]),
  // Names of quantities do not tell 6g from 6G, so the class in the inputs says whose pitch diameter it is.
  ...[...EXTERNAL, ...INTERNAL].flatMap((name): readonly (readonly [string, Expression])[] => [
    [`${name} pitch diameter max`, (i) => `${limitsOf(i)}.pitch_max`],
    [`${name} pitch diameter min`, (i) => `${limitsOf(i)}.pitch_min`],
  ]),
];

const grades = (from: number, to: number): readonly number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);

export const threadEntries: readonly (readonly [string, Expression])[] = [
  // ISO 965-1: deviations and tolerances
  ["fundamental deviation EI of G", (i) => `fundamental_deviation(${i.value("P", "mm")}, "G").value`],
  ...["e", "f", "g"].map((position): readonly [string, Expression] => [
    `fundamental deviation |es| of ${position}`,
    (i) => `fundamental_deviation(${i.value("P", "mm")}, "${position}").value`,
  ]),
  ...grades(3, 9).flatMap((grade): readonly (readonly [string, Expression])[] => [
    [`TD1 minor diameter tolerance grade ${grade}`, (i) => `internal_minor_tolerance(${i.value("P", "mm")}, ${grade}).value`],
    [`Td major diameter tolerance grade ${grade}`, (i) => `external_major_tolerance(${i.value("P", "mm")}, ${grade}).value`],
    [
      `TD2 internal pitch diameter tolerance grade ${grade}`,
      (i) => `internal_pitch_tolerance(${stepEnd(i)}, ${i.value("P", "mm")}, ${grade}).value`,
    ],
    [
      `Td2 external pitch diameter tolerance grade ${grade}`,
      (i) => `external_pitch_tolerance(${stepEnd(i)}, ${i.value("P", "mm")}, ${grade}).value`,
    ],
  ]),
  ...metricLimits,
  ["normal (N) length of engagement over / up to", (i) => `normal_engagement(${threadIn(i)})`],
  // ASME B1.1: limits of size
  ["allowance", (i) => `unified_allowance(${threadIn(i)})`],
  ["major diameter max", (i) => `unified_external_limits(${threadIn(i)}).major_max`],
  ["major diameter min", (i) => `unified_external_limits(${threadIn(i)}).major_min`],
  ["pitch diameter max", (i) => `${limitsOf(i)}.pitch_max`],
  ["pitch diameter min", (i) => `${limitsOf(i)}.pitch_min`],
  ["minor diameter max", (i) => `unified_internal_limits(${threadIn(i)}).minor_max`],
  ["minor diameter min", (i) => `unified_internal_limits(${threadIn(i)}).minor_min`],
  // shear areas and engagement
  ["external thread shear area A_s", (i) => `external_shear_area(${threadIn(i)}, ${i.value("Le", "mm")})`],
  ["internal thread shear area A_n", (i) => `internal_shear_area(${threadIn(i)}, ${i.value("Le", "mm")})`],
  ["external shear area per inch of engagement", (i) => `external_shear_area(${threadIn(i)}, 1 in) / 1 in`],
  ["internal shear area per inch of engagement", (i) => `internal_shear_area(${threadIn(i)}, 1 in) / 1 in`],
  [
    "minimum length of engagement Le = 2 At/(pi Kn,max (1/2+0.57735 n (Es,min-Kn,max)))",
    (i) => `engagement_for_equal_materials(${threadIn(i)})`,
  ],
  [
    "J factor = (A_s*Rm_ext)/(A_n*Rm_int)",
    (i) => `strength_ratio(${threadIn(i)}, ${i.value("Rm_ext", "ksi")}, ${i.value("Rm_int", "ksi")})`,
  ],
  ["length of engagement needed in aluminium, worked example", (i) => engagementForLoad(i, /=([\d.]+) N\b/.exec(i.text)?.[1], "Ds")],
  ["same example with the correct minimum major diameter", (i) => engagementForLoad(i, /\bF=([\d.]+)/.exec(i.text)?.[1], "Ds,min")],
  ["C1 nut dilation", (i) => `nut_dilation_factor(${/([\d.]+)(?: \(.*\))?$/.exec(i.text)?.[1]} mm, 1 mm)`],
  ["C2 bolt thread bending", (i) => `screw_bending_factor(${i.value("Rs")})`],
  ["C3 nut thread bending", (i) => `nut_bending_factor(${i.value("Rs")})`],
];

/** `M5x0.8; 6g/6H`, `1/4-20 UNC; class 2A` or `1/4-20 UNC 2A/2B` as one designation. */
function threadIn(inputs: Inputs): string {
  const [first = "", ...rest] = inputs.words;
  const designation = /^(M\d[\d.x]*|#?\d[\d/-]*-\d+(?:\.\d+)?(?: UN[A-Z]*)?)(?: ([123][AB](?:\/[123][AB])?))?(?:-(\S+))?$/.exec(first);
  if (designation === null) throw new MissingInput(`no thread in "${inputs.text}"`);
  const written = designation[2] ?? designation[3] ?? rest.map((word) => word.replace(/^class /, "")).find((word) => CLASS.test(word));
  // ISO writes the nut before the screw; some of these rows have it the other way round.
  const parts = written?.split("/") ?? [];
  const [one, two] = parts;
  const ordered = two !== undefined && one !== undefined && /[GH]$/.test(two) ? `${two}/${one}` : written;
  return `thread("${designation[1]}${ordered === undefined ? "" : `-${ordered}`}")`;
}

const CLASS = /^(?:\d[a-hGH]){1,2}(?:\/(?:\d[a-hGH]){1,2})?$|^[123][AB](?:\/[123][AB])?$/;

function limitsOf(inputs: Inputs): string {
  const thread = threadIn(inputs);
  return `${/-\d[BGH]\w*"|-\d[GH]\d[GH]"/.test(thread) ? "internal" : "external"}_limits(${thread})`;
}

/** The upper end of `1.4<d<=2.8 mm` lies within its step. */
function stepEnd(inputs: Inputs): string {
  const end = /<=\s*([\d.]+)\s*mm/.exec(inputs.text)?.[1];
  if (end === undefined) throw new MissingInput(`no diameter step in "${inputs.text}"`);
  return `${end} mm`;
}

function engagementForLoad(inputs: Inputs, force: string | undefined, diameter: string): string {
  const pitch = /x([\d.]+)/.exec(inputs.text)?.[1];
  if (force === undefined || pitch === undefined) throw new MissingInput(`no force or pitch in "${inputs.text}"`);
  const area = `internal_thread_shear_area(${pitch} mm, 1 mm, ${inputs.value(diameter)}, ${inputs.value("En,max")})`;
  return `engagement_for_load(${force} N, ${inputs.value("tau")}, ${area} / 1 mm)`;
}
