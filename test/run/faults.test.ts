// Nothing is silent: each fault arises at the smallest place and names the numbers.

import { describe, expect, test } from "vitest";
import type { Core } from "../../engine/check/index.ts";
import { prepareFormula, Refusal, type Value } from "../../engine/run/index.ts";
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
  require_,
  result,
  step,
  subtract,
  table,
  text,
  unit,
  valid,
} from "./core-builder.ts";
import { evaluate, faultOf, resultOf } from "./evaluate.ts";

const numbers = listOf(number);

function expectFault(body: Core, code: string, at: Core, ...words: readonly string[]): void {
  const fault = faultOf(unit([], body));
  expect([fault.code, fault.range]).toEqual([code, at.range]);
  for (const word of words) expect(`${fault.message} ${fault.hint ?? ""}`).toContain(word);
}

describe("arithmetic", () => {
  test("division by zero, at the divisor, with both sides", () => {
    const zero = subtract(lit(5), lit(5));
    expectFault(add(lit(1), divide(lit(12), zero)), "divide-by-zero", zero, "12 / 0");
    const bare = lit(0);
    expectFault(divide(lit(0), bare), "divide-by-zero", bare);
    const minus = negate(lit(0));
    expectFault(divide(lit(1), minus), "divide-by-zero", minus);
  });
  test("an infinity that would vanish: under a fraction, in an arc tangent, in a comparison, in a minimum, in a power", () => {
    const huge = (): Core => multiply(lit(1e200), lit(1e200));
    for (const hide of [
      (x: Core): Core => divide(lit(1), x),
      (x: Core): Core => native("atan", [x]),
      (x: Core): Core => native("min", [lit(1), x]),
      (x: Core): Core => native("sign", [x]),
      (x: Core): Core => native("tanh", [x]),
      (x: Core): Core => power(x, lit(0)),
      (x: Core): Core => power(x, lit(-1)),
      (x: Core): Core => power(lit(0.5), x),
      (x: Core): Core => choose(compare(x, ">", lit(0)), lit(1), lit(2)),
      (x: Core): Core => native("count", [list(x)]),
      (x: Core): Core => node({ op: "index", of: list(lit(1), x), index: lit(1) }),
      (x: Core): Core =>
        node({ op: "field", of: node({ op: "record", record: "R", names: ["a", "b"], fields: [lit(1), x] }), field: 0, name: "a" }),
      (x: Core): Core => node({ op: "scatter", nominal: lit(1), spread: [x], form: "limits" }),
    ]) {
      const x = huge();
      expectFault(hide(x), "too-large", x, "1e+200 * 1e+200");
    }
  });
  test("an infinity in the branch of an `if` that else gives none", () => {
    for (const shape of [(x: Core): Core => x, (x: Core): Core => list(x)]) {
      const zero = lit(0);
      const body = choose(lit(false), lit(null), divide(lit(7), zero));
      expectFault(shape(body), "divide-by-zero", zero, "7 / 0");
    }
    const none = choose(lit(true), lit(null), divide(lit(7), lit(0)));
    expect(resultOf(unit([], none))).toBeNull();
  });
  test("a negative base under a fractional power, zero under a negative one", () => {
    const a = power(lit(-8), lit(1 / 3));
    expectFault(a, "power-of-negative", a, "-8", "cbrt");
    const b = power(lit(-8), lit(0.5));
    expectFault(b, "power-of-negative", b);
    const c = power(lit(0), lit(-2));
    expectFault(c, "power-of-zero", c);
    const d = power(lit(10), lit(400));
    expectFault(d, "too-large", d, "10 ^ 400");
  });
  test("functions outside their domain, at the argument", () => {
    const cases: readonly (readonly [name: string, value: number, code: string])[] = [
      ["sqrt", -1, "root-of-negative"],
      ["ln", 0, "logarithm-outside"],
      ["log10", -3, "logarithm-outside"],
      ["log2", 0, "logarithm-outside"],
      ["asin", 1.2, "arc-outside"],
      ["acos", -1.2, "arc-outside"],
    ];
    for (const [name, value, code] of cases) {
      const x = lit(value);
      expectFault(native(name, [x]), code, x, name, String(value));
    }
    const exp = native("exp", [lit(1000)]);
    expectFault(exp, "too-large", exp, "exp");
    const zero = lit(0);
    expectFault(native("mod", [lit(7), zero]), "zero-step", zero);
    const step0 = lit(0);
    expectFault(native("round", [lit(7), step0]), "zero-step", step0);
    const origin = native("atan2", [lit(0), lit(0)]);
    expectFault(origin, "no-direction", origin);
  });
  test("a literal beyond the largest number", () => {
    const x = lit(Number.POSITIVE_INFINITY);
    expectFault(add(x, lit(1)), "too-large", x);
  });
});

describe("lists and tables", () => {
  const xs = (...values: readonly number[]): Core => list(...values.map((value) => lit(value)));
  const empty = (): Core => node({ op: "list", items: [] }, numbers);
  const holes = (...values: readonly (number | null)[]): Core => node({ op: "constant", value: values, literal: false }, numbers);

  test("what an empty list has not", () => {
    for (const name of ["sum", "mean", "median", "deviation", "variance", "min", "max", "all", "any", "first", "last", "single"]) {
      const list = empty();
      expectFault(native(name, [list]), "list-empty", list, name);
    }
  });
  test("mean skips what is missing and count counts what is there; a sum refuses", () => {
    expect(resultOf(unit([], native("mean", [holes(1, 2, 3, null)])))).toBe(2);
    expect(resultOf(unit([], native("count", [holes(1, 2, 3, null)])))).toBe(3);
    expect(resultOf(unit([], native("length", [holes(1, 2, 3, null)])))).toBe(4);
    for (const name of ["sum", "sort", "cumulative"]) {
      const list = holes(1, null, 3);
      expectFault(native(name, [list], numbers), "empty-cell", list, "Item 2 of 3");
    }
    const none = holes(null, null);
    expectFault(native("mean", [none]), "nothing-present", none, "2");
    const one = holes(null, 4);
    expectFault(native("deviation", [one]), "too-few", one);
  });
  test("a missing value never becomes zero in a loop, a map, an index, a filter or a first", () => {
    const hole = holes(1, null);
    expectFault(
      node({ op: "map", sources: [hole], lists: [true], slots: [0], body: multiply(local(0, "x"), lit(2)) }, numbers),
      "empty-cell",
      hole,
    );
    const again = holes(1, null);
    expectFault(node({ op: "comprehension", source: again, slot: 0, body: local(0, "x") }, numbers), "empty-cell", again);
    const summed = holes(1, null);
    const body = add(local(0, "s"), local(1, "x"));
    expectFault(node({ op: "accumulate", start: lit(0), state: 0, source: summed, slot: 1, body }), "empty-cell", summed);
    const taken = holes(1, null);
    expectFault(node({ op: "index", of: taken, index: lit(2) }), "empty-cell", taken);
    const type = table(["F", number]);
    const condition = compare(local(0, ".F"), ">", lit(0));
    const rows = node({ op: "table", heads: ["F"], columns: [[lit(1), lit(null)]] }, type);
    expectFault(node({ op: "where", of: rows, columns: ["F"], slots: [0], condition }, type), "empty-cell", condition, "Item 2");
    const last = native("last", [holes(1, null)]);
    expectFault(last, "empty-cell", last);
  });
  test("index outside and between", () => {
    for (const [index, code] of [
      [0, "index-outside"],
      [3, "index-outside"],
      [-1, "index-outside"],
      [1.5, "index-not-whole"],
    ] as const) {
      const at = lit(index);
      expectFault(node({ op: "index", of: xs(1, 2), index: at }), code, at, String(index));
    }
  });
  test("lists of different lengths", () => {
    const second = xs(1, 2);
    const body = add(local(0, "a"), local(1, "b"));
    const map = node({ op: "map", sources: [xs(1, 2, 3), second], lists: [true, true], slots: [0, 1], body }, numbers);
    expectFault(map, "lengths-differ", second, "3", "2");
    const ys = xs(1, 2);
    expectFault(native("interpolate", [xs(1, 2, 3), ys, lit(1)]), "lengths-differ", ys);
  });
  test("ranges that miss their bound, go nowhere or the wrong way", () => {
    const range = (from: number, to: number, by: Core): Core => node({ op: "range", from: lit(from), to: lit(to), step: by }, numbers);
    const [four, zero, one, back] = [lit(4), lit(0), lit(1), lit(-4)];
    expectFault(range(6, 20, four), "step-does-not-fit", four, "6", "20", "3.5");
    expectFault(range(6, 20, zero), "step-of-zero", zero);
    expectFault(range(20, 6, one), "step-wrong-way", one);
    expectFault(range(6, 7, back), "step-wrong-way", back);
  });
  test("tables: outside, unsorted, no such key, not one", () => {
    const at = lit(1.5);
    expectFault(native("interpolate", [xs(0, 1), xs(1, 2), at]), "outside-table", at, "1.5", "0", "1");
    const unsorted = xs(0.1, 0.3, 0.2);
    expectFault(native("interpolate", [unsorted, xs(1, 3, 2), lit(0.15)]), "table-unsorted", unsorted, "item 3");
    const key = lit(3.5);
    expectFault(native("lookup", [xs(3, 4), xs(1, 2), key]), "key-missing", key, "3.5", "3 and 4");
    const missing = lit("M7");
    expectFault(native("lookup", [list(lit("M5"), lit("M6")), xs(1, 2), missing]), "key-missing", missing, '"M5", "M6"');
    const two = xs(1, 2);
    expectFault(native("single", [two]), "not-single", two, "2");
    const gone = lit(7);
    expectFault(native("index_of", [xs(1, 2), gone]), "not-in-list", gone);
    const half = lit(2.5);
    expectFault(native("independent", [lit(1), half], numbers), "count-outside", half);
  });
});

describe("formulas", () => {
  const inside = divide(lit(1), local(0, "d"));
  const g = formula({ name: "g", parameters: ["d"], steps: [step("q", 1, inside), result(local(1, "q"))] });
  const gCall = call(need(0, "g"), "g", [subtract(local(0, "x"), lit(1))]);
  const f = formula({ name: "f", needs: ["g"], parameters: ["x"], steps: [result(gCall)] });
  const k = context();
  const gValue = prepareFormula(g, k)([]);
  const fValue = prepareFormula(f, k)([gValue]);

  test("a fault inside is reported at the outermost call and names the innermost formula and step once", () => {
    const outer = call(need(0, "f"), "f", [lit(1)]);
    const fault = faultOf(unit(["f"], add(lit(1), outer)), [fValue]);
    expect(fault).toMatchObject({ code: "divide-by-zero", range: outer.range, message: "In g, step q: Divided by zero: 1 / 0." });
    expect(fault.related).toEqual([
      { message: "Here in g.", range: local(0, "d").range && (inside as { right: Core }).right.range, statement: "g" },
      { message: "Here in f.", range: gCall.range, statement: "f" },
    ]);
  });
  test("a broken requirement names formula, condition, note and the values", () => {
    const condition = compare(local(0, "d"), ">", lit(0));
    const h = prepareFormula(
      formula({ name: "h", parameters: ["d"], steps: [require_(condition, "d > 0 mm", "a rod has a diameter"), result(local(0, "d"))] }),
      k,
    )([]);
    const outer = call(need(0, "h"), "h", [lit(-3)]);
    const fault = faultOf(unit(["h"], outer), [h]);
    expect(fault).toMatchObject({
      code: "requirement-broken",
      range: outer.range,
      message: "h requires d > 0 mm.",
      hint: "A rod has a diameter; here d = -3.",
      related: [{ statement: "h", range: condition.range }],
    });
  });
  test("a fault in a condition of validity or in a step that nobody reads is a fault", () => {
    for (const bad of [
      valid(compare(divide(lit(1), local(0, "d")), ">", lit(0)), "1/d > 0"),
      step("unused", 1, divide(lit(1), local(0, "d"))),
    ]) {
      const h = prepareFormula(formula({ name: "h", parameters: ["d"], steps: [bad, result(lit(1))] }), k)([]);
      expect(faultOf(unit(["h"], call(need(0, "h"), "h", [lit(0)])), [h]).code).toBe("divide-by-zero");
    }
  });
});

describe("natives of the library", () => {
  const natives = {
    thread: {
      head: "thread(text: Text): Thread",
      purpose: "A thread by its designation.",
      apply: ([name]: readonly Value[]): Value => {
        if (name !== "M5") throw new Refusal(`"${String(name)}" is no thread of ISO 261`, { argument: 0, advice: "The nearest is M5" });
        return 5;
      },
    },
    wild: { head: "wild(): Number", purpose: "A mistake.", apply: (): Value => [1, Number.NaN] },
    lost: { head: "lost(): Number", purpose: "A mistake.", apply: (): Value => null },
  };
  const k = context({ natives });
  test("a refusal is a fault at its argument, with the advice", () => {
    const name = lit("M5.3");
    expect(faultOf(unit([], native("thread", [name])), [], k)).toMatchObject({
      code: "refused",
      range: name.range,
      message: '"M5.3" is no thread of ISO 261.',
      hint: "The nearest is M5.",
    });
    expect(resultOf(unit([], native("thread", [lit("M5")])), [], k)).toBe(5);
  });
  test("NaN and nothing do not come through", () => {
    expect(faultOf(unit([], native("wild", [], numbers)), [], k).code).toBe("no-finite-result");
    expect(faultOf(unit([], native("lost", [])), [], k).code).toBe("empty-cell");
    expect(resultOf(unit([], native("lost", [], maybe(number))), [], k)).toBe(null);
  });
  test("a mistake of ours goes up as it is", () => {
    const broken = { oops: { head: "oops()", purpose: "Fails.", apply: (): Value => (undefined as unknown as { x: number }).x } };
    expect(() => evaluate(unit([], native("oops", [])), [], context({ natives: broken }))).toThrow(TypeError);
    expect(() => evaluate(unit([], native("nowhere", [])))).toThrow("no native is called nowhere");
  });
});

describe("not yet", () => {
  test("study and solve are read, not evaluated", () => {
    for (const op of ["study", "solve"] as const) {
      const body = node({ op, parts: [lit(1)] }, text);
      expectFault(body, "not-evaluated-yet", body, op);
    }
  });
});
