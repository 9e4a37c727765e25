// The working of a value: symbols, numbers put in, result, and the inside of calls.

import { describe, expect, test } from "vitest";
import type { Core, CoreUnit } from "../../engine/check/index.ts";
import { inputMarks, type Marked, markFormula, type ProvenanceLevel, prepareFormula, type Value } from "../../engine/run/index.ts";
import {
  mathsText,
  type Show,
  sensitivities,
  symbolOf,
  type TraceOptions,
  type TraceView,
  traceText,
  traceUnit,
} from "../../engine/trace/index.ts";
import { dimensionFrom, dimensionOf, parseUnit, type Unit } from "../../engine/units/index.ts";
import {
  add,
  bare,
  binary,
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
  unit,
  valid,
} from "../run/core-builder.ts";

/** Four digits and the unit's text; values are taken to be in the unit already. */
const show: Show = (value, type, unit) => {
  if (typeof value !== "number") return { text: Array.isArray(value) ? `${value.length} values` : String(value), number: "", unit: "" };
  const number = String(Number(value.toPrecision(4))).replace("-", "−");
  const symbol =
    unit?.text ??
    (type.type === "quantity" && type.dimension.key !== ""
      ? type.dimension.exponents.map(([base, { n }]) => `${base}${n === 1 ? "" : n}`).join(" ")
      : "");
  return { text: symbol === "" ? number : `${number} ${symbol}`, number, unit: symbol };
};

function unitNamed(text: string): Unit {
  const parsed = parseUnit(text);
  if (!("unit" in parsed)) throw new Error(`no unit ${text}`);
  return parsed.unit;
}

const k = context();
const options = (more: Partial<TraceOptions> = {}): TraceOptions => ({ open: 1, show, ...more });
const input = (value: Value, from: string, level: ProvenanceLevel = "given", text: string = level): Marked => ({
  value,
  marks: inputMarks(value, { level, text, from }),
});
const trace = (program: CoreUnit, needs: readonly Marked[], more: Partial<TraceOptions> = {}): TraceView =>
  traceUnit(program, needs, k, options(more));
const symbols = (body: Core): string => mathsText(trace(unit(["a", "b", "c"], body), [bare(1), bare(2), bare(3)]).symbols);
const [a, b, c] = [(): Core => need(0, "a"), (): Core => need(1, "b"), (): Core => need(2, "c")];

describe("a line", () => {
  test("symbols, the numbers put in with their units, the result, what feeds it", () => {
    const body = divide(need(0, "M"), multiply(native("sqrt", [lit(2)]), need(1, "s")));
    const units: Readonly<Record<string, Unit>> = { M: unitNamed("N*m"), s: unitNamed("mm") };
    const view = trace(
      unit(["M", "s"], body),
      [input(15.54, "W", "published", "@log7 table 2"), input(60, "s", "given", "given drawing 31")],
      {
        name: "F_t",
        unit: unitNamed("N"),
        unitOf: (name) => units[name],
        note: "tension in the far screw",
      },
    );
    expect(traceText(view)).toEqual([
      "F_t = M / (√2 · s)",
      "    = 15.54 N·m / (√2 · 60 mm)",
      "    = 0.1831 N",
      "note: tension in the far screw",
      "from M = 15.54 N·m  | @log7 table 2 (W)",
      "from s = 60 mm  | given drawing 31",
    ]);
    expect(view.provenance).toEqual({ level: "given", text: "given drawing 31", from: "s" });
    expect(structuredClone(view)).toEqual(view);
  });
  test("an input and a copy say nothing twice", () => {
    expect(traceText(trace(unit([], lit(42)), [], { name: "W" }))).toEqual(["W = 42"]);
    expect(traceText(trace(unit(["a"], need(0, "a")), [bare(5)], { name: "x" }))).toEqual(["x = a", "  = 5", "from a = 5"]);
  });
  test("a fault keeps the symbols and what was known", () => {
    const view = trace(unit(["a", "b"], divide(a(), b())), [bare(1), bare(0)], { name: "x" });
    expect(view.result).toBeUndefined();
    expect(view.fault?.code).toBe("divide-by-zero");
    expect(traceText(view).slice(0, 3)).toEqual(["x = a / b", "  = 1 / 0", "fault: Divided by zero: 1 / 0."]);
  });
  test("names: Greek letters, subscripts, names of other notebooks", () => {
    expect(symbolOf("tau_max")).toEqual({ kind: "symbol", name: "tau_max", base: "τ", subscript: "max" });
    expect(symbolOf("F_V_min")).toEqual({ kind: "symbol", name: "F_V_min", base: "F", subscript: "V,min" });
    expect(symbolOf("shop.joint.md#F_max").name).toBe("F_max");
  });
});

describe("plain text", () => {
  test("brackets where they are needed and nowhere else", () => {
    expect(symbols(subtract(a(), subtract(b(), c())))).toBe("a − (b − c)");
    expect(symbols(subtract(subtract(a(), b()), c()))).toBe("a − b − c");
    expect(symbols(multiply(add(a(), b()), c()))).toBe("(a + b) · c");
    expect(symbols(divide(divide(a(), b()), c()))).toBe("a / b / c");
    expect(symbols(divide(a(), divide(b(), c())))).toBe("a / (b / c)");
    expect(symbols(power(add(a(), b()), lit(2)))).toBe("(a + b)²");
    expect(symbols(power(a(), lit(0.5)))).toBe("a^0.5");
    expect(symbols(negate(add(a(), b())))).toBe("−(a + b)");
    expect(symbols(negate(multiply(a(), b())))).toBe("−(a · b)");
    expect(symbols(power(negate(a()), lit(2)))).toBe("(−a)²");
    expect(symbols(native("sqrt", [add(a(), b())]))).toBe("√(a + b)");
    expect(symbols(native("cbrt", [a()]))).toBe("∛a");
    expect(symbols(native("abs", [a()]))).toBe("|a|");
    expect(symbols(native("max", [a(), b()]))).toBe("max(a, b)");
  });
  test("a power of a number with a unit keeps the two together", () => {
    const view = trace(unit(["d"], power(need(0, "d"), lit(2))), [bare(5)], { unitOf: () => unitNamed("mm") });
    expect(view.numbers && mathsText(view.numbers)).toBe("(5 mm)²");
  });
  test("the other forms", () => {
    expect(symbols(choose(compare(a(), "<=", b()), a(), b()))).toBe("if a <= b then a else b");
    const each = node(
      {
        op: "comprehension",
        source: list(a(), b()),
        slot: 0,
        condition: compare(local(0, "p"), ">", c()),
        body: multiply(local(0, "p"), lit(2)),
      },
      listOf(number),
    );
    expect(symbols(each)).toBe("[p · 2 for p in [a, b] where p > c]");
    const sum = node({ op: "accumulate", start: lit(0), state: 0, source: list(a()), slot: 1, body: add(local(0, "s"), local(1, "p")) });
    expect(symbols(sum)).toBe("accumulate s = 0 for p in [a]: s + p");
    expect(symbols(node({ op: "range", from: a(), to: b(), step: lit(1) }, listOf(number)))).toBe("a .. b step 1");
    expect(symbols(node({ op: "scatter", nominal: lit(8), spread: [lit(0.1)], form: "limits" }))).toBe("8 ± 0.1");
    const map = node(
      { op: "map", sources: [list(a(), b())], lists: [true], slots: [0], body: native("sin", [local(0, "x")]) },
      listOf(number),
    );
    expect(symbols(map)).toBe("sin([a, b])");
    const insert = node({ op: "record", record: "Insert", names: ["D", "L"], fields: [a(), b()] }, record("Insert"));
    expect(symbols(insert)).toBe("Insert { D = a, L = b }");
    expect(symbols(node({ op: "field", of: insert, field: 0, name: "D" }))).toBe("Insert { D = a, L = b }.D");
  });
});

describe("numbers put in", () => {
  const numbers = (body: Core, needs: readonly Marked[]): string | undefined => {
    const view = trace(
      unit(
        needs.map((_, i) => `n${i}`),
        body,
      ),
      needs,
    );
    return view.numbers && mathsText(view.numbers);
  };
  test("a path shows its end, not the whole record", () => {
    const i: Value = { shape: "record", record: "Insert", fields: [8, 9] };
    const field = node({ op: "field", of: need(0, "i", record("Insert")), field: 1, name: "L" });
    expect(numbers(multiply(field, lit(2)), [bare(i)])).toBe("9 · 2");
  });
  test("the branch that was not taken keeps its names", () => {
    const body = choose(compare(a(), "<", b()), multiply(a(), lit(2)), multiply(c(), lit(3)));
    expect(numbers(body, [bare(1), bare(2), bare(4)])).toBe("if 1 < 2 then 1 · 2 else c · 3");
  });
  test("a loop's own name stays, the rest is put in", () => {
    const each = node({ op: "comprehension", source: a(), slot: 0, body: multiply(local(0, "p"), b()) }, listOf(number));
    expect(numbers(each, [bare([1, 2]), bare(7)])).toBe("[p · 7 for p in 2 values]");
  });
});

describe("calls of formulas", () => {
  const half = formula({ name: "half", parameters: ["x"], steps: [result(divide(local(0, "x"), lit(2)))], reference: "@book 1" });
  const area = formula({
    name: "area",
    needs: ["half"],
    parameters: ["d", { name: "k", default: lit(1) }],
    steps: [
      require_(compare(local(0, "d"), ">", lit(0)), "d > 0"),
      valid(compare(local(0, "d"), "<", lit(3)), "d < 3", "tested sizes"),
      step("r", 2, call(need(0, "half"), "half", [local(0, "d")]), { note: "radius", reference: "@book 2" }),
      result(multiply(multiply(local(1, "k"), lit(3)), power(local(2, "r"), lit(2)))),
    ],
  });
  const halfValue = prepareFormula(half, k)([]);
  const areaMarked = markFormula(prepareFormula(area, k)([halfValue]), [markFormula(halfValue, []).marks]);
  const program = unit(["area", "d"], add(call(need(0, "area"), "area", [need(1, "d"), undefined]), lit(1)));
  const needs = [areaMarked, input(4, "d")];

  test("open into their steps, down to the depth asked for", () => {
    const open = (depth: number): readonly string[] => traceText(traceUnit(program, needs, k, options({ name: "A", open: depth })));
    const head = ["A = area(d) + 1", "  = area(4) + 1", "  = 13", "outside: area, d < 3 (tested sizes)", "from d = 4  | given"];
    const call1 = [
      "  area(d)",
      "    d = 4",
      "    k = 1  (default)",
      "    require 4 > 0: holds",
      "    valid 4 < 3: broken  | tested sizes",
      "    r = half(d)  | radius | @book 2",
      "      = half(4)",
      "      = 2",
    ];
    const inner = [
      "      half(d)  |  | @book 1",
      "        x = 4",
      "        result = x / 2",
      "               = 4 / 2",
      "               = 2",
    ];
    const last = ["    result = k · 3 · r²", "           = 1 · 3 · 2²", "           = 12"];
    expect(open(0)).toEqual(head);
    expect(open(1)).toEqual([...head, ...call1, ...last]);
    expect(open(2)).toEqual([...head, ...call1, ...inner, ...last]);
  });
  test("as plain data with what held", () => {
    const view = traceUnit(program, needs, k, options({ open: 1 }));
    expect(view.calls[0]?.steps.map(({ kind, holds }) => [kind, holds])).toEqual([
      ["require", true],
      ["valid", false],
      ["step", undefined],
      ["result", undefined],
    ]);
    expect(view.outside).toEqual([{ formula: "area", limit: "d < 3", note: "tested sizes" }]);
    expect(structuredClone(view)).toEqual(view);
  });
  test("a polymorphic formula shows the dimensions of this call, through calls in calls", () => {
    const one = { n: 1, d: 1 };
    const variable = { type: "quantity", dimension: dimensionFrom([["?1", one]]), kind: "any" } as const;
    const length = { type: "quantity", dimension: dimensionOf("length"), kind: "any" } as const;
    const x = (): Core => local(0, "x", variable);
    const twice = {
      ...formula({ name: "twice", parameters: [{ name: "x", type: variable }], steps: [result({ ...add(x(), x()), type: variable })] }),
      result: variable,
    };
    const inner = { ...call(need(0, "twice"), "twice", [x()], variable), dimensions: [["?1", variable.dimension]] } as Core;
    const four = {
      ...formula({
        name: "four",
        needs: ["twice"],
        parameters: [{ name: "x", type: variable }],
        steps: [result({ ...multiply(lit(2), inner), type: variable })],
      }),
      result: variable,
    };
    const twiceValue = prepareFormula(twice, k)([]);
    const fourValue = prepareFormula(four, k)([twiceValue]);
    const outer = { ...call(need(0, "four"), "four", [need(1, "l", length)], length), dimensions: [["?1", length.dimension]] } as Core;
    const view = trace(unit(["four", "l"], outer), [bare(fourValue), bare(3)], { open: 2 });
    expect(view.calls[0]?.arguments[0]?.shown.text).toBe("3 length");
    expect(view.calls[0]?.steps[0]?.result.text).toBe("12 length");
    expect(view.calls[0]?.steps[0]?.calls[0]?.steps[0]?.result.text).toBe("6 length");
  });
  test("a fault inside shows the steps up to it", () => {
    const view = traceUnit(program, [areaMarked, bare(-4)], k, options({ open: 1 }));
    expect(view.fault?.code).toBe("requirement-broken");
    expect(view.calls[0]?.steps.map(({ holds }) => holds)).toEqual([false]);
  });
});

describe("sensitivity", () => {
  test("relative change for 1 %, largest first, by running again", () => {
    const values: Record<string, number> = { F: 100, d: 2, z: 0 };
    const run = (name: string, value: number): ReturnType<Parameters<typeof sensitivities>[2]> => {
      const at = { ...values, [name]: value };
      return { ok: true, value: (at.F as number) / (at.d as number) ** 2 };
    };
    const inputs = ["F", "d", "z"].map((name) => ({ name, value: values[name] as number, point: false }));
    const found = sensitivities(25, inputs, run);
    expect(found.map(({ name }) => name)).toEqual(["d", "F", "z"]);
    expect(found[0]?.change).toBeCloseTo(-0.02, 4);
    expect(found[1]?.change).toBeCloseTo(0.01, 12);
    expect(found[2]).toEqual({ name: "z", by: "1 %", change: undefined, unknown: "input is zero" });
  });
  test("points move by a kelvin; a fault within reach is said", () => {
    const found = sensitivities(300, [{ name: "T", value: 300, point: true }], (_, value) => ({ ok: true, value }));
    expect(found[0]?.by).toBe("1 K");
    expect(found[0]?.change).toBeCloseTo(1 / 300, 12);
    const fault = traceUnit(unit([], binary("divide", lit(1), lit(0))), [], k, options()).fault;
    if (fault === undefined) throw new Error("no fault");
    expect(sensitivities(1, [{ name: "x", value: 1, point: false }], () => ({ ok: false, fault }))[0]?.unknown).toBe("fault nearby");
  });
});
