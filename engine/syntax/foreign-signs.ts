// Signs of other notations that are often typed or pasted, and the sign of this language.

import { quoteText } from "./text-literal.ts";

const meanings: ReadonlyMap<string, string> = new Map([
  ["+/-", "±"],
  ["+/−", "±"],
  ["===", "=="],
  ["!==", "!="],
  [":=", "="],
  ["**", "^"],
  ["&&", "and"],
  ["&", "and"],
  ["=<", "<="],
  ["=>", ">="],
  ["<>", "!="],
  ["!", "not "],
  [";", ","],
  ["–", "-"],
  ["—", "-"],
  ["∕", "/"],
  ["⁄", "/"],
  ["∙", "*"],
  ["•", "*"],
  ["√", "sqrt"],
  ["“", '"'],
  ["”", '"'],
  ["„", '"'],
  ["‘", '"'],
  ["’", '"'],
]);

/** What to write in its place; undefined when nothing was likely meant. */
export function foreignMeaning(sign: string): string | undefined {
  const known = meanings.get(sign);
  if (known !== undefined) return known;
  return sign.length > 1 && /^['“”„]/.test(sign) ? quoteText(sign.slice(1, -1)) : undefined;
}
