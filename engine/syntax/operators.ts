// Precedence: the one table that parser and printer both follow, and the climbing that makes trees of operator chains.

import type { IToken, TokenType } from "chevrotain";
import * as t from "./token-types.ts";
import type { BinaryOperator, CompareOperator, Expression } from "./tree.ts";

/**
 * From loosest to tightest. `prefix` is what runs on to the right as far as it can (`if`, `accumulate`, `study`, `solve`),
 * `loose` is `x with { }` and `t where c`, left to right; comparisons chain; `..` takes one `step`; `^` goes from the right and
 * its right side may carry a sign (`2^-3`); a sign is looser than `^` (`-x^2` is -(x^2)); a literal with its unit is one value.
 */
export const level = {
  prefix: 0,
  loose: 1,
  or: 2,
  and: 3,
  not: 4,
  compare: 5,
  range: 6,
  add: 7,
  multiply: 8,
  sign: 9,
  power: 10,
  postfix: 11,
  primary: 12,
} as const;

export const binaryLevel: Readonly<Record<BinaryOperator, number>> = {
  or: level.or,
  and: level.and,
  "+": level.add,
  "-": level.add,
  "*": level.multiply,
  "/": level.multiply,
  "^": level.power,
};

type Operator =
  | { readonly level: number; readonly binary: BinaryOperator }
  | { readonly level: typeof level.compare; readonly compare: CompareOperator }
  | { readonly level: typeof level.range; readonly step: boolean };

const binary = (type: TokenType, operator: BinaryOperator): [TokenType, Operator] => [
  type,
  { level: binaryLevel[operator], binary: operator },
];
const compare = (type: TokenType, operator: CompareOperator): [TokenType, Operator] => [type, { level: level.compare, compare: operator }];

const operators: ReadonlyMap<TokenType, Operator> = new Map<TokenType, Operator>([
  binary(t.Or, "or"),
  binary(t.And, "and"),
  binary(t.Plus, "+"),
  binary(t.Minus, "-"),
  binary(t.Times, "*"),
  binary(t.Divide, "/"),
  binary(t.Power, "^"),
  compare(t.Less, "<"),
  compare(t.AtMost, "<="),
  compare(t.Greater, ">"),
  compare(t.AtLeast, ">="),
  compare(t.Equal, "=="),
  compare(t.Unequal, "!="),
  [t.Dots, { level: level.range, step: false }],
  [t.Step, { level: level.range, step: true }],
]);

/** The ASCII form of an operator token, for the printer. */
export function operatorText(type: TokenType): string | undefined {
  const operator = operators.get(type);
  if (operator === undefined) return undefined;
  if ("binary" in operator) return operator.binary;
  if ("compare" in operator) return operator.compare;
  return operator.step ? "step" : "..";
}

/** One operand with the signs before it; `from` and `to` include brackets round it. */
export interface Operand {
  readonly signs: readonly IToken[];
  readonly node: Expression;
  readonly from: number;
  readonly to: number;
}

interface Climb {
  readonly operands: readonly Operand[];
  readonly operators: readonly IToken[];
  /** A `step` that follows no `..`. */
  readonly stray: (token: IToken) => void;
  at: number;
  sign: number;
  end: number;
}

function climb(state: Climb, least: number): Expression {
  const operand = state.operands[state.at] as Operand;
  const sign = operand.signs[state.sign];
  const from = sign === undefined ? operand.from : sign.startOffset;
  let left: Expression;
  if (sign === undefined) {
    left = operand.node;
    state.at += 1;
    state.sign = 0;
    state.end = operand.to;
  } else {
    state.sign += 1;
    const not = sign.tokenType === t.Not;
    const of = climb(state, not ? level.not : level.sign);
    const operator = not ? "not" : sign.tokenType === t.Plus ? "+" : "-";
    left = { kind: "unary", operator, of, range: { from, to: state.end } };
  }
  while (state.at < state.operands.length) {
    const token = state.operators[state.at - 1] as IToken;
    const operator = operators.get(token.tokenType) as Operator;
    if (operator.level < least) break;
    if ("compare" in operator) {
      left = chain(state, left, from);
    } else if ("step" in operator) {
      if (operator.step) state.stray(token);
      const to = climb(state, level.range + 1);
      const next = state.operators[state.at - 1];
      const step = next?.tokenType === t.Step && state.at < state.operands.length ? climb(state, level.range + 1) : undefined;
      left = { kind: "range", from: left, to, ...(step === undefined ? {} : { step }), range: { from, to: state.end } };
    } else {
      const right = climb(state, operator.binary === "^" ? level.sign : operator.level + 1);
      const operatorRange = { from: token.startOffset, to: t.endOf(token) };
      left = { kind: "binary", operator: operator.binary, operatorRange, left, right, range: { from, to: state.end } };
    }
  }
  return left;
}

function chain(state: Climb, first: Expression, from: number): Expression {
  const operands = [first];
  const signs: CompareOperator[] = [];
  while (state.at < state.operands.length) {
    const operator = operators.get((state.operators[state.at - 1] as IToken).tokenType) as Operator;
    if (!("compare" in operator)) break;
    signs.push(operator.compare);
    operands.push(climb(state, level.compare + 1));
  }
  return { kind: "compare", operands, operators: signs, range: { from, to: state.end } };
}

/** The tree of `operand (operator operand)*`. */
export function resolve(operands: readonly Operand[], tokens: readonly IToken[], stray: (token: IToken) => void): Expression {
  const only = operands[0] as Operand;
  if (operands.length === 1 && only.signs.length === 0) return only.node;
  return climb({ operands, operators: tokens, stray, at: 0, sign: 0, end: only.to }, level.or);
}
