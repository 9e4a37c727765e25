// engine/graph against plain recomputation, on random graphs, edits and loops.

import fc from "fast-check";
import { expect, it } from "vitest";
import { createGraph, type GraphNode } from "../../engine/graph/index.ts";
import { loopLength, recomputed } from "./helper.ts";

const KEYS = ["a", "b", "c", "d", "e", "f", "g", "h"];
const key = fc.constantFrom(...KEYS);
const edit = fc.record({
  key,
  /** Absent: the node is taken out. */
  node: fc.option(fc.record({ needs: fc.array(key, { maxLength: 3 }), plus: fc.integer({ min: 0, max: 3 }) }), { freq: 4 }),
  /** Whether an update follows. */
  update: fc.boolean(),
});

function watched(name: string, needs: readonly string[], plus: number, ran: string[]): GraphNode {
  return {
    needs,
    compute: (values) => {
      ran.push(name);
      // Values are folded into a small range so that early cut-off really happens.
      return values.reduce<number>((sum, value) => sum + (typeof value === "number" ? value : 2), plus) % 5;
    },
    loop: (keys) => {
      ran.push(name);
      return keys.join(" ");
    },
  };
}

it("agrees with plain recomputation, runs each node at most once, and none without cause", () => {
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 30 }), (edits) => {
      const ran: string[] = [];
      const graph = createGraph();
      const model = new Map<string, GraphNode>();
      let redefined = new Set<string>();
      let before = new Map<string, unknown>();
      let loopsBefore = new Map<string, string>();

      const verify = (): void => {
        ran.length = 0;
        const update = graph.update();
        const reran = new Set(ran);
        expect([...update.computed]).toEqual(ran);
        expect(reran.size).toBe(ran.length);

        const loops = new Map<string, unknown>();
        for (const name of model.keys()) {
          const length = loopLength(model, name);
          const loop = graph.loopOf(name);
          expect(loop?.length ?? 0).toBe(length);
          if (loop === undefined) continue;
          expect(loop).toContain(name);
          expect(loop[0]).toBe([...loop].sort()[0]);
          loop.forEach((at, i) => {
            expect(model.get(at)?.needs).toContain(loop[(i + 1) % loop.length]);
          });
          loops.set(name, loop.join(" "));
        }
        const values = recomputed(model, loops);
        for (const name of KEYS) expect(graph.value(name)).toBe(values.get(name));

        const changed = new Set(KEYS.filter((name) => values.get(name) !== before.get(name) || model.has(name) !== before.has(name)));
        for (const name of model.keys()) {
          const needsChanged = model.get(name)?.needs.some((need) => changed.has(need)) === true;
          const looping = loops.has(name) || loopsBefore.has(name);
          const cause = redefined.has(name) || (looping ? loops.get(name) !== loopsBefore.get(name) : needsChanged);
          expect(reran.has(name)).toBe(cause);
        }
        expect(new Set(update.changed)).toEqual(changed);
        before = new Map([...values].filter(([name]) => model.has(name)));
        loopsBefore = new Map([...loops].map(([name, loop]) => [name, String(loop)]));
        redefined = new Set();
      };

      for (const { key: name, node, update } of edits) {
        if (node === null) {
          graph.remove(name);
          model.delete(name);
          redefined.delete(name);
        } else {
          const made = watched(name, node.needs, node.plus, ran);
          graph.define(name, made);
          model.set(name, made);
          redefined.add(name);
        }
        if (update) verify();
      }
      verify();
    }),
    { numRuns: 600 },
  );
});
