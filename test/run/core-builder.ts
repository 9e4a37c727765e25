// Writes Core by hand, for tests of what comes after checking. Every node gets a range of its own.

import type { Core, CoreFormula, CoreStep, CoreUnit, Type } from "../../engine/check/index.ts";
import { defaultLimits, type Limits, type Marked, type Natives, type RunContext, unmarked, type Value } from "../../engine/run/index.ts";
import { dimensionless } from "../../engine/units/index.ts";

export const number: Type = { type: "quantity", dimension: dimensionless, kind: "number" };
export const text: Type = { type: "text" };
export const truth: Type = { type: "truth" };
export const listOf = (of: Type): Type => ({ type: "list", of });
export const maybe = (of: Type): Type => ({ type: "maybe", of });
export const record = (name: string): Type => ({ type: "record", name, arguments: [] });
export const table = (...columns: readonly (readonly [name: string, type: Type])[]): Type => ({
  type: "table",
  columns: columns.map(([name, type]) => ({ name, type })),
});

const place = { last: 0 };
const next = (): { readonly from: number; readonly to: number } => {
  place.last += 1;
  return { from: place.last, to: place.last + 1 };
};

type Shape<T> = T extends unknown ? Omit<T, "range" | "type"> : never;

export function node(shape: Shape<Core>, type: Type = number): Core {
  return { ...shape, range: next(), type } as Core;
}

export const lit = (value: Value, type?: Type): Core => {
  const own = typeof value === "string" ? text : typeof value === "boolean" ? truth : value === null ? maybe(number) : number;
  return node({ op: "constant", value, literal: true }, type ?? own);
};
export const need = (index: number, name: string, type: Type = number): Core => node({ op: "global", index, name }, type);
export const local = (slot: number, name: string, type: Type = number): Core => node({ op: "local", slot, name }, type);

type Arithmetic = "add" | "subtract" | "multiply" | "divide" | "power";
export const binary = (op: Arithmetic, left: Core, right: Core): Core => node({ op, left, right });
export const add = (left: Core, right: Core): Core => binary("add", left, right);
export const subtract = (left: Core, right: Core): Core => binary("subtract", left, right);
export const multiply = (left: Core, right: Core): Core => binary("multiply", left, right);
export const divide = (left: Core, right: Core): Core => binary("divide", left, right);
export const power = (left: Core, right: Core): Core => binary("power", left, right);
export const negate = (of: Core): Core => node({ op: "negate", of });

type Operator = "<" | "<=" | ">" | ">=" | "==" | "!=";
export const compare = (left: Core, operator: Operator, right: Core, numeric = true): Core =>
  node({ op: "compare", operands: [left, right], operators: [operator], numeric }, truth);
export const choose = (condition: Core, then: Core, otherwise: Core): Core => node({ op: "if", condition, then, otherwise }, then.type);
export const native = (name: string, args: readonly Core[], type: Type = number): Core =>
  node({ op: "native", native: name, name, arguments: args }, type);
export const list = (...items: readonly Core[]): Core => node({ op: "list", items }, listOf(items[0]?.type ?? number));
export const call = (formula: Core, name: string, args: readonly (Core | undefined)[], type: Type = number): Core =>
  node({ op: "call", formula, name, arguments: args }, type);

export const unit = (needs: readonly string[], body: Core, slots = 8): CoreUnit => ({ needs, slots, body });

export interface FormulaShape {
  readonly name: string;
  readonly needs?: readonly string[];
  readonly parameters: readonly (string | { readonly name: string; readonly default?: Core; readonly type?: Type })[];
  readonly steps: readonly CoreStep[];
  readonly slots?: number;
  readonly reference?: string;
}

export const formula = (shape: FormulaShape): CoreFormula => ({
  name: shape.name,
  needs: shape.needs ?? [],
  parameters: shape.parameters.map((parameter) =>
    typeof parameter === "string" ? { name: parameter, type: number } : { type: number, ...parameter },
  ),
  steps: shape.steps,
  result: number,
  slots: shape.slots ?? 12,
  ...(shape.reference === undefined ? {} : { reference: shape.reference }),
});

export const result = (value: Core): CoreStep => ({ kind: "result", value });
export const step = (name: string, slot: number, value: Core, more: Partial<CoreStep> = {}): CoreStep => ({
  kind: "step",
  name,
  slot,
  value,
  ...more,
});
export const require_ = (value: Core, condition: string, note?: string): CoreStep => ({
  kind: "require",
  value,
  text: condition,
  ...(note === undefined ? {} : { note }),
});
export const valid = (value: Core, condition: string, note?: string): CoreStep => ({
  kind: "valid",
  value,
  text: condition,
  ...(note === undefined ? {} : { note }),
});

export const context = (options: { readonly natives?: Natives; readonly limits?: Partial<Limits> } = {}): RunContext => ({
  natives: options.natives ?? {},
  limits: { ...defaultLimits, ...options.limits },
  describe: (value, type) =>
    typeof value === "string"
      ? `"${value}"`
      : Array.isArray(value)
        ? `${value.length} values`
        : `${String(value)}${type.type === "point" ? " K" : ""}`,
});

export const bare = (value: Value): Marked => ({ value, marks: unmarked });
