// How many faults, checks, failing and open checks a file has, kept up line by line.

import type { LineOutput, Snapshot } from "./snapshot.ts";

export interface Tally {
  readonly set: (line: LineOutput) => void;
  readonly drop: (id: string) => void;
  readonly counts: () => Snapshot["counts"];
  readonly ids: () => readonly string[];
}

interface LineState {
  readonly faults: number;
  readonly check: "holds" | "fails" | "nominal" | "open" | undefined;
}

export function createTally(): Tally {
  const states = new Map<string, LineState>();
  const totals = { faults: 0, failing: 0, checks: 0, open: 0 };

  const add = ({ faults, check }: LineState, times: 1 | -1): void => {
    totals.faults += times * faults;
    if (check === undefined) return;
    totals.checks += times;
    if (check === "fails") totals.failing += times;
    if (check === "open") totals.open += times;
  };
  const drop = (id: string): void => {
    const old = states.get(id);
    if (old === undefined) return;
    add(old, -1);
    states.delete(id);
  };

  return {
    drop,
    set: (line) => {
      drop(line.id);
      const state: LineState = { faults: line.diagnostics.filter((each) => each.severity === "fault").length, check: line.check?.state };
      states.set(line.id, state);
      add(state, 1);
    },
    counts: () => ({ ...totals }),
    ids: () => [...states.keys()],
  };
}
