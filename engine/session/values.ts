// The graph of values and marks: two nodes a name, each cut off on its own. Built from what checking gave.

import type { CoreFormula, CoreUnit } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { createGraph, type Graph } from "../graph/index.ts";
import {
  inputMarks,
  joinMark,
  type Marked,
  type Marks,
  markFormula,
  type Provenance,
  prepareFormula,
  prepareUnit,
  type RunContext,
  sameMarks,
  sameValue,
  unmarked,
  type Value,
  walkUnit,
  wholeMark,
} from "../run/index.ts";

/** What a value node holds. `waits`: names of what has no value yet. */
export type Worth =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault?: Diagnostic; readonly waits: readonly string[] };

export interface Values {
  readonly graph: Graph;
  readonly context: RunContext;
  /** `parts`: provenances of the fields of an input record that have a reference of their own, by the place of the field. */
  readonly defineUnit: (
    key: string,
    unit: CoreUnit,
    provenance: Provenance | undefined,
    parts?: readonly (Provenance | undefined)[],
  ) => void;
  readonly defineFormula: (key: string, formula: CoreFormula) => void;
  readonly defineConstant: (key: string, value: Value, provenance: Provenance) => void;
  /** A name for another node's value. */
  readonly defineAlias: (key: string, of: string) => void;
  readonly remove: (key: string) => void;
  readonly worth: (key: string) => Worth | undefined;
  readonly marks: (key: string) => Marks;
}

const MARKS = "marks:";
export const marksKey = (key: string): string => `${MARKS}${key}`;
/** The name whose marks a node holds; undefined for a value node. */
export const keyOfMarks = (key: string): string | undefined => (key.startsWith(MARKS) ? key.slice(MARKS.length) : undefined);

function sameWorth(a: unknown, b: unknown): boolean {
  const [old, now] = [a as Worth | undefined, b as Worth | undefined];
  if (old === undefined || now === undefined) return old === now;
  if (old.ok && now.ok) return sameValue(old.value, now.value);
  if (old.ok || now.ok) return false;
  const [one, two] = [old.fault, now.fault];
  if (old.waits.join() !== now.waits.join()) return false;
  if (one === undefined || two === undefined) return one === two;
  return one.code === two.code && one.message === two.message && one.range.from === two.range.from && one.range.to === two.range.to;
}

/** The names of needs that have no value. */
function waiting(needs: readonly string[], worths: readonly unknown[]): readonly string[] {
  return needs.filter((_, i) => (worths[i] as Worth | undefined)?.ok !== true);
}

export function createValues(context: RunContext): Values {
  const graph = createGraph({
    onThrow: (error): Worth => {
      const observed = error instanceof Error ? error.message : String(error);
      return { ok: false, fault: faults.internal({ from: 0, to: 0 }, { observed }), waits: [] };
    },
  });
  const inLoop = (): Worth => ({ ok: false, waits: [] });

  const define = (
    key: string,
    needs: readonly string[],
    worth: (values: readonly Value[]) => Worth,
    marks: (needs: readonly Marked[], own: Value) => Marks,
  ): void => {
    graph.define(key, {
      needs,
      equal: sameWorth,
      loop: inLoop,
      compute: (worths) => {
        const waits = waiting(needs, worths);
        return waits.length > 0 ? { ok: false, waits } : worth(worths.map((each) => (each as { readonly value: Value }).value));
      },
    });
    graph.define(marksKey(key), {
      needs: [key, ...needs, ...needs.map(marksKey)],
      equal: (a, b) => sameMarks(a as Marks, b as Marks),
      loop: () => unmarked,
      compute: ([own, ...rest]) => {
        const mine = own as Worth | undefined;
        if (mine?.ok !== true) return unmarked;
        const marked = needs.map(
          (_, i): Marked => ({
            value: (rest[i] as { readonly value: Value }).value,
            marks: (rest[needs.length + i] as Marks | undefined) ?? unmarked,
          }),
        );
        return marks(marked, mine.value);
      },
    });
  };

  return {
    graph,
    context,
    defineUnit: (key, unit, provenance, parts) => {
      const run = prepareUnit(unit, context);
      define(
        key,
        unit.needs,
        (values) => {
          const outcome = run(values);
          return outcome.ok ? outcome : { ok: false, fault: outcome.fault, waits: [] };
        },
        (needs, own) => {
          const outcome = walkUnit(unit, needs, context);
          const marks = outcome.ok ? outcome.marked.marks : unmarked;
          if (provenance === undefined) return marks;
          const mark = inputMarks(own, provenance, parts);
          return wholeMark(marks).nominalOnly ? joinMark(wholeMark(mark), wholeMark(marks)) : mark;
        },
      );
    },
    defineFormula: (key, formula) => {
      const bind = prepareFormula(formula, context);
      define(
        key,
        formula.needs,
        (values) => ({ ok: true, value: bind(values) }),
        (needs, own) =>
          markFormula(
            own,
            needs.map((need) => need.marks),
          ).marks,
      );
    },
    defineConstant: (key, value, provenance) =>
      define(
        key,
        [],
        () => ({ ok: true, value }),
        () => inputMarks(value, provenance),
      ),
    defineAlias: (key, of) =>
      define(
        key,
        [of],
        ([value]) => ({ ok: true, value: value ?? null }),
        ([need]) => need?.marks ?? unmarked,
      ),
    remove: (key) => {
      graph.remove(key);
      graph.remove(marksKey(key));
    },
    worth: (key) => graph.value(key) as Worth | undefined,
    marks: (key) => (graph.value(marksKey(key)) as Marks | undefined) ?? unmarked,
  };
}
