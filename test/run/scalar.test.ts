// The register program: what it takes, what it leaves to the others, what it saves.

import { describe, expect, test } from "vitest";
import { prepareFormula, prepareScalar, type Value } from "../../engine/run/index.ts";
import {
  add,
  call,
  compare,
  context,
  divide,
  formula,
  list,
  lit,
  local,
  multiply,
  native,
  need,
  node,
  power,
  record,
  require_,
  result,
  subtract,
  unit,
} from "./core-builder.ts";

const k = context();
const given = (values: Readonly<Record<string, Value>> = {}): ReadonlyMap<string, Value> => new Map(Object.entries(values));

describe("register program", () => {
  test("a chain with a formula put in place of its call, run on many inputs", () => {
    const shape = formula({
      name: "area",
      parameters: ["d"],
      steps: [require_(compare(local(0, "d"), ">", lit(0)), "d > 0"), result(multiply(lit(Math.PI / 4), power(local(0, "d"), lit(2))))],
    });
    const area = prepareFormula(shape, k)([]);
    const units = [
      { name: "A", unit: unit(["area", "d"], call(need(0, "area"), "area", [need(1, "d")])) },
      { name: "s", unit: unit(["F", "A"], divide(need(0, "F"), need(1, "A"))) },
    ];
    const program = prepareScalar({ units, inputs: ["F", "d"], given: given({ area }) }, k);
    const out = new Float64Array(2);
    expect(program?.run([100, 2], out)).toBe(true);
    expect([...out]).toEqual([Math.PI, 100 / Math.PI]);
    expect(program?.run([50, 2], out)).toBe(true);
    expect(out[1]).toBe(50 / Math.PI);
    expect(program?.run([50, -2], out)).toBe(false);
    expect(program?.run([50, 0], out)).toBe(false);
  });
  test("equal instructions are written once, and a chain is checked at its end alone", () => {
    const twice = (): ReturnType<typeof multiply> => multiply(need(0, "x"), need(0, "x"));
    const program = prepareScalar(
      { units: [{ name: "a", unit: unit(["x"], subtract(add(twice(), twice()), twice())) }], inputs: ["x"], given: given() },
      k,
    );
    // one product, sum and difference in one, one check
    expect(program?.instructions).toBe(3);
  });
  test("records, fields and known texts are resolved while it is written", () => {
    const natives = {
      size: { head: "size(t: Text): Number", purpose: "Size.", apply: ([t]: readonly Value[]): Value => (t === "M5" ? 5 : 6) },
    };
    const insert: Value = { shape: "record", record: "Insert", fields: [8, 9] };
    const field = node({ op: "field", of: need(0, "i", record("Insert")), field: 1, name: "L" });
    const body = add(multiply(field, need(1, "x")), native("size", [lit("M5")]));
    const program = prepareScalar(
      { units: [{ name: "a", unit: unit(["i", "x"], body) }], inputs: ["x"], given: given({ i: insert }) },
      context({ natives }),
    );
    const out = new Float64Array(1);
    expect(program?.run([2], out)).toBe(true);
    expect(out[0]).toBe(23);
  });
  test("lists and what is not given are left to the other evaluators", () => {
    const sum = unit(["x"], native("sum", [list(need(0, "x"))]));
    expect(prepareScalar({ units: [{ name: "a", unit: sum }], inputs: ["x"], given: given() }, k)).toBeUndefined();
    expect(prepareScalar({ units: [{ name: "a", unit: unit(["y"], need(0, "y")) }], inputs: [], given: given() }, k)).toBeUndefined();
  });
});
