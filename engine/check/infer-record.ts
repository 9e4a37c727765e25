// Records: making them with every field once, changing some with `with`.

import { nearest } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import type { FieldValue, RecordLiteral, WithUse } from "../syntax/index.ts";
import { fits } from "./agree.ts";
import { type Context, faulty, need, newSlot, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { mapDimensions, substitution } from "./dimensions.ts";
import { dottedName, recordFields, unknownName, whatItIs } from "./infer-name.ts";
import { readUnit } from "./infer-number.ts";
import { inferSpread } from "./infer-spread.ts";
import { reportMisfit } from "./misfit.ts";
import { say, shortName } from "./say.ts";
import { transplant } from "./transplant.ts";
import type { Type } from "./types.ts";

export function inferRecord(expression: RecordLiteral, context: Context): Core {
  const name = dottedName(expression.type, context);
  const found = name === undefined ? undefined : context.scope.find(name);
  if (found === undefined) {
    for (const field of expression.fields) inferSpread(field.value, context);
    return unknownName(expression.type, context);
  }
  const { entry } = found;
  if (entry.entry === "faulty") {
    need(context, found.key);
    return faulty(context, expression.range);
  }
  if (entry.entry !== "record")
    return faulty(context, expression.type.range, faults.notARecord(expression.type.range, { name: name ?? "", what: whatItIs(entry) }));
  const dimensions = entry.variables.map(() => context.solver.fresh());
  const change = substitution(entry.variables, dimensions);
  const given = fieldCores(
    expression.fields,
    context,
    (field) => {
      const known = entry.fields.find((candidate) => candidate.name === field);
      return known === undefined ? undefined : mapDimensions(known.type, change);
    },
    entry.name,
    entry.fields.map((field) => field.name),
  );
  const missing = entry.fields.filter((field) => field.default === undefined && !given.has(field.name)).map((field) => field.name);
  if (missing.length > 0)
    return faulty(
      context,
      expression.type.range,
      faults.missingField(expression.type.range, { record: shortName(entry.name), missing: missing.join(", ") }),
    );
  const fields = entry.fields.map((field) => given.get(field.name) ?? moved(field.default, entry.needs, entry.slots, context, expression));
  return node(context, {
    op: "record",
    record: entry.name,
    names: entry.fields.map((field) => field.name),
    fields,
    range: expression.range,
    type: { type: "record", name: entry.name, arguments: dimensions },
  });
}

/** A default's program, reaching what it needs from here. */
function moved(program: Core | undefined, needs: readonly string[], slots: number, context: Context, at: RecordLiteral): Core {
  if (program === undefined) return faulty(context, at.range);
  const base = context.shared.slots;
  for (let i = 0; i < slots; i += 1) newSlot(context);
  return transplant(program, (index) => need(context, needs[index] ?? ""), base, at.range);
}

/** Checks fields by name against the record; what is wrong is reported at its field. */
function fieldCores(
  fields: readonly FieldValue[],
  context: Context,
  typeOf: (name: string) => Type | undefined,
  record: string,
  known: readonly string[],
): Map<string, Core> {
  const given = new Map<string, Core>();
  for (const field of fields) {
    const { name } = field.name;
    const wanted = typeOf(name);
    const core = inferSpread(field.value, context, wanted);
    if (field.unit !== undefined) readUnit(field.unit, context, true);
    if (wanted === undefined) {
      const near = nearest(name, known);
      const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...field.name.range, insert: near }] }];
      report(
        context,
        faults.unknownField(field.name.range, { record: shortName(record), name: field.name.text, nearest: near }, { mends }),
      );
    } else if (given.has(name)) report(context, faults.fieldTwice(field.name.range, { name: field.name.text }));
    else if (!fieldFits(core, wanted, context, shortName(record), field.name.text)) given.set(name, faulty(context, field.value.range));
    else given.set(name, core);
    if (wanted !== undefined && !given.has(name)) given.set(name, core);
  }
  return given;
}

function fieldFits(core: Core, wanted: Type, context: Context, record: string, name: string): boolean {
  const agreement = fits(context, core.type, wanted);
  if ("type" in agreement) return true;
  reportMisfit(core, wanted, context, `The field ${name} of ${record}`, agreement.clash);
  return false;
}

export function inferWith(expression: WithUse, context: Context): Core {
  const of = context.infer(expression.of, context);
  if (of.type.type === "unknown") {
    for (const field of expression.fields) inferSpread(field.value, context);
    return faulty(context, expression.range);
  }
  if (of.type.type !== "record")
    return faulty(
      context,
      expression.of.range,
      faults.wrongType(expression.of.range, { place: "with", wanted: "a record", given: say(of.type) }),
    );
  const { type } = of;
  const known = recordFields(type, context);
  const names = known.map((field) => field.name);
  const given = fieldCores(expression.fields, context, (name) => known.find((field) => field.name === name)?.type, type.name, names);
  const changes = [...given].map(([name, value]) => ({ field: names.indexOf(name), name, value }));
  return node(context, { op: "with", of, changes, range: expression.range, type });
}
