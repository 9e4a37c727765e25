// Two values side by side with no operator between them: what was most likely meant.

import type { IToken } from "chevrotain";
import type { Range } from "../base/index.ts";
import { type Diagnostic, faults, type Mend } from "../diagnostics/index.ts";
import { startsOperand } from "./brackets.ts";
import { replaceMend } from "./mend.ts";
import * as t from "./token-types.ts";
import { isNeverUnit } from "./words.ts";

const { endOf } = t;
const rangeOf = (token: IToken): Range => ({ from: token.startOffset, to: endOf(token) });

/** `tokens[index]` begins a value right behind another. */
export function adjacentFault(text: string, tokens: readonly IToken[], index: number): Diagnostic {
  const before = tokens[index - 1] as IToken;
  const at = tokens[index] as IToken;
  const next = tokens[index + 1];
  const between = text.slice(endOf(before), at.startOffset);
  if (before.tokenType === t.Unit) {
    const letter = /(?:^|[ ·*])([xX])$/.exec(before.image);
    if (letter !== null) return timesLetter(text, { from: endOf(before) - 1, to: endOf(before) });
    if (before.image.endsWith("%")) return remainder(tokens, index - 2, index);
  }
  if (/^[xX]$/.test(at.image) && startsOperand(next)) return timesLetter(text, rangeOf(at));
  if (before.tokenType === t.Digits && t.isA(at, t.Name) && /^[ \t]{2,}$/.test(between) && !isNeverUnit(at.image)) {
    const mends = [replaceMend(endOf(before), at.startOffset, " ", `${before.image} ${at.image}`)];
    return faults.unitGap({ from: before.startOffset, to: endOf(at) }, { number: before.image, unit: at.image }, { mends });
  }
  const slots = { left: before.image, right: at.image };
  const range = { from: before.startOffset, to: endOf(at) };
  return faults.sideBySide(range, slots, { mends: adjacentMends(tokens, index, between) });
}

function adjacentMends(tokens: readonly IToken[], index: number, between: string): readonly Mend[] {
  const before = tokens[index - 1] as IToken;
  const at = tokens[index] as IToken;
  const mends: Mend[] = [];
  if (before.tokenType === t.Digits && at.tokenType === t.Digits && /^\d{3}(\.\d+)?$/.test(at.image) && between === " ") {
    mends.push(replaceMend(endOf(before), at.startOffset, "", before.image + at.image));
  }
  if (at.tokenType === t.Text) {
    if (!t.isA(before, t.Name)) return mends;
    const call = `(${at.image})`;
    return [...mends, replaceMend(endOf(before), endOf(at), call, before.image + call)];
  }
  const products = [t.OpenRound, t.Digits, t.Unit, t.CloseRound, t.CloseSquare];
  const product = (token: IToken): boolean => t.isA(token, t.Name) || products.includes(token.tokenType);
  if (product(before) && product(at)) {
    mends.push(replaceMend(endOf(before), at.startOffset, " * ", `${before.image} * ${at.image}`));
  }
  return mends;
}

/** `2 x 3`: the letter for the sign. */
function timesLetter(text: string, letter: Range): Diagnostic {
  let { from, to } = letter;
  while (/[ \t]/.test(text[from - 1] ?? "")) from -= 1;
  while (/[ \t]/.test(text[to] ?? "")) to += 1;
  return faults.timesLetter(letter, { letter: text.slice(letter.from, letter.to) }, { mends: [replaceMend(from, to, " * ")] });
}

/** `10 % 3`: `%` is percent and nothing else; `first` and `second` are where the two numbers begin. */
export function remainder(tokens: readonly IToken[], first: number, second: number): Diagnostic {
  const left = tokens[first];
  const right = tokens[second];
  const sign = tokens[second - 1] as IToken;
  const unit = tokens[second + 1];
  const rightEnd = right === undefined ? endOf(sign) : unit?.tokenType === t.Unit ? endOf(unit) : endOf(right);
  const simple = (token: IToken | undefined): token is IToken =>
    token !== undefined && (t.isA(token, t.Name) || token.tokenType === t.Digits);
  const whole = simple(left) && simple(right) && ![t.OpenRound, t.Dot, t.OpenSquare].includes(unit?.tokenType as never);
  const beforeLeft = tokens[first - 1]?.tokenType;
  if (!whole || beforeLeft === t.Dot) return faults.percentOnly(rangeOf(sign), { example: "mod(a, b)" });
  const meaning = `mod(${left.image}, ${right.image})`;
  const mends = [replaceMend(left.startOffset, rightEnd, meaning)];
  return faults.percentOnly({ from: left.startOffset, to: rightEnd }, { example: meaning }, { mends });
}
