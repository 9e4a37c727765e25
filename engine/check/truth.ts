// Places that want a truth: conditions, `and`, `or`, `not`.

import { faults } from "../diagnostics/index.ts";
import type { Expression } from "../syntax/index.ts";
import { type Context, faulty } from "./context.ts";
import type { Core } from "./core.ts";
import { say } from "./say.ts";

/** An expression that must be a truth. */
export function inferTruth(expression: Expression, context: Context, place: string): Core {
  const core = context.infer(expression, context);
  if (core.type.type === "truth" || core.type.type === "unknown") return core;
  const advice = core.type.type === "list" && core.type.of.type === "truth" ? "Write all(...) or any(...)." : undefined;
  return faulty(
    context,
    expression.range,
    faults.wrongType(expression.range, { place, wanted: "true or false", given: say(core.type), advice }),
  );
}
