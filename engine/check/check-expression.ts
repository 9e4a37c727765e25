// One expression by itself: the command line, live values in prose.

import type { Expression, UnitText } from "../syntax/index.ts";
import { result, shownUnit, unitOf } from "./checked.ts";
import { createContext } from "./context.ts";
import { infer } from "./infer.ts";
import { literalUnit } from "./input.ts";
import type { Checked, Scope } from "./scope.ts";

/** Checks an expression with an optional unit to show it in. */
export function checkExpression(expression: Expression, unit: UnitText | undefined, scope: Scope): Checked {
  const context = createContext(scope, "open", infer);
  const body = infer(expression, context);
  const type = context.solver.resolveType(body.type);
  const shown = unit === undefined ? literalUnit(body) : shownUnit(unit, type, context);
  return result(context, {
    program: "value",
    unit: unitOf(context, body),
    type,
    ...(shown === undefined ? {} : { shownIn: shown }),
  });
}
