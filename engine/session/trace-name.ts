// The working of one name or check of a file, with what hangs on it.

import { citation, readReference } from "../notebook/index.ts";
import type { Marked, Value } from "../run/index.ts";
import { normalName } from "../syntax/index.ts";
import { traceUnit } from "../trace/index.ts";
import type { Trace } from "./api.ts";
import { fullName } from "./engine-state.ts";
import type { Reporter } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue } from "./show.ts";
import { keyOfMarks } from "./values.ts";

/** `name`: a name of the file or of the library, or the id of an output. */
export function traceName(state: SessionState, reporter: Reporter, file: string, name: string, open: number): Trace | undefined {
  const { engine, files } = state;
  const notebook = files.notebooks.get(file);
  if (notebook === undefined) return undefined;
  const key = [fullName(file, normalName(name)), fullName(file, name)].find((candidate) => engine.byKey.has(candidate));
  const statement = key === undefined ? undefined : engine.byKey.get(key);
  const unit = statement?.checked?.unit;
  if (key === undefined || statement === undefined || unit === undefined) return undefined;
  const needs = unit.needs.map((need): Marked | undefined => {
    const worth = engine.values.worth(need);
    return worth?.ok === true ? { value: worth.value, marks: engine.values.marks(need) } : undefined;
  });
  if (needs.includes(undefined)) return undefined;
  const context = reporter.context(notebook);
  const { columns } = statement.tree;
  const view = traceUnit(unit, needs as readonly Marked[], engine.values.context, {
    ...(statement.tree.kind === "definition" ? { name: statement.tree.name.text } : {}),
    ...(statement.checked?.shownIn === undefined ? {} : { unit: statement.checked.shownIn }),
    open,
    show: (value: Value, type, asked) => showValue(value, type, asked, context.show),
    unitOf: (used) => engine.byKey.get(fullName(file, normalName(used)))?.checked?.shownIn,
    cite: (reference) => citation(readReference(reference), context.references),
    ...(columns?.note === undefined ? {} : { note: columns.note }),
    ...(columns?.reference === undefined ? {} : { reference: columns.reference }),
  });
  return { view, usedBy: usedBy(state, key) };
}

/** Names and checks that read it, by id, in no other file than the key's own. */
function usedBy(state: SessionState, key: string): readonly string[] {
  const out: string[] = [];
  for (const dependant of state.engine.values.graph.dependants(key)) {
    if (keyOfMarks(dependant) !== undefined) continue;
    const statement = state.engine.byKey.get(dependant);
    if (statement !== undefined) out.push(statement.name ?? statement.tree.columns?.note ?? statement.text.split("\n", 1)[0] ?? "");
  }
  return out.sort();
}
