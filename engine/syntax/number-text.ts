// Literal numbers as written: the good form, and the refused ones with what was most likely meant.

const NUMBER = "\\d+(?:_\\d+)*(?:\\.\\d+(?:_\\d+)*)?(?:[eE][-+−]?\\d+)?";
const GOOD = new RegExp(NUMBER, "y");
const COMMA = new RegExp(`(?:,${NUMBER})+`, "y");
const LOOSE_POINTS = /(?:\.\d+)+/y;
const BARE_POINT = new RegExp(`\\.${NUMBER}(?:\\.\\d+)*`, "y");

function matchEnd(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
}

export interface NumberMatch {
  readonly end: number;
  readonly good: boolean;
}

/** The number that begins at `at`, a refused form as one piece; undefined when there is none. */
export function matchNumber(text: string, at: number): NumberMatch | undefined {
  if (text[at] === ".") {
    const end = matchEnd(BARE_POINT, text, at);
    return end === -1 ? undefined : { end, good: false };
  }
  const end = matchEnd(GOOD, text, at);
  if (end === -1) return undefined;
  const comma = matchEnd(COMMA, text, end);
  if (comma !== -1) return { end: comma, good: false };
  if (text[end] !== "." || text[end + 1] === ".") return { end, good: true };
  const points = matchEnd(LOOSE_POINTS, text, end);
  return { end: points === -1 ? end + 1 : points, good: false };
}

/** `+0.2/-0`, the numbers of unequal limits. */
export const LIMITS = new RegExp(`\\+(${NUMBER})/[-−](${NUMBER})(?![.^(_\\d])`, "y");
/** `+0.2 mm/-0`: the unit was written twice. */
export const LIMITS_UNIT_TWICE = new RegExp(`\\+(${NUMBER}) ?([^\\s\\d/+|()]+)/[-−](${NUMBER})(?= ?\\2)`, "y");

/** The decimal text for the tree: no `_`, an ASCII minus in the exponent. */
export const plainDigits = (written: string): string => written.replace(/_/g, "").replace("−", "-");

/** What a number with commas between its digits can have meant; `separate`: it stands where items may be listed. */
export function commaMeanings(written: string, separate: boolean): readonly string[] {
  const listed = written.replace(/,/g, ", ");
  const meanings: string[] = [];
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(written) && (written.includes(".") || written.split(",").length > 2)) {
    meanings.push(written.replace(/,/g, ""));
  } else if (/^\d{1,3}(\.\d{3})+,\d+$/.test(written)) {
    meanings.push(written.replace(/\./g, "").replace(",", "."));
  } else if (/^\d+,\d+$/.test(written)) {
    meanings.push(written.replace(",", "."));
    if (/^\d{1,3},\d{3}$/.test(written)) meanings.push(written.replace(",", ""));
  }
  if (separate) meanings.push(listed);
  else if (meanings.length === 0) meanings.push(`[${listed}]`);
  return meanings;
}

/** `.5` is 0.5, `5.` is 5.0; undefined where no digit was lost but the number cannot be read (`1.2.3`). */
export function pointMeaning(written: string): string | undefined {
  if (/^\.[^.]+$/.test(written)) return `0${written}`;
  if (/^[^.]+\.$/.test(written)) return `${written}0`;
  return undefined;
}

/** The decimal text of p/q when it ends, else undefined. */
export function decimalOfFraction(p: string, q: string): string | undefined {
  if (!/^\d{1,9}$/.test(p) || !/^\d{1,9}$/.test(q) || Number(q) === 0) return undefined;
  let rest = Number(q);
  while (rest % 2 === 0) rest /= 2;
  while (rest % 5 === 0) rest /= 5;
  if (rest !== 1) return undefined;
  const text = String(Number(p) / Number(q));
  return text.includes("e") ? undefined : text;
}
