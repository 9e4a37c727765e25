// What travels through the checking of one statement: names, frame slots, what is needed, faults found.

import type { Range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import type { Expression } from "../syntax/index.ts";
import type { Kind, Unit } from "../units/index.ts";
import type { Core } from "./core.ts";
import { createSolver, type Solver } from "./dimensions.ts";
import type { Found, Scope } from "./scope.ts";
import type { Type } from "./types.ts";

/** A bound variable, parameter or step. */
export interface Local {
  readonly slot: number;
  readonly type: Type;
}

/** The columns that `.name` means, and the slots their cells (or lists, in a group) go into. */
export interface ColumnScope {
  readonly names: readonly string[];
  readonly types: readonly Type[];
  readonly slots: readonly number[];
}

export type Infer = (expression: Expression, context: Context, expected?: Type) => Core;

export interface Context {
  readonly scope: Scope;
  /** Checks a sub-expression: `infer` of infer.ts, handed down so that the families of forms need not import each other. */
  readonly infer: Infer;
  readonly solver: Solver;
  /** Innermost last; a chain of small maps so that a scope ends by dropping it. */
  readonly locals: ReadonlyMap<string, Local>;
  readonly columns?: ColumnScope;
  /** Inside a formula or an example, inputs are out of sight. */
  readonly closed: "formula" | "example" | "open";
  readonly shared: {
    slots: number;
    readonly needs: Map<string, number>;
    /** Kinds as which this statement uses names whose value has none: by key. */
    readonly kindUses: Map<string, Kind>;
    readonly diagnostics: Diagnostic[];
    /** Nodes whose types may still hold variables. */
    readonly nodes: Core[];
    /** Set when something the statement uses is itself closed or not. */
    open: boolean;
  };
}

export function createContext(scope: Scope, closed: Context["closed"], infer: Infer): Context {
  return {
    scope,
    infer,
    solver: createSolver(),
    locals: new Map(),
    closed,
    shared: { slots: 0, needs: new Map(), kindUses: new Map(), diagnostics: [], nodes: [], open: false },
  };
}

export function bind(context: Context, name: string, type: Type): { readonly context: Context; readonly slot: number } {
  const slot = newSlot(context);
  const locals = new Map(context.locals);
  locals.set(name, { slot, type });
  return { context: { ...context, locals }, slot };
}

export function newSlot(context: Context): number {
  const slot = context.shared.slots;
  context.shared.slots += 1;
  return slot;
}

export const report = (context: Context, diagnostic: Diagnostic): void => {
  context.shared.diagnostics.push(diagnostic);
};

/** Adds a node; its type is brought up to date at the end (`finish`). */
export function node<N extends Core>(context: Context, made: N): N {
  if (mayHoldVariables(made.type)) context.shared.nodes.push(made);
  return made;
}

/** A node that holds dimensions beside its type. */
export function openNode<N extends Core>(context: Context, made: N): N {
  context.shared.nodes.push(made);
  return made;
}

function mayHoldVariables(type: Type): boolean {
  switch (type.type) {
    case "quantity":
      return type.dimension.exponents.some(([base]) => base.charCodeAt(0) === 63);
    case "list":
    case "maybe":
      return mayHoldVariables(type.of);
    case "record":
      return type.arguments.length > 0;
    case "table":
      return true;
    default:
      return false;
  }
}

/** Puts the solved dimensions into every node made. */
export function finish(context: Context): void {
  for (const made of context.shared.nodes) {
    (made as { type: Type }).type = context.solver.resolveType(made.type);
    if (made.op === "native") refuseOpenAxes(context, made);
    if (made.op !== "call" || made.dimensions === undefined) continue;
    const resolved = made.dimensions.map(([variable, meaning]) => [variable, context.solver.resolve(meaning)] as const);
    Object.assign(made, { dimensions: resolved });
  }
}

/** A figure has units on its axes, so what they measure must be known where it is made. */
function refuseOpenAxes(context: Context, made: Extract<Core, { readonly op: "native" }>): void {
  if (made.type.type !== "figure") return;
  const open = made.arguments.find(({ type }) => mayHoldVariables(context.solver.resolveType(type)));
  if (open !== undefined) report(context, faults.axisOfNoUnit(open.range, { figure: made.name }));
}

export const unknown: Type = { type: "unknown" };

/** What stands where a fault was found: nothing more is said about it. */
export function faulty(context: Context, at: Range, diagnostic?: Diagnostic): Core {
  if (diagnostic !== undefined) report(context, diagnostic);
  return { op: "constant", value: null, literal: false, range: at, type: unknown };
}

export function constant(at: Range, type: Type, value: string | number | boolean | null, unit?: Unit): Core {
  return { op: "constant", value, literal: true, range: at, type, ...(unit === undefined ? {} : { unit }) };
}

/** Notes that a name without a kind (a product of dimensions) is used as one of a kind: it must be the same everywhere. */
export function useAs(context: Context, core: Core, type: Type): void {
  if (core.op !== "global" || core.type.type !== "quantity" || core.type.kind !== "any") return;
  if (type.type !== "quantity" || type.kind === "any") return;
  const key = [...context.shared.needs.keys()][core.index];
  if (key !== undefined && !context.shared.kindUses.has(key)) context.shared.kindUses.set(key, type.kind);
}

/** The number of a need in this statement. */
export function need(context: Context, key: string): number {
  const known = context.shared.needs.get(key);
  if (known !== undefined) return known;
  const index = context.shared.needs.size;
  context.shared.needs.set(key, index);
  return index;
}

/** A value, formula or constant found by name, as a node; refuses inputs where the body is closed. */
export function globalNode(context: Context, found: Found, name: string, at: Range, type: Type): Core {
  if (found.entry.entry === "value" && !found.entry.closed) {
    if (context.closed === "formula") return faulty(context, at, faults.notClosed(at, { name }));
    if (context.closed === "example") return faulty(context, at, faults.exampleNotClosed(at, { name }));
    context.shared.open = true;
  }
  return node(context, { op: "global", index: need(context, found.key), name, range: at, type });
}
