// The one normal form of spaces between tokens, and of the signs themselves.

import type { IToken, TokenType } from "chevrotain";
import { endsOperand } from "./brackets.ts";
import { operatorText } from "./operators.ts";
import { plainExponent } from "./superscript.ts";
import * as t from "./token-types.ts";

/** A token as it is printed, with what spacing needs to know of it. */
export interface Piece {
  readonly text: string;
  readonly type: TokenType;
  /** A `+`, `-` or `not` before its operand. */
  readonly sign: boolean;
  /** A `.` that begins a column, a `[` that begins a list or holds a unit, a `(` that is no call's. */
  readonly starts: boolean;
  /** Set off by two spaces: the `as` of a definition. */
  readonly wide?: boolean;
}

const isOpening = (type: TokenType): boolean => type === t.OpenRound || type === t.OpenSquare;

/** `before`: the token before it, undefined where none can end a value. */
export function pieceOf(token: IToken, before: IToken | undefined): Piece {
  const type = token.tokenType;
  const afterValue = endsOperand(before);
  const sign = t.isA(token, t.Sign) && !afterValue;
  const starts = (type === t.Dot || isOpening(type)) && !afterValue;
  return { text: textOf(token, sign, before), type, sign, starts };
}

function textOf(token: IToken, sign: boolean, before: IToken | undefined): string {
  const type = token.tokenType;
  // Behind a unit a closed-up `^` would be part of it.
  if (type === t.Superscript) return `${before?.tokenType === t.Unit ? " ^ " : "^"}${plainExponent(token.image)}`;
  if (type === t.Minus) return "-";
  if (type === t.Limits) return token.image.replace(/−/g, "-");
  if (type === t.Unit) return token.image.replace(/[\u00a0\u202f]/g, " ");
  return sign ? token.image : (operatorText(type) ?? token.image);
}

const TIGHT_BEFORE: ReadonlySet<TokenType> = new Set([t.Comma, t.Colon, t.CloseRound, t.CloseSquare, t.Superscript]);

/** The space between two pieces of one line. */
export function spaceBetween(left: Piece, right: Piece, beforeLeft: Piece | undefined): string {
  if (TIGHT_BEFORE.has(right.type)) return "";
  if (isOpening(left.type)) return "";
  if ((left.type === t.OpenBrace || left.type === t.OpenTable) && right.type === t.CloseBrace) return "";
  if (left.sign) return left.type === t.Not ? " " : "";
  if (left.type === t.Dot) return "";
  if (right.type === t.Dot) return right.starts ? " " : "";
  if (isOpening(right.type) && !right.starts) return "";
  if (right.type === t.Power) return left.type === t.Unit ? " " : "";
  if (left.type === t.Power) return beforeLeft?.type === t.Unit ? " " : "";
  return " ";
}
