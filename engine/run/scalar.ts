// Chains of statements on plain numbers as one register program, formulas put in place of their calls: for many runs on
// changing inputs. The kernels are those of the other evaluators and so are the bits.

import type { Core, CoreFormula, CoreUnit } from "../check/index.ts";
import type { CompareOperator } from "../syntax/index.ts";
import type { RunContext } from "./context.ts";
import { givenOf } from "./given.ts";
import { intrinsics } from "./intrinsics.ts";
import { directionOf, larger, smaller } from "./kernels.ts";
import { isNumeric, type PreparedFormula } from "./program.ts";
import { operation, runCode } from "./scalar-code.ts";
import { createWriter, type ScalarWriter } from "./scalar-writer.ts";
import { allFinite } from "./state.ts";
import type { RecordValue, Value } from "./value.ts";

export interface ScalarChain {
  /** In an order of evaluation: a unit needs inputs, units before it and what is given. */
  readonly units: readonly { readonly name: string; readonly unit: CoreUnit }[];
  /** Names of the numbers that change from run to run. */
  readonly inputs: readonly string[];
  /** What stays the same: formulas, closed definitions, other inputs. */
  readonly given: ReadonlyMap<string, Value>;
}

export interface ScalarProgram {
  readonly instructions: number;
  /**
   * Values of the inputs in (all finite, in their order), values of the units out (in their order). False where any unit has a
   * fault, and then `outputs` says nothing: run the units one by one with `prepareUnit` to hear which and why.
   */
  readonly run: (inputs: ArrayLike<number>, outputs: Float64Array) => boolean;
}

/** A value while the program is written: in a register, known already, or a record of such. */
type Held =
  | { readonly held: "register"; readonly register: number }
  | { readonly held: "known"; readonly value: Value }
  | { readonly held: "record"; readonly record: string; readonly fields: readonly Held[] };

interface Scope {
  readonly needs: readonly Held[];
  readonly slots: Held[];
  readonly depth: number;
}

/** Thrown inside this file alone: the chain holds something that is no plain number. */
const notScalar = Object.freeze({ stopped: "not scalar" });
const mostInstructions = 200_000;

/** The program, or undefined where the chain holds lists, tables, texts that are computed, or loops. */
export function prepareScalar(chain: ScalarChain, context: RunContext): ScalarProgram | undefined {
  const writer = createWriter();
  const names = new Map<string, Held>([...chain.given].map(([name, value]) => [name, { held: "known", value }]));
  for (const name of chain.inputs) names.set(name, { held: "register", register: writer.input() });
  const results: number[] = [];
  try {
    for (const { name, unit } of chain.units) {
      const needs = unit.needs.map((need) => names.get(need) ?? fail());
      const held = write(unit.body, { needs, slots: new Array<Held>(unit.slots), depth: 0 }, { writer, context });
      names.set(name, held);
      results.push(register(held, writer));
    }
  } catch (problem) {
    if (problem === notScalar) return undefined;
    throw problem;
  }
  const { code, registers } = writer.finish(new Set(results));
  const count = chain.inputs.length;
  return {
    instructions: code.instructions.length / 4,
    run: (inputs, outputs) => {
      for (let i = 0; i < count; i += 1) registers[i] = inputs[i] as number;
      if (!runCode(code, registers)) return false;
      for (let i = 0; i < results.length; i += 1) outputs[i] = registers[results[i] as number] as number;
      return true;
    },
  };
}

function fail(): never {
  throw notScalar;
}

interface Bench {
  readonly writer: ScalarWriter;
  readonly context: RunContext;
}

function register(held: Held, writer: ScalarWriter): number {
  if (held.held === "register") return held.register;
  if (held.held === "record") return fail();
  if (typeof held.value === "number") return writer.constant(held.value);
  return typeof held.value === "boolean" ? writer.constant(held.value ? 1 : 0) : fail();
}

/** The same operation done once while the program is written; what is not finite is left to the run, which notices it. */
function fold(op: "add" | "subtract" | "multiply" | "divide", left: Held, right: Held): Held | undefined {
  if (left.held !== "known" || right.held !== "known") return undefined;
  const [a, b] = [left.value, right.value];
  if (typeof a !== "number" || typeof b !== "number") return undefined;
  const value = op === "add" ? a + b : op === "subtract" ? a - b : op === "multiply" ? a * b : a / b;
  return Number.isFinite(value) ? { held: "known", value } : undefined;
}

const inRegister = (place: number): Held => ({ held: "register", register: place });

function write(core: Core, scope: Scope, bench: Bench): Held {
  const { writer } = bench;
  if (writer.size() > mostInstructions) return fail();
  const number = (part: Core): number => register(write(part, scope, bench), writer);
  switch (core.op) {
    case "constant":
      return allFinite(core.value) ? { held: "known", value: core.value } : fail();
    case "global":
      return scope.needs[core.index] ?? fail();
    case "local":
      return scope.slots[core.slot] ?? fail();
    case "negate":
      return inRegister(writer.emit(operation.negate, number(core.of), 0));
    case "not":
      return inRegister(writer.emit(operation.not, number(core.of), 0, true));
    case "add":
    case "subtract":
    case "multiply":
    case "divide": {
      const [left, right] = [write(core.left, scope, bench), write(core.right, scope, bench)];
      const folded = fold(core.op, left, right);
      if (folded !== undefined) return folded;
      return inRegister(writer.emit(operation[core.op], register(left, writer), register(right, writer)));
    }
    case "power":
      return writePower(number(core.left), write(core.right, scope, bench), writer);
    case "and": {
      const otherwise = (): number => writer.constant(0);
      return inRegister(writer.choose(number(core.left), () => number(core.right), otherwise, true));
    }
    case "or": {
      const then = (): number => writer.constant(1);
      return inRegister(writer.choose(number(core.left), then, () => number(core.right), true));
    }
    case "compare":
      return writeCompare(core, scope, bench);
    case "if": {
      const truth = core.type.type === "truth";
      if (!truth && !isNumeric(core.type)) return fail();
      const condition = number(core.condition);
      return inRegister(
        writer.choose(
          condition,
          () => number(core.then),
          () => number(core.otherwise),
          truth,
        ),
      );
    }
    case "call":
      return writeCall(core, scope, bench);
    case "native":
      return writeNative(core, scope, bench);
    case "record":
      return { held: "record", record: core.record, fields: core.fields.map((field) => write(field, scope, bench)) };
    case "with": {
      const before = write(core.of, scope, bench);
      const fields = [...fieldsOf(before)];
      for (const change of core.changes) fields[change.field] = write(change.value, scope, bench);
      return { held: "record", record: recordOf(before), fields };
    }
    case "field":
      return fieldsOf(write(core.of, scope, bench))[core.field] ?? fail();
    case "match": {
      const of = write(core.of, scope, bench);
      const record = recordOf(of);
      const arm = core.arms.find((candidate) => candidate.record === record) ?? fail();
      scope.slots[arm.slot] = of;
      return write(arm.body, scope, bench);
    }
    case "scatter": {
      for (const part of core.spread) number(part);
      return write(core.nominal, scope, bench);
    }
    default:
      return fail();
  }
}

function recordOf(held: Held): string {
  if (held.held === "record") return held.record;
  return held.held === "known" ? (held.value as RecordValue).record : fail();
}

function fieldsOf(held: Held): readonly Held[] {
  if (held.held === "record") return held.fields;
  if (held.held !== "known") return fail();
  return (held.value as RecordValue).fields.map((value) => ({ held: "known", value }));
}

function writePower(base: number, exponent: Held, writer: ScalarWriter): Held {
  const known = exponent.held === "known" ? exponent.value : undefined;
  if (known === 2) return inRegister(writer.emit(operation.square, base, 0));
  if (known === 3) return inRegister(writer.emit(operation.cube, base, 0));
  if (known === 0.5) return inRegister(writer.emit(operation.sqrt, base, 0));
  return inRegister(writer.emit(operation.power, base, register(exponent, writer)));
}

const comparisons: Readonly<Record<CompareOperator, number>> = {
  "<": operation.less,
  "<=": operation.lessOrEqual,
  ">": operation.greater,
  ">=": operation.greaterOrEqual,
  "==": operation.equal,
  "!=": operation.unequal,
};

function writeCompare(core: Extract<Core, { readonly op: "compare" }>, scope: Scope, bench: Bench): Held {
  const operands = core.operands.map((operand) => write(operand, scope, bench));
  const { writer } = bench;
  if (!core.numeric) return fail();
  const registers = operands.map((operand) => register(operand, writer));
  const truths = core.operators.map((operator, i) =>
    writer.emit(comparisons[operator], registers[i] as number, registers[i + 1] as number, true),
  );
  // Truths are 0 or 1, so their product says whether all hold.
  return inRegister(truths.reduce((all, truth) => writer.emit(operation.multiply, all, truth, true)));
}

function writeCall(core: Extract<Core, { readonly op: "call" }>, scope: Scope, bench: Bench): Held {
  const callee = write(core.formula, scope, bench);
  if (callee.held !== "known" || scope.depth >= bench.context.limits.depth) return fail();
  const { core: formula, needs } = callee.value as PreparedFormula;
  const inside: Scope = {
    needs: needs.map((value) => ({ held: "known", value })),
    slots: new Array<Held>(formula.slots),
    depth: scope.depth + 1,
  };
  core.arguments.forEach((argument, i) => {
    if (argument !== undefined) inside.slots[i] = write(argument, scope, bench);
  });
  return writeBody(formula, inside, bench);
}

function writeBody(formula: CoreFormula, inside: Scope, bench: Bench): Held {
  formula.parameters.forEach((parameter, i) => {
    if (inside.slots[i] === undefined) inside.slots[i] = parameter.default === undefined ? fail() : write(parameter.default, inside, bench);
  });
  let result: Held | undefined;
  for (const step of formula.steps) {
    const held = write(step.value, inside, bench);
    if (step.kind === "step" && step.slot !== undefined) inside.slots[step.slot] = held;
    if (step.kind === "require") bench.writer.require(register(held, bench.writer));
    if (step.kind === "result") result = held;
  }
  return result ?? fail();
}

const direct: Readonly<Record<string, number>> = {
  sqrt: operation.sqrt,
  sin: operation.sin,
  cos: operation.cos,
  tan: operation.tan,
  abs: operation.abs,
  exp: operation.exp,
  ln: operation.ln,
};
const directTwo = new Map<(a: number, b: number) => number, number>([
  [smaller, operation.smaller],
  [larger, operation.larger],
  [directionOf, operation.direction],
]);

function writeNative(core: Extract<Core, { readonly op: "native" }>, scope: Scope, bench: Bench): Held {
  const { writer, context } = bench;
  const args = core.arguments.map((argument) => write(argument, scope, bench));
  const intrinsic = intrinsics[core.native];
  const numeric = core.arguments.every((argument) => isNumeric(argument.type));
  const registers = (): readonly number[] => args.map((arg) => register(arg, writer));
  if (intrinsic !== undefined && numeric && args.length === 1 && intrinsic.one !== undefined) {
    const [a] = registers() as [number];
    const op = direct[core.native];
    return inRegister(op === undefined ? writer.one(intrinsic.one, a) : writer.emit(op, a, 0));
  }
  if (intrinsic?.two !== undefined && numeric && (args.length === 2 || (2 < args.length && intrinsic.folds === true))) {
    const kernel = intrinsic.two;
    const op = directTwo.get(kernel);
    const apply = (a: number, b: number): number => (op === undefined ? writer.two(kernel, a, b) : writer.emit(op, a, b));
    return inRegister(registers().reduce(apply));
  }
  // What is known whole can be worked out now (a thread looked up by its designation); a refusal is left to the other evaluators.
  const native = intrinsic ?? context.natives[core.native];
  if (native === undefined || !args.every((arg) => arg.held === "known")) return fail();
  try {
    const value = native.apply(
      args.map((arg) => (arg as Extract<Held, { held: "known" }>).value),
      givenOf(core),
    );
    return allFinite(value) ? { held: "known", value } : fail();
  } catch {
    return fail();
  }
}
