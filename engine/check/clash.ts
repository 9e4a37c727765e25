// The fault of two sides that do not go together, in the words that suit both.

import type { Range } from "../base/index.ts";
import { type Diagnostic, type Extras, faults } from "../diagnostics/index.ts";
import { clashAdvice, dimensionless } from "../units/index.ts";
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
  if (kind === "kind") return faults.kindsDiffer(at, { ...slots, advice: kindAdvice(left, right) }, extras);
  const advice = left.type === "quantity" && right.type === "quantity" ? clashAdvice(left.dimension, right.dimension) : undefined;
  return faults.sidesDiffer(at, { ...slots, advice: sentence(advice) ?? bareNumberAdvice(left, right) }, extras);
}

function kindAdvice(a: Type, b: Type): string | undefined {
  const kinds = [a, b].map((type) => (type.type === "quantity" ? type.kind : "any"));
  if (kinds.includes("angle")) return "Give the number a unit: rad or deg.";
  if (kinds.includes("torque")) return "A torque times an angle is an energy.";
  if (kinds.includes("frequency")) return "Divide a rotational speed by 1 rev to count turns a second.";
  return undefined;
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
