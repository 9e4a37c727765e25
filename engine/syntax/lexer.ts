// Text to tokens, total on any text: what cannot be read becomes a token of its own, never an error of the lexer.
// One mode per kind of bracket, because line ends and bars mean different things inside each, and one per raw column.

import { type IToken, Lexer, type TokenType } from "chevrotain";
import * as t from "./token-types.ts";

const values: readonly TokenType[] = [
  t.Space,
  t.Comment,
  t.Unit,
  t.Digits,
  t.BadDigits,
  t.Limits,
  t.Foreign,
  ...t.keywords,
  ...t.softTypes,
  t.Name,
  t.Text,
  t.OpenText,
  ...[t.Dots, t.Dot, t.Comma, t.Colon, t.Equal, t.Assign, t.Unequal, t.AtMost, t.AtLeast, t.Less, t.Greater],
  ...[t.Plus, t.Minus, t.Times, t.Divide, t.Power, t.Superscript, t.PlusMinus, t.Tilde, t.UnitSign, t.Percent],
  ...[t.OpenTable, t.OpenRound, t.OpenSquare, t.OpenBrace],
];
const rest: readonly TokenType[] = [t.Stray, t.Unknown];
const bars: readonly TokenType[] = [t.DoubleBar, t.Bar];

const lexer = new Lexer(
  {
    defaultMode: "top",
    modes: {
      top: [...values, t.Newline, ...bars, ...rest],
      round: [...values, t.Newline, t.CloseRound, ...bars, ...rest],
      square: [...values, t.Newline, t.CloseSquare, ...bars, ...rest],
      brace: [...values, t.ItemEnd, t.Newline, t.CloseBrace, ...bars, ...rest],
      table: [...values, t.RowEnd, t.Newline, t.CloseBrace, t.CellBar, ...rest],
      note: [t.NoteText, t.SecondBar, t.NoteEnd],
      reference: [t.ReferenceText, t.ThirdBar, t.NoteEnd],
    },
  },
  { positionTracking: "onlyOffset", ensureOptimizations: true },
);

export interface Lexed {
  readonly tokens: readonly IToken[];
  /** In the order of the text; not among the tokens. */
  readonly comments: readonly IToken[];
}

export function lex(text: string): Lexed {
  const { tokens, groups } = lexer.tokenize(text);
  return { tokens, comments: groups.comments ?? [] };
}
