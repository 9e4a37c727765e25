// A statement's program: prepared once, run on the values of what it needs; a fault is looked for only when there is one.

import { broken } from "../base/index.ts";
import type { CoreUnit } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { compileChecked, compileOrStop } from "./compile.ts";
import type { Outcome, RunContext } from "./context.ts";
import { type Marked, unmarked } from "./marks.ts";
import { OwnRefusal, Refusal } from "./native.ts";
import type { Recording } from "./recording.ts";
import { RunFault } from "./run-fault.ts";
import { type Cells, spent, startState, suspect } from "./state.ts";
import type { Value } from "./value.ts";
import { walk } from "./walk.ts";

/**
 * Compiles a unit once. What comes back takes the values of `unit.needs` in their order, all of them finite, and gives the
 * value or the fault at its smallest place; it keeps nothing from one run to the next.
 */
export function prepareUnit(unit: CoreUnit, context: RunContext): (needs: readonly Value[]) => Outcome {
  const count = unit.needs.length;
  const size = count + unit.slots;
  const run = compileOrStop(() => compileChecked(unit.body, { needs: count, context }));
  return (needs) => {
    // Without slots nothing is ever written to the cells, and the needs can serve as they are.
    let cells = needs as Cells;
    if (unit.slots > 0) {
      cells = new Array<Value>(size);
      for (let i = 0; i < count; i += 1) cells[i] = needs[i] as Value;
    }
    try {
      return { ok: true, value: run(cells, startState(context.limits)) };
    } catch (problem) {
      return { ok: false, fault: explain(unit, needs, context, problem) };
    }
  };
}

function explain(unit: CoreUnit, needs: readonly Value[], context: RunContext, problem: unknown): Diagnostic {
  const stopped = budgetFault(unit, context, problem);
  if (stopped !== undefined) return stopped;
  if (problem !== suspect && !(problem instanceof OwnRefusal) && !(problem instanceof Refusal)) throw problem;
  const outcome = walkUnit(
    unit,
    needs.map((value) => ({ value, marks: unmarked })),
    context,
  );
  return outcome.ok ? broken("the walk found no fault where the fast run did") : outcome.fault;
}

/** A budget's end is a fault of the whole statement: which item used it up says nothing. */
function budgetFault(unit: CoreUnit, context: RunContext, problem: unknown): Diagnostic | undefined {
  if (problem === spent) return faults.tooManySteps(unit.body.range, { limit: String(context.limits.steps) });
  // The machine's own stack ended before the depth limit: one expression nested thousands deep.
  if (problem instanceof RangeError) return faults.tooDeep(unit.body.range, { limit: String(context.limits.depth) });
  return undefined;
}

export type WalkOutcome = { readonly ok: true; readonly marked: Marked } | { readonly ok: false; readonly fault: Diagnostic };

/** The careful evaluator on a unit; `recording` takes every node's value (see `startRecording`). */
export function walkUnit(unit: CoreUnit, needs: readonly Marked[], context: RunContext, recording?: Recording): WalkOutcome {
  const place = {
    needs,
    slots: new Array<Marked>(unit.slots),
    state: startState(context.limits),
    context,
    ...(recording === undefined ? {} : { recording }),
  };
  try {
    return { ok: true, marked: walk(unit.body, place) };
  } catch (problem) {
    if (problem instanceof RunFault) return { ok: false, fault: problem.diagnostic };
    const stopped = budgetFault(unit, context, problem);
    if (stopped === undefined) throw problem;
    return { ok: false, fault: stopped };
  }
}

/**
 * The value of a unit with its marks; the value is bitwise that of `prepareUnit`. For units whose value is not a fault.
 * Throws when it is one.
 */
export function markUnit(unit: CoreUnit, needs: readonly Marked[], context: RunContext): Marked {
  const outcome = walkUnit(unit, needs, context);
  return outcome.ok ? outcome.marked : broken(`marks of a value that is a fault: ${outcome.fault.code}`);
}
