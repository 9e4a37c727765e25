// Closures for arithmetic and comparison, specialised on operands that are a cell or a constant: the hot path.

import type { Core } from "../check/index.ts";
import { holds } from "./equality.ts";
import { power } from "./kernels.ts";
import { cellOf, checked, mayBeUnfinite, type Run, type RunNumber, type Scope } from "./program.ts";
import { suspect } from "./state.ts";

type Binary = Extract<Core, { readonly op: "add" | "subtract" | "multiply" | "divide" | "power" }>;
type Compile = (core: Core, scope: Scope) => Run;

const constantOf = (core: Core): number | undefined =>
  core.op === "constant" && typeof core.value === "number" && Number.isFinite(core.value) ? core.value : undefined;

export function compileBinary(core: Binary, scope: Scope, compile: Compile): RunNumber {
  if (core.op === "power") return compilePower(core, scope, compile);
  const a = cellOf(core.left, scope);
  const b = cellOf(core.right, scope);
  const k = constantOf(core.left);
  const m = constantOf(core.right);
  // A cell or a constant needs no closure of its own; `left` and `right` are made only where they are called.
  const left = (): RunNumber => compile(core.left, scope) as RunNumber;
  const right = (): RunNumber => compile(core.right, scope) as RunNumber;
  switch (core.op) {
    case "add":
      return add(a, b, k, m, left, right);
    case "subtract":
      return subtract(a, b, k, m, left, right);
    case "multiply":
      return multiply(a, b, k, m, left, right);
    case "divide":
      return divide(a, b, k, m, left, () => checked(core.right, compile(core.right, scope)) as RunNumber);
  }
}

type Make = (
  a: number,
  b: number,
  k: number | undefined,
  m: number | undefined,
  left: () => RunNumber,
  right: () => RunNumber,
) => RunNumber;

const add: Make = (a, b, k, m, left, right) => {
  if (a >= 0 && b >= 0) return (c) => (c[a] as number) + (c[b] as number);
  if (a >= 0 && m !== undefined) return (c) => (c[a] as number) + m;
  if (k !== undefined && b >= 0) return (c) => k + (c[b] as number);
  const l = left();
  if (b >= 0) return (c, s) => l(c, s) + (c[b] as number);
  if (m !== undefined) return (c, s) => l(c, s) + m;
  const r = right();
  if (a >= 0) return (c, s) => (c[a] as number) + r(c, s);
  if (k !== undefined) return (c, s) => k + r(c, s);
  return (c, s) => l(c, s) + r(c, s);
};

const subtract: Make = (a, b, k, m, left, right) => {
  if (a >= 0 && b >= 0) return (c) => (c[a] as number) - (c[b] as number);
  if (a >= 0 && m !== undefined) return (c) => (c[a] as number) - m;
  if (k !== undefined && b >= 0) return (c) => k - (c[b] as number);
  const l = left();
  if (b >= 0) return (c, s) => l(c, s) - (c[b] as number);
  if (m !== undefined) return (c, s) => l(c, s) - m;
  const r = right();
  if (a >= 0) return (c, s) => (c[a] as number) - r(c, s);
  if (k !== undefined) return (c, s) => k - r(c, s);
  return (c, s) => l(c, s) - r(c, s);
};

const multiply: Make = (a, b, k, m, left, right) => {
  if (a >= 0 && b >= 0) return (c) => (c[a] as number) * (c[b] as number);
  if (a >= 0 && m !== undefined) return (c) => (c[a] as number) * m;
  if (k !== undefined && b >= 0) return (c) => k * (c[b] as number);
  const l = left();
  if (b >= 0) return (c, s) => l(c, s) * (c[b] as number);
  if (m !== undefined) return (c, s) => l(c, s) * m;
  const r = right();
  if (a >= 0) return (c, s) => (c[a] as number) * r(c, s);
  if (k !== undefined) return (c, s) => k * r(c, s);
  return (c, s) => l(c, s) * r(c, s);
};

/** A zero divisor gives an infinity or NaN, which is looked at where the chain ends; the divisor itself is looked at here. */
const divide: Make = (a, b, k, m, left, right) => {
  if (a >= 0 && b >= 0) return (c) => (c[a] as number) / (c[b] as number);
  if (a >= 0 && m !== undefined) return (c) => (c[a] as number) / m;
  if (k !== undefined && b >= 0) return (c) => k / (c[b] as number);
  const l = left();
  if (b >= 0) return (c, s) => l(c, s) / (c[b] as number);
  if (m !== undefined) return (c, s) => l(c, s) / m;
  const r = right();
  if (a >= 0) return (c, s) => (c[a] as number) / r(c, s);
  if (k !== undefined) return (c, s) => k / r(c, s);
  return (c, s) => l(c, s) / r(c, s);
};

function compilePower(core: Binary, scope: Scope, compile: Compile): RunNumber {
  const base = checked(core.left, compile(core.left, scope)) as RunNumber;
  const m = constantOf(core.right);
  if (m === 2) {
    return (c, s) => {
      const x = base(c, s);
      return x * x;
    };
  }
  if (m !== undefined) return (c, s) => power(base(c, s), m);
  const exponent = checked(core.right, compile(core.right, scope)) as RunNumber;
  return (c, s) => power(base(c, s), exponent(c, s));
}

/** A comparison swallows a NaN, so operands are looked at. */
export function compileNumericCompare(core: Extract<Core, { readonly op: "compare" }>, scope: Scope, compile: Compile): Run {
  const runs = core.operands.map((operand) => compile(operand, scope) as RunNumber);
  const watch = core.operands.some(mayBeUnfinite);
  const operators = core.operators;
  if (runs.length === 2) {
    const [left, right] = runs as [RunNumber, RunNumber];
    const operator = operators[0] as (typeof operators)[number];
    return (c, s) => {
      const a = left(c, s);
      const b = right(c, s);
      if (watch && (a - a !== 0 || b - b !== 0)) throw suspect;
      return holds(operator, a, b);
    };
  }
  return (c, s) => {
    let before = (runs[0] as RunNumber)(c, s);
    let all = true;
    if (before - before !== 0) throw suspect;
    for (let i = 1; i < runs.length; i += 1) {
      const here = (runs[i] as RunNumber)(c, s);
      if (here - here !== 0) throw suspect;
      all = holds(operators[i - 1] as (typeof operators)[number], before, here) && all;
      before = here;
    }
    return all;
  };
}
