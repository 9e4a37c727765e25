// The door of engine/graph: values that hang on each other, re-run only where a change reaches. It knows no quantity, text or type.

export { createGraph, type Graph, type GraphOptions, type Update } from "./graph.ts";
export type { GraphNode } from "./slot.ts";
