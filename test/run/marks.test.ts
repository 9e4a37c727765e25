// What travels with a value: provenance per part, broken limits, scatter that is not evaluated.

import { describe, expect, test } from "vitest";
import type { Core } from "../../engine/check/index.ts";
import {
  formulaNeedsValues,
  inputMarks,
  type Marked,
  type Marks,
  markFormula,
  markUnit,
  needsValues,
  type ProvenanceLevel,
  prepareFormula,
  provenanceLevels,
  readProvenance,
  sameMarks,
  unmarked,
  type Value,
  wholeMark,
} from "../../engine/run/index.ts";
import {
  add,
  call,
  choose,
  compare,
  context,
  formula,
  list,
  listOf,
  lit,
  local,
  maybe,
  multiply,
  native,
  need,
  node,
  number,
  record,
  result,
  step,
  table,
  text,
  unit,
  valid,
} from "./core-builder.ts";

const from = (level: ProvenanceLevel, name: string, value: Value): Marked => ({
  value,
  marks: inputMarks(value, { level, text: level, from: name }),
});
const mark = (body: Core, needs: readonly Marked[]): Marked =>
  markUnit(
    unit(
      needs.map((_, i) => `n${i}`),
      body,
    ),
    needs,
    context(),
  );
const source = (marks: Marks): string => wholeMark(marks).provenance?.from ?? "none";
const levelOf = (marks: Marks): string => wholeMark(marks).provenance?.level ?? "none";
const [a, b, c] = [(): Core => need(0, "a"), (): Core => need(1, "b"), (): Core => need(2, "c")];

describe("provenance", () => {
  test("the weakest that reached the result, with its input; of equals the first", () => {
    provenanceLevels.forEach((strong, i) => {
      for (const weak of provenanceLevels.slice(i + 1)) {
        expect(source(mark(add(a(), b()), [from(strong, "s", 1), from(weak, "w", 2)]).marks)).toBe("w");
        expect(source(mark(add(a(), b()), [from(weak, "w", 1), from(strong, "s", 2)]).marks)).toBe("w");
      }
    });
    expect(source(mark(add(a(), b()), [from("given", "first", 1), from("given", "second", 2)]).marks)).toBe("first");
  });
  test("bare literals bring none", () => {
    expect(mark(add(lit(1), lit(2)), []).marks).toBe(unmarked);
    expect(levelOf(mark(multiply(a(), lit(2)), [from("test", "a", 1)]).marks)).toBe("test");
  });
  test("condition and taken branch, never the other one", () => {
    const body = choose(compare(a(), ">", lit(0)), b(), c());
    const needs = (x: number): readonly Marked[] => [from("given", "a", x), from("test", "b", 2), from("assumed", "c", 3)];
    expect(source(mark(body, needs(1)).marks)).toBe("a");
    expect(source(mark(body, needs(-1)).marks)).toBe("c");
  });
  test("per field, through a copy and a change", () => {
    const value: Value = { shape: "record", record: "Insert", fields: [8, 9] };
    const parts = [{ level: "supplier", text: "supplier sheet", from: "i.D" } as const, undefined];
    const i: Marked = { value, marks: inputMarks(value, { level: "assumed", text: "assumed", from: "i" }, parts) };
    const field = (of: Core, field: number): Core => node({ op: "field", of, field, name: "f" });
    const copy = (): Core => need(0, "i", record("Insert"));
    expect(levelOf(mark(field(copy(), 0), [i]).marks)).toBe("supplier");
    expect(levelOf(mark(field(copy(), 1), [i]).marks)).toBe("assumed");
    expect(levelOf(mark(copy(), [i]).marks)).toBe("assumed");
    const changed = node({ op: "with", of: copy(), changes: [{ field: 1, name: "L", value: lit(12) }] }, record("Insert"));
    expect(levelOf(mark(changed, [i]).marks)).toBe("supplier");
  });
  test("per item; an index brings its own", () => {
    const xs = (): Core => list(a(), b());
    const needs = [from("test", "a", 1), from("memory", "b", 2), from("given", "c", 1)];
    expect(levelOf(mark(node({ op: "index", of: xs(), index: lit(1) }), needs).marks)).toBe("test");
    expect(levelOf(mark(node({ op: "index", of: xs(), index: lit(2) }), needs).marks)).toBe("memory");
    expect(levelOf(mark(node({ op: "index", of: xs(), index: c() }), needs).marks)).toBe("given");
    expect(levelOf(mark(native("sum", [xs()]), needs).marks)).toBe("memory");
    const map = node({ op: "map", sources: [xs()], lists: [true], slots: [0], body: multiply(local(0, "x"), lit(2)) }, listOf(number));
    expect(levelOf(mark(node({ op: "index", of: map, index: lit(1) }), needs).marks)).toBe("test");
  });
  test("a filter marks what it leaves and how many", () => {
    const condition = compare(local(0, "x"), ">", c());
    const kept = node({ op: "comprehension", source: list(a(), b()), slot: 0, condition, body: local(0, "x") }, listOf(number));
    const needs = [from("test", "a", 1), from("test", "b", 2), from("assumed", "c", 1.5)];
    expect(levelOf(mark(kept, needs).marks)).toBe("assumed");
    expect(levelOf(mark(native("count", [kept]), needs).marks)).toBe("assumed");
    const none = [from("test", "a", 1), from("test", "b", 1), from("assumed", "c", 1.5)];
    expect(levelOf(mark(native("length", [kept]), none).marks)).toBe("assumed");
  });
  test("tables: column by column, filtered and grouped", () => {
    const type = table(["k", text], ["F", number]);
    const rows = (): Core =>
      node(
        {
          op: "table",
          heads: ["k", "F"],
          columns: [
            [lit("p"), lit("q")],
            [a(), b()],
          ],
        },
        type,
      );
    const needs = [from("test", "a", 1), from("memory", "b", 2), from("assumed", "c", 0)];
    const column = (of: Core, name: string): Core => node({ op: "column", of, name }, listOf(number));
    expect(levelOf(mark(column(rows(), "k"), needs).marks)).toBe("none");
    expect(levelOf(mark(column(rows(), "F"), needs).marks)).toBe("memory");
    const kept = node({ op: "where", of: rows(), columns: ["F"], slots: [0], condition: compare(local(0, ".F"), ">", c()) }, type);
    expect(levelOf(mark(column(kept, "k"), needs).marks)).toBe("assumed");
    const fields = [{ name: "F", value: native("mean", [local(0, ".F", listOf(number))]) }];
    const grouped = node({ op: "group", of: rows(), by: ["k"], columns: ["F"], slots: [0], fields }, type);
    const first = node({ op: "index", of: column(grouped, "F"), index: lit(1) });
    expect(levelOf(mark(first, needs).marks)).toBe("test");
  });
  test("match hangs on which member it is", () => {
    const arm = { record: "Nut", slot: 0, body: lit(1) };
    const value: Value = { shape: "record", record: "Nut", fields: [1] };
    expect(levelOf(mark(node({ op: "match", of: need(0, "m", record("Nut")), arms: [arm] }), [from("assumed", "m", value)]).marks)).toBe(
      "assumed",
    );
    const some = node({ op: "matchMaybe", of: need(0, "m", maybe(number)), none: lit(0), slot: 0, some: lit(1) });
    expect(levelOf(mark(some, [from("practice", "m", 3)]).marks)).toBe("practice");
  });
  test("the reference column is read by its first word", () => {
    expect(
      ["test own pulls", "@iso965 table 2", "supplier sheet", "given drawing 31", "practice", "memory", "assumed", "confirmed by AB"].map(
        (t) => readProvenance(t, "x").level,
      ),
    ).toEqual(["test", "published", "supplier", "given", "practice", "memory", "assumed", "assumed"]);
    expect(readProvenance(undefined, "x").level).toBe("unsourced");
    expect(readProvenance("somewhere", "x").level).toBe("unsourced");
  });
});

describe("formulas", () => {
  const k = context();
  const shape = formula({
    name: "strip",
    needs: ["k0"],
    parameters: ["d"],
    steps: [
      step("c", 1, lit(0.875), { reference: "memory" }),
      valid(compare(local(0, "d"), "<", lit(10)), "d < 10 mm", "tested sizes"),
      result(multiply(multiply(local(1, "c"), local(0, "d")), need(0, "k0"))),
    ],
  });
  const value = prepareFormula(shape, k)([2]);
  const strip = markFormula(value, [inputMarks(2, { level: "published", text: "@book", from: "k0" })]);
  const at = (d: number): Marked => mark(call(need(0, "strip"), "strip", [b()]), [strip, from("test", "d", d)]);

  test("constants of its own and of its needs reach the result", () => {
    expect(wholeMark(at(5).marks)).toMatchObject({ provenance: { level: "memory", from: "strip.c" }, outside: [] });
  });
  test("a broken limit of validity marks the result and all that depends on it", () => {
    const outside = [{ formula: "strip", limit: "d < 10 mm", note: "tested sizes" }];
    const first = at(12);
    expect(wholeMark(first.marks).outside).toEqual(outside);
    expect(first.value).toBe(0.875 * 12 * 2);
    expect(wholeMark(mark(add(a(), lit(1)), [first]).marks).outside).toEqual(outside);
    expect(wholeMark(mark(add(a(), b()), [first, first]).marks).outside).toEqual(outside);
  });
});

describe("scatter", () => {
  test("nominal only, and all that depends on it", () => {
    const x = mark(node({ op: "scatter", nominal: lit(8), spread: [lit(0.1)], form: "limits" }), []);
    expect(wholeMark(x.marks).nominalOnly).toBe(true);
    expect(wholeMark(mark(add(a(), lit(1)), [x]).marks).nominalOnly).toBe(true);
  });
});

describe("cut-off", () => {
  test("equal marks are equal whatever made them", () => {
    const needs = (): readonly Marked[] => [from("test", "a", 1), from("memory", "b", 2)];
    const [one, two] = [mark(list(a(), b()), needs()), mark(list(a(), b()), needs())];
    expect(one.marks).not.toBe(two.marks);
    expect(sameMarks(one.marks, two.marks)).toBe(true);
    expect(sameMarks(one.marks, mark(list(b(), a()), needs()).marks)).toBe(false);
    expect(sameMarks(one.marks, unmarked)).toBe(false);
  });
  test("a chain of one source shares one mark", () => {
    const x = from("given", "x", 1);
    expect(mark(add(multiply(a(), lit(2)), a()), [x]).marks).toBe(x.marks);
  });
  test("marks hang on values where something is chosen", () => {
    const needs = (body: Core): boolean => needsValues(unit(["a", "b", "f"], body), (i) => i !== 2);
    expect(needs(add(a(), native("sqrt", [b()])))).toBe(false);
    expect(needs(list(a(), b()))).toBe(false);
    expect(needs(choose(compare(a(), ">", b()), a(), b()))).toBe(true);
    expect(needs(node({ op: "index", of: list(a()), index: lit(1) }))).toBe(true);
    expect(needs(call(need(2, "f"), "f", [a()]))).toBe(false);
    expect(needs(call(need(1, "g"), "g", [a()]))).toBe(true);
    expect(needsValues(unit(["f"], call(need(0, "f"), "f", [])))).toBe(true);
    const plain = formula({ name: "p", parameters: ["x"], steps: [result(multiply(local(0, "x"), lit(2)))] });
    const limited = formula({ name: "v", parameters: ["x"], steps: [valid(lit(true), "x"), result(local(0, "x"))] });
    expect([formulaNeedsValues(plain), formulaNeedsValues(limited)]).toEqual([false, true]);
  });
});
