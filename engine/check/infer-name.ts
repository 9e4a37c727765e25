// Names, members of records and tables, columns of the table at hand, names behind the prefix of a `use`.

import { nearest } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import type { ColumnUse, Member, NameUse } from "../syntax/index.ts";
import { type Context, constant, faulty, globalNode, node } from "./context.ts";
import type { Core } from "./core.ts";
import { mapDimensions, substitution } from "./dimensions.ts";
import { plainNumber } from "./infer-number.ts";
import { mapOver } from "./map-over.ts";
import { say, shortName } from "./say.ts";
import type { Entry, Found } from "./scope.ts";
import type { Type } from "./types.ts";

/** `shop.F` as one dotted name when `shop` is the prefix of a `use` and no local of that name is in the way. */
export function dottedName(expression: NameUse | Member, context: Context): string | undefined {
  if (expression.kind === "name") return expression.name;
  if (expression.of.kind !== "name" || context.locals.has(expression.of.name)) return undefined;
  return context.scope.find(expression.of.name)?.entry.entry === "prefix" ? `${expression.of.name}.${expression.field.name}` : undefined;
}

export const whatItIs = (entry: Entry): string =>
  entry.entry === "formula" || entry.entry === "native"
    ? "a formula"
    : entry.entry === "record"
      ? "a record type"
      : entry.entry === "family"
        ? "a family"
        : entry.entry === "prefix"
          ? "the prefix of another notebook"
          : "a value";

export function inferName(expression: NameUse, context: Context): Core {
  const local = context.locals.get(expression.name);
  if (local !== undefined)
    return node(context, { op: "local", slot: local.slot, name: expression.name, range: expression.range, type: local.type });
  const found = context.scope.find(expression.name);
  if (found !== undefined) return useOf(found, expression.text, expression.range, context);
  if (expression.name === "pi") return { ...constant(expression.range, plainNumber, Math.PI), literal: false } as Core;
  return unknownName(expression, context);
}

function useOf(found: Found, text: string, at: Member["range"], context: Context): Core {
  const { entry } = found;
  if (entry.entry === "value") return globalNode(context, found, text, at, entry.type);
  if (entry.entry === "faulty") return globalNode(context, found, text, at, { type: "unknown" });
  const advice =
    entry.entry === "formula" || entry.entry === "native"
      ? `Call it: ${text}(...).`
      : entry.entry === "record"
        ? `Make one: ${text} { ... }.`
        : undefined;
  return faulty(context, at, faults.notAValue(at, { name: text, what: whatItIs(entry), advice }));
}

export function unknownName(expression: NameUse | Member, context: Context): Core {
  if (expression.kind === "member" && expression.of.kind === "name") return notInFile(expression, expression.of.name, context);
  const text = expression.kind === "name" ? expression.text : expression.field.text;
  const near =
    expression.kind === "name" ? nearest(expression.name, [...context.locals.keys(), ...context.scope.names(), "pi"]) : undefined;
  const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...expression.range, insert: near }] }];
  return faulty(context, expression.range, faults.unknownName(expression.range, { name: text, nearest: near }, { mends }));
}

/** `shop.F` where the notebook behind `shop` declares no F. */
function notInFile(expression: Member, prefix: string, context: Context): Core {
  const { entry } = context.scope.find(prefix) ?? {};
  const { field } = expression;
  const near = nearest(field.name, context.scope.namesBehind(prefix));
  const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...field.range, insert: near }] }];
  const file = entry?.entry === "prefix" ? entry.file : prefix;
  return faulty(context, field.range, faults.notInFile(field.range, { file, name: field.text, nearest: near }, { mends }));
}

export function inferMember(expression: Member, context: Context): Core {
  const dotted = dottedName(expression, context);
  if (dotted !== undefined) {
    const found = context.scope.find(dotted);
    return found === undefined ? unknownName(expression, context) : useOf(found, dotted, expression.range, context);
  }
  const of = context.infer(expression.of, context);
  return mapOver(context, [of], expression.range, ([value]) =>
    value === undefined ? faulty(context, expression.range) : memberOf(value, expression, context),
  );
}

function memberOf(of: Core, expression: Member, context: Context): Core {
  const { field } = expression;
  if (of.type.type === "unknown") return faulty(context, expression.range);
  if (of.type.type === "record") {
    const known = recordFields(of.type, context);
    const index = known.findIndex((candidate) => candidate.name === field.name);
    const hit = known[index];
    if (hit !== undefined)
      return node(context, { op: "field", of, field: index, name: field.name, range: expression.range, type: hit.type });
    const near = nearest(
      field.name,
      known.map((candidate) => candidate.name),
    );
    const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...field.range, insert: near }] }];
    return faulty(
      context,
      field.range,
      faults.unknownField(field.range, { record: shortName(of.type.name), name: field.text, nearest: near }, { mends }),
    );
  }
  if (of.type.type === "table") {
    const column = of.type.columns.find((candidate) => candidate.name === field.name || candidate.name === field.text);
    if (column !== undefined)
      return node(context, { op: "column", of, name: column.name, range: expression.range, type: { type: "list", of: column.type } });
    const near = nearest(
      field.name,
      of.type.columns.map((candidate) => candidate.name),
    );
    return faulty(context, field.range, faults.noColumn(field.range, { name: field.text, nearest: near }));
  }
  const advice =
    of.type.type === "family"
      ? "Which member it is must be told first: match (x) { Member m: m.field, ... }."
      : of.type.type === "maybe"
        ? "It may be none: match (x) { none: ..., some v: v.field }."
        : of.type.type === "quantity"
          ? "A bare parameter is a quantity: give its record as the type."
          : undefined;
  return faulty(
    context,
    expression.range,
    faults.noFields(expression.range, { given: say(context.solver.resolveType(of.type)), name: field.text, advice }),
  );
}

/** The fields of a record type with its dimension arguments put in. */
export function recordFields(
  type: Extract<Type, { type: "record" }>,
  context: Context,
): readonly { readonly name: string; readonly type: Type }[] {
  const entry = context.scope.byFullName(type.name);
  if (entry?.entry !== "record") return [];
  const change = substitution(entry.variables, type.arguments);
  return entry.fields.map((field) => ({ name: field.name, type: mapDimensions(field.type, change) }));
}

export function inferColumn(expression: ColumnUse, context: Context): Core {
  const { field } = expression;
  if (context.columns === undefined) return faulty(context, expression.range, faults.columnOutside(expression.range, { name: field.text }));
  const index = context.columns.names.findIndex((name) => name === field.name || name === field.text);
  const [type, slot] = [context.columns.types[index], context.columns.slots[index]];
  if (type === undefined || slot === undefined) {
    return faulty(
      context,
      expression.range,
      faults.noColumn(expression.range, { name: field.text, nearest: nearest(field.name, context.columns.names) }),
    );
  }
  return node(context, { op: "local", slot, name: field.text, range: expression.range, type });
}
