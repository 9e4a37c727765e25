// Runs a unit through the fast evaluator and the walk, and holds them to the same outcome.

import { expect } from "vitest";
import type { CoreUnit } from "../../engine/check/index.ts";
import type { Diagnostic } from "../../engine/diagnostics/index.ts";
import { type Outcome, prepareUnit, type RunContext, sameValue, type Value, walkUnit } from "../../engine/run/index.ts";
import { bare, context as plain } from "./core-builder.ts";

export function evaluate(unit: CoreUnit, needs: readonly Value[] = [], context: RunContext = plain()): Outcome {
  const fast = prepareUnit(unit, context)(needs);
  const careful = walkUnit(unit, needs.map(bare), context);
  expect(careful.ok).toBe(fast.ok);
  if (fast.ok && careful.ok) expect(sameValue(fast.value, careful.marked.value)).toBe(true);
  if (!fast.ok && !careful.ok) expect(careful.fault).toEqual(fast.fault);
  return fast;
}

export function resultOf(unit: CoreUnit, needs: readonly Value[] = [], context?: RunContext): Value {
  const outcome = evaluate(unit, needs, context);
  if (!outcome.ok) throw new Error(`fault ${outcome.fault.code}: ${outcome.fault.message}`);
  return outcome.value;
}

export function faultOf(unit: CoreUnit, needs: readonly Value[] = [], context?: RunContext): Diagnostic {
  const outcome = evaluate(unit, needs, context);
  if (outcome.ok) throw new Error(`no fault, but ${JSON.stringify(outcome.value)}`);
  return outcome.fault;
}
