// The budget counts steps, items and depth, and ends in a clear fault.

import { describe, expect, test } from "vitest";
import type { Core } from "../../engine/check/index.ts";
import { type FormulaValue, prepareFormula } from "../../engine/run/index.ts";
import { add, call, context, formula, listOf, lit, local, multiply, native, need, node, number, result, unit } from "./core-builder.ts";
import { faultOf, resultOf } from "./evaluate.ts";

const numbers = listOf(number);
const upTo = (count: number): Core => node({ op: "range", from: lit(1), to: lit(count), step: lit(1) }, numbers);
const nested = (outer: number, inner: number): Core => {
  const sum = native("sum", [
    node({ op: "comprehension", source: upTo(inner), slot: 1, body: multiply(local(0, "i"), local(1, "j")) }, numbers),
  ]);
  return node({ op: "comprehension", source: upTo(outer), slot: 0, body: sum }, numbers);
};

describe("budget", () => {
  test("steps: each item of a loop, a range and a function's list", () => {
    // outer range 10 + loop 10 + 10 * (range 10 + loop 10 + sum 10) = 320
    const limited = (steps: number): ReturnType<typeof context> => context({ limits: { steps } });
    expect(resultOf(unit([], nested(10, 10)), [], limited(320))).toHaveLength(10);
    const body = nested(10, 10);
    expect(faultOf(unit([], body), [], limited(319))).toMatchObject({
      code: "too-many-steps",
      range: body.range,
      message: "Stopped after 319 steps of work.",
    });
  });
  test("calls count", () => {
    const f = prepareFormula(formula({ name: "f", parameters: ["x"], steps: [result(local(0, "x"))] }), context())([]);
    const two = add(call(need(0, "f"), "f", [lit(1)]), call(need(0, "f"), "f", [lit(2)]));
    expect(resultOf(unit(["f"], two), [f], context({ limits: { steps: 2 } }))).toBe(3);
    expect(faultOf(unit(["f"], two), [f], context({ limits: { steps: 1 } })).code).toBe("too-many-steps");
  });
  test("a list that is too long, before it is made", () => {
    const range = upTo(1e7);
    expect(faultOf(unit([], native("sum", [range])))).toMatchObject({ code: "list-too-long", range: range.range });
    const short = context({ limits: { listLength: 5 } });
    expect(resultOf(unit([], upTo(5)), [], short)).toHaveLength(5);
    expect(faultOf(unit([], upTo(6)), [], short).code).toBe("list-too-long");
    const joined = native("join", [upTo(3), upTo(3)], numbers);
    expect(faultOf(unit([], joined), [], short)).toMatchObject({ code: "list-too-long", range: joined.range });
  });
  test("depth: formulas that call formulas", () => {
    let callee: FormulaValue = prepareFormula(formula({ name: "f0", parameters: ["x"], steps: [result(local(0, "x"))] }), context())([]);
    for (let i = 1; i < 12; i += 1) {
      const body = call(need(0, "g"), `f${i - 1}`, [local(0, "x")]);
      callee = prepareFormula(formula({ name: `f${i}`, needs: ["g"], parameters: ["x"], steps: [result(body)] }), context())([callee]);
    }
    const top = unit(["f"], call(need(0, "f"), "f11", [lit(7)]));
    expect(resultOf(top, [callee], context({ limits: { depth: 12 } }))).toBe(7);
    expect(faultOf(top, [callee], context({ limits: { depth: 11 } })).code).toBe("too-deep");
  });
  test("an expression nested beyond the machine's stack is a fault, not a crash", () => {
    let body: Core = lit(1);
    for (let i = 0; i < 60_000; i += 1) body = add(body, lit(1));
    expect(faultOf(unit([], body)).code).toBe("too-deep");
  });
});
