// Live values in prose, and any other expression that stands outside the statements.

import { type Checked, checkExpression } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import type { LiveValue } from "../notebook/index.ts";
import { type Marked, type Marks, prepareUnit, unmarked, type Value, walkUnit } from "../run/index.ts";
import { type Expression, type Live, namesUsed, type UnitText } from "../syntax/index.ts";
import { type EngineState, keysOf, scopeOf } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { type OutputContext, place, shownMarks } from "./outputs.ts";
import { showValue } from "./show.ts";
import type { LineOutput } from "./snapshot.ts";

/** A live value with what stands in its braces read. */
export type LiveText = LiveValue & Live;

/** The result of an expression by itself; its ranges count from the expression's own text. */
export interface Answer {
  readonly checked: Checked;
  readonly value?: Value;
  readonly marks: Marks;
  readonly diagnostics: readonly Diagnostic[];
  readonly waits: readonly string[];
}

/** The keys that an expression may need in a file; library names among them get their nodes. */
export function expressionKeys(engine: EngineState, file: string, expression: Expression): readonly string[] {
  const at = expression.range;
  const uses = namesUsed({ kind: "check", range: at, working: at, condition: expression });
  return [...new Set(uses.flatMap((name) => keysOf(engine, file, name)))];
}

/** Checks and runs an expression on the graphs as they stand. */
export function answer(engine: EngineState, file: string, expression: Expression, unit: UnitText | undefined): Answer {
  const keys = expressionKeys(engine, file, expression);
  const seen = new Map(keys.map((key) => [key, engine.types.value(key) as Exported | undefined]));
  const checked = checkExpression(expression, unit, scopeOf(engine, file, seen));
  const program = checked.unit;
  if (program === undefined) return { checked, marks: unmarked, diagnostics: checked.diagnostics, waits: [] };
  const worths = program.needs.map((key) => engine.values.worth(key));
  const waits = program.needs.filter((_, i) => worths[i]?.ok !== true);
  if (waits.length > 0) return { checked, marks: unmarked, diagnostics: checked.diagnostics, waits };
  const needs = worths.map(
    (worth, i): Marked => ({ value: (worth as { readonly value: Value }).value, marks: engine.values.marks(program.needs[i] ?? "") }),
  );
  const outcome = prepareUnit(program, engine.values.context)(needs.map((need) => need.value));
  if (!outcome.ok) return { checked, marks: unmarked, diagnostics: [...checked.diagnostics, outcome.fault], waits: [] };
  const walked = walkUnit(program, needs, engine.values.context);
  return { checked, value: outcome.value, marks: walked.ok ? walked.marked.marks : unmarked, diagnostics: checked.diagnostics, waits: [] };
}

/** The output of a live value; `start` is the offset of its prose part. */
export function liveOutput(
  engine: EngineState,
  file: string,
  live: LiveText,
  id: string,
  start: number,
  context: OutputContext,
): LineOutput {
  const result = answer(engine, file, live.path, live.unit);
  const offset = start + live.from + 1;
  const base = { id, kind: "live" as const, from: start + live.from, to: start + live.to, citation: "", note: "", name: live.inside };
  const waiting = result.waits.length > 0 ? [faults.liveWaits(live.path.range, { name: live.inside })] : [];
  const diagnostics = [...result.diagnostics, ...waiting].map((diagnostic) => place(diagnostic, offset, context, file));
  if (result.value === undefined) return { ...base, diagnostics };
  const marks = shownMarks(result.marks);
  const unit = result.checked.shownIn ?? ownUnit(engine, file, live.path);
  return {
    ...base,
    diagnostics,
    value: showValue(result.value, result.checked.type, unit, context.show),
    ...(marks === undefined ? {} : { marks }),
  };
}

/** A bare name is shown as its definition shows it. */
export function ownUnit(engine: EngineState, file: string, path: Expression): Checked["shownIn"] {
  if (path.kind !== "name") return undefined;
  for (const key of keysOf(engine, file, path.name)) {
    const statement = engine.byKey.get(key);
    if (statement?.checked !== undefined) return statement.checked.shownIn;
  }
  return undefined;
}
