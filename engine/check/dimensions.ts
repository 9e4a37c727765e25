// Dimension inference: unification over the rationals. A variable is a base whose name starts with "?".
// With rational exponents the group of dimensions is a vector space, so one elimination step per equation is complete.

import {
  type Dimension,
  dimensionFrom,
  dimensionless,
  divide,
  multiply,
  power,
  type Rational,
  rational,
  withinExponentLimit,
} from "../units/index.ts";
import type { FormulaType, Type } from "./types.ts";

export interface Solver {
  readonly fresh: () => Dimension;
  readonly resolve: (dimension: Dimension) => Dimension;
  readonly resolveType: (type: Type) => Type;
  /** Makes both equal if that can be; false leaves the solution as it was. */
  readonly unify: (a: Dimension, b: Dimension) => boolean;
}

const isVariable = (base: string): boolean => base.charCodeAt(0) === 63;

export const hasVariables = (dimension: Dimension): boolean => dimension.exponents.some(([base]) => isVariable(base));

export function createSolver(): Solver {
  const solved = new Map<string, Dimension>();
  let count = 0;

  function resolve(dimension: Dimension): Dimension {
    if (!hasVariables(dimension)) return dimension;
    let out = dimensionless;
    let moved = false;
    for (const [base, exponent] of dimension.exponents) {
      const meaning = isVariable(base) ? solved.get(base) : undefined;
      if (meaning !== undefined) moved = true;
      out = multiply(out, meaning === undefined ? dimensionFrom([[base, exponent]]) : power(resolve(meaning), exponent));
    }
    return moved ? out : dimension;
  }

  function unify(a: Dimension, b: Dimension): boolean {
    if (a === b) return true;
    const rest = resolve(divide(a, b));
    if (rest === dimensionless) return true;
    const entry = rest.exponents.find(([base]) => isVariable(base));
    if (entry === undefined) return false;
    const [variable, exponent] = entry;
    const others = dimensionFrom(rest.exponents.filter(([base]) => base !== variable));
    const meaning = power(others, minusOneOver(exponent));
    // No quantity has such a power, so nothing that is meant is refused, and exponents cannot grow from formula to formula.
    if (!withinExponentLimit(meaning)) return false;
    solved.set(variable, meaning);
    return true;
  }

  return {
    fresh: () => {
      count += 1;
      return dimensionFrom([[`?${count}`, rational(1)]]);
    },
    resolve,
    resolveType: (type) => mapDimensions(type, resolve),
    unify,
  };
}

const minusOneOver = (exponent: Rational): Rational => rational(-exponent.d, exponent.n);

/** Replaces every dimension inside a type; gives the same object back where nothing changed. */
export function mapDimensions(type: Type, change: (dimension: Dimension) => Dimension): Type {
  switch (type.type) {
    case "quantity": {
      const dimension = change(type.dimension);
      return dimension === type.dimension ? type : { type: "quantity", dimension, kind: type.kind };
    }
    case "list":
    case "maybe": {
      const of = mapDimensions(type.of, change);
      return of === type.of ? type : { type: type.type, of };
    }
    case "table": {
      const columns = type.columns.map((column) => ({ name: column.name, type: mapDimensions(column.type, change) }));
      return { type: "table", columns };
    }
    case "record":
      return type.arguments.length === 0 ? type : { type: "record", name: type.name, arguments: type.arguments.map(change) };
    default:
      return type;
  }
}

/** The variables that a type mentions, in order of appearance. */
export function variablesOf(types: readonly Type[]): readonly string[] {
  const found = new Set<string>();
  const note = (dimension: Dimension): Dimension => {
    for (const [base] of dimension.exponents) if (isVariable(base)) found.add(base);
    return dimension;
  };
  for (const type of types) mapDimensions(type, note);
  return [...found];
}

/** A substitution of variables by dimensions, all at once. */
export function substitution(variables: readonly string[], meanings: readonly Dimension[]): (dimension: Dimension) => Dimension {
  const table = new Map(variables.map((variable, i) => [variable, meanings[i] ?? dimensionless]));
  if (table.size === 0) return (dimension) => dimension;
  return (dimension) => {
    if (!hasVariables(dimension)) return dimension;
    let out = dimensionless;
    for (const [base, exponent] of dimension.exponents) {
      const meaning = table.get(base);
      out = multiply(out, meaning === undefined ? dimensionFrom([[base, exponent]]) : power(meaning, exponent));
    }
    return out;
  };
}

/** The parameters and result of a formula with fresh variables in place of its own. */
export function instantiate(
  formula: FormulaType,
  solver: Solver,
): { readonly parameters: readonly Type[]; readonly result: Type; readonly meanings: readonly Dimension[] } {
  const meanings = formula.variables.map(() => solver.fresh());
  const change = substitution(formula.variables, meanings);
  return {
    meanings,
    parameters: formula.parameters.map((parameter) => mapDimensions(parameter.type, change)),
    result: mapDimensions(formula.result, change),
  };
}
