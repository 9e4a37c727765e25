// Kinds through a formula's body: which kind a polymorphic result has for these arguments. Dimensions are inferred once;
// kinds flow forward, since "number times a kind keeps the kind" has no equation that could be solved backwards.

import {
  dimensionless,
  divide,
  type Kind,
  kindOfPower,
  kindOfProduct,
  kindOfQuotient,
  kindsAgree,
  multiply,
  power,
  rational,
} from "../units/index.ts";
import type { Context } from "./context.ts";
import type { Core, CoreFormula } from "./core.ts";
import { hasVariables } from "./dimensions.ts";
import type { Type } from "./types.ts";

type Quantity = Extract<Type, { type: "quantity" }>;

export type ResultKind = { readonly kind: Kind } | { readonly clash: readonly [Type, Type] };

/** Thrown inside the walk only: two kinds met that do not agree. */
class KindClash extends Error {
  readonly sides: readonly [Type, Type];
  constructor(a: Type, b: Type) {
    super("kinds");
    this.sides = [a, b];
  }
}

const isKinded = (type: Type): boolean => type.type === "quantity" && type.kind !== "any" && type.kind !== "number";

/** The kind of the formula's result for arguments of these types; undefined where the declared type already says it. */
export function resultKind(formula: CoreFormula, given: readonly Type[], context: Context): ResultKind | undefined {
  const declared = formula.result;
  if (declared.type === "quantity" && declared.kind !== "any" && !hasVariables(declared.dimension)) return undefined;
  const polymorphic = formula.parameters.some((parameter) => parameter.type.type === "quantity" && hasVariables(parameter.type.dimension));
  if (!polymorphic && !given.some(isKinded)) return undefined;
  try {
    const type = bodyType(formula, given, context);
    return type?.type === "quantity" ? { kind: type.kind } : undefined;
  } catch (problem) {
    if (problem instanceof KindClash) return { clash: problem.sides };
    throw problem;
  }
}

function bodyType(formula: CoreFormula, given: readonly Type[], context: Context): Type | undefined {
  const slots: (Type | undefined)[] = formula.parameters.map((parameter, i) => given[i] ?? parameter.type);
  const walk = (core: Core): Type => typeFor(core, slots, formula, context);
  for (const step of formula.steps) {
    const type = walk(step.value);
    if (step.kind === "result") return type;
    if (step.slot !== undefined) slots[step.slot] = type;
  }
  return undefined;
}

function agree(a: Type, b: Type): Type {
  if (a.type !== "quantity" || b.type !== "quantity") return a;
  const kind = kindsAgree(a.kind, b.kind);
  if (kind === undefined) throw new KindClash(a, b);
  return { ...a, kind };
}

function typeFor(core: Core, slots: readonly (Type | undefined)[], formula: CoreFormula, context: Context): Type {
  const walk = (of: Core): Type => typeFor(of, slots, formula, context);
  const both = (a: Core, b: Core, make: (x: Quantity, y: Quantity) => Quantity): Type => {
    const [x, y] = [walk(a), walk(b)];
    return x.type === "quantity" && y.type === "quantity" ? make(x, y) : core.type;
  };
  switch (core.op) {
    case "local":
      return slots[core.slot] ?? core.type;
    case "negate":
      return walk(core.of);
    case "scatter":
      return walk(core.nominal);
    case "add":
    case "subtract":
      return core.type.type === "point" ? core.type : agree(walk(core.left), walk(core.right));
    case "multiply":
      return both(core.left, core.right, (x, y) => ({
        type: "quantity",
        dimension: multiply(x.dimension, y.dimension),
        kind: kindOfProduct(x.dimension, x.kind, y.dimension, y.kind),
      }));
    case "divide":
      return both(core.left, core.right, (x, y) => ({
        type: "quantity",
        dimension: divide(x.dimension, y.dimension),
        kind: kindOfQuotient(x.dimension, x.kind, y.dimension, y.kind),
      }));
    case "power": {
      const base = walk(core.left);
      if (base.type !== "quantity" || core.right.op !== "constant" || base.dimension === dimensionless) return core.type;
      const exponent = rationalOf(core.right.value as number);
      return { type: "quantity", dimension: power(base.dimension, exponent), kind: kindOfPower(base.dimension, base.kind, exponent) };
    }
    case "if":
      walk(core.condition);
      return agree(walk(core.then), walk(core.otherwise));
    case "compare": {
      const types = core.operands.map(walk);
      for (let i = 1; i < types.length; i += 1) agree(types[i - 1] as Type, types[i] as Type);
      return core.type;
    }
    case "native": {
      const types = core.arguments.map(walk);
      const first = types[0];
      if (core.type.type !== "quantity" || first?.type !== "quantity") return core.type;
      if (core.native === "sqrt" || core.native === "cbrt") {
        const half = rational(1, core.native === "sqrt" ? 2 : 3);
        return { type: "quantity", dimension: power(first.dimension, half), kind: kindOfPower(first.dimension, first.kind, half) };
      }
      return sameKind.has(core.native) ? types.reduce(agree) : core.type;
    }
    case "call": {
      const key = core.formula.op === "global" ? formula.needs[core.formula.index] : undefined;
      const entry = key === undefined ? undefined : context.scope.byFullName(key);
      const types = core.arguments.map((argument) => (argument === undefined ? undefined : walk(argument)));
      if (entry?.entry !== "formula") return core.type;
      if (entry.core.result.type === "quantity" && entry.core.result.kind !== "any") return core.type;
      const given = entry.core.parameters.map((parameter, i) => types[i] ?? parameter.type);
      return bodyType(entry.core, given, context) ?? core.type;
    }
    default:
      return core.type;
  }
}

const sameKind = new Set(["abs", "min", "max", "floor", "ceil", "round", "mod", "hypot"]);

/** Exponents come from short literals, so a small denominator gives them back exactly. */
function rationalOf(value: number): ReturnType<typeof rational> {
  for (let d = 1; d <= 64; d += 1) if (Number.isInteger(Number((value * d).toPrecision(15)))) return rational(Math.round(value * d), d);
  return rational(Math.round(value * 1e6), 1e6);
}
