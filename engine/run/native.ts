// Functions written in TypeScript that the language may call, and how one refuses its arguments.

import type { Range } from "../base/index.ts";
import type { Type } from "../check/index.ts";
import type { Diagnostic } from "../diagnostics/index.ts";
import type { Value } from "./value.ts";

/** What an argument is, for the few functions whose result keeps it: figures put names and units on their axes. */
export interface Given {
  readonly type: Type;
  /** The name that the argument was given by, where it is one. */
  readonly name?: string;
}

export interface Native {
  /** In the language, e.g. `thread_designation(text: Text): Designation`. */
  readonly head: string;
  /** One line. */
  readonly purpose: string;
  /** Pure and total but for `Refusal`. Quantities are SI numbers; a NaN or infinity that comes back is a fault. */
  readonly apply: (args: readonly Value[], given?: readonly Given[]) => Value;
  /** Where the data it reads come from, as a reference column would say it ("@iso261 table 2"): a mark on its result. */
  readonly reference?: string;
}

export type Natives = Readonly<Record<string, Native>>;

/** What a native throws when it cannot serve its arguments; becomes the fault `refused` at the argument's place. */
export class Refusal extends Error {
  /** Index of the argument at fault; undefined: the whole call. */
  readonly argument: number | undefined;
  /** What is wrong, a plain sentence without its final point: `"M7.3" is no thread of ISO 261`. */
  readonly problem: string;
  /** What to do, a plain sentence; undefined when there is nothing to add. */
  readonly advice: string | undefined;

  constructor(problem: string, options: { readonly argument?: number; readonly advice?: string } = {}) {
    super(problem);
    this.name = "Refusal";
    this.argument = options.argument;
    this.problem = problem;
    this.advice = options.advice;
  }
}

/** The places and the shown values of a call, for a fault that one of the language's own functions raises. */
export interface CallPlace {
  readonly name: string;
  readonly range: Range;
  /** Range of argument `i`. */
  readonly at: (argument: number) => Range;
  /** Argument `i` as text with its unit. */
  readonly show: (argument: number) => string;
  /** A value of the type of argument `i`, or of its items when that is a list. */
  readonly showLike: (argument: number, value: Value) => string;
}

/** Thrown by the language's own functions: the words stand in the catalogue, the values are shown by whoever knows the units. */
export class OwnRefusal extends Error {
  readonly fault: (call: CallPlace) => Diagnostic;

  constructor(fault: (call: CallPlace) => Diagnostic) {
    super("refused");
    this.fault = fault;
  }
}
