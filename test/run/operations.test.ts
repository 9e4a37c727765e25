// Every operation of Core has its value.

import { describe, expect, test } from "vitest";
import { prepareFormula, type Value } from "../../engine/run/index.ts";
import {
  add,
  call,
  choose,
  compare,
  context,
  divide,
  formula,
  list,
  listOf,
  lit,
  local,
  maybe,
  multiply,
  native,
  need,
  negate,
  node,
  number,
  power,
  record,
  require_,
  result,
  step,
  subtract,
  table,
  text,
  truth,
  unit,
  valid,
} from "./core-builder.ts";
import { resultOf } from "./evaluate.ts";

const of = (body: Parameters<typeof unit>[1], needs: Readonly<Record<string, Value>> = {}): Value =>
  resultOf(unit(Object.keys(needs), body), Object.values(needs));
const [x, y] = [(): ReturnType<typeof need> => need(0, "x"), (): ReturnType<typeof need> => need(1, "y")];
const at = { x: 6, y: 1.5 };

describe("arithmetic", () => {
  test("the five operations on cells, constants and parts, in every pairing", () => {
    const parts = [x, (): ReturnType<typeof lit> => lit(6), (): ReturnType<typeof add> => add(x(), lit(0))];
    const others = [y, (): ReturnType<typeof lit> => lit(1.5), (): ReturnType<typeof add> => add(y(), lit(0))];
    for (const a of parts) {
      for (const b of others) {
        expect(of(add(a(), b()), at)).toBe(7.5);
        expect(of(subtract(a(), b()), at)).toBe(4.5);
        expect(of(multiply(a(), b()), at)).toBe(9);
        expect(of(divide(a(), b()), at)).toBe(4);
        expect(of(power(a(), b()), at)).toBe(6 ** 1.5);
      }
    }
  });
  test("squares and cubes are products, so that the last bit is right", () => {
    expect(of(power(lit(0.1), lit(2)))).toBe(0.1 * 0.1);
    expect(of(power(lit(0.7), lit(3)))).toBe(0.7 * 0.7 * 0.7);
    expect(of(power(lit(2), lit(0.5)))).toBe(Math.SQRT2);
    expect(of(power(lit(0), lit(0)))).toBe(1);
  });
  test("negation", () => expect(of(negate(x()), at)).toBe(-6));
});

describe("truth", () => {
  test("comparison has one tolerance: <= takes what == takes, < does not", () => {
    const nearly = 1 + 1e-12;
    const say = (operator: "<" | "<=" | ">" | ">=" | "==" | "!=", b: number): Value => of(compare(lit(1), operator, lit(b)));
    expect([say("<", nearly), say("<=", nearly), say(">", nearly), say(">=", nearly), say("==", nearly), say("!=", nearly)]).toEqual([
      false,
      true,
      false,
      true,
      true,
      false,
    ]);
    expect([say("<", 1.1), say("<=", 1.1), say(">", 1.1), say(">=", 1.1), say("==", 1.1)]).toEqual([true, true, false, false, false]);
  });
  test("a chain holds when each link does", () => {
    const chain = (...values: readonly number[]): Value =>
      of(node({ op: "compare", operands: values.map((value) => lit(value)), operators: ["<", "<="], numeric: true }, truth));
    expect([chain(1, 2, 2), chain(1, 2, 1), chain(2, 1, 3)]).toEqual([true, false, false]);
  });
  test("texts, lists and records compare exactly", () => {
    expect(of(compare(lit("a"), "==", lit("a"), false))).toBe(true);
    expect(of(compare(lit("a"), "!=", lit("b"), false))).toBe(true);
    expect(of(compare(list(lit(1), lit(2)), "==", list(lit(1), lit(2)), false))).toBe(true);
    expect(of(compare(list(lit(1)), "==", list(lit(1 + 1e-12)), false))).toBe(false);
  });
  test("and, or and not; the right side only when it is wanted", () => {
    const impossible = (): ReturnType<typeof compare> => compare(divide(lit(1), lit(0)), ">", lit(0));
    expect(of(node({ op: "and", left: lit(false), right: impossible() }, truth))).toBe(false);
    expect(of(node({ op: "or", left: lit(true), right: impossible() }, truth))).toBe(true);
    expect(of(node({ op: "and", left: lit(true), right: lit(true) }, truth))).toBe(true);
    expect(of(node({ op: "or", left: lit(false), right: lit(false) }, truth))).toBe(false);
    expect(of(node({ op: "not", of: lit(false) }, truth))).toBe(true);
  });
  test("if runs one branch alone", () => {
    expect(of(choose(compare(x(), ">", lit(0)), divide(lit(1), x()), lit(0)), { x: 0 })).toBe(0);
    expect(of(choose(compare(x(), ">", lit(0)), divide(lit(1), x()), lit(0)), { x: 4 })).toBe(0.25);
  });
});

describe("lists", () => {
  const xs = (): ReturnType<typeof list> => list(lit(3), lit(1), lit(2));
  test("a list, its items, a range by count that ends on its bound", () => {
    expect(of(xs())).toEqual([3, 1, 2]);
    expect(of(node({ op: "index", of: xs(), index: lit(1) }))).toBe(3);
    const range = of(node({ op: "range", from: lit(0.1), to: lit(0.7), step: lit(0.1) }, listOf(number))) as readonly number[];
    expect(range).toHaveLength(7);
    expect(range.at(-1)).toBe(0.7);
    expect(of(node({ op: "range", from: lit(3), to: lit(1), step: lit(-1) }, listOf(number)))).toEqual([3, 2, 1]);
    expect(of(node({ op: "range", from: lit(3), to: lit(3), step: lit(1) }, listOf(number)))).toEqual([3]);
  });
  test("a map goes item by item, what is no list stays", () => {
    const body = add(multiply(local(0, "a"), local(1, "b")), local(2, "c"));
    const map = node(
      { op: "map", sources: [xs(), list(lit(10), lit(20), lit(30)), lit(1)], lists: [true, true, false], slots: [0, 1, 2], body },
      listOf(number),
    );
    expect(of(map)).toEqual([31, 21, 61]);
  });
  test("a comprehension with a condition", () => {
    const body = multiply(local(0, "p"), lit(2));
    const condition = compare(local(0, "p"), ">", lit(1));
    expect(of(node({ op: "comprehension", source: xs(), slot: 0, condition, body }, listOf(number)))).toEqual([6, 4]);
    expect(of(node({ op: "comprehension", source: xs(), slot: 0, body }, listOf(number)))).toEqual([6, 2, 4]);
  });
  test("accumulate carries its state", () => {
    const body = add(multiply(local(0, "s"), lit(10)), local(1, "p"));
    expect(of(node({ op: "accumulate", start: lit(0), state: 0, source: xs(), slot: 1, body }))).toBe(312);
  });
});

describe("records, families, maybe", () => {
  const insert = (): ReturnType<typeof node> =>
    node({ op: "record", record: "Insert", names: ["D", "L"], fields: [lit(8), add(lit(4), lit(5))] }, record("Insert"));
  test("made, read, changed; the old one stays", () => {
    expect(of(insert())).toEqual({ shape: "record", record: "Insert", fields: [8, 9] });
    expect(of(node({ op: "field", of: insert(), field: 1, name: "L" }))).toBe(9);
    const before: Value = { shape: "record", record: "Insert", fields: [8, 9] };
    const changed = node(
      { op: "with", of: need(0, "i", record("Insert")), changes: [{ field: 1, name: "L", value: lit(12) }] },
      record("Insert"),
    );
    expect(of(changed, { i: before })).toEqual({ shape: "record", record: "Insert", fields: [8, 12] });
    expect(before.fields).toEqual([8, 9]);
  });
  test("match takes the arm of the member and binds it", () => {
    const body = (slot: number, field: number): ReturnType<typeof node> =>
      node({ op: "field", of: local(slot, "m", record("Insert")), field, name: "f" });
    const arms = [
      { record: "Nut", slot: 0, body: body(0, 0) },
      { record: "Insert", slot: 1, body: body(1, 1) },
    ];
    expect(of(node({ op: "match", of: insert(), arms }))).toBe(9);
  });
  test("match on a Maybe", () => {
    const match = node({ op: "matchMaybe", of: need(0, "m", maybe(number)), none: lit(0), slot: 0, some: add(local(0, "v"), lit(1)) });
    expect(of(match, { m: null })).toBe(0);
    expect(of(match, { m: 4 })).toBe(5);
  });
  test("scatter gives its nominal value", () => {
    expect(of(node({ op: "scatter", nominal: lit(8), spread: [lit(0.1)], form: "limits" }))).toBe(8);
  });
});

describe("tables", () => {
  const type = table(["method", text], ["F", number]);
  const pulls = (): ReturnType<typeof node> =>
    node(
      {
        op: "table",
        heads: ["method", "F"],
        columns: [
          [lit("tapped"), lit("cut"), lit("tapped")],
          [lit(1480), lit(1180), lit(1520)],
        ],
      },
      type,
    );
  test("by columns", () => {
    expect(of(pulls())).toEqual({
      shape: "table",
      heads: ["method", "F"],
      columns: [
        ["tapped", "cut", "tapped"],
        [1480, 1180, 1520],
      ],
      rows: 3,
    });
    expect(of(node({ op: "column", of: pulls(), name: "F" }, listOf(number)))).toEqual([1480, 1180, 1520]);
  });
  test("where keeps whole rows", () => {
    const condition = compare(local(0, ".F"), ">", lit(1400));
    const kept = of(node({ op: "where", of: pulls(), columns: ["F"], slots: [0], condition }, type));
    expect(kept).toMatchObject({
      rows: 2,
      columns: [
        ["tapped", "tapped"],
        [1480, 1520],
      ],
    });
  });
  test("group goes by first appearance and sees a group's columns as lists", () => {
    const fields = [
      { name: "n", value: native("count", [local(0, ".F", listOf(number))]) },
      { name: "mean", value: native("mean", [local(0, ".F", listOf(number))]) },
    ];
    expect(of(node({ op: "group", of: pulls(), by: ["method"], columns: ["F"], slots: [0], fields }, type))).toEqual({
      shape: "table",
      heads: ["method", "n", "mean"],
      columns: [
        ["tapped", "cut"],
        [2, 1],
        [1500, 1180],
      ],
      rows: 2,
    });
  });
});

describe("calls", () => {
  test("parameters, defaults, steps, closed needs", () => {
    const twice = prepareFormula(
      formula({ name: "twice", parameters: ["x"], steps: [result(multiply(lit(2), local(0, "x")))] }),
      context(),
    )([]);
    const f = prepareFormula(
      formula({
        name: "f",
        needs: ["twice", "k0"],
        parameters: ["a", { name: "k", default: add(need(1, "k0"), local(0, "a")) }],
        steps: [
          step("b", 2, call(need(0, "twice"), "twice", [local(0, "a")])),
          require_(compare(local(2, "b"), ">", lit(0)), "b > 0"),
          valid(compare(local(2, "b"), "<", lit(1)), "b < 1"),
          result(add(local(2, "b"), local(1, "k"))),
        ],
      }),
      context(),
    )([twice, 100]);
    expect(of(call(need(0, "f"), "f", [lit(3), undefined]), { f })).toBe(109);
    expect(of(call(need(0, "f"), "f", [lit(3), lit(0.5)]), { f })).toBe(6.5);
  });
  test("a native of the library, with what it gives", () => {
    const natives = { half: { head: "half(x)", purpose: "Half.", apply: (args: readonly Value[]): Value => (args[0] as number) / 2 } };
    expect(resultOf(unit([], native("half", [lit(3)])), [], context({ natives }))).toBe(1.5);
  });
});
