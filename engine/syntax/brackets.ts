// Which brackets are open at a token, and how deep a statement nests.

import type { IToken, TokenType } from "chevrotain";
import * as t from "./token-types.ts";

const closers: ReadonlyMap<TokenType, string> = new Map([
  [t.OpenRound, ")"],
  [t.OpenSquare, "]"],
  [t.OpenBrace, "}"],
  [t.OpenTable, "}"],
]);

const isCloser = (type: TokenType): boolean => type === t.CloseRound || type === t.CloseSquare || type === t.CloseBrace;

/** The text that closes an opening bracket. */
export const closerOf = (open: IToken): string => closers.get(open.tokenType) ?? "";

/** The opening brackets not yet closed before token `index`, outermost first. */
export function openAt(tokens: readonly IToken[], index: number): readonly IToken[] {
  const open: IToken[] = [];
  for (let i = 0; i < index; i += 1) {
    const token = tokens[i] as IToken;
    if (closers.has(token.tokenType)) open.push(token);
    else if (isCloser(token.tokenType)) open.pop();
  }
  return open;
}

/** Deeper than this a tree could overflow the stack of whoever walks it. */
const MOST_NESTED = 100;
const LONGEST_CHAIN = 1000;

const OPENING_WORDS: ReadonlySet<TokenType> = new Set([t.If, t.Else, t.Study, t.Solve, t.Group, t.Accumulate, t.Power, t.Not]);

/** The token at which a statement nests too deep or one item chains too many operators; undefined when it is within bounds. */
export function tooNested(tokens: readonly IToken[]): IToken | undefined {
  // Per open bracket: what nests (words and signs that run on to the right) and what chains, since the last separator.
  const frames = [{ nests: 0, chains: 0 }];
  let nested = 0;
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    const frame = frames[frames.length - 1] as { nests: number; chains: number };
    if (closers.has(type)) {
      frame.chains += 1;
      frames.push({ nests: 0, chains: 0 });
      nested += 1;
    } else if (isCloser(type)) {
      if (frames.length > 1) {
        frames.pop();
        nested -= frame.nests + 1;
      }
    } else if (type === t.Comma || t.isA(token, t.LineEnd)) {
      nested -= frame.nests;
      frame.nests = 0;
      frame.chains = 0;
    } else if (OPENING_WORDS.has(type) || (t.isA(token, t.Sign) && !endsOperand(tokens[i - 1]))) {
      frame.nests += 1;
      nested += 1;
    } else if (t.isA(token, t.Infix) || type === t.Dot || type === t.With || type === t.Where || type === t.Superscript) {
      frame.chains += 1;
    }
    if (MOST_NESTED < nested || LONGEST_CHAIN < frame.chains) return token;
  }
  return undefined;
}

const ENDS: ReadonlySet<TokenType> = new Set([
  ...[t.Unit, t.CloseRound, t.CloseSquare, t.CloseBrace, t.True, t.False, t.None, t.Superscript, t.Limits],
]);

/** Whether a value can end with this token. */
export const endsOperand = (token: IToken | undefined): boolean =>
  token !== undefined && (ENDS.has(token.tokenType) || t.isA(token, t.Name) || t.isA(token, t.Digits) || t.isA(token, t.Text));

const STARTS: ReadonlySet<TokenType> = new Set([t.OpenRound, t.OpenSquare, t.True, t.False, t.None, t.If, t.Match, t.TableWord, t.Not]);

/** Whether a value can begin with this token (a sign aside, which could as well be an operator). */
export const startsOperand = (token: IToken | undefined): boolean =>
  token !== undefined && (STARTS.has(token.tokenType) || t.isA(token, t.Name) || t.isA(token, t.Digits) || t.isA(token, t.Text));
