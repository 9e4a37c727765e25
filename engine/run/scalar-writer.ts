// Writes a register program: constants once, equal instructions once, and a check only where a NaN or infinity could vanish.

import { type Code, operation } from "./scalar-code.ts";
import { fuse } from "./scalar-fusion.ts";

interface Instruction {
  readonly op: number;
  readonly to: number;
  readonly a: number;
  readonly b: number;
  /** The stretch of code it stands in; code in a branch of an `if` runs only when the branch is taken. */
  readonly region: number;
  /** Whether `to` is a truth: always 0 or 1. */
  readonly truth: boolean;
}

/** A place that a jump leads to, known once it is reached. */
interface Label {
  at: number;
}

export interface ScalarWriter {
  readonly constant: (value: number) => number;
  readonly input: () => number;
  readonly emit: (op: number, a: number, b: number, truth?: boolean) => number;
  readonly one: (kernel: (x: number) => number, a: number) => number;
  readonly two: (kernel: (a: number, b: number) => number, a: number, b: number) => number;
  readonly require: (truth: number) => void;
  /** The value of `then()` or `otherwise()`, whichever the truth says; only that one runs. */
  readonly choose: (condition: number, then: () => number, otherwise: () => number, truth: boolean) => number;
  /** `kept`: registers that are read when the program has run. */
  readonly finish: (kept: ReadonlySet<number>) => { readonly code: Code; readonly registers: Float64Array };
  readonly size: () => number;
}

const { add, subtract, multiply, divide, negate, square, cube, sqrt, copy, check, require, jump, jumpUnless } = operation;

/** Operations whose result is NaN or infinite whenever this operand is: their operands need no check of their own. */
const carriesFirst = new Set<number>([add, subtract, multiply, divide, negate, square, cube, sqrt, copy]);
const carriesSecond = new Set<number>([add, subtract, multiply]);

export function createWriter(): ScalarWriter {
  const list: (Instruction | { readonly label: Label })[] = [];
  const jumps = new Map<Instruction, Label>();
  const constants = new Map<number, number>();
  const negativeZero = { register: -1 };
  const initial: number[] = [];
  const parents: number[] = [-1];
  const known: Map<string, number>[] = [new Map()];
  const [ones, twos] = [[] as ((x: number) => number)[], [] as ((a: number, b: number) => number)[]];
  let region = 0;

  const fresh = (value: number): number => initial.push(value) - 1;
  const put = (op: number, to: number, a: number, b: number, truth: boolean): Instruction => {
    const instruction = { op, to, a, b, region, truth };
    list.push(instruction);
    return instruction;
  };
  const placeIn = <T>(table: T[], item: T): number => (table.includes(item) ? table.indexOf(item) : table.push(item) - 1);

  function constant(value: number): number {
    if (Object.is(value, -0)) {
      if (negativeZero.register === -1) negativeZero.register = fresh(value);
      return negativeZero.register;
    }
    const found = constants.get(value);
    if (found !== undefined) return found;
    const register = fresh(value);
    constants.set(value, register);
    return register;
  }

  function emit(op: number, a: number, b: number, truth = false): number {
    const key = `${op} ${a} ${b}`;
    for (const table of known) {
      const found = table.get(key);
      if (found !== undefined) return found;
    }
    const to = fresh(0);
    put(op, to, a, b, truth);
    (known[known.length - 1] as Map<string, number>).set(key, to);
    return to;
  }

  function branch(body: () => number, to: number, truth: boolean): void {
    const outer = region;
    region = parents.push(outer) - 1;
    known.push(new Map());
    put(copy, to, body(), 0, truth);
    known.pop();
    region = outer;
  }

  function choose(condition: number, then: () => number, otherwise: () => number, truth: boolean): number {
    const to = fresh(0);
    const [other, after]: [Label, Label] = [{ at: -1 }, { at: -1 }];
    jumps.set(put(jumpUnless, 0, condition, 0, true), other);
    branch(then, to, truth);
    jumps.set(put(jump, 0, 0, 0, true), after);
    list.push({ label: other });
    branch(otherwise, to, truth);
    list.push({ label: after });
    // The two copies share a register, so the check of either stands here, where both paths meet.
    if (!truth) put(check, 0, to, 0, true);
    return to;
  }

  function finish(kept: ReadonlySet<number>): { readonly code: Code; readonly registers: Float64Array } {
    const isInstruction = (entry: Instruction | { readonly label: Label }): entry is Instruction => !("label" in entry);
    const withChecks = fuse(insertChecks(list, parents), isInstruction, kept, initial.length);
    let place = 0;
    for (const entry of withChecks) {
      if ("label" in entry) entry.label.at = place;
      else place += 1;
    }
    const instructions = new Int32Array(place * 4);
    let at = 0;
    for (const entry of withChecks) {
      if ("label" in entry) continue;
      instructions.set([entry.op, entry.to, entry.a, jumps.get(entry)?.at ?? entry.b], at);
      at += 4;
    }
    return { code: { instructions, one: ones, two: twos }, registers: Float64Array.from(initial) };
  }

  return {
    constant,
    input: () => fresh(0),
    emit,
    one: (kernel, a) => emit(operation.one, a, placeIn(ones, kernel)),
    two: (kernel, a, b) => emit(operation.two + placeIn(twos, kernel), a, b),
    require: (truth) => {
      put(require, 0, truth, 0, true);
    },
    choose,
    finish,
    size: () => list.length,
  };
}

/** Backwards: a result that a later instruction of the same run surely carries on needs no check; every other one gets one. */
function insertChecks(
  list: readonly (Instruction | { readonly label: Label })[],
  parents: readonly number[],
): (Instruction | { readonly label: Label })[] {
  const carriedIn = new Map<number, number[]>();
  const out: (Instruction | { readonly label: Label })[] = [];
  const runsWith = (definition: number, use: number): boolean => {
    for (let region = definition; region !== -1; region = parents[region] as number) if (region === use) return true;
    return false;
  };
  const carry = (register: number, region: number): void => {
    const regions = carriedIn.get(register);
    if (regions === undefined) carriedIn.set(register, [region]);
    else if (!regions.includes(region)) regions.push(region);
  };
  for (let i = list.length - 1; i >= 0; i -= 1) {
    const entry = list[i] as Instruction | { readonly label: Label };
    if (!("label" in entry)) {
      const { op, to, a, b, region, truth } = entry;
      const carried = op === copy || (carriedIn.get(to) ?? []).some((use) => runsWith(region, use));
      if (!truth && !carried) out.push({ op: check, to: 0, a: to, b: 0, region, truth: true });
      if (carriesFirst.has(op)) carry(a, region);
      if (carriesSecond.has(op)) carry(b, region);
      if (op === check) carry(a, region);
    }
    out.push(entry);
  }
  return out.reverse();
}
