// What the fast evaluators carry along, and the two ways they stop. They only notice that something is wrong;
// the walk (walk.ts) then runs the same program slowly over the same kernels and finds where and why.

import type { Limits } from "./context.ts";
import type { Value } from "./value.ts";

/**
 * The values a sub-program can reach: first those of its needs (`global i` at i), then its slots (`local i` at needs + i).
 * Every number in a cell is finite.
 */
export type Cells = Value[];

export interface State {
  readonly limits: Limits;
  /** Steps left of the budget. */
  left: number;
  depth: number;
}

/** Something is wrong; the walk will say what. Carries nothing, so that throwing it costs nothing. */
export const suspect = Object.freeze({ stopped: "suspect" });

/** The budget is spent. */
export const spent = Object.freeze({ stopped: "spent" });

export const startState = (limits: Limits): State => ({ limits, left: limits.steps, depth: 0 });

export function spend(state: State, steps: number): void {
  state.left -= steps;
  if (state.left < 0) throw spent;
}

/** False for a value that holds NaN or an infinity anywhere. */
export function allFinite(value: Value): boolean {
  if (typeof value === "number") return value - value === 0;
  if (typeof value !== "object" || value === null) return true;
  if (Array.isArray(value)) return (value as readonly Value[]).every(allFinite);
  const held = value as Exclude<Value, number | string | boolean | null | readonly Value[]>;
  switch (held.shape) {
    case "record":
      return held.fields.every(allFinite);
    case "table":
      return held.columns.every((column) => column.every(allFinite));
    case "figure":
      return held.parts.every(allFinite);
    case "formula":
      return true;
  }
}
