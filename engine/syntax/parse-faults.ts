// The one fault of a statement that does not parse: the smallest place, what is wrong there, and the mend. Made from the
// kind of the parser's exception and the tokens round it, never from the parser's own text.

import type { IRecognitionException, IToken, TokenType } from "chevrotain";
import type { Range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { adjacentFault, remainder } from "./adjacent-faults.ts";
import { closerOf, endsOperand, openAt, startsOperand } from "./brackets.ts";
import { removeMend, replaceMend } from "./mend.ts";
import { quoteText } from "./text-literal.ts";
import * as t from "./token-types.ts";

const { endOf } = t;
const rangeOf = (token: IToken): Range => ({ from: token.startOffset, to: endOf(token) });

/** Reserved words that can only go on with something already begun: before one of them every bracket should be closed. */
const GOES_ON: ReadonlySet<TokenType> = new Set([t.Then, t.Else, t.Within, t.For]);
const BARS: ReadonlySet<TokenType> = new Set([t.Bar, t.DoubleBar, t.CellBar]);

interface Place {
  readonly text: string;
  readonly tokens: readonly IToken[];
  readonly index: number;
  /** Undefined: the end of the text. */
  readonly at: IToken | undefined;
  readonly before: IToken | undefined;
  /** Brackets open here, outermost first. */
  readonly open: readonly IToken[];
  /** The token the grammar wanted, when it wanted one. */
  readonly expected: string | undefined;
  /** Nothing but a value could come here. */
  readonly wantsValue: boolean;
}

export function parseFault(text: string, tokens: readonly IToken[], error: IRecognitionException): Diagnostic {
  const found = tokens.indexOf(error.token);
  const index = found === -1 ? tokens.length : found;
  const place: Place = {
    text,
    tokens,
    index,
    at: tokens[index],
    before: tokens[index - 1],
    open: openAt(tokens, index),
    expected: error.name === "MismatchedTokenException" ? error.message : undefined,
    wantsValue: error.name === "NoViableAltException" && error.message === "primary",
  };
  return (
    bracketFault(place) ??
    columnsFault(place) ??
    cellFault(place) ??
    signFault(place) ??
    wordFault(place) ??
    valueMissing(place) ??
    misfit(place)
  );
}

// ---------------------------------------------------------------------------------------- brackets

function bracketFault(place: Place): Diagnostic | undefined {
  const { text, at, before, open } = place;
  const innermost = open.at(-1);
  if (at?.tokenType === t.Stray) return strayFault(place, at);
  if (innermost === undefined) return undefined;
  const round = innermost.tokenType === t.OpenRound || innermost.tokenType === t.OpenSquare;
  const complete = endsOperand(before) || before === innermost || before?.tokenType === t.Comma || t.isA(before as IToken, t.LineEnd);
  if (at === undefined) return complete || !round ? unclosed(place, innermost) : undefined;
  if (!round || !endsOperand(before)) return undefined;
  const newItem = text.slice(endOf(before as IToken), at.startOffset).includes("\n") && t.isA(at, t.Word);
  const nextItem = newItem && [t.Assign, t.Colon].includes(place.tokens[place.index + 1]?.tokenType as TokenType);
  return BARS.has(at.tokenType) || (GOES_ON.has(at.tokenType) && at.tokenType !== t.For) || nextItem
    ? unclosed(place, innermost)
    : undefined;
}

function strayFault(place: Place, at: IToken): Diagnostic {
  const { open, index } = place;
  const innermost = open.at(-1);
  if (innermost === undefined) {
    return faults.bracketClosesNothing(rangeOf(at), { bracket: at.image }, { mends: [removeMend(at.startOffset, endOf(at), at.image)] });
  }
  if (open.some((bracket) => closerOf(bracket) === at.image)) return unclosed({ ...place, index }, innermost);
  const fitting = closerOf(innermost);
  const slots = { open: innermost.image, close: at.image, fitting };
  return faults.bracketDiffers(rangeOf(at), slots, { mends: [replaceMend(at.startOffset, endOf(at), fitting)] });
}

/** The mend closes every bracket that should be closed here, innermost first. */
function unclosed(place: Place, innermost: IToken): Diagnostic {
  const { text, at, before, open } = place;
  const slots = { open: innermost.image, close: closerOf(innermost) };
  const hidden = before === undefined || at !== undefined ? undefined : hiddenCloser(place, before);
  if (hidden !== undefined) return faults.bracketInNote(rangeOf(innermost), slots, { mends: [hidden] });
  const closing: string[] = [];
  for (const bracket of [...open].reverse()) {
    const brace = closerOf(bracket) === "}";
    if (at !== undefined && (brace || closerOf(bracket) === at.image)) break;
    const lines = brace && text.slice(endOf(bracket)).includes("\n");
    closing.push(brace ? (lines ? "\n}" : " }") : closerOf(bracket));
  }
  const from = at === undefined ? text.trimEnd().length : endOf(before as IToken);
  return faults.bracketOpen(rangeOf(innermost), slots, { mends: [replaceMend(from, from, closing.join(""))] });
}

/** `x = A { a = 1 | note }`: the bar made the closing bracket part of the note. */
function hiddenCloser(place: Place, before: IToken): ReturnType<typeof replaceMend> | undefined {
  const { tokens, open } = place;
  const raw = before.tokenType === t.NoteEnd ? tokens[place.index - 2] : before;
  if (raw?.tokenType !== t.NoteText && raw?.tokenType !== t.ReferenceText) return undefined;
  const closing = [...open].reverse().map(closerOf).join("");
  const trimmed = raw.image.trimEnd();
  if (closing === "" || !trimmed.replace(/\s/g, "").endsWith(closing)) return undefined;
  const bar = tokens.findLast((token) => token.tokenType === t.Bar);
  if (bar === undefined) return undefined;
  let cut = trimmed.length;
  for (let left = closing.length; 0 < left; ) {
    cut -= 1;
    if (/\S/.test(trimmed[cut] as string)) left -= 1;
  }
  const from = raw.startOffset + cut;
  return {
    label: closing,
    changes: [
      { from: bar.startOffset, to: bar.startOffset, insert: `${closing} ` },
      { from, to: endOf(raw), insert: "" },
    ],
  };
}

// ---------------------------------------------------------------------------------------- columns

function columnsFault(place: Place): Diagnostic | undefined {
  const { text, tokens, at, before, open, index } = place;
  if (at === undefined) return undefined;
  if (before !== undefined && before.tokenType === t.NoteEnd && open.length === 0) {
    const bar = tokens.slice(0, index).findLast((token) => token.tokenType === t.Bar);
    if (bar === undefined) return undefined;
    const columns = text.slice(bar.startOffset, before.startOffset).trimEnd();
    const later = tokens.slice(index).some((token) => token.tokenType === t.Bar);
    const end = endOf(tokens.at(-1) as IToken);
    const changes = [
      { from: bar.startOffset, to: before.startOffset, insert: "" },
      { from: end, to: end, insert: ` ${columns}` },
    ];
    return faults.columnsEarly(
      { from: bar.startOffset, to: bar.startOffset + columns.length },
      {},
      later ? {} : { mends: [{ label: columns, changes }] },
    );
  }
  if (at.tokenType !== t.Bar || !endsOperand(before)) return undefined;
  return faults.columnsMisplaced(rangeOf(at), {}, { mends: [columnsToComment(text, at)] });
}

/** Where no columns can stand a remark still can. */
function columnsToComment(text: string, bar: IToken): ReturnType<typeof replaceMend> {
  return replaceMend(bar.startOffset, endOf(bar), text[endOf(bar)] === " " ? "#" : "# ", "#");
}

/** A cell that is no literal. */
function cellFault({ at, open }: Place): Diagnostic | undefined {
  if (at === undefined || !t.isA(at, t.Word) || open.at(-1)?.tokenType !== t.OpenTable) return undefined;
  const meaning = quoteText(at.image);
  return faults.lookupIsTable(rangeOf(at), {}, { mends: [replaceMend(at.startOffset, endOf(at), meaning)] });
}

// ---------------------------------------------------------------------------------------- signs and words

function signFault(place: Place): Diagnostic | undefined {
  const { text, tokens, at, before, index, expected } = place;
  if (at === undefined || before === undefined) return undefined;
  const type = at.tokenType;
  if (type === t.Percent) return remainder(tokens, index - 1, index + 1);
  if (type === t.Equal && expected === t.Assign.name) {
    return faults.equalityForDefinition(rangeOf(at), {}, { mends: [replaceMend(at.startOffset, endOf(at), "=")] });
  }
  if (type === t.Assign && endsOperand(before) && !place.wantsValue) {
    return faults.singleEquals(rangeOf(at), {}, { mends: [replaceMend(at.startOffset, endOf(at), "==")] });
  }
  if (type === t.PlusMinus || type === t.Tilde || type === t.Limits) return faults.scatterMisplaced(rangeOf(at), {});
  if (type === t.As && endsOperand(before)) return faults.asMisplaced(rangeOf(at), {});
  return endsOperand(before) && !place.wantsValue && startsOperand(at) && !isKeyword(at) ? adjacentFault(text, tokens, index) : undefined;
}

const isKeyword = (token: IToken): boolean => t.keywords.includes(token.tokenType);

/** A reserved word where a name or a value belongs. */
function wordFault(place: Place): Diagnostic | undefined {
  const { tokens, at, before, index, expected } = place;
  if (at === undefined || !isKeyword(at) || endsOperand(before)) return undefined;
  const next = tokens[index + 1];
  const asName = expected === t.Name.name || next === undefined || !startsOperand(next) || next.tokenType === t.OpenRound;
  return asName ? reservedName(at) : undefined;
}

export const reservedName = (token: IToken): Diagnostic =>
  faults.reservedName(
    rangeOf(token),
    { word: token.image, free: `${token.image}_` },
    { mends: [replaceMend(token.startOffset, endOf(token), `${token.image}_`)] },
  );

// ---------------------------------------------------------------------------------------- what is missing

function valueMissing(place: Place): Diagnostic | undefined {
  const { at, before, expected, wantsValue } = place;
  const emptyArgument = at?.tokenType === t.Comma && (before?.tokenType === t.OpenRound || before?.tokenType === t.Comma);
  if (expected !== undefined && expected !== t.Digits.name && expected !== t.Text.name && !emptyArgument) return undefined;
  if (before !== undefined && (wantsValue || !endsOperand(before))) {
    if (at !== undefined && startsOperand(at)) return undefined;
    const shown = before.image.trim() === "" ? "the start of this line" : before.image.trim();
    return faults.valueMissing(rangeOf(before), { before: shown });
  }
  return undefined;
}

const EXPECTED: ReadonlyMap<string, string> = new Map([
  [t.Name.name, "a name"],
  [t.Word.name, "a name"],
  [t.Text.name, "a text in quotes"],
  [t.Digits.name, "a number"],
  [t.Unit.name, "a unit"],
  [t.Piece.name, "a unit"],
  [t.Assign.name, "="],
  [t.Colon.name, ":"],
  [t.Comma.name, ","],
  [t.Dot.name, "."],
  [t.OpenRound.name, "("],
  [t.CloseRound.name, ")"],
  [t.OpenSquare.name, "["],
  [t.CloseSquare.name, "]"],
  [t.OpenBrace.name, "{"],
  [t.OpenTable.name, "{"],
  [t.CloseBrace.name, "}"],
  ...t.keywords.concat(t.softTypes).map((type): [string, string] => [type.name, type.name.replace("word ", "")]),
]);

function misfit(place: Place): Diagnostic {
  const { text, at, before, open } = place;
  const wanted = EXPECTED.get(place.expected ?? "") ?? (open.length > 0 ? `an operator or ${closerOf(open.at(-1) as IToken)}` : undefined);
  const end = before === undefined ? 0 : endOf(before);
  const range = at === undefined ? { from: before?.startOffset ?? 0, to: Math.max(end, Math.min(text.length, 1)) } : rangeOf(at);
  const shown = at === undefined ? undefined : at.image.trim() === "" ? "the line end" : at.image.trim();
  if (shown === undefined) return faults.endsEarly(range, { wanted: wanted ?? "more" });
  return faults.doesNotFit(range, { found: shown, wanted });
}
