// The register program for chains of plain numbers: its instructions and the loop that runs them.
// Four integers an instruction (operation, target, a, b) over one Float64Array; jumps go forward only, so that an
// evaluator over blocks of samples can run the same code with masks.

import { holds } from "./equality.ts";
import { directionOf, larger, power, smaller } from "./kernels.ts";

export const operation = {
  add: 0,
  subtract: 1,
  multiply: 2,
  divide: 3,
  negate: 4,
  square: 5,
  cube: 6,
  power: 7,
  sqrt: 8,
  copy: 9,
  /** Stops with false where register a is NaN or infinite. */
  check: 10,
  /** Stops with false where the truth in a is not 1. */
  require: 11,
  /** To instruction b where the truth in a is 0. */
  jumpUnless: 12,
  /** To instruction b. */
  jump: 13,
  not: 14,
  less: 15,
  lessOrEqual: 16,
  greater: 17,
  greaterOrEqual: 18,
  equal: 19,
  unequal: 20,
  smaller: 21,
  larger: 22,
  direction: 23,
  sin: 24,
  cos: 25,
  tan: 26,
  abs: 27,
  exp: 28,
  ln: 29,
  /** b counts in the program's table of kernels. */
  one: 30,
  /** 55 + the place in the table of kernels. */
  two: 55,
} as const;

/**
 * Two arithmetic operations in one: `fused + inner * 6 + form`, the inner one on a and the low half of b, the outer one on its
 * result and the register in the high half of b. Forms 0 to 3 are the outer operation, 4 and 5 subtract and divide turned round.
 */
export const fused = 31;

export interface Code {
  readonly instructions: Int32Array;
  readonly one: readonly ((x: number) => number)[];
  readonly two: readonly ((a: number, b: number) => number)[];
}

/** Runs to the end: true; false as soon as a fault is noticed, wherever it is. Registers hold inputs and constants at the start. */
export function runCode(code: Code, r: Float64Array): boolean {
  const c = code.instructions;
  const end = c.length;
  let at = 0;
  while (at < end) {
    const op = c[at] as number;
    const to = c[at + 1] as number;
    const a = r[c[at + 2] as number] as number;
    const second = c[at + 3] as number;
    at += 4;
    // The numbers of `operation`, and those of `fused` with both operations spelled out.
    switch (op) {
      case 0:
        r[to] = a + (r[second] as number);
        break;
      case 1:
        r[to] = a - (r[second] as number);
        break;
      case 2:
        r[to] = a * (r[second] as number);
        break;
      case 3:
        r[to] = a / (r[second] as number);
        break;
      case 4:
        r[to] = -a;
        break;
      case 5:
        r[to] = a * a;
        break;
      case 6:
        r[to] = a * a * a;
        break;
      case 7:
        r[to] = power(a, r[second] as number);
        break;
      case 8:
        r[to] = Math.sqrt(a);
        break;
      case 9:
        r[to] = a;
        break;
      case 10:
        if (a - a !== 0) return false;
        break;
      case 11:
        if (a !== 1) return false;
        break;
      case 12:
        if (a === 0) at = second * 4;
        break;
      case 13:
        at = second * 4;
        break;
      case 14:
        r[to] = 1 - a;
        break;
      case 15:
        r[to] = holds("<", a, r[second] as number) ? 1 : 0;
        break;
      case 16:
        r[to] = holds("<=", a, r[second] as number) ? 1 : 0;
        break;
      case 17:
        r[to] = holds(">", a, r[second] as number) ? 1 : 0;
        break;
      case 18:
        r[to] = holds(">=", a, r[second] as number) ? 1 : 0;
        break;
      case 19:
        r[to] = holds("==", a, r[second] as number) ? 1 : 0;
        break;
      case 20:
        r[to] = holds("!=", a, r[second] as number) ? 1 : 0;
        break;
      case 21:
        r[to] = smaller(a, r[second] as number);
        break;
      case 22:
        r[to] = larger(a, r[second] as number);
        break;
      case 23:
        r[to] = directionOf(a, r[second] as number);
        break;
      case 24:
        r[to] = Math.sin(a);
        break;
      case 25:
        r[to] = Math.cos(a);
        break;
      case 26:
        r[to] = Math.tan(a);
        break;
      case 27:
        r[to] = Math.abs(a);
        break;
      case 28:
        r[to] = Math.exp(a);
        break;
      case 29:
        r[to] = Math.log(a);
        break;
      case 30:
        r[to] = (code.one[second] as (x: number) => number)(a);
        break;
      case 31:
        r[to] = a + (r[second & 65535] as number) + (r[second >>> 16] as number);
        break;
      case 32:
        r[to] = a + (r[second & 65535] as number) - (r[second >>> 16] as number);
        break;
      case 33:
        r[to] = (a + (r[second & 65535] as number)) * (r[second >>> 16] as number);
        break;
      case 34:
        r[to] = (a + (r[second & 65535] as number)) / (r[second >>> 16] as number);
        break;
      case 35:
        r[to] = (r[second >>> 16] as number) - (a + (r[second & 65535] as number));
        break;
      case 36:
        r[to] = (r[second >>> 16] as number) / (a + (r[second & 65535] as number));
        break;
      case 37:
        r[to] = a - (r[second & 65535] as number) + (r[second >>> 16] as number);
        break;
      case 38:
        r[to] = a - (r[second & 65535] as number) - (r[second >>> 16] as number);
        break;
      case 39:
        r[to] = (a - (r[second & 65535] as number)) * (r[second >>> 16] as number);
        break;
      case 40:
        r[to] = (a - (r[second & 65535] as number)) / (r[second >>> 16] as number);
        break;
      case 41:
        r[to] = (r[second >>> 16] as number) - (a - (r[second & 65535] as number));
        break;
      case 42:
        r[to] = (r[second >>> 16] as number) / (a - (r[second & 65535] as number));
        break;
      case 43:
        r[to] = a * (r[second & 65535] as number) + (r[second >>> 16] as number);
        break;
      case 44:
        r[to] = a * (r[second & 65535] as number) - (r[second >>> 16] as number);
        break;
      case 45:
        r[to] = a * (r[second & 65535] as number) * (r[second >>> 16] as number);
        break;
      case 46:
        r[to] = (a * (r[second & 65535] as number)) / (r[second >>> 16] as number);
        break;
      case 47:
        r[to] = (r[second >>> 16] as number) - a * (r[second & 65535] as number);
        break;
      case 48:
        r[to] = (r[second >>> 16] as number) / (a * (r[second & 65535] as number));
        break;
      case 49:
        r[to] = a / (r[second & 65535] as number) + (r[second >>> 16] as number);
        break;
      case 50:
        r[to] = a / (r[second & 65535] as number) - (r[second >>> 16] as number);
        break;
      case 51:
        r[to] = (a / (r[second & 65535] as number)) * (r[second >>> 16] as number);
        break;
      case 52:
        r[to] = a / (r[second & 65535] as number) / (r[second >>> 16] as number);
        break;
      case 53:
        r[to] = (r[second >>> 16] as number) - a / (r[second & 65535] as number);
        break;
      case 54:
        r[to] = (r[second >>> 16] as number) / (a / (r[second & 65535] as number));
        break;
      default:
        r[to] = (code.two[op - 55] as (x: number, y: number) => number)(a, r[second] as number);
    }
  }
  return true;
}
