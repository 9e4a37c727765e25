// Core to closures, once; running them calls no name, decides no type and allocates no frame but a call's cells.

import { assertNever, broken } from "../base/index.ts";
import type { Core } from "../check/index.ts";
import { compileBinary, compileNumericCompare } from "./compile-arithmetic.ts";
import {
  compileAccumulate,
  compileColumn,
  compileComprehension,
  compileGroup,
  compileIndex,
  compileMap,
  compileRange,
  compileWhere,
} from "./compile-lists.ts";
import { equalValues } from "./equality.ts";
import { givenOf } from "./given.ts";
import { intrinsics } from "./intrinsics.ts";
import { itemsIn } from "./list-functions.ts";
import { cellOf, checked, isNumeric, mayBeNone, type PreparedFormula, type Run, type RunNumber, type Scope } from "./program.ts";
import { allFinite, spend, suspect } from "./state.ts";
import type { RecordValue, Value } from "./value.ts";

type Op<Name extends Core["op"]> = Extract<Core, { readonly op: Name }>;

/** The value of a node; a number may be NaN or infinite where `mayBeUnfinite` says so. */
export function compile(core: Core, scope: Scope): Run {
  switch (core.op) {
    case "constant": {
      const value = core.value;
      return () => value;
    }
    case "global":
    case "local": {
      const at = cellOf(core, scope);
      return (cells) => cells[at] as Value;
    }
    case "negate": {
      const of = compile(core.of, scope) as RunNumber;
      return (cells, state) => -of(cells, state);
    }
    case "not": {
      const of = compile(core.of, scope);
      return (cells, state) => of(cells, state) !== true;
    }
    case "add":
    case "subtract":
    case "multiply":
    case "divide":
    case "power":
      return compileBinary(core, scope, compile);
    case "and": {
      const [left, right] = [compile(core.left, scope), compile(core.right, scope)];
      return (cells, state) => left(cells, state) === true && right(cells, state) === true;
    }
    case "or": {
      const [left, right] = [compile(core.left, scope), compile(core.right, scope)];
      return (cells, state) => left(cells, state) === true || right(cells, state) === true;
    }
    case "compare":
      return core.numeric ? compileNumericCompare(core, scope, compile) : compileExactCompare(core, scope);
    case "if": {
      const [condition, then, otherwise] = [compile(core.condition, scope), compile(core.then, scope), compile(core.otherwise, scope)];
      return (cells, state) => (condition(cells, state) === true ? then(cells, state) : otherwise(cells, state));
    }
    case "call":
      return compileCall(core, scope);
    case "native":
      return compileNative(core, scope);
    case "map":
      return compileMap(core, scope, compileChecked);
    case "list":
      return compileAll(core.items, scope);
    case "comprehension":
      return compileComprehension(core, scope, compileChecked);
    case "accumulate":
      return compileAccumulate(core, scope, compileChecked);
    case "index":
      return compileIndex(core, scope, compileChecked);
    case "range":
      return compileRange(core, scope, compileChecked);
    case "record": {
      const fields = compileAll(core.fields, scope);
      const record = core.record;
      return (cells, state) => ({ shape: "record", record, fields: fields(cells, state) });
    }
    case "with":
      return compileWith(core, scope);
    case "field": {
      const of = compile(core.of, scope);
      const field = core.field;
      return (cells, state) => (of(cells, state) as RecordValue).fields[field] as Value;
    }
    case "table": {
      const columns = core.columns.map((column) => compileAll(column, scope));
      const { heads } = core;
      const rows = core.columns[0]?.length ?? 0;
      return (cells, state) => ({ shape: "table", heads, columns: columns.map((column) => column(cells, state)), rows });
    }
    case "column":
      return compileColumn(core, scope, compileChecked);
    case "where":
      return compileWhere(core, scope, compileChecked);
    case "group":
      return compileGroup(core, scope, compileChecked);
    case "match":
      return compileMatch(core, scope);
    case "matchMaybe": {
      const [of, none, some] = [compileChecked(core.of, scope), compile(core.none, scope), compile(core.some, scope)];
      const at = scope.needs + core.slot;
      return (cells, state) => {
        const value = of(cells, state);
        if (value === null) return none(cells, state);
        cells[at] = value;
        return some(cells, state);
      };
    }
    case "scatter": {
      const nominal = compileChecked(core.nominal, scope);
      const spread = compileAll(core.spread, scope);
      return (cells, state) => {
        spread(cells, state);
        return nominal(cells, state);
      };
    }
    case "study":
    case "solve":
      return () => {
        throw suspect;
      };
    default:
      return assertNever(core);
  }
}

/** The value of a node that is put away or handed to what could hide a NaN. */
export const compileChecked = (core: Core, scope: Scope): Run => checked(core, compile(core, scope));

/** Code nested beyond the machine's stack compiles to a stop, which the walk then runs into as well and reports. */
export function compileOrStop(compileIt: () => Run): Run {
  try {
    return compileIt();
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem;
    return () => {
      throw suspect;
    };
  }
}

function compileAll(parts: readonly Core[], scope: Scope): (cells: Value[], state: Parameters<Run>[1]) => readonly Value[] {
  const runs = parts.map((part) => compileChecked(part, scope));
  return (cells, state) => {
    const values: Value[] = [];
    for (const run of runs) values.push(run(cells, state));
    return values;
  };
}

function compileExactCompare(core: Op<"compare">, scope: Scope): Run {
  const operands = compileAll(core.operands, scope);
  const { operators } = core;
  return (cells, state) => {
    const values = operands(cells, state);
    return operators.every((operator, i) => {
      const equal = equalValues(values[i] as Value, values[i + 1] as Value);
      if (operator === "==") return equal;
      return operator === "!=" ? !equal : broken(`${operator} on values that have no order`);
    });
  };
}

function compileCall(core: Op<"call">, scope: Scope): Run {
  const formula = compile(core.formula, scope);
  const runs = core.arguments.map((argument) => (argument === undefined ? undefined : compileChecked(argument, scope)));
  return (cells, state) => {
    const callee = formula(cells, state) as PreparedFormula;
    const inner = callee.open();
    let at = callee.base;
    for (const run of runs) {
      inner[at] = (run === undefined ? undefined : run(cells, state)) as Value;
      at += 1;
    }
    state.depth += 1;
    if (state.depth > state.limits.depth) throw suspect;
    state.left -= 1;
    if (state.left < 0) spend(state, 0);
    const value = callee.run(inner, state);
    state.depth -= 1;
    return value;
  };
}

function compileNative(core: Op<"native">, scope: Scope): Run {
  const intrinsic = intrinsics[core.native];
  const args = core.arguments;
  const numeric = args.every((argument) => isNumeric(argument.type));
  if (intrinsic?.one !== undefined && args.length === 1 && numeric) {
    const kernel = intrinsic.one;
    const x = compileChecked(args[0] as Core, scope) as RunNumber;
    return (cells, state) => kernel(x(cells, state));
  }
  if (intrinsic?.two !== undefined && numeric && (args.length === 2 || (args.length > 2 && intrinsic.folds === true))) {
    const kernel = intrinsic.two;
    const [x, y, ...rest] = args.map((argument) => compileChecked(argument, scope) as RunNumber) as [RunNumber, RunNumber, ...RunNumber[]];
    if (rest.length === 0) return (cells, state) => kernel(x(cells, state), y(cells, state));
    return (cells, state) => {
      let value = kernel(x(cells, state), y(cells, state));
      for (const run of rest) value = kernel(value, run(cells, state));
      return value;
    };
  }
  const native = intrinsic ?? scope.context.natives[core.native];
  if (native === undefined) return () => broken(`no native is called ${core.native}`);
  const values = compileAll(args, scope);
  const noneIsFault = !mayBeNone(core.type);
  const types = givenOf(core);
  return (cells, state) => {
    const given = values(cells, state);
    spend(state, itemsIn(given));
    const value = native.apply(given, types);
    if (value === null ? noneIsFault : intrinsic === undefined && !allFinite(value)) throw suspect;
    if (Array.isArray(value) && state.limits.listLength < value.length) throw suspect;
    return value;
  };
}

function compileWith(core: Op<"with">, scope: Scope): Run {
  const of = compile(core.of, scope);
  const changes = core.changes.map((change) => ({ field: change.field, run: compileChecked(change.value, scope) }));
  return (cells, state) => {
    const before = of(cells, state) as RecordValue;
    const fields = [...before.fields];
    for (const change of changes) fields[change.field] = change.run(cells, state);
    return { shape: "record", record: before.record, fields };
  };
}

function compileMatch(core: Op<"match">, scope: Scope): Run {
  const of = compile(core.of, scope);
  const arms = new Map(core.arms.map((arm) => [arm.record, { at: scope.needs + arm.slot, run: compile(arm.body, scope) }]));
  return (cells, state) => {
    const value = of(cells, state) as RecordValue;
    const arm = arms.get(value.record) ?? broken(`match has no arm for ${value.record}`);
    cells[arm.at] = value;
    return arm.run(cells, state);
  };
}
