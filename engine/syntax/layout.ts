// One statement laid out: its own tokens, comments, brackets and line breaks kept, spaces and signs normal, lines indented by
// what is open. Aligning lines with each other is left to align.ts.

import type { IToken } from "chevrotain";
import { closerOf } from "./brackets.ts";
import { lex } from "./lexer.ts";
import { type Piece, pieceOf, spaceBetween } from "./spacing.ts";
import * as t from "./token-types.ts";
import type { StatementTree } from "./tree.ts";
import { type TreeMark, treeMarks } from "./tree-marks.ts";

/** One line of text, in parts that are aligned with those of its neighbours. */
export interface Line {
  readonly indent: number;
  /** The cells of a table's row, or the working as its only one; empty for a blank line. */
  readonly cells: readonly string[];
  readonly row: boolean;
  /** Where ` = ` of a definition, a field or a step stands in the working; undefined: none to align. */
  readonly equals?: number;
  readonly columns?: { readonly note: string; readonly reference?: string };
  readonly comment?: string;
  /** Lines of one block, the inside of one pair of braces, are aligned with each other. 0 is the statement itself. */
  readonly block: number;
}

interface Open {
  readonly token: IToken;
  readonly line: number;
  readonly block: number;
}

interface Working {
  readonly pieces: Piece[];
  readonly tokens: IToken[];
}

/** The lines of a statement that has no syntax fault; `text` is its own. */
export function layoutLines(text: string, tree: StatementTree): readonly Line[] {
  const { tokens, comments } = lex(text);
  const marks = treeMarks(tree);
  const lines: Line[] = [];
  const open: Open[] = [];
  let blocks = 0;
  let at = 0;
  let comment = 0;
  let previous: IToken | undefined;
  let offset = 0;
  for (const [number, raw] of text.split("\n").entries()) {
    const end = offset + raw.length;
    const own: IToken[] = [];
    for (let token = tokens[at]; token !== undefined && token.startOffset < end; token = tokens[at]) {
      own.push(token);
      at += 1;
    }
    // The line end itself is a token where it separates items.
    const separator = tokens[at]?.startOffset === end ? tokens[at++] : undefined;
    const remark = comments[comment];
    const remarked = remark !== undefined && remark.startOffset < end;
    if (remarked) comment += 1;
    const leading = leadingClosers(own);
    const outer = open.slice(0, Math.max(0, open.length - leading));
    const goesOn = previous !== undefined && !endsItem(previous, open);
    const innermost = open.at(-1);
    const block = (leading > 0 ? outer.at(-1) : innermost)?.block ?? 0;
    const first =
      number === 0 || (lines.length > 0 && lines.every((line) => line.cells.length === 0) && own.length > 0 && previous === undefined);
    const depth = new Set(outer.map((one) => one.line)).size;
    const extra = leading === 0 && innermost !== undefined && isBraceLike(innermost.token) && goesOn ? 1 : 0;
    const indent = first ? 0 : leading > 0 ? depth : Math.max(1, depth + extra);
    const made = lineOf(own, previous, marks, text, tree.kind === "definition" && open.length === 0);
    lines.push({
      indent: remarked && own.length === 0 && number === 0 && !/^\s/.test(raw) ? 0 : indent,
      block,
      row: innermost?.token.tokenType === t.OpenTable && leading === 0,
      ...made,
      ...(made.equals !== undefined && (goesOn || leading > 0 || !alignsEquals(tree, block)) ? { equals: undefined } : {}),
      ...(remarked ? { comment: remark.image.trimEnd() } : {}),
    } as Line);
    for (const token of own) {
      if (closerOf(token) !== "") open.push({ token, line: number, block: isBraceLike(token) ? ++blocks : (open.at(-1)?.block ?? 0) });
      else if (isCloser(token)) open.pop();
    }
    previous = separator ?? own.at(-1) ?? previous;
    offset = end + 1;
  }
  return lines;
}

const isBraceLike = (token: IToken): boolean => token.tokenType === t.OpenBrace || token.tokenType === t.OpenTable;
const isCloser = (token: IToken): boolean =>
  token.tokenType === t.CloseRound || token.tokenType === t.CloseSquare || token.tokenType === t.CloseBrace;

function leadingClosers(tokens: readonly IToken[]): number {
  const count = tokens.findIndex((token) => !isCloser(token));
  return count === -1 ? tokens.length : count;
}

/** Whether the line after this token begins an item of the braces it stands in. */
function endsItem(previous: IToken, open: readonly Open[]): boolean {
  const innermost = open.at(-1)?.token;
  if (innermost === undefined || !isBraceLike(innermost)) return false;
  return previous === innermost || previous.tokenType === t.Comma || t.isA(previous, t.LineEnd);
}

/** `=` is aligned for definitions, fields and steps; in the declaration of a record it only gives a default. */
function alignsEquals(tree: StatementTree, block: number): boolean {
  if (block === 0) return tree.kind === "definition";
  return tree.kind !== "recordDeclaration";
}

interface Made {
  readonly cells: readonly string[];
  readonly equals?: number;
  readonly columns?: { readonly note: string; readonly reference?: string };
}

function lineOf(
  tokens: readonly IToken[],
  previous: IToken | undefined,
  marks: ReadonlyMap<number, TreeMark>,
  text: string,
  definition: boolean,
): Made {
  const cells: string[] = [];
  let working: Working = { pieces: [], tokens: [] };
  let note: string | undefined;
  let reference: string | undefined;
  // A soft word in its place ends no value, so what follows it is spaced as after a keyword.
  const significant = (token: IToken): IToken | undefined =>
    t.isA(token, t.LineEnd) || (t.softTypes.includes(token.tokenType) && token.tokenType !== t.Abs && !marks.has(token.startOffset))
      ? undefined
      : token;
  let before = previous === undefined ? undefined : significant(previous);
  let equals: number | undefined;
  for (let i = 0; i < tokens.length; i += 1) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    if (type === t.CellBar) {
      cells.push(join(working.pieces));
      working = { pieces: [], tokens: [] };
      before = undefined;
      continue;
    }
    if (type === t.Bar) {
      note = "";
      continue;
    }
    if (type === t.NoteText) {
      note = token.image.trim();
      continue;
    }
    if (type === t.SecondBar) {
      reference = "";
      continue;
    }
    if (type === t.ReferenceText) {
      reference = token.image.trim();
      continue;
    }
    const unitTo = bracketUnitEnd(tokens, i, marks);
    if (unitTo !== undefined) {
      // A unit between brackets is one piece, however many tokens it has.
      const written = text.slice(token.startOffset, unitTo).replace(/\s+/g, " ");
      working.pieces.push({ text: written, type: t.Unit, sign: false, starts: false });
      while (tokens[i + 1] !== undefined && (tokens[i + 1] as IToken).startOffset < unitTo) i += 1;
      before = tokens[i];
      continue;
    }
    const piece = pieceOf(token, before);
    const heldUnit = type === t.OpenSquare && bracketUnitEnd(tokens, i + 1, marks) !== undefined;
    const bracket = heldUnit
      ? { ...piece, starts: true }
      : type === t.As && definition
        ? { ...piece, wide: depthOf(working.tokens) === 0 }
        : piece;
    if (type === t.Assign && equals === undefined && depthOf(working.tokens) === 0) equals = join(working.pieces).length;
    working.pieces.push(bracket);
    working.tokens.push(token);
    before = significant(token);
  }
  const last = join(working.pieces);
  if (last !== "" || cells.length > 0) cells.push(last);
  const columns =
    note === undefined || (note === "" && (reference ?? "") === "") ? undefined : { note, ...(reference ? { reference } : {}) };
  return { cells, ...(equals === undefined ? {} : { equals }), ...(columns === undefined ? {} : { columns }) };
}

/** End of the unit between brackets that begins at token `index`. */
function bracketUnitEnd(tokens: readonly IToken[], index: number, marks: ReadonlyMap<number, TreeMark>): number | undefined {
  const token = tokens[index];
  if (token === undefined || tokens[index - 1]?.tokenType !== t.OpenSquare) return undefined;
  const mark = marks.get(token.startOffset);
  return mark?.kind === "unit" && token.tokenType !== t.Unit ? mark.to : undefined;
}

const depthOf = (tokens: readonly IToken[]): number =>
  tokens.reduce((depth, token) => depth + (closerOf(token) !== "" ? 1 : isCloser(token) ? -1 : 0), 0);

function join(pieces: readonly Piece[]): string {
  let out = "";
  for (let i = 0; i < pieces.length; i += 1) {
    const piece = pieces[i] as Piece;
    const left = pieces[i - 1];
    out += (left === undefined ? "" : piece.wide === true ? "  " : spaceBetween(left, piece, pieces[i - 2])) + piece.text;
  }
  return out;
}
