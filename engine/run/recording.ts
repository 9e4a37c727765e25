// What a walk leaves behind for the trace: the value of every node it came to and the inside of every call.

import type { Core, CoreFormula, CoreStep, Type } from "../check/index.ts";
import type { Marked } from "./marks.ts";

export interface Recording {
  /** Of a node in a loop: the last one. */
  readonly values: Map<Core, Marked>;
  /** By call node; of a call in a loop: the first one. */
  readonly calls: Map<Core, CallRecording>;
  /** How many levels of calls below this one are recorded. */
  readonly open: number;
}

export interface CallRecording {
  readonly formula: CoreFormula;
  /** The types of the formula as this call has them. */
  readonly instance?: (type: Type) => Type;
  /** In the order of the parameters. */
  readonly arguments: readonly { readonly marked: Marked; readonly byDefault: boolean }[];
  /** In their order, as far as the walk came. */
  readonly steps: { readonly step: CoreStep; readonly marked: Marked }[];
  readonly inside: Recording;
}

export const startRecording = (open: number): Recording => ({ values: new Map(), calls: new Map(), open });
