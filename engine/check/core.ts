// The typed program: what checking makes of a statement and what engine/run evaluates and engine/trace opens.
// Names are resolved, literals are SI numbers, mapping over lists is explicit, nothing is left to decide by type.

import type { Range } from "../base/index.ts";
import type { Value } from "../run/index.ts";
import type { CompareOperator } from "../syntax/index.ts";
import type { Dimension, Unit } from "../units/index.ts";
import type { Type } from "./types.ts";

interface Node {
  /** Place in the text of the statement (of the formula's statement for code inside a formula). */
  readonly range: Range;
  readonly type: Type;
}

/**
 * How a sub-program reaches what it needs:
 * - `global i`: the value of `needs[i]` of the unit (statement) it stands in;
 * - `local i`: slot i of the frame: parameters first, then steps and bound variables. Each binding has a slot of its own.
 */
export type Core =
  | (Node & {
      readonly op: "constant";
      readonly value: Value /** shown as written, with its unit */;
      readonly unit?: Unit;
      readonly literal: boolean;
    })
  | (Node & { readonly op: "global"; readonly index: number; readonly name: string })
  | (Node & { readonly op: "local"; readonly slot: number; readonly name: string })
  | (Node & { readonly op: "negate"; readonly of: Core })
  | (Node & { readonly op: "not"; readonly of: Core })
  /** On numbers. Points were turned into numbers (kelvin), so the same five serve them. Divide by zero is a fault. */
  | (Node & { readonly op: "add" | "subtract" | "multiply" | "divide" | "power"; readonly left: Core; readonly right: Core })
  /** Short-circuit. */
  | (Node & { readonly op: "and" | "or"; readonly left: Core; readonly right: Core })
  /** A chain. `equal` says what == means here: numbers with the stated relative tolerance, everything else exactly. */
  | (Node & {
      readonly op: "compare";
      readonly operands: readonly Core[];
      readonly operators: readonly CompareOperator[];
      readonly numeric: boolean;
    })
  | (Node & { readonly op: "if"; readonly condition: Core; readonly then: Core; readonly otherwise: Core })
  /** A formula of the language; `arguments` are in the order of its parameters, undefined where its default serves. */
  | (Node & {
      readonly op: "call";
      readonly formula: Core;
      readonly name: string;
      readonly arguments: readonly (Core | undefined)[];
      /** What each dimension variable of the formula stands for in this call: how its steps are shown. */
      readonly dimensions?: readonly (readonly [variable: string, meaning: Dimension])[];
    })
  /** A native by its name in the table handed in; arguments complete and in order. */
  | (Node & { readonly op: "native"; readonly native: string; readonly name: string; readonly arguments: readonly Core[] })
  /** Element by element: `sources` are evaluated, lists among them (`lists[i]`) must have one length; `body` sees the elements in `slots`. */
  | (Node & {
      readonly op: "map";
      readonly sources: readonly Core[];
      readonly lists: readonly boolean[];
      readonly slots: readonly number[];
      readonly body: Core;
    })
  | (Node & { readonly op: "list"; readonly items: readonly Core[] })
  | (Node & { readonly op: "comprehension"; readonly source: Core; readonly slot: number; readonly condition?: Core; readonly body: Core })
  | (Node & {
      readonly op: "accumulate";
      readonly start: Core;
      readonly state: number;
      readonly source: Core;
      readonly slot: number;
      readonly body: Core;
    })
  /** Counted from 1; outside is a fault. */
  | (Node & { readonly op: "index"; readonly of: Core; readonly index: Core })
  /** By count: n = round((to - from) / step), ends on the bound; a step that does not fit is a fault. */
  | (Node & { readonly op: "range"; readonly from: Core; readonly to: Core; readonly step: Core })
  | (Node & { readonly op: "record"; readonly record: string; readonly names: readonly string[]; readonly fields: readonly Core[] })
  | (Node & {
      readonly op: "with";
      readonly of: Core;
      readonly changes: readonly { readonly field: number; readonly name: string; readonly value: Core }[];
    })
  | (Node & { readonly op: "field"; readonly of: Core; readonly field: number; readonly name: string })
  | (Node & { readonly op: "table"; readonly heads: readonly string[]; readonly columns: readonly (readonly Core[])[] })
  | (Node & { readonly op: "column"; readonly of: Core; readonly name: string })
  /** `condition` sees the row's cells: `columns[i]` of the table in `slots[i]`. */
  | (Node & {
      readonly op: "where";
      readonly of: Core;
      readonly columns: readonly string[];
      readonly slots: readonly number[];
      readonly condition: Core;
    })
  /** Rows grouped by equal `by` cells in order of first appearance; fields see the group's columns (lists) in `slots`. */
  | (Node & {
      readonly op: "group";
      readonly of: Core;
      readonly by: readonly string[];
      readonly columns: readonly string[];
      readonly slots: readonly number[];
      readonly fields: readonly { readonly name: string; readonly value: Core }[];
    })
  /** `record`: full names per arm; the value goes into `slot` of the arm taken. */
  | (Node & {
      readonly op: "match";
      readonly of: Core;
      readonly arms: readonly { readonly record: string; readonly slot: number; readonly body: Core }[];
    })
  | (Node & { readonly op: "matchMaybe"; readonly of: Core; readonly none: Core; readonly slot: number; readonly some: Core })
  /** Nominal value now; the spread is typed and kept for later. */
  | (Node & {
      readonly op: "scatter";
      readonly nominal: Core;
      readonly spread: readonly Core[];
      readonly form: "limits" | "unequal" | "share" | "deviation";
      readonly count?: number;
    })
  /** Typed and kept for later: evaluating one is the fault "not evaluated yet". */
  | (Node & { readonly op: "study"; readonly parts: readonly Core[] })
  | (Node & { readonly op: "solve"; readonly parts: readonly Core[] });

export interface CoreStep {
  readonly kind: "step" | "require" | "valid" | "result";
  readonly name?: string;
  /** Where a `step` puts its value; the result has none. */
  readonly slot?: number;
  readonly value: Core;
  readonly unit?: Unit;
  /** The condition of `require` and `valid` as written, for messages and marks. */
  readonly text?: string;
  readonly note?: string;
  readonly reference?: string;
}

/** A formula's program. */
export interface CoreFormula {
  readonly name: string;
  /** Full names of the formulas and closed definitions its body uses, in the order that `global i` counts them. */
  readonly needs: readonly string[];
  readonly parameters: readonly { readonly name: string; readonly type: Type; readonly unit?: Unit; readonly default?: Core }[];
  readonly steps: readonly CoreStep[];
  readonly result: Type;
  /** Frame size. */
  readonly slots: number;
  readonly note?: string;
  readonly reference?: string;
}

/** What a definition, check or example evaluates. */
export interface CoreUnit {
  /** Full names in the order that `global i` counts them. */
  readonly needs: readonly string[];
  readonly slots: number;
  readonly body: Core;
}
