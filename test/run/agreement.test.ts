// Three evaluators, one meaning: closures, the walk and the register program give the same bits or notice the same fault.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Core, CoreFormula, CoreStep, CoreUnit } from "../../engine/check/index.ts";
import { type FormulaValue, prepareFormula, prepareScalar, prepareUnit, type Value } from "../../engine/run/index.ts";
import {
  binary,
  call,
  choose,
  compare,
  context,
  formula,
  list,
  listOf,
  lit,
  local,
  native,
  need,
  negate,
  node,
  number,
  require_,
  result,
  step,
  truth,
  unit,
  valid,
} from "./core-builder.ts";
import { evaluate } from "./evaluate.ts";

/** Numbers that provoke: zeros, ones, halves, overflow, and common sizes. */
const value = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 2, 3, 0.5, -2, 1e200, -1e200, 1e-200, 1e308),
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e3, max: 1e3 }),
);

/** Expressions over `leaves`; formulas that may be called stand in `callees` (need index, parameters). */
function expressions(
  leaves: readonly (() => Core)[],
  callees: readonly { readonly at: number; readonly parameters: number }[],
  lists: boolean,
): fc.Arbitrary<Core> {
  return fc.letrec<{ e: Core; c: Core }>((tie) => {
    const [e, c] = [tie("e"), tie("c")];
    const leaf = fc.oneof(
      value.map((v) => lit(v)),
      ...leaves.map((make) => fc.constant(null).map(() => make())),
    );
    const options: fc.Arbitrary<Core>[] = [
      fc.tuple(fc.constantFrom("add", "subtract", "multiply", "divide", "power"), e, e).map(([op, a, b]) => binary(op, a, b)),
      fc.tuple(fc.constantFrom("add", "subtract", "multiply", "divide"), e, e).map(([op, a, b]) => binary(op, a, b)),
      e.map(negate),
      fc.tuple(c, e, e).map(([condition, a, b]) => choose(condition, a, b)),
      fc
        .tuple(fc.constantFrom("sqrt", "cbrt", "abs", "sign", "exp", "ln", "sin", "tan", "atan", "asin", "tanh", "floor", "round"), e)
        .map(([name, a]) => native(name, [a])),
      fc.tuple(fc.constantFrom("min", "max", "mod", "atan2", "hypot", "round"), e, e).map(([name, a, b]) => native(name, [a, b])),
      fc.tuple(fc.constantFrom("min", "max", "hypot"), e, e, e).map(([name, ...args]) => native(name, args)),
      fc.tuple(e, e).map(([nominal, spread]) => node({ op: "scatter", nominal, spread: [spread], form: "limits" })),
      fc.tuple(e, e, fc.constantFrom(0, 1)).map(([a, b, field]) => {
        const made = node({ op: "record", record: "R", names: ["a", "b"], fields: [a, b] }, { type: "record", name: "R", arguments: [] });
        return node({ op: "field", of: made, field, name: "f" });
      }),
      ...callees.map(({ at, parameters }) =>
        fc.array(e, { minLength: parameters, maxLength: parameters }).map((args) => call(need(at, "f"), "f", args)),
      ),
    ];
    if (lists) {
      options.push(
        fc
          .tuple(fc.array(e, { minLength: 1, maxLength: 3 }), fc.constantFrom("sum", "mean", "max", "count", "deviation", "last"))
          .map(([items, name]) => native(name, [list(...items)])),
        fc
          .tuple(fc.array(e, { maxLength: 3 }), e)
          .map(([items, index]) => node({ op: "index", of: node({ op: "list", items }, listOf(number)), index })),
        fc.tuple(fc.array(e, { minLength: 1, maxLength: 3 }), e).map(([items, start]) => {
          const body = binary("subtract", local(20, "s"), binary("multiply", local(21, "p"), lit(0.5)));
          return node({ op: "accumulate", start, state: 20, source: list(...items), slot: 21, body });
        }),
        fc.tuple(e, e, e).map(([from, to, by]) => native("length", [node({ op: "range", from, to, step: by }, listOf(number))])),
      );
    }
    return {
      e: fc.oneof({ maxDepth: 5, depthIdentifier: "core", withCrossShrink: true }, leaf, ...options),
      c: fc.oneof(
        { maxDepth: 5, depthIdentifier: "core" },
        fc.boolean().map((v) => lit(v)),
        fc.tuple(e, fc.constantFrom("<", "<=", ">", ">=", "==", "!="), e).map(([a, op, b]) => compare(a, op, b)),
        fc.tuple(fc.constantFrom("and", "or"), c, c).map(([op, left, right]) => node({ op, left, right }, truth)),
        c.map((of) => node({ op: "not", of }, truth)),
      ),
    };
  }).e;
}

const condition = (leaves: readonly (() => Core)[]): fc.Arbitrary<Core> =>
  fc
    .tuple(expressions(leaves, [], false), fc.constantFrom("<", ">", "!="), expressions(leaves, [], false))
    .map(([a, op, b]) => compare(a, op, b));

/** f(p0, p1) with a step, perhaps a requirement and a limit of validity, that may call one before it. */
function formulas(needs: readonly string[]): fc.Arbitrary<CoreFormula> {
  const parameters = [(): Core => local(0, "p0"), (): Core => local(1, "p1")];
  const callees = needs.map((_, at) => ({ at, parameters: 2 }));
  const withStep = [...parameters, (): Core => local(2, "s")];
  return fc
    .tuple(
      expressions(parameters, callees, false),
      fc.option(condition(withStep), { freq: 4 }),
      fc.option(condition(withStep)),
      expressions(withStep, callees, false),
    )
    .map(([first, needed, limit, last]) => {
      const steps: CoreStep[] = [step("s", 2, first)];
      if (needed !== null) steps.push(require_(needed, "as needed"));
      if (limit !== null) steps.push(valid(limit, "as tested"));
      return formula({ name: "f", needs, parameters: ["p0", "p1"], steps: [...steps, result(last)], slots: 24 });
    });
}

interface Program {
  readonly formulas: readonly CoreFormula[];
  readonly units: readonly CoreUnit[];
  readonly inputs: readonly number[];
}

const names = ["x", "y", "z"];

function programs(lists: boolean): fc.Arbitrary<Program> {
  const inputs = fc.tuple(value, value, value);
  const made = fc.tuple(formulas([]), formulas(["f0"]));
  const units = [0, 1, 2].map((count) => {
    const known = [...names, ...Array.from({ length: count }, (_, i) => `u${i}`)];
    const needs = [...known, "f0", "f1"];
    const leaves = known.map((name, i) => (): Core => need(i, name));
    const callees = [
      { at: known.length, parameters: 2 },
      { at: known.length + 1, parameters: 2 },
    ];
    return expressions(leaves, callees, lists).map((body) => unit(needs, body, 24));
  });
  return fc.tuple(made, fc.tuple(...units), inputs).map(([formulas, units, inputs]) => ({ formulas, units, inputs }));
}

const k = context();

function bind({ formulas }: Program): readonly [FormulaValue, FormulaValue] {
  const f0 = prepareFormula(formulas[0] as CoreFormula, k)([]);
  return [f0, prepareFormula(formulas[1] as CoreFormula, k)([f0])];
}

describe("agreement", () => {
  test("closures and the walk: same bits, same fault or none", { timeout: 60_000 }, () => {
    const seen = { values: 0, faults: 0 };
    fc.assert(
      fc.property(programs(true), (program) => {
        const [f0, f1] = bind(program);
        const values: Value[] = [...program.inputs];
        for (const one of program.units) {
          const outcome = evaluate(one, [...values, f0, f1], k);
          seen[outcome.ok ? "values" : "faults"] += 1;
          if (outcome.ok && typeof outcome.value === "number") expect(Number.isFinite(outcome.value)).toBe(true);
          values.push(outcome.ok ? outcome.value : 1);
        }
      }),
      { numRuns: 600 },
    );
    // Both ways are walked often enough to mean something.
    expect(seen.values).toBeGreaterThan(200);
    expect(seen.faults).toBeGreaterThan(100);
  });

  test("closures and the register program: same bits, and a fault is noticed whenever there is one", { timeout: 60_000 }, () => {
    const seen = { values: 0, faults: 0 };
    fc.assert(
      fc.property(programs(false), fc.array(fc.tuple(value, value, value), { minLength: 1, maxLength: 3 }), (program, more) => {
        const [f0, f1] = bind(program);
        const chain = {
          units: program.units.map((one, i) => ({ name: `u${i}`, unit: one })),
          inputs: names,
          given: new Map([
            ["f0", f0],
            ["f1", f1],
          ]),
        };
        const scalar = prepareScalar(chain, k);
        if (scalar === undefined) throw new Error("a chain of plain numbers has no register program");
        const runs = program.units.map((one) => prepareUnit(one, k));
        for (const inputs of [program.inputs, ...more]) {
          const expected: number[] = [];
          let fine = true;
          for (const run of runs) {
            const outcome = run([...inputs, ...expected, f0, f1]);
            fine &&= outcome.ok;
            if (!outcome.ok) break;
            expected.push(outcome.value as number);
          }
          const outputs = new Float64Array(3);
          expect(scalar.run(inputs, outputs)).toBe(fine);
          if (fine) expect([...outputs].every((output, i) => Object.is(output, expected[i]))).toBe(true);
          seen[fine ? "values" : "faults"] += 1;
        }
      }),
      { numRuns: 600 },
    );
    expect(seen.values).toBeGreaterThan(100);
    expect(seen.faults).toBeGreaterThan(100);
  });
});
