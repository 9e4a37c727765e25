// The incremental graph: keys with values that hang on other keys' values, brought up to date after changes.

import { isLoop, shortestLoops } from "./loops.ts";
import { groupsInOrder, reach } from "./order.ts";
import { addDependant, dropDependant, type GraphNode, newSlot, type Slot } from "./slot.ts";

/** What an update did, keys in the order they were visited. */
export interface Update {
  /** Keys whose `compute` or `loop` ran. */
  readonly computed: readonly string[];
  /** Keys whose value is now another, or that gained or lost one. */
  readonly changed: readonly string[];
}

export interface GraphOptions {
  /** The value of a node whose `compute` or `loop` threw; absent: `{ thrown: error }`. */
  readonly onThrow?: (error: unknown, key: string) => unknown;
}

/**
 * Values follow `define` and `remove` only with the next `update`. Neither of the three may be called from inside a node's functions.
 */
export interface Graph {
  /** Puts a node in, or another in its place. It runs at the next update; what hangs on it runs only if its value then differs. */
  define(key: string, node: GraphNode): void;
  /** Takes a node out. Its dependants see undefined; defined again before the next update it counts as redefined. */
  remove(key: string): void;
  /** Brings every value up to date, visiting only what the changes since the last update reach. */
  update(): Update;
  /** The value as of the last update; undefined for a key that is not defined. */
  value(key: string): unknown;
  has(key: string): boolean;
  /** The keys it needs, as defined. */
  needs(key: string): readonly string[];
  /** The keys that need it, in no stated order; also for a key that is not defined. */
  dependants(key: string): readonly string[];
  /** The loop it stands in as of the last update, as `loop` got it; undefined outside a loop. */
  loopOf(key: string): readonly string[] | undefined;
  readonly size: number;
}

/** An empty graph. Cost of one update: what the changed keys reach, nodes and edges; a node runs only if one of its needs changed. */
export function createGraph(options: GraphOptions = {}): Graph {
  const slots = new Map<string, Slot>();
  let pending: Slot[] = [];
  const onThrow = options.onThrow ?? ((error: unknown): unknown => ({ thrown: error }));
  let size = 0;
  let updating = false;

  const refuseInside = (what: string): void => {
    if (updating) throw new Error(`graph: ${what} was called during an update`);
  };

  const slotOf = (key: string): Slot => {
    let slot = slots.get(key);
    if (slot === undefined) {
      slot = newSlot(key);
      slots.set(key, slot);
    }
    return slot;
  };

  const forgetIfUnused = (slot: Slot): void => {
    if (slot.node === undefined && slot.dependants === undefined && !slot.pending) slots.delete(slot.key);
  };

  const awaitUpdate = (slot: Slot): void => {
    if (slot.pending) return;
    slot.pending = true;
    pending.push(slot);
  };

  const rewire = (slot: Slot, needs: readonly Slot[]): void => {
    const before = slot.needs;
    slot.needs = needs;
    for (const need of needs) addDependant(need, slot);
    if (before.length === 0) return;
    const kept = before.length > 8 ? new Set(needs) : { has: (need: Slot) => needs.includes(need) };
    for (const need of before) {
      if (kept.has(need)) continue;
      dropDependant(need, slot);
      forgetIfUnused(need);
    }
  };

  const define = (key: string, node: GraphNode): void => {
    refuseInside("define");
    const slot = slotOf(key);
    if (slot.node === undefined) size += 1;
    slot.node = node;
    slot.redefined = true;
    awaitUpdate(slot);
    rewire(slot, node.needs.map(slotOf));
  };

  const remove = (key: string): void => {
    refuseInside("remove");
    const slot = slots.get(key);
    if (slot?.node === undefined) return;
    size -= 1;
    slot.node = undefined;
    slot.redefined = false;
    awaitUpdate(slot);
    rewire(slot, []);
  };

  const computeOf = (slot: Slot, node: GraphNode): unknown => {
    try {
      return node.compute(slot.needs.map((need) => need.value));
    } catch (error) {
      return onThrow(error, slot.key);
    }
  };

  const loopValueOf = (slot: Slot, cycle: readonly string[]): unknown => {
    try {
      return slot.node?.loop?.(cycle);
    } catch (error) {
      return onThrow(error, slot.key);
    }
  };

  /** An `equal` that throws was given values it does not know (a thrown wrapper, a loop's value): they differ. */
  const isSame = (slot: Slot, now: unknown): boolean => {
    const equal = slot.node?.equal;
    if (equal === undefined) return Object.is(slot.value, now);
    try {
      return equal(slot.value, now);
    } catch {
      return false;
    }
  };

  /** Takes in a new value; tells whether it differs. */
  const settle = (slot: Slot, now: unknown): boolean => {
    const same = slot.valued && isSame(slot, now);
    if (!same) slot.value = now;
    slot.valued = true;
    return !same;
  };

  /** Brings one slot up to date when all it needs is; tells whether it ran. */
  const refresh = (slot: Slot): boolean => {
    const { node } = slot;
    if (node === undefined) {
      slot.changed = slot.valued;
      slot.valued = false;
      slot.value = undefined;
      slot.cycle = undefined;
      return false;
    }
    const must = slot.redefined || slot.cycle !== undefined || slot.needs.some((need) => need.changed);
    if (!must) return false;
    slot.redefined = false;
    slot.cycle = undefined;
    slot.changed = settle(slot, computeOf(slot, node));
    return true;
  };

  /** Gives every slot of a loop its value; one whose loop reads as before keeps what it has. */
  const refreshLoop = (group: readonly Slot[], computed: string[]): void => {
    for (const [slot, cycle] of shortestLoops(group)) {
      const asBefore = !slot.redefined && slot.cycle !== undefined && sameKeys(slot.cycle, cycle);
      if (asBefore) continue;
      slot.redefined = false;
      slot.cycle = cycle;
      slot.changed = settle(slot, loopValueOf(slot, cycle));
      computed.push(slot.key);
    }
  };

  const update = (): Update => {
    refuseInside("update");
    if (pending.length === 0) return { computed: [], changed: [] };
    updating = true;
    const computed: string[] = [];
    const changed: string[] = [];
    const reached = reach(pending);
    try {
      for (const group of groupsInOrder(reached)) {
        if (isLoop(group)) refreshLoop(group, computed);
        else if (refresh(group[0] as Slot)) computed.push((group[0] as Slot).key);
        for (const slot of group) if (slot.changed) changed.push(slot.key);
      }
    } finally {
      updating = false;
      for (const slot of reached) slot.changed = false;
      const seeds = pending;
      pending = [];
      for (const slot of seeds) {
        slot.pending = false;
        forgetIfUnused(slot);
      }
    }
    return { computed, changed };
  };

  return {
    define,
    remove,
    update,
    value: (key) => {
      const slot = slots.get(key);
      return slot?.node === undefined ? undefined : slot.value;
    },
    has: (key) => slots.get(key)?.node !== undefined,
    needs: (key) => slots.get(key)?.node?.needs ?? [],
    dependants: (key) => Array.from(slots.get(key)?.dependants ?? [], (slot) => slot.key),
    loopOf: (key) => slots.get(key)?.cycle,
    get size() {
      return size;
    },
  };
}

const sameKeys = (a: readonly string[], b: readonly string[]): boolean =>
  a === b || (a.length === b.length && a.every((key, i) => key === b[i]));
