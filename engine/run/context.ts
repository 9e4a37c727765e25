// What evaluation is given beside the program: natives, limits, and how a value is put into words.

import type { Type } from "../check/index.ts";
import type { Diagnostic } from "../diagnostics/index.ts";
import type { Unit } from "../units/index.ts";
import type { Natives } from "./native.ts";
import type { Value } from "./value.ts";

/** The work budget of one statement. Counted, never timed, so that the same notebook stops at the same place everywhere. */
export interface Limits {
  /** One for each call of a formula and each item of a loop, list or native's list argument. */
  readonly steps: number;
  readonly listLength: number;
  /** Formulas that call formulas. */
  readonly depth: number;
}

export const defaultLimits: Limits = { steps: 5_000_000, listLength: 100_000, depth: 100 };

export interface RunContext {
  readonly natives: Natives;
  readonly limits: Limits;
  /** A value in words with its unit, for messages. `unit` is the one it was written in, where there is one. */
  readonly describe: (value: Value, type: Type, unit?: Unit) => string;
}

export type Outcome = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly fault: Diagnostic };
