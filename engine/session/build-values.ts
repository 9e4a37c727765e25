// From what checking gave to nodes of values: after the types are up to date, each statement checked anew gets its program's nodes.

import { type Provenance, readProvenance } from "../run/index.ts";
import type { Kind } from "../units/index.ts";
import { type EngineState, fileKey } from "./engine-state.ts";
import type { Statement } from "./statement.ts";

/** Defines or removes the value nodes of the statements whose keys were checked again; gives the keys whose kinds of use changed. */
export function buildValues(engine: EngineState, checkedKeys: readonly string[]): readonly string[] {
  const touched: string[] = [];
  for (const key of checkedKeys) {
    const statement = engine.byKey.get(key);
    if (statement !== undefined) buildOne(engine, statement);
    noteKinds(engine, key, statement?.checked?.kindUses ?? new Map(), touched);
  }
  for (const key of engine.gone) if (!engine.byKey.has(key)) noteKinds(engine, key, new Map(), touched);
  engine.gone.clear();
  return touched;
}

function noteKinds(engine: EngineState, user: string, uses: ReadonlyMap<string, Kind>, touched: string[]): void {
  const before = engine.kindsUsedBy.get(user) ?? [];
  for (const key of before) {
    if (uses.has(key)) continue;
    engine.kindUses.get(key)?.delete(user);
    touched.push(key);
  }
  if (uses.size === 0) {
    if (before.length > 0) engine.kindsUsedBy.delete(user);
    return;
  }
  engine.kindsUsedBy.set(user, [...uses.keys()]);
  for (const [key, kind] of uses) {
    const users = engine.kindUses.get(key) ?? new Map<string, Kind>();
    engine.kindUses.set(key, users);
    if (users.get(user) === kind) continue;
    users.set(user, kind);
    touched.push(key);
  }
}

function buildOne(engine: EngineState, statement: Statement): void {
  const { values } = engine;
  const { checked, key } = statement;
  const exported = engine.types.value(key) as { readonly entry: { readonly entry: string } } | undefined;
  if (statement.table !== undefined && exported?.entry.entry === "value") {
    const reference = statement.csv?.reference?.text ?? statement.tree.columns?.reference;
    values.defineConstant(key, statement.table, readProvenance(reference, statement.name ?? key));
    return;
  }
  if (statement.tree.kind === "use") {
    if (exported?.entry.entry === "value") values.defineAlias(key, fileKey(engine.prefix(statement.file, statement.name ?? "") ?? ""));
    else values.remove(key);
    return;
  }
  if (checked?.entry?.entry === "formula") {
    values.defineFormula(key, checked.entry.core);
    return;
  }
  if (checked?.unit === undefined) {
    values.remove(key);
    return;
  }
  const isConstant = checked.program === "value" && checked.input;
  if (!isConstant) values.defineUnit(key, checked.unit, undefined);
  else
    values.defineUnit(
      key,
      checked.unit,
      readProvenance(statement.tree.columns?.reference, statement.name ?? key),
      fieldProvenances(statement),
    );
}

/** Of an input record: what the reference columns of its fields say, in the order of the record's declaration. */
function fieldProvenances(statement: Statement): readonly (Provenance | undefined)[] | undefined {
  const { tree, checked } = statement;
  const body = checked?.unit?.body;
  if (tree.kind !== "definition" || tree.value.kind !== "record" || body?.op !== "record") return undefined;
  const { fields } = tree.value;
  if (!fields.some((field) => field.columns?.reference !== undefined)) return undefined;
  return body.names.map((name) => {
    const reference = fields.find((field) => field.name.name === name)?.columns?.reference;
    return reference === undefined ? undefined : readProvenance(reference, `${statement.name ?? ""}.${name}`);
  });
}
