// The branches of `if` and `match`: one type for all of them.

import { faults } from "../diagnostics/index.ts";
import type { Conditional } from "../syntax/index.ts";
import { unify } from "./agree.ts";
import { type Context, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { say } from "./say.ts";
import { inferTruth } from "./truth.ts";
import type { Type } from "./types.ts";

export function inferConditional(expression: Conditional, context: Context, expected: Type | undefined): Core {
  const condition = inferTruth(expression.condition, context, "The condition of if");
  const then = context.infer(expression.then, context, expected);
  const otherwise = context.infer(expression.otherwise, context, expected);
  const type = joinBranches([then, otherwise], context, expected);
  return node(context, { op: "if", condition, then, otherwise, range: expression.range, type });
}

/** The one type of several branches; different members of an expected family meet in the family. */
export function joinBranches(branches: readonly Core[], context: Context, expected: Type | undefined): Type {
  if (expected?.type === "family" && branches.every((branch) => branch.type.type === "record" || branch.type.type === "family"))
    return expected;
  let type: Type = { type: "unknown" };
  for (const branch of branches) {
    const agreement = unify(context, type, branch.type);
    if ("clash" in agreement) {
      const slots = {
        left: say(context.solver.resolveType(type)),
        right: say(context.solver.resolveType(branch.type)),
        verb: "cannot be branches of one choice",
      };
      report(context, agreement.clash === "kind" ? faults.kindsDiffer(branch.range, slots) : faults.sidesDiffer(branch.range, slots));
      return { type: "unknown" };
    }
    type = agreement.type;
  }
  return type;
}
