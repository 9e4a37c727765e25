// The free names that an evaluation of a statement may need.

import { children } from "./children.ts";
import type { Expression, Formula, Member, NameUse, StatementTree, TypeExpression } from "./tree.ts";

type Bound = ReadonlySet<string>;

const NONE: Bound = new Set();
const plus = (bound: Bound, ...names: (string | undefined)[]): Bound =>
  new Set([...bound, ...names.filter((name): name is string => name !== undefined)]);

/**
 * Normalised names, each once, in the order of first use: names of values, callees, records and types. A member of a bare name
 * gives two, "shop" and "shop.F_max", because only the scope knows whether `shop` is a prefix of `use` or a value.
 * Left out: parameters and earlier steps of the formula itself, variables bound inside (comprehension, accumulate, arms, an
 * unknown with a type). The subject of a notebook's `solve` or `study` is an input and counts as used.
 */
export function namesUsed(tree: StatementTree): readonly string[] {
  const names = new Set<string>();
  const use = (node: Expression | undefined, bound: Bound = NONE): void => {
    if (node !== undefined) expressionNames(node, bound, names);
  };
  switch (tree.kind) {
    case "definition":
      typeNames(tree.type, names);
      use(tree.value);
      use(tree.within?.from);
      use(tree.within?.to);
      break;
    case "check":
      use(tree.condition);
      use(tree.factor);
      break;
    case "formula":
      formulaNames(tree, names);
      break;
    case "recordDeclaration":
      for (const field of tree.fields) {
        typeNames(field.type, names);
        use(field.default);
      }
      break;
    case "family":
      for (const member of tree.members) use(member);
      break;
    case "example":
      use(tree.actual);
      use(tree.expected);
      use(tree.tolerance);
      break;
    case "use":
    case "remark":
    case "broken":
      break;
  }
  return [...names];
}

function formulaNames(tree: Formula, names: Set<string>): void {
  let bound = NONE;
  for (const parameter of tree.parameters) {
    typeNames(parameter.type, names);
    if (parameter.default !== undefined) expressionNames(parameter.default, bound, names);
    bound = plus(bound, parameter.name.name);
  }
  typeNames(tree.type, names);
  for (const step of tree.steps) {
    typeNames(step.type, names);
    expressionNames(step.value, bound, names);
    bound = plus(bound, step.name?.name);
  }
}

function typeNames(type: TypeExpression | undefined, names: Set<string>): void {
  if (type?.kind === "named") pathNames(type.name, NONE, names);
  else if (type?.kind === "list" || type?.kind === "maybe") typeNames(type.of, names);
}

function pathNames(path: NameUse | Member, bound: Bound, names: Set<string>): void {
  expressionNames(path, bound, names);
}

function expressionNames(node: Expression, bound: Bound, names: Set<string>): void {
  switch (node.kind) {
    case "name":
      if (!bound.has(node.name)) names.add(node.name);
      return;
    case "member":
      expressionNames(node.of, bound, names);
      if (node.of.kind === "name" && !bound.has(node.of.name)) names.add(`${node.of.name}.${node.field.name}`);
      return;
    case "comprehension": {
      const inside = plus(bound, node.variable.name);
      expressionNames(node.source, bound, names);
      expressionNames(node.element, inside, names);
      if (node.condition !== undefined) expressionNames(node.condition, inside, names);
      return;
    }
    case "accumulate":
      expressionNames(node.start, bound, names);
      expressionNames(node.source, bound, names);
      expressionNames(node.body, plus(bound, node.state.name, node.variable.name), names);
      return;
    case "match":
      expressionNames(node.of, bound, names);
      for (const arm of node.arms) {
        if (arm.member.kind === "record") pathNames(arm.member.type, bound, names);
        expressionNames(arm.body, plus(bound, arm.variable?.name), names);
      }
      return;
    case "solve":
      expressionNames(node.from, bound, names);
      expressionNames(node.to, bound, names);
      typeNames(node.type, names);
      if (node.type === undefined && !bound.has(node.variable.name)) names.add(node.variable.name);
      expressionNames(node.condition, plus(bound, node.variable.name), names);
      return;
    case "study":
      for (const axis of node.axes) if (!bound.has(axis.variable.name)) names.add(axis.variable.name);
      for (const child of children(node)) expressionNames(child, bound, names);
      return;
    default:
      for (const child of children(node)) expressionNames(child, bound, names);
  }
}
