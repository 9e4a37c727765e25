// Closures for lists and tables: everything that walks over items and so spends from the budget.

import type { Core } from "../check/index.ts";
import { equalNumbers } from "./equality.ts";
import { groupRows } from "./group-rows.ts";
import { itemsMayBeNone, mayBeNone, type Run, type RunNumber, type Scope } from "./program.ts";
import { rangeItems, stepsBetween } from "./ranges.ts";
import { spend, suspect } from "./state.ts";
import type { TableValue, Value } from "./value.ts";

type Op<Name extends Core["op"]> = Extract<Core, { readonly op: Name }>;
/** Gives runs whose numbers are finite. */
type Compile = (core: Core, scope: Scope) => Run;
type List = readonly Value[];

export function compileMap(core: Op<"map">, scope: Scope, compile: Compile): Run {
  const sources = core.sources.map((source, i) => ({
    run: compile(source, scope),
    list: core.lists[i] === true,
    at: scope.needs + (core.slots[i] as number),
    whole: !itemsMayBeNone(source.type),
  }));
  const moving = sources.filter((source) => source.list);
  const still = sources.filter((source) => !source.list);
  const body = compile(core.body, scope);
  return (cells, state) => {
    // All sources are evaluated before a slot is written: a source may stand in a loop over the same slots.
    const values = sources.map((source) => source.run(cells, state));
    const lists = values.filter((_, i) => sources[i]?.list) as List[];
    const fixed = values.filter((_, i) => !sources[i]?.list);
    const length = (lists[0] as List).length;
    for (const list of lists) if (list.length !== length) throw suspect;
    spend(state, length);
    for (let k = 0; k < still.length; k += 1) cells[(still[k] as (typeof still)[number]).at] = fixed[k] as Value;
    const out: Value[] = [];
    for (let i = 0; i < length; i += 1) {
      for (let k = 0; k < moving.length; k += 1) {
        const { at, whole } = moving[k] as (typeof moving)[number];
        const item = (lists[k] as List)[i] as Value;
        if (whole && item === null) throw suspect;
        cells[at] = item;
      }
      out.push(body(cells, state));
    }
    return out;
  };
}

export function compileComprehension(core: Op<"comprehension">, scope: Scope, compile: Compile): Run {
  const source = compile(core.source, scope);
  const condition = core.condition === undefined ? undefined : compile(core.condition, scope);
  const body = compile(core.body, scope);
  const at = scope.needs + core.slot;
  const whole = !itemsMayBeNone(core.source.type);
  return (cells, state) => {
    const items = source(cells, state) as List;
    spend(state, items.length);
    const out: Value[] = [];
    for (const item of items) {
      if (whole && item === null) throw suspect;
      cells[at] = item;
      if (condition === undefined || condition(cells, state) === true) out.push(body(cells, state));
    }
    return out;
  };
}

export function compileAccumulate(core: Op<"accumulate">, scope: Scope, compile: Compile): Run {
  const [start, source, body] = [compile(core.start, scope), compile(core.source, scope), compile(core.body, scope)];
  const [at, stateAt] = [scope.needs + core.slot, scope.needs + core.state];
  const whole = !itemsMayBeNone(core.source.type);
  return (cells, state) => {
    let held = start(cells, state);
    const items = source(cells, state) as List;
    spend(state, items.length);
    for (const item of items) {
      if (whole && item === null) throw suspect;
      cells[at] = item;
      cells[stateAt] = held;
      held = body(cells, state);
    }
    return held;
  };
}

export function compileIndex(core: Op<"index">, scope: Scope, compile: Compile): Run {
  const of = compile(core.of, scope);
  const index = compile(core.index, scope) as RunNumber;
  const noneIsFault = !mayBeNone(core.type);
  return (cells, state) => {
    const list = of(cells, state) as List;
    const wanted = index(cells, state);
    const place = Math.round(wanted);
    if (place < 1 || list.length < place || !equalNumbers(place, wanted)) throw suspect;
    const item = list[place - 1] as Value;
    if (noneIsFault && item === null) throw suspect;
    return item;
  };
}

export function compileRange(core: Op<"range">, scope: Scope, compile: Compile): Run {
  const [from, to, step] = [core.from, core.to, core.step].map((part) => compile(part, scope) as RunNumber) as [
    RunNumber,
    RunNumber,
    RunNumber,
  ];
  return (cells, state) => {
    const [low, high, by] = [from(cells, state), to(cells, state), step(cells, state)];
    const count = stepsBetween(low, high, by);
    if (typeof count !== "number" || count >= state.limits.listLength) throw suspect;
    spend(state, count + 1);
    return rangeItems(low, high, by, count);
  };
}

const columnOf = (table: TableValue, name: string): List => table.columns[table.heads.indexOf(name)] as List;

export function compileColumn(core: Op<"column">, scope: Scope, compile: Compile): Run {
  const of = compile(core.of, scope);
  const { name } = core;
  return (cells, state) => columnOf(of(cells, state) as TableValue, name);
}

export function compileWhere(core: Op<"where">, scope: Scope, compile: Compile): Run {
  const of = compile(core.of, scope);
  const condition = compile(core.condition, scope);
  const { columns } = core;
  const places = core.slots.map((slot) => scope.needs + slot);
  const whole = columns.map((name) => !cellMayBeNone(core.of, name));
  return (cells, state) => {
    const table = of(cells, state) as TableValue;
    const read = columns.map((name) => columnOf(table, name));
    spend(state, table.rows);
    const kept: number[] = [];
    for (let row = 0; row < table.rows; row += 1) {
      for (let k = 0; k < read.length; k += 1) {
        const cell = (read[k] as List)[row] as Value;
        if (cell === null && whole[k] === true) throw suspect;
        cells[places[k] as number] = cell;
      }
      if (condition(cells, state) === true) kept.push(row);
    }
    return takeRows(table, kept);
  };
}

export function cellMayBeNone(table: Core, column: string): boolean {
  if (table.type.type !== "table") return true;
  const found = table.type.columns.find((candidate) => candidate.name === column);
  return found === undefined || mayBeNone(found.type);
}

export const takeRows = (table: TableValue, rows: readonly number[]): TableValue => ({
  shape: "table",
  heads: table.heads,
  columns: table.columns.map((column) => rows.map((row) => column[row] as Value)),
  rows: rows.length,
});

/** The columns grouped by come first, then the fields. */
export function compileGroup(core: Op<"group">, scope: Scope, compile: Compile): Run {
  const of = compile(core.of, scope);
  const fields = core.fields.map((field) => compile(field.value, scope));
  const heads = [...core.by, ...core.fields.map((field) => field.name)];
  const places = core.slots.map((slot) => scope.needs + slot);
  return (cells, state) => {
    const table = of(cells, state) as TableValue;
    spend(state, table.rows);
    const groups = groupRows(table, core.by);
    const read = core.columns.map((name) => columnOf(table, name));
    const out: Value[][] = heads.map(() => []);
    for (const rows of groups) {
      core.by.forEach((name, k) => {
        (out[k] as Value[]).push(columnOf(table, name)[rows[0] as number] as Value);
      });
      for (let k = 0; k < read.length; k += 1) cells[places[k] as number] = rows.map((row) => (read[k] as List)[row] as Value);
      fields.forEach((field, k) => {
        (out[core.by.length + k] as Value[]).push(field(cells, state));
      });
    }
    return { shape: "table", heads, columns: out, rows: groups.length };
  };
}
