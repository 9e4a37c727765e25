// Tokens for highlighting: the parser's own lexer, and the tree where it knows better what a name or a bracket is.

import type { IToken, TokenType } from "chevrotain";
import { lex } from "./lexer.ts";
import { parseStatement } from "./parse.ts";
import * as t from "./token-types.ts";
import { type TokenKind, treeMarks } from "./tree-marks.ts";

export interface Token {
  readonly kind: TokenKind;
  readonly from: number;
  readonly to: number;
}

const kinds: ReadonlyMap<TokenType, TokenKind> = new Map<TokenType, TokenKind>([
  ...t.keywords.map((type): [TokenType, TokenKind] => [type, "keyword"]),
  [t.Digits, "number"],
  [t.BadDigits, "unknown"],
  [t.Unit, "unit"],
  [t.UnitSign, "unit"],
  [t.Text, "text"],
  [t.OpenText, "unknown"],
  [t.Comment, "comment"],
  [t.Comma, "punctuation"],
  [t.Colon, "punctuation"],
  [t.Dot, "punctuation"],
  [t.Bar, "bar"],
  [t.SecondBar, "bar"],
  [t.CellBar, "bar"],
  [t.NoteText, "note"],
  [t.ReferenceText, "reference"],
  ...[t.DoubleBar, t.ThirdBar, t.Stray, t.Foreign, t.Unknown].map((type): [TokenType, TokenKind] => [type, "unknown"]),
  ...[t.OpenRound, t.CloseRound, t.OpenSquare, t.CloseSquare, t.OpenBrace, t.OpenTable, t.CloseBrace].map(
    (type): [TokenType, TokenKind] => [type, "bracket"],
  ),
]);

/** Total on any text, of one statement or of many; sorted, without overlap, blanks left out. */
export function tokens(text: string): readonly Token[] {
  const out: Token[] = [];
  for (const from of statementStarts(text)) chunkTokens(text.slice(from.at, from.end), from.at, out);
  return out;
}

/** Every line at column 0 that is not blank and does not begin with a closing bracket begins a statement. */
function statementStarts(text: string): readonly { readonly at: number; readonly end: number }[] {
  const starts: number[] = [0];
  for (const match of text.matchAll(/\n(?=[^\s)\]}])/g)) starts.push(match.index + 1);
  return starts.map((at, i) => ({ at, end: starts[i + 1] ?? text.length }));
}

function chunkTokens(text: string, shift: number, out: Token[]): void {
  const lexed = lex(text);
  const { tree } = parseStatement(text);
  const known = treeMarks(tree);
  const complete = tree.kind !== "broken";
  const all = [...lexed.tokens, ...lexed.comments].sort((a, b) => a.startOffset - b.startOffset);
  for (let i = 0; i < all.length; i += 1) {
    const token = all[i] as IToken;
    if (t.isA(token, t.LineEnd)) continue;
    const mark = known.get(token.startOffset);
    if (mark !== undefined && mark.to > t.endOf(token)) {
      // A unit between brackets is one token here.
      out.push({ kind: mark.kind, from: token.startOffset + shift, to: mark.to + shift });
      while (all[i + 1] !== undefined && (all[i + 1] as IToken).startOffset < mark.to) i += 1;
      continue;
    }
    const text = trimmed(token);
    if (text.to > text.from) out.push({ kind: mark?.kind ?? kindOf(token, complete), from: text.from + shift, to: text.to + shift });
  }
}

/** Without the blanks round a raw column. */
function trimmed(token: IToken): { readonly from: number; readonly to: number } {
  const raw = token.image;
  const from = token.startOffset + raw.length - raw.trimStart().length;
  return { from, to: from + raw.trim().length };
}

const TYPE_WORDS: ReadonlySet<string> = new Set(["List", "Maybe", "Table"]);

function kindOf(token: IToken, complete: boolean): TokenKind {
  const known = kinds.get(token.tokenType);
  if (known !== undefined) return known;
  if (!t.isA(token, t.Name)) return "operator";
  // In a whole tree a word that is no name is a soft word in its place.
  if (!complete) return "name";
  return TYPE_WORDS.has(token.image) ? "type" : "keyword";
}
