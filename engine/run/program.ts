// A compiled piece of a program and the questions that compiling asks of its types.

import type { Core, CoreFormula, Type } from "../check/index.ts";
import type { RunContext } from "./context.ts";
import { type Cells, type State, suspect } from "./state.ts";
import type { FormulaValue, Value } from "./value.ts";

export type Run = (cells: Cells, state: State) => Value;
/** Of a node whose type is a quantity or a point. */
export type RunNumber = (cells: Cells, state: State) => number;

export interface Scope {
  /** How many needs stand before the slots in the cells. */
  readonly needs: number;
  readonly context: RunContext;
}

/** What stands behind a FormulaValue that this room made. */
export interface PreparedFormula extends FormulaValue {
  readonly core: CoreFormula;
  readonly needs: readonly Value[];
  /** Where its parameters begin in its cells. */
  readonly base: number;
  /** Fresh cells with the needs put in. */
  readonly open: () => Cells;
  /** Runs on cells whose parameters are put in; undefined where a default serves. */
  readonly run: Run;
}

export const isNumeric = (type: Type): boolean => type.type === "quantity" || type.type === "point";

/** Items of a list that may be none by right: the others are checked when they are taken out. */
export function itemsMayBeNone(type: Type): boolean {
  if (type.type !== "list") return true;
  return type.of.type === "maybe" || type.of.type === "unknown";
}

export const mayBeNone = (type: Type): boolean => type.type === "maybe" || type.type === "unknown";

/** The cell that a leaf reads, else -1. */
export function cellOf(core: Core, scope: Scope): number {
  if (core.op === "global") return core.index;
  return core.op === "local" ? scope.needs + core.slot : -1;
}

/**
 * Whether a node may hand on a NaN or an infinity unseen. Sums, products and the dividend of a quotient surely hand it on,
 * so a chain of them is looked at once, at its end.
 */
export function mayBeUnfinite(core: Core): boolean {
  // A number that may be none is a number in one of the branches.
  if (!isNumeric(core.type.type === "maybe" ? core.type.of : core.type)) return false;
  switch (core.op) {
    case "constant":
      return !Number.isFinite(core.value as number);
    case "negate":
      return mayBeUnfinite(core.of);
    case "add":
    case "subtract":
    case "multiply":
    case "divide":
    case "power":
    case "native":
      return true;
    case "if":
      return mayBeUnfinite(core.then) || mayBeUnfinite(core.otherwise);
    case "match":
      return core.arms.some((arm) => mayBeUnfinite(arm.body));
    case "matchMaybe":
      return mayBeUnfinite(core.none) || mayBeUnfinite(core.some);
    default:
      return false;
  }
}

/** Looks at a number before it is put away or goes where it could vanish. */
export function checked(core: Core, run: Run): Run {
  if (!mayBeUnfinite(core)) return run;
  const number = run as RunNumber;
  return (cells, state) => {
    const value = number(cells, state);
    // None counts as 0 here and passes.
    if (value - value !== 0) throw suspect;
    return value;
  };
}
