// Screws and classes of published rows as records of the language.

import { type Inputs, MissingInput } from "./inputs.ts";

/** The thread that a row names: `M8x1`, `M6`, `1/4-20 UNC`, `#10-32`. */
export function threadNamed(inputs: Inputs): string {
  const metric = /\bM\d+(?:\.\d+)?(?:x\d+(?:\.\d+)?)?/.exec(inputs.text)?.[0];
  const found = metric ?? /(?:#\d+|\d+(?:-\d+)?(?:\/\d+)?)-\d+(?:\.\d+)?(?: UN[A-Z]+)?/.exec(inputs.text)?.[0];
  if (found === undefined) throw new MissingInput(`no thread in "${inputs.text}"`);
  return `thread("${found}")`;
}

/** The class that a row names, from the library; where it states a yield strength of its own, a class with that. */
export function classNamed(inputs: Inputs): string {
  const written = /(?:Rp(?:0\.2)?|=)\s*=?\s*(\d+(?:\.\d+)?)\s*MPa/.exec(inputs.text)?.[1];
  if (written !== undefined) {
    const band = `StrengthBand { d_max = 100 mm, R_m = ${written} MPa, R_e = ${written} MPa }`;
    return `PropertyClass { name = "as stated", standard = "the row", bands = [${band}] }`;
  }
  const steel = /class\s+(\d+\.\d+)/.exec(inputs.text)?.[1];
  const stainless = /(A\d)(?:\/A\d)*-(\d+)/.exec(inputs.text);
  const inch = /grade\s+(\d+(?:\.\d+)?)/.exec(inputs.text)?.[1];
  const name = steel ?? (stainless !== null ? `${stainless[1]}-${stainless[2]}` : inch === undefined ? undefined : `grade ${inch}`);
  if (name === undefined) throw new MissingInput(`no strength in "${inputs.text}"`);
  return `property_class("${name}")`;
}

/** A screw whose head only has a face: `face` is its bearing diameter. */
export const screwOf = (thread: string, grade: string, face = "10 mm"): string =>
  `Screw { thread = ${thread}, grade = ${grade}, head = Head { kind = "hexagon", standard = "the row", d_k = ${face}, k = 1 mm, s = 1 mm, d_w = ${face} } }`;

export const screwNamed = (inputs: Inputs, face = "10 mm"): string => screwOf(threadNamed(inputs), classNamed(inputs), face);
