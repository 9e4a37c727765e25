// Two instructions in one: an arithmetic result that only one later arithmetic instruction reads goes to it directly.
// Most of the cost of an instruction is finding out which one it is. Each step rounds as before, so the bits are the same.

import { fused, operation } from "./scalar-code.ts";

export interface Fusable {
  readonly op: number;
  readonly to: number;
  readonly a: number;
  readonly b: number;
  readonly region: number;
}

const { add, subtract, multiply, divide, power, smaller, larger, direction, less, unequal, two, jump } = operation;

/** Registers are packed by two into one integer. */
const mostRegisters = 65_536;

const readsSecond = (op: number): boolean =>
  op <= divide || op === power || (less <= op && op <= unequal) || op === smaller || op === larger || op === direction || two <= op;

/**
 * `list` without the instructions that went into others. `kept`: registers that are read from outside. An instruction may move
 * down to where its result is used, since every register but the target of copies is written once.
 */
export function fuse<E extends Fusable, L>(
  list: readonly (E | L)[],
  isInstruction: (entry: E | L) => entry is E,
  kept: ReadonlySet<number>,
  registers: number,
): (E | L)[] {
  if (mostRegisters <= registers) return [...list];
  const reads = new Map<number, number>();
  const count = (register: number): void => {
    reads.set(register, (reads.get(register) ?? 0) + 1);
  };
  for (const entry of list) {
    if (!isInstruction(entry) || entry.op === jump) continue;
    count(entry.a);
    if (readsSecond(entry.op)) count(entry.b);
  }
  const open = new Map<number, E>();
  const gone = new Set<E>();
  const out = list.map((entry): E | L => {
    if (!isInstruction(entry) || entry.op > divide) return entry;
    const first = [entry.a, entry.b].find((register) => open.get(register)?.region === entry.region);
    const inner = first === undefined ? undefined : open.get(first);
    if (inner === undefined || entry.a === entry.b) {
      if (reads.get(entry.to) === 1 && !kept.has(entry.to)) open.set(entry.to, entry);
      return entry;
    }
    gone.add(inner);
    const other = first === entry.a ? entry.b : entry.a;
    return { ...entry, op: fusedOp(inner.op, entry.op, first === entry.a), a: inner.a, b: inner.b + other * mostRegisters };
  });
  return out.filter((entry) => !isInstruction(entry) || !gone.has(entry));
}

/** The outer operation with the inner result as its first operand, or, for the two that do not commute, as its second. */
function fusedOp(inner: number, outer: number, isFirst: boolean): number {
  const form = isFirst || outer === add || outer === multiply ? outer : outer === subtract ? 4 : 5;
  return fused + inner * 6 + form;
}
