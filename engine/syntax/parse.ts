// Text to trees. Total: whatever the text, there is a tree and its faults, never a throw.

import type { IRecognitionException, IToken } from "chevrotain";
import { nearest, type Range } from "../base/index.ts";
import { type Diagnostic, faults, type Mend } from "../diagnostics/index.ts";
import { tooNested } from "./brackets.ts";
import { lex } from "./lexer.ts";
import { lexicalFaults } from "./lexical-faults.ts";
import { replaceMend } from "./mend.ts";
import { parseFault, reservedName } from "./parse-faults.ts";
import { type Head, type Live, parser } from "./statement-parser.ts";
import * as t from "./token-types.ts";
import type { BrokenStatement, Expression, Identifier, Parameter, StatementTree, TypeExpression, UnitText } from "./tree.ts";
import { identifier } from "./type-parser.ts";

export interface ParsedStatement {
  readonly tree: StatementTree;
  readonly diagnostics: readonly Diagnostic[];
}

interface Outcome<T> {
  /** Undefined: the tokens do not make one. */
  readonly value: T | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

const { endOf } = t;
const rangeOf = (token: IToken): Range => ({ from: token.startOffset, to: endOf(token) });

/** Runs one rule over the tokens. A fault of a token hides what the grammar says after it: one cause, one fault. */
function run<T>(text: string, tokens: readonly IToken[], rule: () => T): Outcome<T> {
  const lexical = lexicalFaults(text, tokens);
  const deep = tooNested(tokens);
  if (deep !== undefined) return { value: undefined, diagnostics: [faults.tooNested(rangeOf(deep), {})] };
  parser.begin(text, tokens);
  const value = rule();
  const error = parser.errors[0] as IRecognitionException | undefined;
  if (error === undefined) return { value, diagnostics: [...lexical, ...parser.faultsFound()] };
  return { value: undefined, diagnostics: lexical.length > 0 ? lexical : [parseFault(text, tokens, error)] };
}

/**
 * Parses one statement chunk: its first line at column 0, further lines indented or a closing bracket.
 * With a syntax fault the tree may be of kind "broken".
 */
export function parseStatement(text: string): ParsedStatement {
  const { tokens, comments } = lex(text);
  const first = tokens[0];
  if (first === undefined) {
    const range = comments[0] === undefined ? { from: 0, to: 0 } : { from: comments[0].startOffset, to: endOf(comments.at(-1) as IToken) };
    return { tree: { kind: "remark", range, working: { from: range.from, to: range.from } }, diagnostics: [] };
  }
  const rule = ruleOf(tokens);
  const outcome: Outcome<StatementTree> =
    rule === undefined ? { value: undefined, diagnostics: [noStatement(text, tokens)] } : run(text, tokens, rule);
  const tree = outcome.value ?? brokenStatement(tokens);
  return { tree, diagnostics: [...indented(text, first), ...outcome.diagnostics] };
}

function ruleOf(tokens: readonly IToken[]): (() => StatementTree) | undefined {
  const first = tokens[0] as IToken;
  const second = tokens[1]?.tokenType;
  if (second === t.Assign || second === t.Colon) return t.isA(first, t.Name) ? definitionRule : undefined;
  return rules.get(first.tokenType);
}

const definitionRule = (): StatementTree => parser.definition();
const rules: ReadonlyMap<unknown, () => StatementTree> = new Map<unknown, () => StatementTree>([
  [t.CheckWord, () => parser.check()],
  [t.Formula, () => parser.formula()],
  [t.RecordWord, () => parser.recordDeclaration()],
  [t.Family, () => parser.family()],
  [t.ExampleWord, () => parser.example()],
  [t.Use, () => parser.use()],
]);

/** A statement stands at column 0, so that a line that goes on can be told from one that begins. */
function indented(text: string, first: IToken): readonly Diagnostic[] {
  const lineStart = text.lastIndexOf("\n", first.startOffset - 1) + 1;
  if (first.startOffset === lineStart || text.slice(0, lineStart).trim() !== "") return [];
  const mends = [replaceMend(lineStart, first.startOffset, "", first.image)];
  return [faults.indentedStart(rangeOf(first), {}, { mends })];
}

const NAMED: readonly unknown[] = [t.Formula, t.RecordWord, t.Family];

/** `name` when the text at least began like a definition, a formula, a record or a family, so that uses of it wait. */
function brokenStatement(tokens: readonly IToken[]): BrokenStatement {
  const first = tokens[0] as IToken;
  const second = tokens[1];
  const range = { from: first.startOffset, to: endOf(tokens.at(-1) as IToken) };
  const bar = tokens.find((token) => token.tokenType === t.Bar);
  const working = { from: range.from, to: bar === undefined ? range.to : Math.max(range.from, bar.startOffset) };
  let name: Identifier | undefined;
  if (second !== undefined && t.isA(first, t.Name) && (second.tokenType === t.Assign || second.tokenType === t.Colon))
    name = identifier(first);
  else if (second !== undefined && NAMED.includes(first.tokenType) && t.isA(second, t.Name)) name = identifier(second);
  return { kind: "broken", ...(name === undefined ? {} : { name }), range, working };
}

// ---------------------------------------------------------------------------------------- lines that are no statement

function noStatement(text: string, tokens: readonly IToken[]): Diagnostic {
  const first = tokens[0] as IToken;
  const second = tokens[1];
  const lexical = lexicalFaults(text, tokens)[0];
  if (second?.tokenType === t.Assign || second?.tokenType === t.Colon) {
    if (t.keywords.includes(first.tokenType)) return reservedName(first);
  }
  if (lexical !== undefined) return lexical;
  if (first.tokenType === t.Stray) {
    return faults.bracketClosesNothing(
      rangeOf(first),
      { bracket: first.image },
      { mends: [{ label: `without ${first.image}`, changes: [{ ...rangeOf(first), insert: "" }] }] },
    );
  }
  if (second?.tokenType === t.Equal && t.isA(first, t.Name)) {
    return faults.equalityForDefinition(rangeOf(second), {}, { mends: [replaceMend(second.startOffset, endOf(second), "=")] });
  }
  const end = endOf(tokens.findLast((token) => !t.isA(token, t.LineEnd)) ?? first);
  return faults.notAStatement(
    { from: first.startOffset, to: end },
    { text: shorten(text.slice(first.startOffset, end)) },
    { mends: statementMends(text, tokens) },
  );
}

const shorten = (text: string): string => {
  const line = text.split("\n", 1)[0] as string;
  return line.length <= 40 ? line : `${line.slice(0, 39)}…`;
};

const STATEMENT_WORDS = ["formula", "record", "family", "example", "check", "use"];

function statementMends(text: string, tokens: readonly IToken[]): readonly Mend[] {
  const first = tokens[0] as IToken;
  const start = first.startOffset;
  const begin = (word: string): Mend => replaceMend(start, start, `${word} `);
  if (t.isA(first, t.Name) && tokens[1] !== undefined && t.isA(tokens[1], t.Word)) {
    const word = nearest(first.image, STATEMENT_WORDS);
    if (word !== undefined) return [replaceMend(start, endOf(first), word)];
  }
  const close = tokens.findIndex((token) => token.tokenType === t.CloseRound);
  const after = tokens[close + 1]?.tokenType;
  if (t.isA(first, t.Name) && tokens[1]?.tokenType === t.OpenRound && close !== -1 && (after === t.Assign || after === t.Colon)) {
    return [begin("formula")];
  }
  const asCheck = replaceMend(start, start, "check ");
  const checked = run(
    `${text.slice(0, start)}check ${text.slice(start)}`,
    lex(`${text.slice(0, start)}check ${text.slice(start)}`).tokens,
    () => parser.check(),
  );
  const condition = checked.value?.condition;
  const truth =
    condition?.kind === "compare" || (condition?.kind === "binary" && (condition.operator === "and" || condition.operator === "or"));
  return truth && checked.diagnostics.length === 0 ? [asCheck] : [];
}

// ---------------------------------------------------------------------------------------- other entrances

/** Parses one expression, a scatter at its end and `as unit` included. */
export function parseExpression(text: string): {
  readonly expression: Expression;
  readonly unit?: UnitText;
  readonly diagnostics: readonly Diagnostic[];
} {
  const { tokens } = lex(text);
  const hole: Expression = { kind: "hole", range: { from: 0, to: text.length } };
  if (tokens.length === 0)
    return { expression: hole, diagnostics: [faults.endsEarly({ from: 0, to: text.length }, { wanted: "a value" })] };
  const { value, diagnostics } = run(text, tokens, () => parser.alone());
  return value === undefined ? { expression: hole, diagnostics } : { ...value, diagnostics };
}

/** Parses the head of a native, `name(a: Length, k: Number = 1): Force`; `name` is undefined when it cannot be read. */
export function parseHead(text: string): {
  readonly name?: Identifier;
  readonly parameters: readonly Parameter[];
  readonly type?: TypeExpression;
  readonly diagnostics: readonly Diagnostic[];
} {
  const { tokens } = lex(text);
  if (tokens.length === 0) return { parameters: [], diagnostics: [faults.endsEarly({ from: 0, to: text.length }, { wanted: "a name" })] };
  const { value, diagnostics } = run<Head>(text, tokens, () => parser.formulaHead());
  return value === undefined ? { parameters: [], diagnostics } : { ...value, diagnostics };
}

/** Parses the inside of a live value in prose, a name path with optional `as`; undefined: it stays text. */
export function parseLive(text: string): Live | undefined {
  const { tokens, comments } = lex(text);
  if (tokens.length === 0 || comments.length > 0) return undefined;
  const { value, diagnostics } = run(text, tokens, () => parser.live());
  return diagnostics.length === 0 ? value : undefined;
}
