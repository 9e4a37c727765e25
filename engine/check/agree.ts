// When two types are one, when a value fits a place, and what two branches have in common.

import { kindsAgree } from "../units/index.ts";
import type { Context } from "./context.ts";
import type { Type } from "./types.ts";

/** The type both are once the solver has made them equal; "dimension" or "kind" says what stood in the way. */
export type Agreement = { readonly type: Type } | { readonly clash: "dimension" | "kind" | "type" };

/** Makes two types equal; maybe and the like are looked through, records must be the same record. */
export function unify(context: Context, a: Type, b: Type): Agreement {
  if (a.type === "unknown") return { type: b };
  if (b.type === "unknown") return { type: a };
  if (a.type === "quantity" && b.type === "quantity") {
    if (!context.solver.unify(a.dimension, b.dimension)) return { clash: "dimension" };
    const kind = kindsAgree(a.kind, b.kind);
    if (kind === undefined) return { clash: "kind" };
    return { type: { type: "quantity", dimension: context.solver.resolve(a.dimension), kind } };
  }
  if (a.type === "text" && b.type === "text") {
    if (a.choices === undefined || b.choices === undefined) return { type: { type: "text" } };
    return { type: { type: "text", choices: [...new Set([...a.choices, ...b.choices])] } };
  }
  if (a.type === "list" && b.type === "list") return within(unify(context, a.of, b.of), (of) => ({ type: "list", of }));
  if (a.type === "maybe" || b.type === "maybe") {
    const one = a.type === "maybe" ? a.of : a;
    const other = b.type === "maybe" ? b.of : b;
    return within(unify(context, one, other), (of) => ({ type: "maybe", of }));
  }
  if (a.type === "record" && b.type === "record") {
    if (a.name !== b.name) return { clash: "type" };
    return a.arguments.every((argument, i) => context.solver.unify(argument, b.arguments[i] ?? argument))
      ? { type: a }
      : { clash: "dimension" };
  }
  if (a.type === "family" && b.type === "family") return a.name === b.name ? { type: a } : { clash: "type" };
  if (a.type === "table" && b.type === "table") {
    if (a.columns.length !== b.columns.length) return { clash: "type" };
    const same = a.columns.every(
      (column, i) => column.name === b.columns[i]?.name && "type" in unify(context, column.type, b.columns[i]?.type ?? column.type),
    );
    return same ? { type: a } : { clash: "type" };
  }
  return a.type === b.type ? { type: a } : { clash: "type" };
}

function within(inner: Agreement, wrap: (of: Type) => Type): Agreement {
  return "clash" in inner ? inner : { type: wrap(inner.type) };
}

/** Whether a value of type `given` may stand where `wanted` is: members go into families, values into Maybe, texts into their choices. */
export function fits(context: Context, given: Type, wanted: Type): Agreement {
  if (given.type === "unknown" || wanted.type === "unknown") return { type: wanted };
  if (wanted.type === "maybe")
    return given.type === "maybe"
      ? within(fits(context, given.of, wanted.of), () => wanted)
      : within(fits(context, given, wanted.of), () => wanted);
  if (wanted.type === "family" && given.type === "record") {
    const family = context.scope.byFullName(wanted.name);
    return family?.entry === "family" && family.members.includes(given.name) ? { type: wanted } : { clash: "type" };
  }
  if (wanted.type === "text" && given.type === "text") {
    if (wanted.choices === undefined) return { type: wanted };
    return given.choices?.every((choice) => wanted.choices?.includes(choice)) === true ? { type: wanted } : { clash: "type" };
  }
  if (wanted.type === "list" && given.type === "list") return within(fits(context, given.of, wanted.of), () => wanted);
  if (wanted.type === "table" && given.type === "table") {
    const lacking = wanted.columns.some((column) => {
      const has = given.columns.find((candidate) => candidate.name === column.name);
      return has === undefined || "clash" in fits(context, has.type, column.type);
    });
    return lacking ? { clash: "type" } : { type: given };
  }
  return unify(context, given, wanted);
}
