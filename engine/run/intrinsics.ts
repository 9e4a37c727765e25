// The language's own functions on numbers. engine/check types them by name; engine/run computes them.

import type { Range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { figureFunctions } from "./figure-functions.ts";
import { ceilTo, directionOf, floorTo, larger, modulo, roundTo, smaller, unfinite } from "./kernels.ts";
import { listFunctions } from "./list-functions.ts";
import type { Marked, Marks } from "./marks.ts";
import { type CallPlace, type Native, OwnRefusal } from "./native.ts";

/** A function of the language itself. */
export interface Intrinsic extends Native {
  /** Fewest and most arguments; `most` is Infinity for as many as wanted. */
  readonly least: number;
  readonly most: number;
  /** Numbers in, a number out: the fast evaluators call these instead of `apply`, with the same bits. */
  readonly one?: (x: number) => number;
  readonly two?: (a: number, b: number) => number;
  /** Marks of a result that is made of the arguments' own items; without it everything of every argument reaches the whole. */
  readonly marks?: (args: readonly Marked[]) => Marks;
  /** Serves any number of arguments by folding `two` from the left. */
  readonly folds?: boolean;
}

type Explain = (call: CallPlace, args: readonly number[]) => Diagnostic | undefined;

const tooLarge = (call: CallPlace): Diagnostic => faults.tooLarge(call.range, { operation: call.name });

function compute(result: number, args: readonly number[], explain: Explain | undefined): number {
  if (!unfinite(result)) return result;
  throw new OwnRefusal((call) => explain?.(call, args) ?? tooLarge(call));
}

function one(head: string, purpose: string, kernel: (x: number) => number, explain?: Explain): Intrinsic {
  return {
    head,
    purpose,
    least: 1,
    most: 1,
    one: kernel,
    apply: (args) => compute(kernel(args[0] as number), args as readonly number[], explain),
  };
}

function two(head: string, purpose: string, kernel: (a: number, b: number) => number, explain?: Explain): Intrinsic {
  return {
    head,
    purpose,
    least: 2,
    most: 2,
    two: kernel,
    apply: (args) => compute(kernel(args[0] as number, args[1] as number), args as readonly number[], explain),
  };
}

const first = (call: CallPlace): Range => call.at(0);
const negative: Explain = (call, [x]) =>
  (x as number) < 0 ? faults.rootOfNegative(first(call), { function: call.name, value: call.show(0) }) : undefined;
const notAboveZero: Explain = (call, [x]) =>
  (x as number) <= 0 ? faults.logarithmOutside(first(call), { function: call.name, value: call.show(0) }) : undefined;
const beyondOne: Explain = (call, [x]) =>
  Math.abs(x as number) > 1 ? faults.arcOutside(first(call), { function: call.name, value: call.show(0) }) : undefined;
const zeroStep: Explain = (call, [, step]) =>
  step === 0 ? faults.zeroStep(call.at(1), { function: call.name, value: call.show(1) }) : undefined;
const noDirection: Explain = (call) => faults.noDirection(call.range, { function: call.name });

/** `round(x)` goes to whole numbers, `round(x, step)` to multiples of a step; a quantity with a unit needs the step. */
function stepped(head: string, purpose: string, kernel: (x: number, step: number) => number): Intrinsic {
  return {
    head,
    purpose,
    least: 1,
    most: 2,
    one: (x) => kernel(x, 1),
    two: kernel,
    apply: (args) => compute(kernel(args[0] as number, args.length === 1 ? 1 : (args[1] as number)), args as readonly number[], zeroStep),
  };
}

function extreme(name: string, purpose: string, kernel: (a: number, b: number) => number): Intrinsic {
  const list = listFunctions[name] as Intrinsic;
  return {
    head: `${name}(x, ...): as x`,
    purpose,
    least: 1,
    most: Number.POSITIVE_INFINITY,
    two: kernel,
    folds: true,
    apply: (args) => (typeof args[0] === "number" ? (args as readonly number[]).reduce(kernel) : list.apply(args)),
  };
}

const numberFunctions: Readonly<Record<string, Intrinsic>> = {
  sqrt: one("sqrt(x)", "Square root; the dimension halves.", Math.sqrt, negative),
  cbrt: one("cbrt(x)", "Cube root, also of negative values.", Math.cbrt),
  abs: one("abs(x): as x", "Size without sign.", Math.abs),
  sign: one("sign(x): Number", "-1, 0 or 1.", (x) => (x > 0 ? 1 : x < 0 ? -1 : 0)),
  floor: stepped("floor(x, step = 1): as x", "Down to a multiple of the step.", floorTo),
  ceil: stepped("ceil(x, step = 1): as x", "Up to a multiple of the step.", ceilTo),
  round: stepped("round(x, step = 1): as x", "To the nearest multiple of the step, halves away from zero.", roundTo),
  mod: two("mod(a, b): as a", "Remainder of a / b, with the sign of b.", modulo, zeroStep),
  exp: one("exp(x: Number): Number", "e to the power x.", Math.exp),
  ln: one("ln(x: Number): Number", "Natural logarithm.", Math.log, notAboveZero),
  log10: one("log10(x: Number): Number", "Logarithm to base 10.", Math.log10, notAboveZero),
  log2: one("log2(x: Number): Number", "Logarithm to base 2.", Math.log2, notAboveZero),
  sin: one("sin(x: Angle): Number", "Sine of an angle.", Math.sin),
  cos: one("cos(x: Angle): Number", "Cosine of an angle.", Math.cos),
  tan: one("tan(x: Angle): Number", "Tangent of an angle.", Math.tan),
  asin: one("asin(x: Number): Angle", "Angle between -90 and 90 deg with this sine.", Math.asin, beyondOne),
  acos: one("acos(x: Number): Angle", "Angle between 0 and 180 deg with this cosine.", Math.acos, beyondOne),
  atan: one("atan(x: Number): Angle", "Angle between -90 and 90 deg with this tangent.", Math.atan),
  atan2: two("atan2(y, x): Angle", "Direction of the point (x, y), from -180 to 180 deg.", directionOf, noDirection),
  sinh: one("sinh(x: Number): Number", "Hyperbolic sine.", Math.sinh),
  cosh: one("cosh(x: Number): Number", "Hyperbolic cosine.", Math.cosh),
  tanh: one("tanh(x: Number): Number", "Hyperbolic tangent.", Math.tanh),
  hypot: {
    ...two("hypot(a, b): as a", "Length of a vector: sqrt(a^2 + b^2), also of three.", Math.hypot),
    most: 3,
    folds: true,
    apply: (args) =>
      compute(
        (args as readonly number[]).reduce((a, b) => Math.hypot(a, b)),
        args as readonly number[],
        undefined,
      ),
  },
  absolute: one("absolute(T: Temperature): [K]", "A temperature point as a quantity above absolute zero, for laws.", (x) => x),
  min: extreme("min", "Smallest of its arguments, or of the values present in one list.", smaller),
  max: extreme("max", "Largest of its arguments, or of the values present in one list.", larger),
};

/** By name; without a prototype, so that `constructor` is no function. Not one of them reads anything but its arguments. */
export const intrinsics: Readonly<Record<string, Intrinsic>> = Object.freeze(
  Object.assign(Object.create(null) as Record<string, Intrinsic>, listFunctions, numberFunctions, figureFunctions),
);
