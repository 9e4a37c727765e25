// The bounds and the step of a range.

import type { Range } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import { dimensionOf } from "../units/index.ts";
import { unify } from "./agree.ts";
import { clash } from "./clash.ts";
import { type Context, report } from "./context.ts";
import type { Core } from "./core.ts";
import { say } from "./say.ts";
import type { Type } from "./types.ts";

/** The type of the bounds; the step of temperature points is a difference. */
export function rangeType(cores: readonly [Core, Core, Core?], at: Range, context: Context): Type | undefined {
  const [from, to, step] = cores;
  if (cores.some((core) => core?.type.type === "unknown")) return undefined;
  for (const core of [from, to]) {
    if (core.type.type === "quantity" || core.type.type === "point") continue;
    report(context, faults.wrongType(core.range, { place: "A range", wanted: "quantities", given: say(core.type) }));
    return undefined;
  }
  const agreement = unify(context, from.type, to.type);
  if ("clash" in agreement) {
    report(context, clash(context, at, from.type, to.type, agreement.clash, "cannot be the ends of one range", {}));
    return undefined;
  }
  if (step === undefined) return agreement.type;
  const wanted: Type =
    agreement.type.type === "point" ? { type: "quantity", dimension: dimensionOf("temperature"), kind: "any" } : agreement.type;
  const stepped = unify(context, wanted, step.type);
  if ("clash" in stepped) {
    report(context, clash(context, step.range, wanted, step.type, stepped.clash, "cannot be bounds and step of one range", {}));
    return undefined;
  }
  return agreement.type;
}
