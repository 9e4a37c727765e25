// The careful evaluator: the same program over the same kernels as the closures, with marks, faults at the smallest place
// and, on request, a recording of every node for the trace. Its values are bitwise those of the closures.

import { assertNever, broken } from "../base/index.ts";
import type { Core } from "../check/index.ts";
import { faults } from "../diagnostics/index.ts";
import { equalValues, holds } from "./equality.ts";
import { givenOf } from "./given.ts";
import { intrinsics } from "./intrinsics.ts";
import { power, unfinite } from "./kernels.ts";
import { itemsIn } from "./list-functions.ts";
import {
  addMark,
  fieldMarks,
  joinMark,
  listMarks,
  type Mark,
  type Marked,
  type Marks,
  nominalMark,
  ownMark,
  provenanceMark,
  readProvenance,
  recordMarks,
  tableMarks,
  unmarked,
  wholeMark,
} from "./marks.ts";
import { type CallPlace, OwnRefusal, Refusal } from "./native.ts";
import { checkLength, numberOf, type Op, type Place, show, type WalkedNumber } from "./place.ts";
import { mayBeNone } from "./program.ts";
import { RunFault } from "./run-fault.ts";
import { allFinite, spend } from "./state.ts";
import type { RecordValue, Value } from "./value.ts";
import { walkCall } from "./walk-call.ts";
import { walkAccumulate, walkColumn, walkComprehension, walkGroup, walkIndex, walkMap, walkRange, walkWhere } from "./walk-lists.ts";

export function walk(core: Core, place: Place): Marked {
  const marked = evaluate(core, place);
  place.recording?.values.set(core, marked);
  return marked;
}

const walkNumber = (core: Core, place: Place): WalkedNumber => numberOf(walk(core, place));

function evaluate(core: Core, place: Place): Marked {
  switch (core.op) {
    case "constant":
      if (!allFinite(core.value)) throw new RunFault(faults.tooLarge(core.range, { operation: show(place, core, core.value) }));
      return { value: core.value, marks: unmarked };
    case "global":
      return place.needs[core.index] ?? broken(`need ${core.name} is not given`);
    case "local":
      return place.slots[core.slot] ?? broken(`slot of ${core.name} is empty`);
    case "negate": {
      const { number, mark } = walkNumber(core.of, place);
      return { value: -number, marks: mark };
    }
    case "not": {
      const { value, marks } = walk(core.of, place);
      return { value: value !== true, marks: wholeMark(marks) };
    }
    case "add":
    case "subtract":
    case "multiply":
    case "divide":
    case "power":
      return walkArithmetic(core, place);
    case "and":
    case "or": {
      const left = walk(core.left, place);
      const settled = core.op === "or";
      if ((left.value === true) === settled) return { value: settled, marks: wholeMark(left.marks) };
      const right = walk(core.right, place);
      return { value: right.value === true, marks: joinMark(wholeMark(left.marks), wholeMark(right.marks)) };
    }
    case "compare":
      return walkCompare(core, place);
    case "if": {
      const condition = walk(core.condition, place);
      const taken = walk(condition.value === true ? core.then : core.otherwise, place);
      return { value: taken.value, marks: addMark(taken.marks, wholeMark(condition.marks)) };
    }
    case "call":
      return walkCall(core, place, walk);
    case "native":
      return walkNative(core, place);
    case "map":
      return walkMap(core, place, walk);
    case "list": {
      const items = walkAll(core.items, place);
      return { value: valuesOf(items), marks: listMarks(unmarked, marksOf(items)) };
    }
    case "comprehension":
      return walkComprehension(core, place, walk);
    case "accumulate":
      return walkAccumulate(core, place, walk);
    case "index":
      return walkIndex(core, place, walk);
    case "range":
      return walkRange(core, place, walk);
    case "record": {
      const fields = walkAll(core.fields, place);
      return { value: { shape: "record", record: core.record, fields: valuesOf(fields) }, marks: recordMarks(unmarked, marksOf(fields)) };
    }
    case "with":
      return walkWith(core, place);
    case "field": {
      const { value, marks } = walk(core.of, place);
      return { value: (value as RecordValue).fields[core.field] as Value, marks: fieldMarks(marks, core.field) };
    }
    case "table": {
      const columns = core.columns.map((column) => walkAll(column, place));
      const rows = core.columns[0]?.length ?? 0;
      return {
        value: { shape: "table", heads: core.heads, columns: columns.map(valuesOf), rows },
        marks: tableMarks(unmarked, columns.map(marksOf)),
      };
    }
    case "column":
      return walkColumn(core, place, walk);
    case "where":
      return walkWhere(core, place, walk);
    case "group":
      return walkGroup(core, place, walk);
    case "match": {
      const of = walk(core.of, place);
      const { record } = of.value as RecordValue;
      const arm = core.arms.find((candidate) => candidate.record === record) ?? broken(`match has no arm for ${record}`);
      place.slots[arm.slot] = of;
      const taken = walk(arm.body, place);
      return { value: taken.value, marks: addMark(taken.marks, ownMark(of.marks)) };
    }
    case "matchMaybe": {
      const of = walk(core.of, place);
      if (of.value !== null) place.slots[core.slot] = of;
      const taken = walk(of.value === null ? core.none : core.some, place);
      return { value: taken.value, marks: addMark(taken.marks, wholeMark(of.marks)) };
    }
    case "scatter": {
      for (const part of core.spread) walk(part, place);
      const { value, marks } = walk(core.nominal, place);
      return { value, marks: addMark(marks, nominalMark) };
    }
    case "study":
    case "solve":
      throw new RunFault(faults.notEvaluatedYet(core.range, { what: core.op }));
    default:
      return assertNever(core);
  }
}

const valuesOf = (all: readonly Marked[]): readonly Value[] => all.map(({ value }) => value);
const marksOf = (all: readonly Marked[]): readonly Marks[] => all.map(({ marks }) => marks);
const walkAll = (parts: readonly Core[], place: Place): readonly Marked[] => parts.map((part) => walk(part, place));

const signs = { add: "+", subtract: "-", multiply: "*", divide: "/", power: "^" } as const;

function walkArithmetic(core: Op<"add" | "subtract" | "multiply" | "divide" | "power">, place: Place): Marked {
  const { number: a, mark: left } = walkNumber(core.left, place);
  const { number: b, mark: right } = walkNumber(core.right, place);
  const value = arithmetic(core.op, a, b);
  if (!unfinite(value)) return { value, marks: joinMark(left, right) };
  const [shownLeft, shownRight] = [show(place, core.left, a), show(place, core.right, b)];
  if (core.op === "divide" && b === 0) throw new RunFault(faults.divideByZero(core.right.range, { left: shownLeft, right: shownRight }));
  if (core.op === "power" && a === 0) throw new RunFault(faults.powerOfZero(core.range, { base: shownLeft, exponent: shownRight }));
  if (core.op === "power" && Number.isNaN(value)) {
    throw new RunFault(faults.powerOfNegative(core.range, { base: shownLeft, exponent: shownRight }));
  }
  throw new RunFault(faults.tooLarge(core.range, { operation: `${shownLeft} ${signs[core.op]} ${shownRight}` }));
}

function arithmetic(op: keyof typeof signs, a: number, b: number): number {
  switch (op) {
    case "add":
      return a + b;
    case "subtract":
      return a - b;
    case "multiply":
      return a * b;
    case "divide":
      return a / b;
    case "power":
      return power(a, b);
  }
}

function walkCompare(core: Op<"compare">, place: Place): Marked {
  const operands = walkAll(core.operands, place);
  const value = core.operators.every((operator, i) => {
    const [a, b] = [operands[i]?.value as Value, operands[i + 1]?.value as Value];
    if (core.numeric) return holds(operator, a as number, b as number);
    if (operator !== "==" && operator !== "!=") return broken(`${operator} on values that have no order`);
    return equalValues(a, b) === (operator === "==");
  });
  return { value, marks: operands.reduce<Mark>((all, operand) => joinMark(all, wholeMark(operand.marks)), unmarked) };
}

function walkWith(core: Op<"with">, place: Place): Marked {
  const of = walk(core.of, place);
  const before = of.value as RecordValue;
  const fields = [...before.fields];
  const marks = fields.map((_, i) => fieldMarks(of.marks, i));
  for (const change of core.changes) {
    const to = walk(change.value, place);
    fields[change.field] = to.value;
    marks[change.field] = to.marks;
  }
  return { value: { shape: "record", record: before.record, fields }, marks: recordMarks(ownMark(of.marks), marks) };
}

function walkNative(core: Op<"native">, place: Place): Marked {
  const own = intrinsics[core.native];
  const native = own ?? place.context.natives[core.native] ?? broken(`no native is called ${core.native}`);
  const args = walkAll(core.arguments, place);
  const values = valuesOf(args);
  spend(place.state, itemsIn(values));
  const value = applied(() => native.apply(values, givenOf(core)), core, values, place);
  if (!allFinite(value)) throw new RunFault(faults.noFiniteResult(core.range, { function: core.name }));
  if (value === null && !mayBeNone(core.type)) throw new RunFault(faults.emptyCell(core.range, { item: "1", count: "1" }));
  checkLength(value, core, place);
  const read = native.reference === undefined ? unmarked : provenanceMark(readProvenance(native.reference, core.name));
  if (own?.marks !== undefined) return { value, marks: own.marks(args) };
  return { value, marks: args.reduce<Mark>((all, arg) => joinMark(all, wholeMark(arg.marks)), read) };
}

/** Turns a refusal into the fault at the argument's place. */
function applied(apply: () => Value, core: Op<"native">, values: readonly Value[], place: Place): Value {
  try {
    return apply();
  } catch (problem) {
    const at = (argument: number): Core => core.arguments[argument] ?? core;
    if (problem instanceof Refusal) {
      const range = problem.argument === undefined ? core.range : at(problem.argument).range;
      throw new RunFault(faults.refused(range, { problem: problem.problem, advice: problem.advice }));
    }
    if (!(problem instanceof OwnRefusal)) throw problem;
    const call: CallPlace = {
      name: core.name,
      range: core.range,
      at: (argument) => at(argument).range,
      show: (argument) => show(place, at(argument), values[argument] as Value),
      showLike: (argument, value) => {
        const { type } = at(argument);
        const item = type.type === "list" ? type.of : type;
        return place.context.describe(value, place.instance === undefined ? item : place.instance(item));
      },
    };
    throw new RunFault(problem.fault(call));
  }
}
