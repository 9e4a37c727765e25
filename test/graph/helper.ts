// A graph of numbers written as text, and the plain recomputation it must agree with.

import { createGraph, type Graph, type GraphNode } from "../../engine/graph/index.ts";

/** Adds the needs that are numbers, and 1; so every node's value tells how often each source reached it. */
export const total = (values: readonly unknown[]): number =>
  values.reduce<number>((sum, value) => sum + (typeof value === "number" ? value : 0), 1);

export const constant = (value: unknown): GraphNode => ({ needs: [], compute: () => value });

export const adder = (...needs: string[]): GraphNode => ({ needs, compute: total, loop: (keys) => keys.join(" ") });

/** Lines of `key: need need` or `key = number`, brought up to date. */
export function graphOf(...lines: string[]): Graph {
  const graph = createGraph();
  put(graph, ...lines);
  graph.update();
  return graph;
}

export function put(graph: Graph, ...lines: string[]): void {
  for (const line of lines) {
    const [key, right] = line.split(/\s*[:=]\s*/) as [string, string];
    if (line.includes("=")) graph.define(key, constant(Number(right)));
    else graph.define(key, adder(...right.split(" ").filter((need) => need !== "")));
  }
}

export type Model = ReadonlyMap<string, { readonly needs: readonly string[]; readonly compute: (values: readonly unknown[]) => unknown }>;

/** All shortest loops through a key as sets of their possible lengths: the length alone, 0 for no loop. By plain search. */
export function loopLength(model: Model, key: string): number {
  let front = new Set([key]);
  const seen = new Set<string>();
  for (let length = 1; front.size > 0; length += 1) {
    const next = new Set<string>();
    for (const at of front) {
      for (const need of model.get(at)?.needs ?? []) {
        if (need === key) return length;
        if (!seen.has(need)) next.add(need);
        seen.add(need);
      }
    }
    front = next;
  }
  return 0;
}

/** The value of every key outside loops by plain recursion; keys in loops are given. */
export function recomputed(model: Model, inLoop: ReadonlyMap<string, unknown>): Map<string, unknown> {
  const values = new Map<string, unknown>(inLoop);
  const compute = (key: string): unknown => {
    if (values.has(key)) return values.get(key);
    const node = model.get(key);
    const value = node?.compute(node.needs.map(compute));
    values.set(key, value);
    return value;
  };
  for (const key of model.keys()) compute(key);
  return values;
}
