// The vocabulary that lexer and parser share. Order within a lexer mode is decided in lexer.ts.

import { createToken, type IToken, Lexer, type TokenType } from "chevrotain";
import { LIMITS, LIMITS_UNIT_TWICE, matchNumber } from "./number-text.ts";
import { shownUnitEnd, unitEnd } from "./unit-text.ts";

// ------------------------------------------------------------------------------------------- categories

const category = (name: string, ...parents: TokenType[]): TokenType =>
  createToken({ name, pattern: Lexer.NA, ...(parents.length > 0 ? { categories: parents } : {}) });

/** What may stand between the brackets of a type's or a head's unit. */
export const Piece = category("Piece");
/** A name or a reserved word: what may name a field. */
export const Word = category("Word", Piece);
export const Infix = category("Infix", Piece);
export const Sign = category("Sign");
export const LineEnd = category("LineEnd");

// ------------------------------------------------------------------------------------------- patterns

// First characters, so that the lexer can choose by them: every code below 256, and one of each bucket that chevrotain
// makes of the codes above (255 wide).
const codes = (from: number, to: number): number[] => Array.from({ length: to - from }, (_, i) => from + i);
const BEYOND_LATIN = [...Array.from({ length: 256 }, (_, i) => 256 + 255 * i), 0xffff].filter((code) => code <= 0xffff);
const EVERY = [...codes(0, 256), ...BEYOND_LATIN];
const LETTERS = [...codes(65, 91), ...codes(97, 123), 95, ...codes(128, 256), ...BEYOND_LATIN];
const DIGITS = codes(48, 58);

const WORD = /[\p{L}_][\p{L}\p{M}\p{Nd}_]*/uy;
const SPACES = " \u00a0\u202f\u2009";

/** End of a token; chevrotain's offset-only tokens carry no end. */
export const endOf = (token: IToken): number => token.startOffset + token.image.length;

const isCategory = (type: TokenType, parent: TokenType): boolean =>
  type === parent || (type.CATEGORIES?.some((one) => isCategory(one, parent)) ?? false);

/** Whether a token is of a type or of a category. */
export const isA = (token: IToken, type: TokenType): boolean => isCategory(token.tokenType, type);

const last = (tokens: readonly IToken[]): IToken | undefined => tokens[tokens.length - 1];

function matchName(text: string, at: number): [string] | null {
  WORD.lastIndex = at;
  const found = WORD.exec(text);
  return found === null ? null : [found[0]];
}

/** A unit follows a number directly or after exactly one space, and `as` after any space. */
function matchUnit(text: string, at: number, tokens: IToken[]): [string] | null {
  const before = last(tokens);
  if (before === undefined) return null;
  if (before.tokenType === As) {
    if (tokens[0]?.tokenType === Use) return null;
    const end = shownUnitEnd(text, at);
    return end === -1 ? null : [text.slice(at, end)];
  }
  if (before.tokenType !== Digits && before.tokenType !== BadDigits && before.tokenType !== Limits) return null;
  const gap = at - endOf(before);
  if (gap > 1 || (gap === 1 && !SPACES.includes(text[at - 1] as string))) return null;
  const end = unitEnd(text, at);
  return end === -1 ? null : [text.slice(at, end)];
}

function numberOf(good: boolean): (text: string, at: number, tokens: IToken[]) => [string] | null {
  return (text, at) => {
    const match = matchNumber(text, at);
    return match === undefined || match.good !== good ? null : [text.slice(at, match.end)];
  };
}

function matchLimits(text: string, at: number, tokens: IToken[]): [string] | null {
  const before = last(tokens);
  if (before === undefined) return null;
  const type = before.tokenType;
  const literal = type === Digits || type === Unit;
  const operand = literal || type === Name || type === CloseRound || type === CloseSquare;
  if (!operand || (!literal && endOf(before) === at)) return null;
  for (const pattern of [LIMITS, LIMITS_UNIT_TWICE]) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found !== null) return [found[0]];
  }
  return null;
}

function matchOpenText(text: string, at: number): [string] | null {
  let end = at + 1;
  while (end < text.length && text[end] !== "\n" && text[end] !== "|") end += 1;
  while (at + 1 < end && /[)\]},\s]/.test(text[end - 1] as string)) end -= 1;
  return text[at] === '"' ? [text.slice(at, end)] : null;
}

// ------------------------------------------------------------------------------------------- tokens

/** Skipped. */
export const Space = createToken({ name: "Space", pattern: /[ \t\r\u00a0\u2000-\u200b\u202f\ufeff]+/, group: Lexer.SKIPPED });
export const Newline = createToken({ name: "Newline", pattern: "\n", group: Lexer.SKIPPED, line_breaks: true });
export const Comment = createToken({ name: "Comment", pattern: /#[^\n]*/, start_chars_hint: ["#"], group: "comments" });

export const Name = createToken({
  name: "Name",
  pattern: matchName,
  start_chars_hint: LETTERS,
  line_breaks: false,
  categories: [Word],
});

const keyword = (word: string, ...more: TokenType[]): TokenType =>
  createToken({ name: `word ${word}`, pattern: word, longer_alt: Name, categories: [Word, ...more] });

export const And = keyword("and", Infix);
export const Or = keyword("or", Infix);
export const Not = keyword("not", Sign);
export const Formula = keyword("formula");
export const RecordWord = keyword("record");
export const Family = keyword("family");
export const ExampleWord = keyword("example");
export const CheckWord = keyword("check");
export const Use = keyword("use");
export const TableWord = keyword("table");
export const Match = keyword("match");
export const If = keyword("if");
export const Then = keyword("then");
export const Else = keyword("else");
export const Where = keyword("where");
export const For = keyword("for");
export const In = keyword("in");
export const With = keyword("with");
export const As = keyword("as");
export const Within = keyword("within");
export const From = keyword("from");
export const None = keyword("none");
export const True = keyword("true");
export const False = keyword("false");

const softWord = (word: string, ...more: TokenType[]): TokenType =>
  createToken({ name: `word ${word}`, pattern: word, longer_alt: Name, categories: [Name, ...more] });

export const Step = softWord("step", Infix);
export const Over = softWord("over");
export const By = softWord("by");
export const Factor = softWord("factor");
export const Result = softWord("result");
export const Study = softWord("study");
export const Solve = softWord("solve");
export const Group = softWord("group");
export const Accumulate = softWord("accumulate");
export const Of = softWord("of");
export const Abs = softWord("abs");
// Words that only the start of a step or of an arm knows; everywhere else they are plain names, and units too.
export const Require = softWord("require");
export const Valid = softWord("valid");
export const Some = softWord("some");

export const Digits = createToken({
  name: "Digits",
  pattern: numberOf(true),
  start_chars_hint: DIGITS,
  line_breaks: false,
  categories: [Piece],
});
/** `1,5`, `.5`, `5.`: read as one number, refused by lexical-faults.ts. */
export const BadDigits = createToken({
  name: "BadDigits",
  pattern: numberOf(false),
  start_chars_hint: [".", ...DIGITS],
  line_breaks: false,
  categories: [Digits],
});
export const Unit = createToken({
  name: "Unit",
  pattern: matchUnit,
  start_chars_hint: [...LETTERS, "%", "1"],
  line_breaks: false,
  categories: [Piece],
});
export const Limits = createToken({ name: "Limits", pattern: matchLimits, start_chars_hint: ["+"], line_breaks: false });

export const Text = createToken({
  name: "Text",
  pattern: /"(?:\\["\\]|\\(?!["\\])|[^"\\\n])*"/,
  start_chars_hint: ['"'],
  line_breaks: false,
});
/** To the line end, or to the bar or the closing brackets before it; refused by lexical-faults.ts. */
export const OpenText = createToken({
  name: "OpenText",
  pattern: matchOpenText,
  start_chars_hint: ['"'],
  line_breaks: false,
  categories: [Text],
});

const sign = (name: string, pattern: RegExp | string, ...categories: TokenType[]): TokenType => createToken({ name, pattern, categories });

export const Dots = sign("Dots", "..", Infix);
export const Dot = sign("Dot", ".");
export const Comma = sign("Comma", ",");
export const Colon = sign("Colon", ":");
export const Assign = sign("Assign", "=");
export const Equal = sign("Equal", "==", Infix);
export const Unequal = sign("Unequal", /!=|≠/, Infix);
export const AtMost = sign("AtMost", /<=|≤/, Infix);
export const AtLeast = sign("AtLeast", />=|≥/, Infix);
export const Less = sign("Less", "<", Infix);
export const Greater = sign("Greater", ">", Infix);
export const Plus = sign("Plus", "+", Infix, Sign);
export const Minus = sign("Minus", /[-−]/, Infix, Sign);
export const Times = sign("Times", /[*×·⋅]/, Infix);
export const Divide = sign("Divide", /[/÷]/, Infix);
export const Power = sign("Power", "^", Infix);
export const Superscript = sign("Superscript", /⁻?[⁰¹²³⁴-⁹]+/, Piece);
export const PlusMinus = sign("PlusMinus", "±");
export const Tilde = sign("Tilde", "~");
/** Signs of units, read only between the brackets of a type or a head. */
export const UnitSign = sign("UnitSign", /[°‰]/, Piece);
export const Percent = sign("Percent", "%", Piece);

// Opening brackets name the mode they open; a closing one leaves it only where it fits, else it is `Stray...`.
export const OpenRound = createToken({ name: "OpenRound", pattern: "(", push_mode: "round", categories: [Piece] });
export const CloseRound = createToken({ name: "CloseRound", pattern: ")", pop_mode: true, categories: [Piece] });
export const OpenSquare = createToken({ name: "OpenSquare", pattern: "[", push_mode: "square" });
export const CloseSquare = createToken({ name: "CloseSquare", pattern: "]", pop_mode: true });
export const OpenBrace = createToken({ name: "OpenBrace", pattern: "{", push_mode: "brace" });
export const OpenTable = createToken({
  name: "OpenTable",
  pattern: (text: string, at: number, tokens: IToken[]): [string] | null =>
    text[at] === "{" && last(tokens)?.tokenType === TableWord && tokens[tokens.length - 2]?.tokenType !== Dot ? ["{"] : null,
  start_chars_hint: ["{"],
  line_breaks: false,
  push_mode: "table",
});
export const CloseBrace = createToken({ name: "CloseBrace", pattern: "}", pop_mode: true });
export const Stray = createToken({ name: "Stray", pattern: /[)\]}]/ });

/** Begins the note; what follows is raw to the line end. */
export const Bar = createToken({ name: "Bar", pattern: "|", push_mode: "note" });
/** `||` says "or" to some and "no note" to others: refused, never guessed. */
export const DoubleBar = createToken({ name: "DoubleBar", pattern: "||", push_mode: "note" });
export const NoteText = createToken({ name: "NoteText", pattern: /(?:\\\||[^|\n])+/, start_chars_hint: EVERY, line_breaks: false });
export const SecondBar = createToken({ name: "SecondBar", pattern: "|", pop_mode: true, push_mode: "reference" });
export const ReferenceText = createToken({
  name: "ReferenceText",
  pattern: /(?:\\\||[^|\n])+/,
  start_chars_hint: EVERY,
  line_breaks: false,
});
/** A third bar: refused. */
export const ThirdBar = createToken({ name: "ThirdBar", pattern: "|" });
export const NoteEnd = createToken({ name: "NoteEnd", pattern: "\n", pop_mode: true, line_breaks: true, categories: [LineEnd] });
/** Between the cells of a table. */
export const CellBar = createToken({ name: "CellBar", pattern: "|" });

/** A line that ends with one of these goes on. `step` is not among them: a name at the end of a line is the likelier reading. */
const goingOn: ReadonlySet<TokenType> = new Set([
  ...[And, Or, Dots, Equal, Unequal, AtMost, AtLeast, Less, Greater, Plus, Minus, Times, Divide, Power],
  ...[Comma, OpenBrace, Assign, Colon, PlusMinus, Tilde, Not, If, Then, Else, Where, In, For, With, As],
]);

/** A reserved word goes on no line where it names a field: behind a point, or first of its item. */
function goesOn(tokens: readonly IToken[]): boolean {
  const token = last(tokens);
  if (token === undefined || isA(token, LineEnd)) return true;
  if (!goingOn.has(token.tokenType)) return false;
  if (!isA(token, Word)) return true;
  const before = tokens[tokens.length - 2];
  if (before === undefined) return true;
  return !isA(before, LineEnd) && ![Dot, OpenBrace, Comma].includes(before.tokenType);
}

const lineEnd = (name: string, goesOnAfter: (tokens: readonly IToken[]) => boolean): TokenType =>
  createToken({
    name,
    pattern: (text: string, at: number, tokens: IToken[]): [string] | null => (text[at] !== "\n" || goesOnAfter(tokens) ? null : ["\n"]),
    start_chars_hint: ["\n"],
    line_breaks: true,
    categories: [LineEnd],
  });

/** In braces a line end separates items, unless the line goes on. */
export const ItemEnd = lineEnd("ItemEnd", goesOn);
/** The row of a table ends with its line; blank lines are none. */
export const RowEnd = lineEnd("RowEnd", (tokens) => {
  const token = last(tokens);
  return token === undefined || token.tokenType === OpenTable || isA(token, LineEnd);
});

/** Signs of other notations: refused with the sign of this language (see foreign-signs.ts). */
export const Foreign = createToken({
  name: "Foreign",
  pattern: /\+\/[-−]|===|!==|:=|\*\*|&&?|=[<>]|<>|!(?!=)|;|'[^'\n]*'|[“”„][^“”„"\n]*[“”"]|[“”„‘’]|[–—]|[∕⁄]|[∙•]|√/,
  start_chars_hint: EVERY,
  line_breaks: false,
});
export const Unknown = createToken({
  name: "Unknown",
  pattern: (text: string, at: number): [string] => [String.fromCodePoint(text.codePointAt(at) as number)],
  start_chars_hint: EVERY,
  line_breaks: true,
});

/** A word that another one begins with (`within`, `with`) stands before it: the lexer takes the first that fits. */
export const keywords: readonly TokenType[] = [
  ...[And, Or, Not, Formula, RecordWord, Family, ExampleWord, CheckWord, Use, TableWord, Match, If, Then, Else],
  ...[Where, For, In, Within, With, As, From, None, True, False],
];
export const softTypes: readonly TokenType[] = [
  ...[Step, Over, By, Factor, Result, Study, Solve, Group, Accumulate, Of, Abs, Require, Valid, Some],
];

/** The vocabulary of the parser: everything that is not skipped. */
export const everyType: readonly TokenType[] = [
  ...[Piece, Word, Infix, Sign, LineEnd],
  ...keywords,
  ...softTypes,
  ...[Name, Digits, BadDigits, Unit, Limits, Text, OpenText],
  ...[Dots, Dot, Comma, Colon, Assign, Equal, Unequal, AtMost, AtLeast, Less, Greater],
  ...[Plus, Minus, Times, Divide, Power, Superscript, PlusMinus, Tilde, UnitSign, Percent],
  ...[OpenRound, CloseRound, OpenSquare, CloseSquare, OpenBrace, OpenTable, CloseBrace, Stray],
  ...[Bar, DoubleBar, NoteText, SecondBar, ReferenceText, ThirdBar, NoteEnd, CellBar, ItemEnd, RowEnd, Foreign, Unknown],
];
