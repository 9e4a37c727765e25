// Operators: dimensions by unification, kinds by their table, lists element by element, temperature points by their rules.

import type { Range } from "../base/index.ts";
import { type Diagnostic, type Extras, faults } from "../diagnostics/index.ts";
import type { Binary, Comparison, Expression, Unary } from "../syntax/index.ts";
import {
  type Dimension,
  describeDimension,
  dimensionless,
  dimensionOf,
  divide,
  type Kind,
  kindOfPower,
  kindOfProduct,
  kindOfQuotient,
  multiply,
  power,
  quantityNameOf,
  type Rational,
  smallExponent,
  withinExponentLimit,
} from "../units/index.ts";
import { unify } from "./agree.ts";
import { clash } from "./clash.ts";
import { type Context, faulty, node, report, useAs } from "./context.ts";
import type { Core } from "./core.ts";
import { hasVariables } from "./dimensions.ts";
import { literalExponent } from "./exponent.ts";
import { inferNumber } from "./infer-number.ts";
import { mapOver } from "./map-over.ts";
import { say } from "./say.ts";
import { inferTruth } from "./truth.ts";
import type { Type } from "./types.ts";

const temperatureDimension = dimensionOf("temperature");

/** A quantity type whose dimension may still be open. */
const asQuantity = (type: Type): { readonly dimension: Dimension; readonly kind: Kind } | undefined =>
  type.type === "quantity" ? type : undefined;

export function inferUnary(expression: Unary, context: Context): Core {
  if (expression.operator === "not")
    return node(context, { op: "not", of: inferTruth(expression.of, context, "not"), range: expression.range, type: { type: "truth" } });
  if (expression.operator === "-" && expression.of.kind === "number") {
    const literal = inferNumber(expression.of, context, "-");
    if (literal.op === "constant") return { ...literal, range: expression.range };
  }
  const of = context.infer(expression.of, context);
  if (expression.operator === "+") return of;
  return mapOver(context, [of], expression.range, ([value]) => {
    if (value === undefined || value.type.type === "unknown") return faulty(context, expression.range);
    if (value.type.type === "point")
      return faulty(context, expression.range, faults.pointArithmetic(expression.of.range, { verb: "turned negative" }));
    if (value.type.type !== "quantity") return wantQuantity(context, value, expression.of.range, "A minus sign");
    return node(context, { op: "negate", of: value, range: expression.range, type: value.type });
  });
}

function wantQuantity(context: Context, core: Core, at: Range, place: string): Core {
  const advice = core.type.type === "maybe" ? "It may be none: open it with match (x) { none: ..., some v: ... }." : undefined;
  return faulty(context, at, faults.wrongType(at, { place, wanted: "a quantity", given: say(core.type), advice }));
}

export function inferBinary(expression: Binary, context: Context): Core {
  const { operator } = expression;
  if (operator === "and" || operator === "or") {
    const left = inferTruth(expression.left, context, operator);
    const right = inferTruth(expression.right, context, operator);
    return node(context, { op: operator, left, right, range: expression.range, type: { type: "truth" } });
  }
  if (operator === "^") return inferPower(expression, context);
  const left = context.infer(expression.left, context);
  const right = context.infer(expression.right, context);
  return mapOver(context, [left, right], expression.range, ([a, b]) => {
    if (a === undefined || b === undefined || a.type.type === "unknown" || b.type.type === "unknown")
      return faulty(context, expression.range);
    return operator === "+" || operator === "-" ? sum(expression, context, a, b) : product(expression, context, a, b);
  });
}

function sum(expression: Binary, context: Context, a: Core, b: Core): Core {
  const op = expression.operator === "+" ? "add" : "subtract";
  const make = (type: Type): Core => node(context, { op, left: a, right: b, range: expression.range, type });
  if (a.type.type === "point" || b.type.type === "point") return pointSum(expression, context, a, b, make);
  if (a.type.type !== "quantity") return wantQuantity(context, a, expression.left.range, `The sign ${expression.operator}`);
  if (b.type.type !== "quantity") return wantQuantity(context, b, expression.right.range, `The sign ${expression.operator}`);
  const agreement = unify(context, a.type, b.type);
  if ("type" in agreement) {
    useAs(context, a, agreement.type);
    useAs(context, b, agreement.type);
    return make(agreement.type);
  }
  return faulty(
    context,
    expression.range,
    clash(
      context,
      expression.range,
      a.type,
      b.type,
      agreement.clash,
      op === "add" ? "do not add" : "do not subtract",
      quotientMends(context, expression, a.type, b.type),
    ),
  );
}

function pointSum(expression: Binary, context: Context, a: Core, b: Core, make: (type: Type) => Core): Core {
  const kelvin: Type = { type: "quantity", dimension: temperatureDimension, kind: "any" };
  const minus = expression.operator === "-";
  if (a.type.type === "point" && b.type.type === "point") {
    if (minus) return make(kelvin);
    return faulty(
      context,
      expression.range,
      faults.pointsDoNotAdd(expression.range, { verb: "add", advice: "Add a difference in K, or take mean of both." }),
    );
  }
  const [point, other] = a.type.type === "point" ? [a, b] : [b, a];
  if (minus && point === b) {
    return faulty(
      context,
      expression.range,
      faults.pointsDoNotAdd(expression.range, {
        verb: "subtract this way round",
        advice: "Take a difference from a point, or one point from another.",
      }),
    );
  }
  if (other.type.type !== "quantity") return wantQuantity(context, other, other.range, "A temperature");
  const agreement = unify(context, other.type, kelvin);
  if ("type" in agreement) return make({ type: "point" });
  return faulty(
    context,
    expression.range,
    clash(context, expression.range, a.type, b.type, "dimension", minus ? "do not subtract" : "do not add", {}),
  );
}

function product(expression: Binary, context: Context, a: Core, b: Core): Core {
  const times = expression.operator === "*";
  for (const [side, at] of [
    [a, expression.left.range],
    [b, expression.right.range],
  ] as const) {
    if (side.type.type === "point") return faulty(context, at, faults.pointArithmetic(at, { verb: times ? "multiplied" : "divided" }));
    if (side.type.type !== "quantity") return wantQuantity(context, side, at, `The sign ${expression.operator}`);
  }
  const left = asQuantity(a.type);
  const right = asQuantity(b.type);
  if (left === undefined || right === undefined) return faulty(context, expression.range);
  const [da, db] = [context.solver.resolve(left.dimension), context.solver.resolve(right.dimension)];
  const dimension = times ? multiply(da, db) : divide(da, db);
  if (!withinExponentLimit(dimension))
    return faulty(context, expression.range, faults.exponentTooLarge(expression.range, { base: say(a.type) }));
  const kind = times ? kindOfProduct(da, left.kind, db, right.kind) : kindOfQuotient(da, left.kind, db, right.kind);
  return node(context, {
    op: times ? "multiply" : "divide",
    left: a,
    right: b,
    range: expression.range,
    type: { type: "quantity", dimension, kind },
  });
}

function inferPower(expression: Binary, context: Context): Core {
  const base = context.infer(expression.left, context);
  const exponent = context.infer(expression.right, context);
  const written = literalExponent(expression.right);
  return mapOver(context, [base, exponent], expression.range, ([a, b]) => {
    if (a === undefined || b === undefined || a.type.type === "unknown" || b.type.type === "unknown")
      return faulty(context, expression.range);
    if (a.type.type === "point")
      return faulty(context, expression.left.range, faults.pointArithmetic(expression.left.range, { verb: "raised to a power" }));
    if (a.type.type !== "quantity") return wantQuantity(context, a, expression.left.range, "A power");
    if (b.type.type !== "quantity" || !context.solver.unify(b.type.dimension, dimensionless) || b.type.kind === "angle") {
      return faulty(context, expression.right.range, faults.exponentDimension(expression.right.range, { given: say(b.type) }));
    }
    const type = powerType(expression, context, a.type, written);
    return type === undefined
      ? faulty(context, expression.range)
      : node(context, { op: "power", left: a, right: b, range: expression.range, type });
  });
}

function powerType(
  expression: Binary,
  context: Context,
  base: Extract<Type, { type: "quantity" }>,
  written: Rational | undefined,
): Type | undefined {
  const dimension = context.solver.resolve(base.dimension);
  if (written !== undefined) {
    const raised = dimension === dimensionless || smallExponent(written) ? power(dimension, written) : undefined;
    if (raised !== undefined && withinExponentLimit(raised))
      return { type: "quantity", dimension: raised, kind: kindOfPower(dimension, base.kind, written) };
    report(context, faults.exponentTooLarge(expression.right.range, { base: say(base) }));
    return undefined;
  }
  if (!context.solver.unify(dimension, dimensionless)) {
    report(context, faults.exponentNotLiteral(expression.right.range, { base: say(base) }));
    return undefined;
  }
  return { type: "quantity", dimension: dimensionless, kind: base.kind === "angle" ? "any" : base.kind };
}

export function inferComparison(expression: Comparison, context: Context): Core {
  const operands = expression.operands.map((operand) => context.infer(operand, context));
  return mapOver(context, operands, expression.range, (values) => {
    for (let i = 1; i < values.length; i += 1) {
      const [a, b] = [values[i - 1], values[i]];
      if (a === undefined || b === undefined) continue;
      const diagnostic = compareClash(expression, context, a, b, i);
      if (diagnostic !== undefined) return faulty(context, expression.range, diagnostic);
    }
    const numeric = values.some((value) => value.type.type === "quantity" || value.type.type === "point");
    return node(context, {
      op: "compare",
      operands: values,
      operators: expression.operators,
      numeric,
      range: expression.range,
      type: { type: "truth" },
    });
  });
}

function compareClash(expression: Comparison, context: Context, a: Core, b: Core, i: number): Diagnostic | undefined {
  const operator = expression.operators[i - 1];
  const [left, right] = [a.type, b.type];
  const agreement = unify(context, left, right);
  const at: Range = {
    from: expression.operands[i - 1]?.range.from ?? expression.range.from,
    to: expression.operands[i]?.range.to ?? expression.range.to,
  };
  if ("clash" in agreement) return clash(context, at, left, right, agreement.clash, "cannot be compared", {});
  useAs(context, a, agreement.type);
  useAs(context, b, agreement.type);
  const equality = operator === "==" || operator === "!=";
  const ordered = left.type === "unknown" || right.type === "unknown" || left.type === "quantity" || left.type === "point";
  if (!equality && !ordered) return faults.wrongType(at, { place: `The sign ${operator}`, wanted: "quantities", given: say(left) });
  const choices = agreement.type.type === "text" && left.type === "text" && right.type === "text" ? [left, right] : undefined;
  if (equality && choices !== undefined) {
    const listed = choices.find((choice) => choice.choices !== undefined && choice.choices.length > 1);
    const literal = choices.find((choice) => choice.choices?.length === 1);
    const word = literal?.choices?.[0];
    if (listed?.choices !== undefined && word !== undefined && !listed.choices.includes(word)) {
      return faults.notAChoice(at, { given: `"${word}"`, choices: listed.choices.map((choice) => `"${choice}"`).join(", ") });
    }
  }
  return undefined;
}

/** Offers the quotient or product of two sides where the trade has a name for it. */
function quotientMends(context: Context, expression: Binary, a: Type, b: Type): Extras {
  if (
    a.type !== "quantity" ||
    b.type !== "quantity" ||
    hasVariables(context.solver.resolve(a.dimension)) ||
    hasVariables(context.solver.resolve(b.dimension))
  )
    return {};
  const simple = (side: Expression): boolean => side.kind === "name" || side.kind === "member" || side.kind === "number";
  if (!simple(expression.left) || !simple(expression.right)) return {};
  const offers = [
    { sign: "/", dimension: divide(a.dimension, b.dimension) },
    { sign: "*", dimension: multiply(a.dimension, b.dimension) },
  ].filter(({ dimension }) => dimension !== dimensionless && quantityNameOf(dimension) !== undefined);
  return {
    mends: offers.map(({ sign, dimension }) => ({
      label: `Make it ${sign === "/" ? "a quotient" : "a product"}: ${describeDimension(dimension, "any")}`,
      changes: [{ ...expression.operatorRange, insert: sign }],
    })),
  };
}
