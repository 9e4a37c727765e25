// The language's own functions on lists and texts. A list may hold cells without a value (none): statistics use those present,
// everything that could take a missing value for a zero refuses.

import { nearest } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { equalNumbers, equalValues, isList } from "./equality.ts";
import type { Intrinsic } from "./intrinsics.ts";
import { between, larger, meanOf, medianOf, smaller, sortNumbers, sumOf, unfinite, varianceOf } from "./kernels.ts";
import { itemMarks, joinMark, listMarks, type Mark, type Marked, type Marks, ownMark, unmarked } from "./marks.ts";
import { type CallPlace, OwnRefusal } from "./native.ts";
import type { Value } from "./value.ts";

type List = readonly Value[];

function refuse(fault: (call: CallPlace) => Diagnostic): never {
  throw new OwnRefusal(fault);
}

function make(head: string, purpose: string, least: number, most: number, apply: (args: readonly Value[]) => Value): Intrinsic {
  return { head, purpose, least, most, apply };
}

/** A function whose result is items of its arguments as they are: each keeps its own marks. */
const keeping = (intrinsic: Intrinsic, marks: NonNullable<Intrinsic["marks"]>): Intrinsic => ({ ...intrinsic, marks });

const itemsOf = ({ value, marks }: Marked): readonly Marks[] => (value as List).map((_, i) => itemMarks(marks, i));
const joinedMarks = (args: readonly Marked[]): Marks =>
  listMarks(
    args.reduce<Mark>((all, { marks }) => joinMark(all, ownMark(marks)), unmarked),
    args.flatMap(itemsOf),
  );
const reversedMarks = ([list]: readonly Marked[]): Marks =>
  listMarks(ownMark((list as Marked).marks), [...itemsOf(list as Marked)].reverse());
const itemAt =
  (place: (length: number) => number) =>
  ([list]: readonly Marked[]): Marks => {
    const { value, marks } = list as Marked;
    return itemMarks(marks, place((value as List).length));
  };
const firstMarks = itemAt(() => 0);
const lastMarks = itemAt((length) => length - 1);

const listAt = (args: readonly Value[], i: number): List => args[i] as List;
const numberAt = (args: readonly Value[], i: number): number => args[i] as number;

/** The numbers present; a fault when there are fewer than `least`. */
function present(args: readonly Value[], least: number): readonly number[] {
  const list = listAt(args, 0);
  const numbers = list.filter((item) => item !== null) as readonly number[];
  if (least <= numbers.length) return numbers;
  if (list.length === 0) refuse((call) => faults.listEmpty(call.at(0), { function: call.name }));
  if (numbers.length === 0) refuse((call) => faults.nothingPresent(call.at(0), { function: call.name, count: String(list.length) }));
  return refuse((call) => faults.tooFew(call.at(0), { function: call.name, least: String(least), count: String(numbers.length) }));
}

/** Every item, all of them present. */
function complete(args: readonly Value[], argument: number): List {
  const list = listAt(args, argument);
  const missing = list.indexOf(null);
  if (missing !== -1) refuse((call) => faults.emptyCell(call.at(argument), { item: String(missing + 1), count: String(list.length) }));
  return list;
}

function filled(args: readonly Value[]): List {
  const list = listAt(args, 0);
  if (list.length === 0) refuse((call) => faults.listEmpty(call.at(0), { function: call.name }));
  return list;
}

function finite(result: number): number {
  if (unfinite(result)) refuse((call) => faults.tooLarge(call.range, { operation: call.name }));
  return result;
}

const whole = (args: readonly Value[], argument: number, low: number, high: number): number => {
  const count = Math.round(numberAt(args, argument));
  const fits = equalNumbers(count, numberAt(args, argument)) && low <= count && count <= high;
  if (!fits)
    refuse((call) =>
      faults.countOutside(call.at(argument), { function: call.name, value: call.show(argument), low: String(low), high: String(high) }),
    );
  return count;
};

const matches = (a: Value, b: Value): boolean => (typeof a === "number" && typeof b === "number" ? equalNumbers(a, b) : equalValues(a, b));

function sameLengths(args: readonly Value[]): void {
  const [first, second] = [listAt(args, 0).length, listAt(args, 1).length];
  if (first !== second) refuse((call) => faults.lengthsDiffer(call.at(1), { first: String(first), second: String(second) }));
}

function sort(args: readonly Value[]): Value {
  const list = complete(args, 0);
  if (list.every((item) => typeof item === "number")) return sortNumbers(list);
  // By code unit, so that the order is the same in every language of the machine.
  return [...list].sort((a, b) => ((a as string) < (b as string) ? -1 : (a as string) > (b as string) ? 1 : 0));
}

function unique(args: readonly Value[]): Value {
  const kept: Value[] = [];
  const seen = new Set<Value>();
  for (const item of listAt(args, 0)) {
    if (typeof item !== "object" || item === null) {
      if (seen.has(item)) continue;
      seen.add(item);
    } else if (kept.some((other) => equalValues(item, other))) continue;
    kept.push(item);
  }
  return kept;
}

function indexOf(args: readonly Value[]): Value {
  const found = listAt(args, 0).findIndex((item) => matches(item, args[1] as Value));
  if (found !== -1) return found + 1;
  return refuse((call) => faults.notInList(call.at(1), { function: call.name, value: call.show(1) }));
}

function lookup(args: readonly Value[]): Value {
  sameLengths(args);
  const keys = complete(args, 0);
  const found = keys.findIndex((key) => matches(key, args[2] as Value));
  if (found !== -1) return listAt(args, 1)[found] as Value;
  return refuse((call) => faults.keyMissing(call.at(2), { key: call.show(2), nearby: neighbours(call, keys, args[2] as Value) }));
}

/** The two keys between which a missing number lies, or the text that was likely meant, in words for the message. */
function neighbours(call: CallPlace, keys: List, key: Value): string {
  const numbers = keys.filter((item) => typeof item === "number");
  if (typeof key !== "number" || numbers.length === 0) {
    const shown = [...new Set(keys.map((item) => call.showLike(0, item)))];
    return (typeof key === "string" ? nearest(key, shown) : undefined) ?? shown.slice(0, 5).join(", ");
  }
  const below = numbers.filter((item) => item < key);
  const above = numbers.filter((item) => key < item);
  const shown = [...(below.length > 0 ? [Math.max(...below)] : []), ...(above.length > 0 ? [Math.min(...above)] : [])];
  return shown.map((item) => call.showLike(0, item)).join(" and ");
}

function interpolate(args: readonly Value[]): Value {
  sameLengths(args);
  const xs = complete(args, 0) as readonly number[];
  const ys = complete(args, 1) as readonly number[];
  const x = numberAt(args, 2);
  if (xs.length < 2) refuse((call) => faults.tooFew(call.at(0), { function: call.name, least: "2", count: String(xs.length) }));
  for (let i = 1; i < xs.length; i += 1) {
    const [before, here] = [xs[i - 1] as number, xs[i] as number];
    if (!(before < here)) {
      refuse((call) =>
        faults.tableUnsorted(call.at(0), { item: String(i + 1), value: call.showLike(0, here), before: call.showLike(0, before) }),
      );
    }
  }
  const [low, high] = [xs[0] as number, xs[xs.length - 1] as number];
  if (!(low <= x && x <= high)) {
    refuse((call) => faults.outsideTable(call.at(2), { value: call.show(2), low: call.showLike(0, low), high: call.showLike(0, high) }));
  }
  let from = 0;
  let to = xs.length - 1;
  while (to - from > 1) {
    const middle = (from + to) >> 1;
    if (x < (xs[middle] as number)) to = middle;
    else from = middle;
  }
  return finite(between(xs[from] as number, xs[to] as number, ys[from] as number, ys[to] as number, x));
}

function single(args: readonly Value[]): Value {
  const list = filled(args);
  if (list.length > 1) refuse((call) => faults.notSingle(call.at(0), { count: String(list.length) }));
  return list[0] as Value;
}

function cumulative(args: readonly Value[]): Value {
  let sum = 0;
  return (complete(args, 0) as readonly number[]).map((item) => {
    sum = finite(sum + item);
    return sum;
  });
}

const some = Number.POSITIVE_INFINITY;
const mostCopies = 100_000;

export const listFunctions: Readonly<Record<string, Intrinsic>> = {
  sum: make("sum(xs): as xs", "Sum of a list; a missing value is a fault; the sum of no items is a fault.", 1, 1, (args) => {
    filled(args);
    return finite(sumOf(complete(args, 0) as readonly number[]));
  }),
  mean: make("mean(xs): as xs", "Mean of the values present; also of temperature points.", 1, 1, (args) =>
    finite(meanOf(present(args, 1))),
  ),
  median: make("median(xs): as xs", "Middle of the values present.", 1, 1, (args) => finite(medianOf(present(args, 1)))),
  deviation: make("deviation(xs): as xs", "Standard deviation of the sample of the values present (n - 1).", 1, 1, (args) =>
    finite(Math.sqrt(varianceOf(present(args, 2)))),
  ),
  variance: make("variance(xs): as xs^2", "Variance of the sample of the values present (n - 1).", 1, 1, (args) =>
    finite(varianceOf(present(args, 2))),
  ),
  min: make("min(xs): as xs", "Smallest of the values present.", 1, 1, (args) => present(args, 1).reduce(smaller)),
  max: make("max(xs): as xs", "Largest of the values present.", 1, 1, (args) => present(args, 1).reduce(larger)),
  count: make("count(xs): Number", "How many values are present.", 1, 1, (args) => listAt(args, 0).filter((item) => item !== null).length),
  length: make("length(xs): Number", "How many items the list has, with those that miss a value.", 1, 1, (args) => listAt(args, 0).length),
  present: make("present(xs): List", "The items that have a value.", 1, 1, (args) => listAt(args, 0).filter((item) => item !== null)),
  all: make("all(conditions): Truth", "Whether every one holds; of an empty list it is a fault.", 1, 1, (args) => {
    filled(args);
    return complete(args, 0).every((item) => item === true);
  }),
  any: make("any(conditions): Truth", "Whether at least one holds; of an empty list it is a fault.", 1, 1, (args) => {
    filled(args);
    return complete(args, 0).some((item) => item === true);
  }),
  sort: make("sort(xs): as xs", "Ascending: numbers by size, texts by character.", 1, 1, sort),
  reverse: keeping(
    make("reverse(xs): as xs", "Last item first.", 1, 1, (args) => [...listAt(args, 0)].reverse()),
    reversedMarks,
  ),
  first: keeping(
    make("first(xs)", "First item; of an empty list it is a fault.", 1, 1, (args) => filled(args)[0] as Value),
    firstMarks,
  ),
  last: keeping(
    make("last(xs)", "Last item; of an empty list it is a fault.", 1, 1, (args) => filled(args)[filled(args).length - 1] as Value),
    lastMarks,
  ),
  single: keeping(make("single(xs)", "The only item; none or several are a fault.", 1, 1, single), firstMarks),
  unique: make("unique(xs): as xs", "Each item once, in order of first appearance; numbers are compared exactly.", 1, 1, unique),
  join: keeping(
    make("join(xs, ys, ...): as xs", "Lists one after the other.", 2, some, (args) => (args as readonly List[]).flat(1) as List),
    joinedMarks,
  ),
  index_of: make(
    "index_of(xs, x): Number",
    "Place of the first item equal to x, counted from 1; a fault when there is none.",
    2,
    2,
    indexOf,
  ),
  cumulative: make("cumulative(xs): as xs", "Running sums.", 1, 1, cumulative),
  interpolate: make(
    "interpolate(xs, ys, x): as ys",
    "Straight line between the points of a table with ascending xs; outside the table is a fault.",
    3,
    3,
    interpolate,
  ),
  lookup: make(
    "lookup(keys, values, key): as a value",
    "The value beside an equal key; no such key is a fault, never the next one.",
    3,
    3,
    lookup,
  ),
  contains: make("contains(text: Text, part: Text): Truth", "Whether the part occurs in the text, letter case included.", 2, 2, (args) =>
    (args[0] as string).includes(args[1] as string),
  ),
  independent: make("independent(x, n: Number): List", "n of a kind, each with a scatter of its own.", 2, 2, (args) => {
    const copies = whole(args, 1, 1, mostCopies);
    return Array.from({ length: copies }, () => args[0] as Value);
  }),
};

/** For the step budget: items a call looks at. */
export function itemsIn(args: readonly Value[]): number {
  let items = 0;
  for (const arg of args) if (arg !== null && typeof arg === "object" && isList(arg)) items += arg.length;
  return items;
}
