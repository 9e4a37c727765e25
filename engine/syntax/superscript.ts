// `x²`, `r⁻¹`: superscripts as a power.

import type { IToken } from "chevrotain";
import type { Range } from "../base/index.ts";
import { endOf } from "./token-types.ts";
import type { Binary, Expression } from "./tree.ts";

const DIGITS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** `²` is `2`, `⁻¹` is `-1`. */
export const plainExponent = (superscript: string): string =>
  superscript.startsWith("⁻") ? `-${plainExponent(superscript.slice(1))}` : [...superscript].map((digit) => DIGITS.indexOf(digit)).join("");

export function superscriptPower(left: Expression, token: IToken, range: Range): Binary {
  const at = { from: token.startOffset, to: endOf(token) };
  const exponent = plainExponent(token.image);
  const negative = exponent.startsWith("-");
  const number: Expression = { kind: "number", digits: negative ? exponent.slice(1) : exponent, absolute: false, range: at };
  const right: Expression = negative ? { kind: "unary", operator: "-", of: number, range: at } : number;
  return { kind: "binary", operator: "^", operatorRange: at, left, right, range };
}
