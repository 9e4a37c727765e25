// engine/graph at size: no recursion, and the cost of a change is what it reaches.

import { expect, it } from "vitest";
import { createGraph } from "../../engine/graph/index.ts";
import { constant, put } from "./helper.ts";

const LENGTH = 100_000;

it("brings a chain of 100,000 nodes up to date without recursion, in either order of definition", () => {
  for (const backwards of [false, true]) {
    const graph = createGraph();
    for (let i = 0; i < LENGTH; i += 1) {
      const n = backwards ? LENGTH - 1 - i : i;
      graph.define(`n${n}`, { needs: n === 0 ? [] : [`n${n - 1}`], compute: ([before]) => ((before as number | undefined) ?? 0) + 1 });
    }
    expect(graph.update().computed.length).toBe(LENGTH);
    expect(graph.value(`n${LENGTH - 1}`)).toBe(LENGTH);
  }
});

it("names a loop of 100,000 nodes and recovers from it", () => {
  const graph = createGraph();
  for (let i = 0; i < LENGTH; i += 1) {
    graph.define(`n${i}`, { needs: [`n${(i + 1) % LENGTH}`], compute: () => 0, loop: (keys) => keys.length });
  }
  graph.update();
  expect(graph.value("n77")).toBe(LENGTH);
  graph.define("n5", constant(1));
  expect(graph.update().computed.length).toBe(LENGTH);
  expect(graph.value("n77")).toBe(0);
});

it("visits only what a change reaches", () => {
  const graph = createGraph();
  for (let i = 0; i < 20_000; i += 1) put(graph, `in${i} = ${i}`, `out${i}: in${i} common`);
  graph.update();
  put(graph, "in777 = 0");
  expect(graph.update().computed).toEqual(["in777", "out777"]);
  put(graph, "common = 1");
  expect(graph.update().computed.length).toBe(20_001);
});

it("bounds the work of naming loops in one big knot", () => {
  const graph = createGraph();
  const keys = Array.from({ length: 1_500 }, (_, i) => `n${i}`);
  for (const key of keys) graph.define(key, { needs: keys, compute: () => 0, loop: (loop) => loop.length });
  graph.update();
  expect(new Set(keys.map(graph.value))).toEqual(new Set([1]));
});
