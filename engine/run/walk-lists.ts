// Lists and tables, walked. What a list's items are chosen by (a condition, an index) marks the items it leaves.

import type { Core } from "../check/index.ts";
import { faults } from "../diagnostics/index.ts";
import { cellMayBeNone, takeRows } from "./compile-lists.ts";
import { equalNumbers } from "./equality.ts";
import { groupRows } from "./group-rows.ts";
import {
  addMark,
  cellMarks,
  columnMarks,
  itemMarks,
  joinMark,
  listMarks,
  type Mark,
  type Marked,
  type Marks,
  ownMark,
  tableMarks,
  unmarked,
  wholeMark,
} from "./marks.ts";
import { numberOf, type Op, type Place, show, type Walk, type WalkedNumber } from "./place.ts";
import { itemsMayBeNone, mayBeNone } from "./program.ts";
import { fittingStep, rangeItems, stepsBetween } from "./ranges.ts";
import { RunFault } from "./run-fault.ts";
import { spend } from "./state.ts";
import type { TableValue, Value } from "./value.ts";

type List = readonly Value[];

/** Item `i` of a list with its marks; an empty cell is a fault unless the type allows for one. */
function take(source: Marked, i: number, core: Core, mayMiss: boolean): Marked {
  const list = source.value as List;
  const value = list[i] as Value;
  if (value === null && !mayMiss) {
    throw new RunFault(faults.emptyCell(core.range, { item: String(i + 1), count: String(list.length) }));
  }
  return { value, marks: itemMarks(source.marks, i) };
}

export function walkMap(core: Op<"map">, place: Place, walk: Walk): Marked {
  const sources = core.sources.map((source) => walk(source, place));
  const lists = sources.map((_, i) => i).filter((i) => core.lists[i] === true);
  const lengthOf = (i: number): number => ((sources[i] as Marked).value as List).length;
  const lead = lists[0] as number;
  for (const i of lists) {
    if (lengthOf(i) === lengthOf(lead)) continue;
    throw new RunFault(
      faults.lengthsDiffer((core.sources[i] as Core).range, { first: String(lengthOf(lead)), second: String(lengthOf(i)) }),
    );
  }
  spend(place.state, lengthOf(lead));
  sources.forEach((source, i) => {
    if (core.lists[i] !== true) place.slots[core.slots[i] as number] = source;
  });
  const items: Marked[] = [];
  for (let k = 0; k < lengthOf(lead); k += 1) {
    for (const i of lists) {
      const source = core.sources[i] as Core;
      place.slots[core.slots[i] as number] = take(sources[i] as Marked, k, source, itemsMayBeNone(source.type));
    }
    items.push(walk(core.body, place));
  }
  const own = lists.reduce<Mark>((all, i) => joinMark(all, ownMark((sources[i] as Marked).marks)), unmarked);
  return gather(items, own, unmarked);
}

/** A list of items; `chosen` is what their choice hangs on. */
function gather(items: readonly Marked[], own: Mark, chosen: Mark): Marked {
  return {
    value: items.map((item) => item.value),
    marks: listMarks(
      joinMark(own, chosen),
      items.map((item) => addMark(item.marks, chosen)),
    ),
  };
}

export function walkComprehension(core: Op<"comprehension">, place: Place, walk: Walk): Marked {
  const source = walk(core.source, place);
  const mayMiss = itemsMayBeNone(core.source.type);
  const { length } = source.value as List;
  spend(place.state, length);
  const items: Marked[] = [];
  let chosen: Mark = unmarked;
  for (let i = 0; i < length; i += 1) {
    place.slots[core.slot] = take(source, i, core.source, mayMiss);
    if (core.condition !== undefined) {
      const condition = walk(core.condition, place);
      chosen = joinMark(chosen, wholeMark(condition.marks));
      if (condition.value !== true) continue;
    }
    items.push(walk(core.body, place));
  }
  return gather(items, ownMark(source.marks), chosen);
}

export function walkAccumulate(core: Op<"accumulate">, place: Place, walk: Walk): Marked {
  let held = walk(core.start, place);
  const source = walk(core.source, place);
  const mayMiss = itemsMayBeNone(core.source.type);
  const { length } = source.value as List;
  spend(place.state, length);
  for (let i = 0; i < length; i += 1) {
    place.slots[core.slot] = take(source, i, core.source, mayMiss);
    place.slots[core.state] = held;
    held = walk(core.body, place);
  }
  return { value: held.value, marks: addMark(held.marks, ownMark(source.marks)) };
}

export function walkIndex(core: Op<"index">, place: Place, walk: Walk): Marked {
  const of = walk(core.of, place);
  const list = of.value as List;
  const { number, mark } = numberOf(walk(core.index, place));
  const wanted = Math.round(number);
  if (!equalNumbers(wanted, number)) {
    throw new RunFault(faults.indexNotWhole(core.index.range, { index: show(place, core.index, number) }));
  }
  if (wanted < 1 || list.length < wanted) {
    throw new RunFault(faults.indexOutside(core.index.range, { index: String(wanted), count: String(list.length) }));
  }
  const item = take(of, wanted - 1, core.of, mayBeNone(core.type));
  return { value: item.value, marks: addMark(item.marks, mark) };
}

export function walkRange(core: Op<"range">, place: Place, walk: Walk): Marked {
  const [from, to, step] = [core.from, core.to, core.step].map((part) => numberOf(walk(part, place))) as [
    WalkedNumber,
    WalkedNumber,
    WalkedNumber,
  ];
  const count = stepsBetween(from.number, to.number, step.number);
  const slots = {
    low: show(place, core.from, from.number),
    high: show(place, core.to, to.number),
    step: show(place, core.step, step.number),
  };
  if (count === "zero step") throw new RunFault(faults.stepOfZero(core.step.range, { step: slots.step }));
  if (count === "wrong way") throw new RunFault(faults.stepWrongWay(core.step.range, slots));
  if (count === "does not fit") {
    const nearest = show(place, core.step, fittingStep(from.number, to.number, step.number));
    throw new RunFault(faults.stepDoesNotFit(core.step.range, { ...slots, nearest }));
  }
  const limit = place.state.limits.listLength;
  if (limit <= count) throw new RunFault(faults.listTooLong(core.range, { count: String(count + 1), limit: String(limit) }));
  spend(place.state, count + 1);
  return { value: rangeItems(from.number, to.number, step.number, count), marks: joinMark(joinMark(from.mark, to.mark), step.mark) };
}

export function walkColumn(core: Op<"column">, place: Place, walk: Walk): Marked {
  const of = walk(core.of, place);
  const table = of.value as TableValue;
  const at = table.heads.indexOf(core.name);
  return { value: table.columns[at] as List, marks: columnMarks(of.marks, at) };
}

export function walkWhere(core: Op<"where">, place: Place, walk: Walk): Marked {
  const of = walk(core.of, place);
  const table = of.value as TableValue;
  const places = core.columns.map((name) => table.heads.indexOf(name));
  spend(place.state, table.rows);
  const kept: number[] = [];
  let chosen: Mark = unmarked;
  for (let row = 0; row < table.rows; row += 1) {
    core.columns.forEach((name, k) => {
      const at = places[k] as number;
      const column: Marked = { value: table.columns[at] as List, marks: unmarked };
      const { value } = take(column, row, core.condition, cellMayBeNone(core.of, name));
      place.slots[core.slots[k] as number] = { value, marks: cellMarks(of.marks, at, row) };
    });
    const condition = walk(core.condition, place);
    chosen = joinMark(chosen, wholeMark(condition.marks));
    if (condition.value === true) kept.push(row);
  }
  const columns = table.columns.map((_, at) => kept.map((row) => addMark(cellMarks(of.marks, at, row), chosen)));
  return { value: takeRows(table, kept), marks: tableMarks(joinMark(ownMark(of.marks), chosen), columns) };
}

export function walkGroup(core: Op<"group">, place: Place, walk: Walk): Marked {
  const of = walk(core.of, place);
  const table = of.value as TableValue;
  spend(place.state, table.rows);
  const placeOf = (name: string): number => table.heads.indexOf(name);
  const chosen = core.by.reduce<Mark>((all, name) => joinMark(all, wholeMark(columnMarks(of.marks, placeOf(name)))), ownMark(of.marks));
  const groups = groupRows(table, core.by);
  const values: Value[][] = [...core.by, ...core.fields].map(() => []);
  const marks: Marks[][] = values.map(() => []);
  for (const rows of groups) {
    core.by.forEach((name, k) => {
      const at = placeOf(name);
      (values[k] as Value[]).push((table.columns[at] as List)[rows[0] as number] as Value);
      (marks[k] as Marks[]).push(addMark(cellMarks(of.marks, at, rows[0] as number), chosen));
    });
    core.columns.forEach((name, k) => {
      const at = placeOf(name);
      const cells = rows.map((row) => ({ value: (table.columns[at] as List)[row] as Value, marks: cellMarks(of.marks, at, row) }));
      place.slots[core.slots[k] as number] = gather(cells, ownMark(of.marks), unmarked);
    });
    core.fields.forEach((field, k) => {
      const { value, marks: fieldMarks } = walk(field.value, place);
      (values[core.by.length + k] as Value[]).push(value);
      (marks[core.by.length + k] as Marks[]).push(addMark(fieldMarks, chosen));
    });
  }
  const heads = [...core.by, ...core.fields.map((field) => field.name)];
  return { value: { shape: "table", heads, columns: values, rows: groups.length }, marks: tableMarks(chosen, marks) };
}
