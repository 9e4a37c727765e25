// Whether the marks of a result hang on values and not on the marks of what goes in alone.

import type { Core, CoreFormula, CoreUnit } from "../check/index.ts";

/**
 * False: an edit that changes values alone leaves the unit's marks as they are. `callee` tells of each formula among the
 * needs (by its place) whether its marks hang on values; without it every call is taken to.
 */
export function needsValues(unit: CoreUnit, callee: (need: number) => boolean = () => true): boolean {
  return hangsOnValues(unit.body, callee);
}

/** The same of a formula's own marks at a call: a limit of validity, a condition or a loop in its body. */
export function formulaNeedsValues(formula: CoreFormula, callee: (need: number) => boolean = () => true): boolean {
  return (
    formula.steps.some((step) => step.kind === "valid" || hangsOnValues(step.value, callee)) ||
    formula.parameters.some((parameter) => parameter.default !== undefined && hangsOnValues(parameter.default, callee))
  );
}

function hangsOnValues(core: Core, callee: (need: number) => boolean): boolean {
  const look = (part: Core): boolean => hangsOnValues(part, callee);
  switch (core.op) {
    case "constant":
    case "global":
    case "local":
      return false;
    case "negate":
    case "not":
    case "field":
    case "column":
      return look(core.of);
    case "add":
    case "subtract":
    case "multiply":
    case "divide":
    case "power":
      return look(core.left) || look(core.right);
    case "compare":
      return core.operands.some(look);
    case "call":
      if (core.formula.op !== "global" || callee(core.formula.index)) return true;
      return core.arguments.some((argument) => argument !== undefined && look(argument));
    case "native":
      return core.arguments.some(look);
    case "list":
      return core.items.some(look);
    case "record":
      return core.fields.some(look);
    case "with":
      return look(core.of) || core.changes.some((change) => look(change.value));
    case "table":
      return core.columns.some((column) => column.some(look));
    case "range":
      return look(core.from) || look(core.to) || look(core.step);
    case "scatter":
      return look(core.nominal);
    // What is taken, left out or repeated is told by values alone.
    case "and":
    case "or":
    case "if":
    case "map":
    case "comprehension":
    case "accumulate":
    case "index":
    case "where":
    case "group":
    case "match":
    case "matchMaybe":
    case "study":
    case "solve":
      return true;
  }
}
