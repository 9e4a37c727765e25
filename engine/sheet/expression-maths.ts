// A formula as it is written, read for setting: for lines that are not evaluated and formulas that are only declared.

import { type Expression, printExpression } from "../syntax/index.ts";
import { type Maths, symbolOf } from "../trace/index.ts";
import { parseUnit, typographic } from "../units/index.ts";

export function expressionMaths(expression: Expression): Maths {
  const read = expressionMaths;
  switch (expression.kind) {
    case "number":
      return {
        kind: "number",
        text: expression.digits.replace(/^-/, "−"),
        unit: expression.unit === undefined ? "" : unitText(expression.unit.text),
      };
    case "text":
      return { kind: "text", text: `“${expression.value}”` };
    case "name":
      return expression.name === "pi" ? { kind: "text", text: "π" } : symbolOf(expression.name);
    case "member":
      return { kind: "member", of: read(expression.of), name: expression.field.name };
    case "column":
      return symbolOf(expression.field.name);
    case "binary":
      return binary(expression);
    case "compare":
      return { kind: "compare", operands: expression.operands.map(read), operators: expression.operators };
    case "if":
      return { kind: "cases", condition: read(expression.condition), met: read(expression.then), otherwise: read(expression.otherwise) };
    case "call":
      return call(expression);
    case "list":
      return { kind: "list", items: expression.items.map(read) };
    case "index":
      return { kind: "item", of: read(expression.of), index: read(expression.index) };
    case "unary":
      return printExpression(expression).startsWith("not")
        ? { kind: "not", of: read(expression.of) }
        : { kind: "negative", of: read(expression.of) };
    case "match":
      return {
        kind: "match",
        of: read(expression.of),
        arms: expression.arms.map(({ member, body }) => ({
          member: member.kind === "record" ? printExpression(member.type) : member.kind,
          body: read(body),
        })),
      };
    default:
      // What is more words than maths stands as it is written.
      return { kind: "text", text: printExpression(expression) };
  }
}

/** A unit as it is set: `N*m` as N·m; one that cannot be read stays as written. */
export function unitText(text: string): string {
  const parsed = parseUnit(text);
  return "unit" in parsed && parsed.unit !== undefined ? typographic(parsed.unit) : text;
}

function binary({ operator, left, right }: Extract<Expression, { readonly kind: "binary" }>): Maths {
  const [a, b] = [expressionMaths(left), expressionMaths(right)];
  switch (operator) {
    case "+":
    case "-":
      return { kind: "sum", terms: [...(a.kind === "sum" ? a.terms : [{ minus: false, of: a }]), { minus: operator === "-", of: b }] };
    case "*":
      return { kind: "product", factors: [...(a.kind === "product" ? a.factors : [a]), b] };
    case "/":
      return { kind: "fraction", over: a, under: b };
    case "^":
      return { kind: "power", base: a, exponent: b };
    case "and":
    case "or":
      return { kind: "logic", operator, operands: [a, b] };
  }
}

function call(expression: Extract<Expression, { readonly kind: "call" }>): Maths {
  const args = expression.arguments.map(({ value }) => expressionMaths(value));
  const [first] = args;
  const name = expression.callee.kind === "name" ? expression.callee.name : printExpression(expression.callee);
  if (args.length === 1 && first !== undefined) {
    if (name === "sqrt") return { kind: "root", degree: 2, of: first };
    if (name === "cbrt") return { kind: "root", degree: 3, of: first };
    if (name === "abs") return { kind: "bars", of: first };
  }
  return { kind: "call", name: symbolOf(name), arguments: args };
}
