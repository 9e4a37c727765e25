// How far a unit reaches in a text. Whether its symbols exist is not asked here (engine/units decides that).

import { isNeverUnit } from "./words.ts";

const SYMBOL = /[%‰]|°\p{L}*|\p{L}[\p{L}\p{M}\p{Nd}_]*/uy;
// A decimal exponent is read as part of the unit, so that `3 m^2.5` is refused and not taken for (3 m)^2.5.
const EXPONENT = /\^[-+−]?\d+(?:\.\d+)?(?![\d_])|\^\([-+−]?\d+(?:\/\d+)?\)|⁻?[⁰¹²³⁴-⁹]+/y;

function matchEnd(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

function factorEnd(text: string, at: number): number {
  const symbol = matchEnd(SYMBOL, text, at);
  if (symbol === -1 || isNeverUnit(text.slice(at, symbol))) return -1;
  const exponent = matchEnd(EXPONENT, text, symbol);
  return exponent === -1 ? symbol : exponent;
}

const MULTIPLY = " \u00a0\u202f·⋅*";

/** One factor or more, multiplied by one space, `·` or closed-up `*`. */
function factorsEnd(text: string, at: number): number {
  let end = factorEnd(text, at);
  while (end !== -1 && end < text.length && MULTIPLY.includes(text[end] as string)) {
    const next = factorEnd(text, end + 1);
    if (next === -1) break;
    end = next;
  }
  return end;
}

function divisorEnd(text: string, at: number): number {
  if (text[at] !== "(") return factorEnd(text, at);
  const inside = factorsEnd(text, at + 1);
  return inside !== -1 && text[inside] === ")" ? inside + 1 : -1;
}

/** End of the longest unit that begins at `at`, or -1: factors, then at most one closed-up `/` with a factor or `( )`. */
export function unitEnd(text: string, at: number): number {
  const end = factorsEnd(text, at);
  if (end === -1 || text[end] !== "/") return end;
  const divided = divisorEnd(text, end + 1);
  return divided === -1 ? end : divided;
}

/** As `unitEnd`; `1` and a leading `1/` may stand after `as`. */
export function shownUnitEnd(text: string, at: number): number {
  if (text[at] !== "1") return unitEnd(text, at);
  if (text[at + 1] !== "/") return at + 1;
  const divided = divisorEnd(text, at + 2);
  return divided === -1 ? at + 1 : divided;
}
