// Faults that single tokens show, each with its mend; they never depend on how the rest of the statement reads.

import type { IToken } from "chevrotain";
import type { Range, TextChange } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { endsOperand, openAt } from "./brackets.ts";
import { foreignMeaning } from "./foreign-signs.ts";
import { replaceMend } from "./mend.ts";
import { commaMeanings, decimalOfFraction, pointMeaning } from "./number-text.ts";
import * as t from "./token-types.ts";

const { endOf } = t;
const rangeOf = (token: IToken): Range => ({ from: token.startOffset, to: endOf(token) });

/** Faults in the order of the text; of unreadable signs only the first is named. */
export function lexicalFaults(text: string, tokens: readonly IToken[]): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  let unread = false;
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    if (type === t.BadDigits) found.push(badDigits(tokens, i));
    else if (type === t.OpenText) found.push(openText(token));
    else if (type === t.Divide) addDefined(found, fraction(tokens, i));
    else if (type === t.Unit) addDefined(found, badUnit(text, token));
    else if (type === t.Limits) addDefined(found, unitTwice(token));
    else if (type === t.DoubleBar) found.push(doubleBar(text, token));
    else if (type === t.ThirdBar) {
      if (tokens[i - 2]?.tokenType !== t.ThirdBar && tokens[i - 1]?.tokenType !== t.ThirdBar) found.push(extraBar(tokens, i));
    } else if ((type === t.Foreign || type === t.Unknown) && !unread) {
      unread = true;
      found.push(unreadable(token));
    }
  }
  return found;
}

function addDefined(found: Diagnostic[], diagnostic: Diagnostic | undefined): void {
  if (diagnostic !== undefined) found.push(diagnostic);
}

function badDigits(tokens: readonly IToken[], index: number): Diagnostic {
  const token = tokens[index] as IToken;
  const written = token.image;
  const at = rangeOf(token);
  if (!written.includes(",")) {
    const before = tokens[index - 1];
    const joined = before !== undefined && endOf(before) === at.from && endsOperand(before);
    const meaning = joined ? undefined : pointMeaning(written);
    const mends = meaning === undefined ? [] : [replaceMend(at.from, at.to, meaning)];
    return faults.pointWithoutDigit(at, { text: written, meaning }, { mends });
  }
  const meanings = commaMeanings(written, openAt(tokens, index).length > 0);
  const mends = meanings.map((meaning) => replaceMend(at.from, at.to, meaning));
  return faults.commaNumber(at, { text: written, meanings: meanings.join(" or ") }, { mends });
}

function openText(token: IToken): Diagnostic {
  const end = endOf(token);
  return faults.openText(rangeOf(token), { text: token.image }, { mends: [replaceMend(end, end, '"', `${token.image}"`)] });
}

/** `1/2 in`, `1 1/2 in`, `1/2x`: a literal binds tightest, so this would be 1 divided by (2 in). */
function fraction(tokens: readonly IToken[], index: number): Diagnostic | undefined {
  const [whole, above, slash, below, unit] = [-2, -1, 0, 1, 2].map((by) => tokens[index + by]);
  if (above?.tokenType !== t.Digits || below?.tokenType !== t.Digits || unit?.tokenType !== t.Unit) return undefined;
  if (endOf(above) !== slash?.startOffset || endOf(slash) !== below.startOffset) return undefined;
  const decimal = decimalOfFraction(above.image, below.image);
  const mixed = whole?.tokenType === t.Digits && /^\d+$/.test(whole.image);
  const from = mixed ? (whole as IToken).startOffset : above.startOffset;
  const exact = mixed ? `(${(whole as IToken).image} + ${above.image} / ${below.image})` : `${above.image} / ${below.image}`;
  const value = decimal === undefined ? undefined : mixed ? sumText((whole as IToken).image, decimal) : decimal;
  const meaning = value === undefined ? `${exact} * 1 ${unit.image}` : `${value} ${unit.image}`;
  const mends = [replaceMend(from, endOf(unit), meaning)];
  if (endOf(below) === unit.startOffset && /^\p{L}+$/u.test(unit.image))
    mends.push(replaceMend(from, endOf(unit), `${exact} * ${unit.image}`));
  return faults.fractionWithUnit(
    { from, to: endOf(unit) },
    { text: `${above.image}/${below.image} ${unit.image}`, number: `${below.image} ${unit.image}`, meaning },
    { mends },
  );
}

const sumText = (whole: string, decimal: string): string => String(Number(whole) + Number(decimal));

function badUnit(text: string, token: IToken): Diagnostic | undefined {
  const decimal = /\^([-+−]?)(\d+)\.(\d+)/.exec(token.image);
  if (decimal !== null) {
    const [whole, sign, units, tenths] = decimal as unknown as [string, string, string, string];
    const from = token.startOffset + decimal.index;
    const exponent = `^(${sign === "" ? "" : "-"}${fractionOf(`${units}.${tenths}`)})`;
    const mends = [replaceMend(from, from + whole.length, exponent)];
    return faults.unitExponent({ from, to: from + whole.length }, { text: whole, meaning: exponent }, { mends });
  }
  const end = endOf(token);
  if (!token.image.includes("/") || text[end] !== "/" || !/[\p{L}%°]/u.test(text[end + 1] ?? "")) return undefined;
  const more = (/^(?:\/[\p{L}%°][^\s/()|#,]*)+/u.exec(text.slice(end)) as RegExpExecArray)[0];
  const [above, ...below] = token.image.split("/") as [string, ...string[]];
  const divisors = [below.join("/").replace(/^\(|\)$/g, ""), ...more.slice(1).split("/")];
  const meaning = `${above}/(${divisors.join(" ")})`;
  const to = end + more.length;
  return faults.unitSlashes(
    { from: token.startOffset, to },
    { text: token.image + more, meaning },
    { mends: [replaceMend(token.startOffset, to, meaning)] },
  );
}

/** 2.5 as 5/2, 0.3 as 3/10. */
function fractionOf(decimal: string): string {
  let above = Number(decimal.replace(".", ""));
  let below = 10 ** (decimal.length - decimal.indexOf(".") - 1);
  for (const prime of [2, 5]) {
    while (above % prime === 0 && below % prime === 0) {
      above /= prime;
      below /= prime;
    }
  }
  return below === 1 ? String(above) : `${above}/${below}`;
}

function unitTwice(token: IToken): Diagnostic | undefined {
  const twice = /^(\+[\d_.eE+−-]+) ?[^\s\d/]+(\/.*)$/.exec(token.image);
  if (twice === null) return undefined;
  const meaning = `${twice[1]}${twice[2]}`;
  return faults.limitsUnit(rangeOf(token), { text: token.image }, { mends: [replaceMend(token.startOffset, endOf(token), meaning)] });
}

function doubleBar(text: string, token: IToken): Diagnostic {
  const at = rangeOf(token);
  const or = `${text[at.from - 1] === " " ? "" : " "}or${text[at.to] === " " ? "" : " "}`;
  return faults.doubleBar(at, {}, { mends: [replaceMend(at.from, at.to, or), replaceMend(at.from, at.to, "| |")] });
}

/** The mend takes every bar behind the second into the reference. */
function extraBar(tokens: readonly IToken[], index: number): Diagnostic {
  const changes: TextChange[] = [];
  for (let i = index; i < tokens.length && tokens[i]?.tokenType !== t.NoteEnd; i += 1) {
    const token = tokens[i] as IToken;
    if (token.tokenType === t.ThirdBar) changes.push({ ...rangeOf(token), insert: "\\|" });
  }
  return faults.extraBar(rangeOf(tokens[index] as IToken), {}, { mends: [{ label: "\\|", changes }] });
}

function unreadable(token: IToken): Diagnostic {
  const at = rangeOf(token);
  const meaning = foreignMeaning(token.image);
  if (meaning === undefined) {
    return faults.unknownSign(at, { sign: token.image });
  }
  return faults.foreignSign(at, { sign: token.image, meaning: meaning.trim() }, { mends: [replaceMend(at.from, at.to, meaning)] });
}
