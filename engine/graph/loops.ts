// The loop to name at each member of a group of slots that all hang on each other.

import type { Slot } from "./slot.ts";

/**
 * Steps that naming the loops of one group may cost. One search is linear in the group's edges, so naming a shortest
 * loop for every member is quadratic; past this budget the members left get the first loop found, which is one they
 * hang on but may not stand in. Only groups of some thousand members with many edges come that far.
 */
const BUDGET = 4_000_000;

/** Whether a group is a loop: several members, or one that needs itself. */
export const isLoop = (group: readonly Slot[]): boolean => group.length > 1 || group[0]?.needs.includes(group[0]) === true;

/** For each member one shortest loop through it, each key needing the next, from the alphabetically first. */
export function shortestLoops(group: readonly Slot[]): Map<Slot, readonly string[]> {
  const members = new Set(group);
  const inside = new Map<Slot, readonly Slot[]>();
  const feeds = new Map<Slot, number>();
  let edges = 0;
  for (const member of group) {
    const needs = [...new Set(member.needs)].filter((need) => members.has(need)).sort((a, b) => (a.key < b.key ? -1 : 1));
    inside.set(member, needs);
    edges += needs.length;
    for (const need of needs) feeds.set(need, (feeds.get(need) ?? 0) + 1);
  }

  const loops = new Map<Slot, readonly string[]>();
  let spent = 0;
  let first: readonly string[] | undefined;
  for (const member of [...group].sort((a, b) => (a.key < b.key ? -1 : 1))) {
    if (loops.has(member)) continue;
    if (first !== undefined && spent > BUDGET) {
      loops.set(member, first);
      continue;
    }
    spent += edges + group.length;
    const loop = shortestLoop(member, inside);
    const keys = fromFirst(loop);
    first ??= keys;
    share(loop, keys, inside, feeds, loops);
  }
  return loops;
}

/** Breadth-first from `start` along needs until it is needed again. */
function shortestLoop(start: Slot, inside: ReadonlyMap<Slot, readonly Slot[]>): readonly Slot[] {
  const cameFrom = new Map<Slot, Slot>();
  const queue: Slot[] = [start];
  for (let i = 0; i < queue.length; i += 1) {
    const slot = queue[i] as Slot;
    for (const need of inside.get(slot) ?? []) {
      if (need === start) return wayBack(slot, start, cameFrom);
      if (cameFrom.has(need)) continue;
      cameFrom.set(need, slot);
      queue.push(need);
    }
  }
  return [start];
}

function wayBack(last: Slot, start: Slot, cameFrom: ReadonlyMap<Slot, Slot>): readonly Slot[] {
  const loop = [last];
  for (let slot = last; slot !== start; ) {
    slot = cameFrom.get(slot) as Slot;
    loop.push(slot);
  }
  return loop.reverse();
}

/**
 * Gives the loop to its first slot and to the neighbours that cannot stand in any other: where a slot has one need and
 * that need one dependant (both counted in the group), every loop through the one goes through the other. So a plain
 * ring of any length costs one search.
 */
function share(
  loop: readonly Slot[],
  keys: readonly string[],
  inside: ReadonlyMap<Slot, readonly Slot[]>,
  feeds: ReadonlyMap<Slot, number>,
  loops: Map<Slot, readonly string[]>,
): void {
  const tied = (slot: Slot, need: Slot): boolean => inside.get(slot)?.length === 1 && feeds.get(need) === 1;
  loops.set(loop[0] as Slot, keys);
  for (let i = 1; i < loop.length && tied(loop[i - 1] as Slot, loop[i] as Slot); i += 1) loops.set(loop[i] as Slot, keys);
  for (let i = loop.length - 1; i > 0 && tied(loop[i] as Slot, loop[(i + 1) % loop.length] as Slot); i -= 1)
    loops.set(loop[i] as Slot, keys);
}

function fromFirst(loop: readonly Slot[]): readonly string[] {
  let first = 0;
  for (let i = 1; i < loop.length; i += 1) if ((loop[i] as Slot).key < (loop[first] as Slot).key) first = i;
  return [...loop.slice(first), ...loop.slice(0, first)].map((slot) => slot.key);
}
