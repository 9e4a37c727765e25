// engine/graph: what re-runs, what does not, and what loops read as.

import { describe, expect, it } from "vitest";
import { createGraph, type GraphNode } from "../../engine/graph/index.ts";
import { adder, constant, graphOf, put } from "./helper.ts";

describe("updating", () => {
  it("computes in the order of dependency whatever the order of definition", () => {
    const graph = createGraph();
    put(graph, "c: b", "b: a", "a = 1");
    expect(graph.update()).toEqual({ computed: ["a", "b", "c"], changed: ["a", "b", "c"] });
    expect(graph.value("c")).toBe(3);
  });

  it("re-runs only what a change reaches", () => {
    const graph = graphOf("a = 1", "b = 2", "a2: a", "b2: b", "both: a2 b2");
    put(graph, "a = 5");
    expect(graph.update().computed).toEqual(["a", "a2", "both"]);
    expect(graph.value("both")).toBe(6 + 3 + 1);
  });

  it("stops where a value stays the same", () => {
    const graph = createGraph();
    graph.define("a", constant(3));
    graph.define("sign", { needs: ["a"], compute: ([a]) => Math.sign(a as number) });
    graph.define("last", adder("sign"));
    graph.update();
    graph.define("a", constant(7));
    expect(graph.update()).toEqual({ computed: ["a", "sign"], changed: ["a"] });
  });

  it("computes a node once although two ways lead to it", () => {
    const graph = graphOf("a = 1", "left: a", "right: a", "end: left right");
    put(graph, "a = 2");
    expect(graph.update().computed.filter((key) => key === "end")).toEqual(["end"]);
  });

  it("asks `equal` whether a new value differs", () => {
    const graph = createGraph();
    const listOf = (value: number): GraphNode => ({ needs: [], compute: () => [value], equal: (a, b) => String(a) === String(b) });
    graph.define("a", listOf(1));
    graph.define("b", { needs: ["a"], compute: ([a]) => a });
    graph.update();
    const before = graph.value("b");
    graph.define("a", listOf(1));
    expect(graph.update()).toEqual({ computed: ["a"], changed: [] });
    expect(graph.value("a")).toBe(before);
    graph.define("a", listOf(2));
    expect(graph.update()).toEqual({ computed: ["a", "b"], changed: ["a", "b"] });
  });

  it("never asks `equal` about a value that was not computed", () => {
    const graph = createGraph();
    const asked: unknown[] = [];
    const node: GraphNode = { needs: [], compute: () => undefined, equal: (old) => asked.push(old) > 0 };
    graph.define("a", node);
    expect(graph.update().changed).toEqual(["a"]);
    expect(asked).toEqual([]);
  });

  it("tells NaN from other numbers and minus zero from zero, as bits do", () => {
    const graph = graphOf("b: a");
    graph.define("a", constant(Number.NaN));
    graph.update();
    graph.define("a", constant(Number.NaN));
    expect(graph.update().changed).toEqual([]);
    graph.define("a", constant(0));
    graph.update();
    graph.define("a", constant(-0));
    expect(graph.update().changed).toEqual(["a"]);
  });

  it("does nothing when nothing was changed", () => {
    expect(graphOf("a = 1", "b: a").update()).toEqual({ computed: [], changed: [] });
  });

  it("gives a need named twice in both its places", () => {
    const graph = createGraph();
    graph.define("a", constant("x"));
    graph.define("b", { needs: ["a", "a", "c"], compute: (values) => values });
    graph.update();
    expect(graph.value("b")).toEqual(["x", "x", undefined]);
    expect(graph.dependants("a")).toEqual(["b"]);
    graph.define("b", { needs: ["c"], compute: (values) => values });
    expect(graph.dependants("a")).toEqual([]);
  });
});

describe("keys that are not defined", () => {
  it("are undefined to what needs them, which re-runs once they are defined", () => {
    const graph = graphOf("b: a");
    expect([graph.value("a"), graph.has("a"), graph.value("b")]).toEqual([undefined, false, 1]);
    put(graph, "a = 4");
    expect(graph.update().computed).toEqual(["a", "b"]);
    expect(graph.value("b")).toBe(5);
  });

  it("come back when a node is taken out", () => {
    const graph = graphOf("a = 4", "b: a", "c: b");
    graph.remove("a");
    expect(graph.update()).toEqual({ computed: ["b", "c"], changed: ["a", "b", "c"] });
    expect([graph.value("a"), graph.value("b"), graph.value("c"), graph.size]).toEqual([undefined, 1, 2, 2]);
  });

  it("do not re-run dependants when taken out and put back alike before the update", () => {
    const graph = graphOf("a = 4", "b: a");
    graph.remove("a");
    put(graph, "a = 4");
    expect(graph.update()).toEqual({ computed: ["a"], changed: [] });
  });

  it("leave nothing behind when the last that needs them goes", () => {
    const graph = graphOf("b: a");
    graph.remove("b");
    graph.update();
    expect([graph.dependants("a"), graph.needs("b"), graph.size]).toEqual([[], [], 0]);
    graph.remove("never");
    expect(graph.update()).toEqual({ computed: [], changed: [] });
  });
});

describe("needs and dependants", () => {
  it("follow a redefinition", () => {
    const graph = graphOf("a = 1", "b = 2", "c: a");
    put(graph, "c: b");
    expect([graph.needs("c"), graph.dependants("a"), graph.dependants("b")]).toEqual([["b"], [], ["c"]]);
    graph.update();
    put(graph, "a = 9");
    expect(graph.update().computed).toEqual(["a"]);
  });
});

describe("loops", () => {
  it("are named from the alphabetically first, each key needing the next", () => {
    const graph = graphOf("b: c", "c: a", "a: b");
    expect(["a", "b", "c"].map(graph.value)).toEqual(["a b c", "a b c", "a b c"]);
    expect(graph.loopOf("c")).toEqual(["a", "b", "c"]);
  });

  it("of one node are found", () => {
    expect(graphOf("a: a").value("a")).toBe("a");
  });

  it("name for each node a shortest one through it", () => {
    const graph = graphOf("a: b", "b: a c", "c: d", "d: b");
    expect(["a", "b", "c", "d"].map(graph.value)).toEqual(["a b", "a b", "b c d", "b c d"]);
  });

  it("leave what only depends on them computing with their values", () => {
    const graph = graphOf("a: b", "b: a");
    graph.define("after", { needs: ["a"], compute: ([a]) => `waits for ${a}` });
    graph.update();
    expect([graph.value("after"), graph.loopOf("after")]).toEqual(["waits for a b", undefined]);
  });

  it("recover all when broken by a redefinition", () => {
    const graph = graphOf("a: b", "b: c", "c: a", "end: c");
    put(graph, "b = 1");
    expect(graph.update().computed).toEqual(["b", "a", "c", "end"]);
    expect(["a", "b", "c", "end"].map(graph.value)).toEqual([2, 1, 3, 4]);
    expect(graph.loopOf("a")).toBeUndefined();
  });

  it("recover all when one of its nodes is taken out", () => {
    const graph = graphOf("a: b", "b: a");
    graph.remove("b");
    expect(graph.update()).toEqual({ computed: ["a"], changed: ["b", "a"] });
    expect(graph.value("a")).toBe(1);
  });

  it("are made by a definition that closes them", () => {
    const graph = graphOf("a: b", "b: c", "c = 1", "other = 2");
    put(graph, "c: a");
    expect([...graph.update().computed].sort()).toEqual(["a", "b", "c"]);
    expect(graph.value("b")).toBe("a b c");
  });

  it("that read as before do not run again", () => {
    const graph = graphOf("a: b x", "b: a", "x = 1");
    put(graph, "x = 2");
    expect(graph.update()).toEqual({ computed: ["x"], changed: ["x"] });
  });

  it("shorten where a shorter way appears", () => {
    const graph = graphOf("a: b", "b: c", "c: a");
    put(graph, "b: c a");
    graph.update();
    expect(["a", "b", "c"].map(graph.value)).toEqual(["a b", "a b", "a b c"]);
  });

  it("give undefined to a node that does not say what it is in a loop", () => {
    const graph = createGraph();
    graph.define("a", { needs: ["a"], compute: () => 1 });
    graph.update();
    expect(graph.value("a")).toBeUndefined();
  });
});

describe("what throws", () => {
  it("becomes a value, and the rest goes on", () => {
    const graph = graphOf("a = 1");
    const error = new Error("observed");
    graph.define("bad", {
      needs: ["a"],
      compute: () => {
        throw error;
      },
    });
    graph.define("after", { needs: ["bad"], compute: ([bad]) => bad });
    graph.update();
    expect(graph.value("after")).toEqual({ thrown: error });
  });

  it("is turned by `onThrow` when given, with its key", () => {
    const graph = createGraph({ onThrow: (error, key) => `${key}: ${(error as Error).message}` });
    graph.define("bad", {
      needs: [],
      compute: () => {
        throw new Error("observed");
      },
    });
    graph.update();
    expect(graph.value("bad")).toBe("bad: observed");
  });

  it("is our mistake when a node changes the graph while it runs", () => {
    const graph = createGraph();
    graph.define("a", { needs: [], compute: () => graph.define("b", constant(1)) });
    graph.update();
    expect(String((graph.value("a") as { thrown: Error }).thrown)).toContain("during an update");
    put(graph, "a = 1");
    expect(graph.update().computed).toEqual(["a"]);
  });
});
