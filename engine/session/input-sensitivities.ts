// How much a value or a check moves with each input that reaches it: everything between is run again with that one replaced.

import { type Outcome, prepareUnit, type Value } from "../run/index.ts";
import { type SensitivityInput, sensitivities } from "../trace/index.ts";
import type { EngineState } from "./engine-state.ts";
import type { SessionState } from "./session.ts";
import { statementOf } from "./statement-of.ts";
import type { SensitivityPage } from "./tools-api.ts";
import { keyOfMarks } from "./values.ts";

/** Inputs looked at; a notebook with more has its first ones told. */
const MOST = 40;

const nothing: SensitivityPage = { list: [] };

/** Of a check: how its utilisation moves. Empty where there is no number to move. */
export function inputSensitivities(state: SessionState, file: string, id: string, from: number, count: number): SensitivityPage {
  const { engine } = state;
  const statement = statementOf(state, file, id);
  const unit = statement?.checked?.unit;
  if (statement === undefined || unit === undefined) return nothing;
  const between = reach(engine, statement.key);
  const program = statement.checked?.program;
  const number = (value: Value | undefined): number | undefined => {
    if (program !== "comparison") return typeof value === "number" ? value : undefined;
    const [demand, capacity, factor] = value as readonly number[];
    return demand === undefined || capacity === undefined || factor === undefined ? undefined : (factor * demand) / capacity;
  };
  const worth = engine.values.worth(statement.key);
  const result = worth?.ok === true ? number(worth.value) : undefined;
  if (result === undefined || !Number.isFinite(result)) return nothing;
  const inputs = inputsAmong(engine, between).slice(0, MOST);
  const list = sensitivities(result, inputs.slice(from, from + count), (name, value) => {
    const outcome = runWith(engine, statement.key, between, name, value);
    if (!outcome.ok) return outcome;
    const moved = number(outcome.value);
    return { ok: true, value: moved === undefined || !Number.isFinite(moved) ? null : moved };
  }).map((sensitivity) => ({ ...sensitivity, name: shortOf(sensitivity.name, file) }));
  return from + count < inputs.length ? { list, next: from + count } : { list };
}

const shortOf = (key: string, file: string): string => (key.startsWith(`${file}#`) ? key.slice(file.length + 1) : key);

/** Statements of notebooks that a key hangs on, itself among them. */
function reach(engine: EngineState, key: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const queue = [key];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    if (seen.has(next) || (engine.byKey.get(next)?.file ?? "") === "") continue;
    seen.add(next);
    for (const need of engine.values.graph.needs(next)) if (keyOfMarks(need) === undefined) queue.push(need);
  }
  return seen;
}

function inputsAmong(engine: EngineState, keys: ReadonlySet<string>): readonly SensitivityInput[] {
  const found: SensitivityInput[] = [];
  for (const key of keys) {
    const checked = engine.byKey.get(key)?.checked;
    const worth = engine.values.worth(key);
    if (checked?.input !== true || worth?.ok !== true || typeof worth.value !== "number") continue;
    found.push({ name: key, value: worth.value, point: checked.type.type === "point" });
  }
  return found.reverse();
}

function runWith(engine: EngineState, result: string, between: ReadonlySet<string>, input: string, value: number): Outcome {
  const known = new Map<string, Outcome>([[input, { ok: true, value }]]);
  const changed = new Map<string, boolean>([[input, true]]);
  const hangs = (key: string): boolean => {
    const before = changed.get(key);
    if (before !== undefined) return before;
    changed.set(key, false);
    const found = between.has(key) && engine.values.graph.needs(key).some(hangs);
    changed.set(key, found);
    return found;
  };
  const outcomeOf = (key: string): Outcome => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const outcome = hangs(key) ? again(key) : asItIs(engine, key);
    known.set(key, outcome);
    return outcome;
  };
  const again = (key: string): Outcome => {
    const unit = engine.byKey.get(key)?.checked?.unit;
    if (unit === undefined) return asItIs(engine, key);
    const needs: Value[] = [];
    for (const need of unit.needs) {
      const outcome = outcomeOf(need);
      if (!outcome.ok) return outcome;
      needs.push(outcome.value);
    }
    return prepareUnit(unit, engine.values.context)(needs);
  };
  return outcomeOf(result);
}

function asItIs(engine: EngineState, key: string): Outcome {
  const worth = engine.values.worth(key);
  // What has no value gives none: the caller tells "fault nearby".
  return { ok: true, value: worth?.ok === true ? worth.value : null };
}
