// The typed program as maths, with names or with the values that a walk recorded put in for them.

import { assertNever } from "../base/index.ts";
import type { Core, Type } from "../check/index.ts";
import type { Marked, Value } from "../run/index.ts";
import type { Unit } from "../units/index.ts";
import { type Maths, symbolOf } from "./maths.ts";

/** A shown value in parts; `number` is empty for what is no single number. */
export interface TraceShown {
  readonly text: string;
  readonly number: string;
  readonly unit: string;
}

export type Show = (value: Value, type: Type, unit?: Unit) => TraceShown;

export interface Reader {
  readonly show: Show;
  /** The types of the place: inside a polymorphic formula as this call has them. */
  readonly typeOf: (type: Type) => Type;
  /** The unit that a name is shown in, where it has one. */
  readonly unitOf: (leaf: Core) => Unit | undefined;
  /** Values to put in for names; absent: names stay. */
  readonly values?: ReadonlyMap<Core, Marked>;
  /** Slots of loops: those of `map` stand for its sources, the others stay names. */
  readonly bound: ReadonlyMap<number, Maths | undefined>;
}

export function readCore(core: Core, reader: Reader): Maths {
  const put = putIn(core, reader);
  if (put !== undefined) return put;
  const read = (part: Core): Maths => readCore(part, reader);
  switch (core.op) {
    case "constant":
      // The one constant of the language that has a name keeps it; a literal is shown as its number.
      if (!core.literal && core.value === Math.PI) return { kind: "text", text: "π" };
      return shownMaths(core.value, core.type, core.unit, reader);
    case "global":
      return symbolOf(core.name);
    case "local":
      return reader.bound.get(core.slot) ?? symbolOf(core.name);
    case "negate":
      return { kind: "negative", of: read(core.of) };
    case "not":
      return { kind: "not", of: read(core.of) };
    case "add":
    case "subtract": {
      const left = read(core.left);
      const before = left.kind === "sum" ? left.terms : [{ minus: false, of: left }];
      return { kind: "sum", terms: [...before, { minus: core.op === "subtract", of: read(core.right) }] };
    }
    case "multiply": {
      const left = read(core.left);
      return { kind: "product", factors: [...(left.kind === "product" ? left.factors : [left]), read(core.right)] };
    }
    case "divide":
      return { kind: "fraction", over: read(core.left), under: read(core.right) };
    case "power":
      return { kind: "power", base: read(core.left), exponent: read(core.right) };
    case "and":
    case "or":
      return { kind: "logic", operator: core.op, operands: [read(core.left), read(core.right)] };
    case "compare":
      return { kind: "compare", operands: core.operands.map(read), operators: core.operators };
    case "if": {
      const taken =
        reader.values === undefined
          ? undefined
          : reader.values.has(core.then)
            ? "met"
            : reader.values.has(core.otherwise)
              ? "otherwise"
              : undefined;
      const cases = { kind: "cases", condition: read(core.condition), met: read(core.then), otherwise: read(core.otherwise) } as const;
      return taken === undefined ? cases : { ...cases, taken };
    }
    case "call":
      return { kind: "call", name: symbolOf(core.name), arguments: core.arguments.filter((argument) => argument !== undefined).map(read) };
    case "native":
      return readNative(core.name, core.arguments.map(read));
    case "map": {
      const bound = new Map(reader.bound);
      core.slots.forEach((slot, i) => {
        bound.set(slot, read(core.sources[i] as Core));
      });
      return readCore(core.body, { ...reader, bound });
    }
    case "list":
      return { kind: "list", items: core.items.map(read) };
    case "comprehension": {
      const inside = binding(reader, core.slot);
      const name = loopName(core.slot, core.condition === undefined ? [core.body] : [core.condition, core.body]);
      const each = { kind: "each", element: readCore(core.body, inside), variable: name, source: read(core.source) } as const;
      return core.condition === undefined ? each : { ...each, condition: readCore(core.condition, inside) };
    }
    case "accumulate":
      return {
        kind: "accumulate",
        state: loopName(core.state, [core.body]),
        start: read(core.start),
        variable: loopName(core.slot, [core.body]),
        source: read(core.source),
        body: readCore(core.body, binding(reader, core.slot, core.state)),
      };
    case "index":
      return { kind: "item", of: read(core.of), index: read(core.index) };
    case "range":
      return { kind: "range", from: read(core.from), to: read(core.to), step: read(core.step) };
    case "record":
      return {
        kind: "record",
        name: symbolOf(core.record).name,
        fields: core.fields.map((field, i) => ({ name: core.names[i] ?? "", value: read(field) })),
      };
    case "with":
      return { kind: "with", of: read(core.of), fields: core.changes.map((change) => ({ name: change.name, value: read(change.value) })) };
    case "field":
    case "column":
      return { kind: "member", of: read(core.of), name: core.name };
    case "table":
      return { kind: "text", text: `table { ${core.heads.join(" | ")} }` };
    case "where":
      return { kind: "where", of: read(core.of), condition: readCore(core.condition, binding(reader, ...core.slots)) };
    case "group": {
      const inside = binding(reader, ...core.slots);
      return {
        kind: "group",
        of: read(core.of),
        by: core.by,
        fields: core.fields.map(({ name, value }) => ({ name, value: readCore(value, inside) })),
      };
    }
    case "match": {
      const taken = core.arms.filter((arm) => reader.values?.has(arm.body) === true);
      const arms = (taken.length > 0 ? taken : core.arms).map((arm) => ({ member: symbolOf(arm.record).name, body: read(arm.body) }));
      return { kind: "match", of: read(core.of), arms };
    }
    case "matchMaybe": {
      const arms = [
        { member: "none", body: core.none },
        { member: "some", body: core.some },
      ];
      const taken = arms.filter((arm) => reader.values?.has(arm.body) === true);
      return {
        kind: "match",
        of: read(core.of),
        arms: (taken.length > 0 ? taken : arms).map(({ member, body }) => ({ member, body: read(body) })),
      };
    }
    case "scatter":
      return { kind: "spread", nominal: read(core.nominal), form: core.form, spread: core.spread.map(read) };
    case "study":
    case "solve":
      return { kind: "call", name: symbolOf(core.op), arguments: core.parts.map(read) };
    default:
      return assertNever(core);
  }
}

/** The value in place of a name or of a path that begins with one (`x.D`, `xs[2]`, `t.F`); a loop's own names stay. */
function putIn(core: Core, reader: Reader): Maths | undefined {
  const { values } = reader;
  if (values === undefined || !isPath(core, reader)) return undefined;
  const found = values.get(core);
  if (found === undefined) return undefined;
  return shownMaths(found.value, core.type, reader.unitOf(core), reader);
}

function isPath(core: Core, reader: Reader): boolean {
  switch (core.op) {
    case "global":
      return true;
    case "local":
      return !reader.bound.has(core.slot);
    case "field":
    case "column":
      return isPath(core.of, reader);
    case "index":
      return isPath(core.of, reader) && (core.index.op === "constant" || isPath(core.index, reader));
    default:
      return false;
  }
}

function shownMaths(value: Value, type: Type, unit: Unit | undefined, reader: Reader): Maths {
  const shown = reader.show(value, reader.typeOf(type), unit);
  return shown.number === "" ? { kind: "text", text: shown.text } : { kind: "number", text: shown.number, unit: shown.unit };
}

function readNative(name: string, args: readonly Maths[]): Maths {
  const [first] = args;
  if (args.length === 1 && first !== undefined) {
    if (name === "sqrt") return { kind: "root", degree: 2, of: first };
    if (name === "cbrt") return { kind: "root", degree: 3, of: first };
    if (name === "abs") return { kind: "bars", of: first };
  }
  return { kind: "call", name: symbolOf(name), arguments: args };
}

function binding(reader: Reader, ...slots: readonly number[]): Reader {
  const bound = new Map(reader.bound);
  for (const slot of slots) bound.set(slot, undefined);
  return { ...reader, bound };
}

/** The name a loop gives its item: as its body writes it, or a dot where the body never does. */
function loopName(slot: number, bodies: readonly Core[]): Maths {
  for (const body of bodies) {
    const found = findLocal(body, slot);
    if (found !== undefined) return symbolOf(found);
  }
  return { kind: "text", text: "·" };
}

function findLocal(core: Core, slot: number): string | undefined {
  if (core.op === "local") return core.slot === slot ? core.name : undefined;
  for (const part of partsOf(core)) {
    const found = findLocal(part, slot);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** Every node directly below, in no order that matters. */
export function partsOf(core: Core): readonly Core[] {
  const parts: Core[] = [];
  for (const value of Object.values(core) as readonly unknown[]) collect(value, parts);
  return parts;
}

function collect(value: unknown, parts: Core[]): void {
  if (typeof value !== "object" || value === null) return;
  if (Array.isArray(value)) {
    for (const item of value as readonly unknown[]) collect(item, parts);
  } else if ("op" in value && "range" in value) {
    parts.push(value as Core);
  } else if ("body" in value || "value" in value) {
    // Arms of a match, fields of a group, changes of a with.
    for (const item of Object.values(value) as readonly unknown[])
      if (typeof item === "object" && item !== null && "op" in item) parts.push(item as Core);
  }
}
