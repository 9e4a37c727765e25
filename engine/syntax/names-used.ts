// The free names that an evaluation of a statement may need.

import type { Range } from "../base/index.ts";
import { children } from "./children.ts";
import type { Expression, Formula, Member, NameUse, StatementTree, TypeExpression } from "./tree.ts";

type Bound = ReadonlySet<string>;
/** Told each free use: the normalised name (of a member of a bare name `shop.F_max` too) and where it stands. */
type See = (name: string, at: Range) => void;

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
  freeUses(tree, (name) => names.add(name));
  return [...names];
}

/** Every place where a statement uses a name that it does not bind itself; places count from the statement's start. */
export function usePlaces(tree: StatementTree): readonly { readonly name: string; readonly range: Range }[] {
  const places: { readonly name: string; readonly range: Range }[] = [];
  freeUses(tree, (name, range) => places.push({ name, range }));
  return places;
}

/** The same for one expression by itself. */
export function expressionUsePlaces(expression: Expression): readonly { readonly name: string; readonly range: Range }[] {
  const places: { readonly name: string; readonly range: Range }[] = [];
  expressionNames(expression, NONE, (name, range) => places.push({ name, range }));
  return places;
}

function freeUses(tree: StatementTree, see: See): void {
  const use = (node: Expression | undefined, bound: Bound = NONE): void => {
    if (node !== undefined) expressionNames(node, bound, see);
  };
  switch (tree.kind) {
    case "definition":
      typeNames(tree.type, see);
      use(tree.value);
      use(tree.within?.from);
      use(tree.within?.to);
      break;
    case "check":
      use(tree.condition);
      use(tree.factor);
      break;
    case "formula":
      formulaNames(tree, see);
      break;
    case "recordDeclaration":
      for (const field of tree.fields) {
        typeNames(field.type, see);
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
}

function formulaNames(tree: Formula, see: See): void {
  let bound = NONE;
  for (const parameter of tree.parameters) {
    typeNames(parameter.type, see);
    if (parameter.default !== undefined) expressionNames(parameter.default, bound, see);
    bound = plus(bound, parameter.name.name);
  }
  typeNames(tree.type, see);
  for (const step of tree.steps) {
    typeNames(step.type, see);
    expressionNames(step.value, bound, see);
    bound = plus(bound, step.name?.name);
  }
}

function typeNames(type: TypeExpression | undefined, see: See): void {
  if (type?.kind === "named") pathNames(type.name, NONE, see);
  else if (type?.kind === "list" || type?.kind === "maybe") typeNames(type.of, see);
}

function pathNames(path: NameUse | Member, bound: Bound, see: See): void {
  expressionNames(path, bound, see);
}

function expressionNames(node: Expression, bound: Bound, see: See): void {
  switch (node.kind) {
    case "name":
      if (!bound.has(node.name)) see(node.name, node.range);
      return;
    case "member":
      expressionNames(node.of, bound, see);
      if (node.of.kind === "name" && !bound.has(node.of.name)) see(`${node.of.name}.${node.field.name}`, node.field.range);
      return;
    case "comprehension": {
      const inside = plus(bound, node.variable.name);
      expressionNames(node.source, bound, see);
      expressionNames(node.element, inside, see);
      if (node.condition !== undefined) expressionNames(node.condition, inside, see);
      return;
    }
    case "accumulate":
      expressionNames(node.start, bound, see);
      expressionNames(node.source, bound, see);
      expressionNames(node.body, plus(bound, node.state.name, node.variable.name), see);
      return;
    case "match":
      expressionNames(node.of, bound, see);
      for (const arm of node.arms) {
        if (arm.member.kind === "record") pathNames(arm.member.type, bound, see);
        expressionNames(arm.body, plus(bound, arm.variable?.name), see);
      }
      return;
    case "solve":
      expressionNames(node.from, bound, see);
      expressionNames(node.to, bound, see);
      typeNames(node.type, see);
      if (node.type === undefined && !bound.has(node.variable.name)) see(node.variable.name, node.variable.range);
      // Without a type the unknown is the notebook's own input, so its places in the condition are uses of it.
      expressionNames(node.condition, node.type === undefined ? bound : plus(bound, node.variable.name), see);
      return;
    case "study":
      for (const axis of node.axes) if (!bound.has(axis.variable.name)) see(axis.variable.name, axis.variable.range);
      for (const child of children(node)) expressionNames(child, bound, see);
      return;
    default:
      for (const child of children(node)) expressionNames(child, bound, see);
  }
}
