// The units that a value may be shown in, each with the value in it, and where the statement says which.

import type { Type } from "../check/index.ts";
import { unitChoices as choicesOf, kindsOf, temperature, type Unit } from "../units/index.ts";
import { placeOf, type Reporter } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue } from "./show.ts";
import { statementOf } from "./statement-of.ts";
import type { UnitChoices } from "./tools-api.ts";

/** Undefined for what has no unit: texts, records, checks, a line without a value. */
export function unitChoices(state: SessionState, reporter: Reporter, file: string, id: string): UnitChoices | undefined {
  const statement = statementOf(state, file, id);
  const notebook = state.files.notebooks.get(file);
  const worth = statement === undefined ? undefined : state.engine.values.worth(statement.key);
  const at = statement === undefined ? undefined : placeOf(state.files, state.engine, statement.key);
  if (statement?.tree.kind !== "definition" || notebook === undefined || worth?.ok !== true || at === undefined) return undefined;
  const type = statement.checked?.type;
  const inner = type === undefined ? undefined : innermost(type);
  if (type === undefined || inner === undefined) return undefined;
  const { show } = reporter.context(notebook);
  // Asked for unit by unit, so a view in one system must not override it.
  const plain = { ...show, system: undefined };
  const seen = new Set<string>();
  const choices = unitsOf(inner).flatMap((unit) => {
    if (seen.has(unit.text)) return [];
    seen.add(unit.text);
    return [{ unit: unit.text, shown: showValue(worth.value, type, unit, plain) }];
  });
  if (choices.length < 2) return undefined;
  const { value, unit } = statement.tree;
  return { choices, from: at.from + value.range.to, to: at.from + (unit?.range.to ?? value.range.to) };
}

function innermost(type: Type): Extract<Type, { type: "quantity" | "point" }> | undefined {
  if (type.type === "list" || type.type === "maybe") return innermost(type.of);
  return type.type === "quantity" || type.type === "point" ? type : undefined;
}

/** A product of force and length that says no more is a moment, as it is shown; what turns is not offered per angle. */
function unitsOf(type: Extract<Type, { type: "quantity" | "point" }>): readonly Unit[] {
  if (type.type === "point") return choicesOf(temperature, "any", true);
  const kind = type.kind === "any" ? (kindsOf(type.dimension)[0] ?? "any") : type.kind;
  return choicesOf(type.dimension, kind).filter(({ text }) => kind !== "torque" || !/\/(?:rad|°)/.test(text));
}
