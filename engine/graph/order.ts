// What a change reaches, and in which order to visit it: dependencies first, loops as one group.

import type { Slot } from "./slot.ts";

/** Marks of a walk. Positive marks are the order of discovery in `groupsInOrder`. */
const OUTSIDE = 0;
const REACHED = -1;
const DONE = -2;

/** All slots that hang on one of `seeds`, the seeds with them. Each is left marked as reached. */
export function reach(seeds: Iterable<Slot>): Slot[] {
  const reached: Slot[] = [];
  for (const seed of seeds) {
    if (seed.mark !== OUTSIDE) continue;
    seed.mark = REACHED;
    reached.push(seed);
  }
  for (let i = 0; i < reached.length; i += 1) {
    for (const dependant of (reached[i] as Slot).dependants ?? []) {
      if (dependant.mark !== OUTSIDE) continue;
      dependant.mark = REACHED;
      reached.push(dependant);
    }
  }
  return reached;
}

/**
 * The strongly connected components among slots marked as reached, dependencies before dependants (Tarjan, "Depth-first
 * search and linear graph algorithms", 1972, with its own stack so that a long chain cannot overflow ours).
 * Every slot is left unmarked.
 */
export function groupsInOrder(reached: readonly Slot[]): Slot[][] {
  const groups: Slot[][] = [];
  const open: Slot[] = [];
  const path: Slot[] = [];
  /** For each slot on the path: which of its needs comes next. */
  const next: number[] = [];
  let count = 0;

  const enter = (slot: Slot): void => {
    count += 1;
    slot.mark = count;
    slot.low = count;
    open.push(slot);
    path.push(slot);
    next.push(0);
  };

  for (const root of reached) {
    if (root.mark !== REACHED) continue;
    enter(root);
    while (path.length > 0) {
      const slot = path[path.length - 1] as Slot;
      const at = next[next.length - 1] as number;
      const need = slot.needs[at];
      if (need !== undefined) {
        next[next.length - 1] = at + 1;
        if (need.mark === REACHED) enter(need);
        else if (need.mark > 0) slot.low = Math.min(slot.low, need.mark);
        continue;
      }
      path.pop();
      next.pop();
      const parent = path[path.length - 1];
      if (parent !== undefined) parent.low = Math.min(parent.low, slot.low);
      if (slot.low !== slot.mark) continue;
      const group = open.splice(open.lastIndexOf(slot));
      for (const member of group) member.mark = DONE;
      groups.push(group);
    }
  }
  for (const slot of reached) slot.mark = OUTSIDE;
  return groups;
}
