// What the graph keeps of one key.

/** How a key's value comes about. */
export interface GraphNode {
  /** Keys whose values `compute` gets, in this order. A key that is not defined has the value undefined. */
  readonly needs: readonly string[];
  readonly compute: (values: readonly unknown[]) => unknown;
  /** Whether a new value is as good as the old one, so that dependants need not run; absent: `Object.is`. */
  readonly equal?: (old: unknown, now: unknown) => boolean;
  /**
   * The value while the node stands in a loop. `keys` is a shortest loop through it: each key needs the next, the last
   * needs the first, and the alphabetically first stands first. Absent: the value is undefined.
   */
  readonly loop?: (keys: readonly string[]) => unknown;
}

/**
 * One key of the graph, defined or only needed. Edges are references in both directions, so a walk costs no look-ups.
 * Invariant: `d` is in `s.dependants` exactly when `s` is in `d.needs`.
 */
export interface Slot {
  readonly key: string;
  /** Absent: the key is needed by others but not defined. */
  node: GraphNode | undefined;
  needs: readonly Slot[];
  /** Without repeats. Absent: empty; a list up to `FEW`, then a set: most nodes feed few, and a set takes some 200 bytes. */
  dependants: Slot[] | Set<Slot> | undefined;
  value: unknown;
  /** A value was computed since the key was last without one; only then is `equal` asked. */
  valued: boolean;
  /** The loop it stood in at the last update, as given to `loop`. */
  cycle: readonly string[] | undefined;
  /** Defined or redefined since the last update: must run whatever its needs say. */
  redefined: boolean;
  /** Waits for the next update as a seed. */
  pending: boolean;
  /** Scratch of one update: its place in the walk (see `order.ts`); 0 outside an update. */
  mark: number;
  low: number;
  changed: boolean;
}

export const newSlot = (key: string): Slot => ({
  key,
  node: undefined,
  needs: [],
  dependants: undefined,
  value: undefined,
  valued: false,
  cycle: undefined,
  redefined: false,
  pending: false,
  mark: 0,
  low: 0,
  changed: false,
});

const FEW = 12;

export function addDependant(slot: Slot, dependant: Slot): void {
  const { dependants } = slot;
  if (dependants === undefined) slot.dependants = [dependant];
  else if (dependants instanceof Set) dependants.add(dependant);
  else if (dependants.includes(dependant)) return;
  else if (dependants.length < FEW) dependants.push(dependant);
  else slot.dependants = new Set(dependants).add(dependant);
}

export function dropDependant(slot: Slot, dependant: Slot): void {
  const { dependants } = slot;
  if (dependants === undefined) return;
  if (dependants instanceof Set) {
    dependants.delete(dependant);
    if (dependants.size === 0) slot.dependants = undefined;
    return;
  }
  const at = dependants.indexOf(dependant);
  if (at !== -1) dependants.splice(at, 1);
  if (dependants.length === 0) slot.dependants = undefined;
}
