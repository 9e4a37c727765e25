// What the tests of engine/units share: reading a unit that must exist, and float agreement.

import { parseUnit, type Unit, type UnitProblem } from "../../engine/units/index.ts";

/** The unit of a text that must read, as in a table head. */
export function unit(text: string): Unit {
  const read = parseUnit(text, { leadingOne: true });
  if ("problem" in read) throw new Error(`${text}: ${read.problem.problem}`);
  return read.unit;
}

/** The problem of a text that must not read behind a number. */
export function problem(text: string): UnitProblem {
  const read = parseUnit(text);
  if ("unit" in read) throw new Error(`${text} was read as ${read.unit.text}`);
  return read.problem;
}

export const agree = (a: number, b: number, relative = 4e-15): boolean => Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b));
