// Helpers of these tests: one statement in, its tree or the codes of its faults out.

import { applyChanges } from "../../engine/base/index.ts";
import type { Diagnostic } from "../../engine/diagnostics/index.ts";
import { type Definition, type Expression, parseExpression, parseStatement, type StatementTree } from "../../engine/syntax/index.ts";

/** The tree of a statement that must be clean. */
export function clean(text: string): StatementTree {
  const { tree, diagnostics } = parseStatement(text);
  if (diagnostics.length > 0) throw new Error(`${text}: ${diagnostics.map((one) => one.message).join(" ")}`);
  return tree;
}

/** The value of `x = text`, which must be clean. */
export const valueIn = (text: string): Expression => (clean(`x = ${text}`) as Definition).value;

export const faultsOf = (text: string): readonly Diagnostic[] => parseStatement(text).diagnostics;
export const codesOf = (text: string): readonly string[] => faultsOf(text).map((one) => one.code);

/** The text after each mend of its first fault. */
export const mended = (text: string): readonly string[] => (faultsOf(text)[0]?.mends ?? []).map((mend) => applyChanges(text, mend.changes));

/** An expression with a bracket round every operator, so that a test reads the grouping. */
export function grouped(text: string): string {
  const { expression, diagnostics } = parseExpression(text);
  if (diagnostics.length > 0) throw new Error(`${text}: ${diagnostics.map((one) => one.message).join(" ")}`);
  return group(expression);
}

function group(node: Expression): string {
  switch (node.kind) {
    case "number":
      return `${node.digits}${node.unit === undefined ? "" : `<${node.unit.text}>`}${node.absolute ? "<abs>" : ""}`;
    case "name":
      return node.name;
    case "truth":
      return String(node.value);
    case "column":
      return `.${node.field.name}`;
    case "member":
      return `${group(node.of)}.${node.field.name}`;
    case "unary":
      return `(${node.operator} ${group(node.of)})`;
    case "binary":
      return `(${group(node.left)} ${node.operator} ${group(node.right)})`;
    case "compare":
      return `(${node.operands.map((one, i) => (i === 0 ? "" : `${node.operators[i - 1]} `) + group(one)).join(" ")})`;
    case "range":
      return `(${group(node.from)} .. ${group(node.to)}${node.step === undefined ? "" : ` step ${group(node.step)}`})`;
    case "if":
      return `(if ${group(node.condition)} ${group(node.then)} ${group(node.otherwise)})`;
    case "call":
      return `${group(node.callee)}(${node.arguments.map((one) => group(one.value)).join(", ")})`;
    case "index":
      return `${group(node.of)}[${group(node.index)}]`;
    case "where":
      return `(${group(node.of)} where ${group(node.condition)})`;
    case "with":
      return `(${group(node.of)} with)`;
    case "list":
      return `[${node.items.map(group).join(", ")}]`;
    case "scatter":
      return `(${group(node.nominal)} ${node.spread.kind})`;
    default:
      return node.kind;
  }
}

/** The calc fences of a notebook. */
export const fences = (markdown: string): readonly string[] =>
  [...markdown.matchAll(/^```calc\n([\s\S]*?)^```$/gm)].map((match) => match[1] as string);

/** The statements of a fence, as the rule of the language cuts it. */
export function chunks(fence: string): readonly string[] {
  const out: string[] = [];
  for (const line of fence.split(/(?<=\n)/)) {
    if (out.length === 0 || /^[^\s)\]}]/.test(line)) out.push(line);
    else out.push((out.pop() as string) + line);
  }
  return out;
}
