// The fault of two sides that do not go together, in the words that suit both.

import type { Range } from "../base/index.ts";
import { type Diagnostic, type Extras, faults } from "../diagnostics/index.ts";
import { clashAdvice, dimensionless, kindAdvice } from "../units/index.ts";
import type { Context } from "./context.ts";
import { say } from "./say.ts";
import type { Type } from "./types.ts";

/** The fault of two sides that do not go together. */
export function clash(
  context: Context,
  at: Range,
  a: Type,
  b: Type,
  kind: "dimension" | "kind" | "type",
  verb: string,
  extras: Extras,
): Diagnostic {
  const [left, right] = [context.solver.resolveType(a), context.solver.resolveType(b)];
  const slots = { left: say(left), right: say(right), verb };
  const quantities = left.type === "quantity" && right.type === "quantity";
  if (kind === "kind") {
    return faults.kindsDiffer(at, { ...slots, advice: sentence(quantities ? kindAdvice(left.kind, right.kind) : undefined) }, extras);
  }
  const advice = quantities ? clashAdvice(left.dimension, right.dimension) : undefined;
  return faults.sidesDiffer(at, { ...slots, advice: sentence(advice) ?? bareNumberAdvice(left, right) }, extras);
}

function bareNumberAdvice(a: Type, b: Type): string | undefined {
  const bare = (type: Type): boolean => type.type === "quantity" && type.dimension === dimensionless;
  if (bare(a) === bare(b)) return undefined;
  return "A bare number has no unit: write the unit it is meant in.";
}

/** Advice of the units room is a fragment; a hint is a sentence. */
export const sentence = (fragment: string | undefined): string | undefined =>
  fragment === undefined || fragment === ""
    ? undefined
    : `${fragment.charAt(0).toUpperCase()}${fragment.slice(1)}${fragment.endsWith(".") ? "" : "."}`;
