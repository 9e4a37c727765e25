// Words with leaders in a column at the left of a drawing: no leader crosses another, no two texts overlap.

import { circle, fill, polyline, stroke, TEXT_SIZE, text } from "./marks.ts";
import type { Mark, Point, Role } from "./scene.ts";
import { textWidth } from "./text-width.ts";

export interface Callout {
  readonly words: string;
  /** What it points at. */
  readonly target: Point;
  readonly role: Role;
}

const LINE = 15;
const BETWEEN = 8;
const STUB = 14;
export const MOST_WIDTH = 190;

interface Placed {
  readonly callout: Callout;
  readonly lines: readonly string[];
  readonly height: number;
}

export interface CalloutColumn {
  readonly marks: readonly Mark[];
  readonly top: number;
  readonly bottom: number;
}

/** Words broken into lines that fit the column. */
export function wrap(words: string, width: number): readonly string[] {
  const lines: string[] = [];
  // A number stays with its unit.
  for (const word of words.split(/(?<!\d) | (?![A-Za-z%°µ⌀]{1,4}(?:[ ,;:]|$))/)) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, TEXT_SIZE) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

export const columnWidth = (callouts: readonly { readonly words: string }[]): number =>
  Math.max(0, ...callouts.flatMap(({ words }) => wrap(words, MOST_WIDTH).map((one) => textWidth(one, TEXT_SIZE))));

/**
 * Texts end at `right`; a leader runs level for a stub, then straight to its target. Slots are as near to their targets'
 * heights as room allows; then neighbours trade places until no two leaders cross, which shortens the leaders each time and
 * so comes to an end.
 */
export function layOutCallouts(callouts: readonly Callout[], right: number, top: number): CalloutColumn {
  const order: Placed[] = [...callouts]
    .sort((a, b) => a.target[1] - b.target[1] || b.target[0] - a.target[0])
    .map((callout) => {
      const lines = wrap(callout.words, MOST_WIDTH);
      return { callout, lines, height: lines.length * LINE };
    });
  let slots = spread(order, top);
  for (let rounds = 0; rounds < order.length * order.length + 1; rounds += 1) {
    const pair = firstCrossing(order, slots, right);
    if (pair === undefined) break;
    const [i, j] = pair;
    [order[i], order[j]] = [order[j] as Placed, order[i] as Placed];
    slots = spread(order, top);
  }
  const marks = order.flatMap((placed, i) => draw(placed, right, slots[i] as number));
  const last = order.length - 1;
  return {
    marks,
    top: order.length === 0 ? top : (slots[0] as number) - LINE / 2,
    bottom: order.length === 0 ? top : (slots[last] as number) + (order[last] as Placed).height,
  };
}

/** Middles of first lines, in order, not overlapping, each as near to its wish as its neighbours let it be. */
function spread(order: readonly Placed[], top: number): readonly number[] {
  // Blocks of touching slots share a shift: the mean of what each wants (pool adjacent violators).
  const blocks: { sum: number; count: number; offset: number[]; height: number; members: number }[] = [];
  for (const { callout, height } of order) {
    const wish = callout.target[1] - 4;
    blocks.push({ sum: wish, count: 1, offset: [0], height: height + BETWEEN, members: 1 });
    for (;;) {
      const [last, before] = [blocks.at(-1), blocks.at(-2)];
      if (last === undefined || before === undefined || start(before, top) + before.height <= start(last, top)) break;
      blocks.length -= 2;
      blocks.push({
        sum: before.sum + last.sum - before.height * last.count,
        count: before.count + last.count,
        offset: [...before.offset, ...last.offset.map((one) => one + before.height)],
        height: before.height + last.height,
        members: before.members + last.members,
      });
    }
  }
  return blocks.flatMap((block) => block.offset.map((one) => start(block, top) + one));
}

const start = (block: { readonly sum: number; readonly count: number }, top: number): number =>
  Math.max(top + LINE / 2, block.sum / block.count);

const elbow = (right: number, slot: number): Point => [right + 4 + STUB, slot];

function firstCrossing(order: readonly Placed[], slots: readonly number[], right: number): readonly [number, number] | undefined {
  for (let i = 0; i < order.length; i += 1) {
    for (let j = i + 1; j < order.length; j += 1) {
      const a = [elbow(right, slots[i] as number), (order[i] as Placed).callout.target] as const;
      const b = [elbow(right, slots[j] as number), (order[j] as Placed).callout.target] as const;
      if (cross(a[0], a[1], b[0], b[1])) return [i, j];
    }
  }
  return undefined;
}

const side = (a: Point, b: Point, p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** Whether two straight pieces meet between their ends. */
export const cross = (a: Point, b: Point, c: Point, d: Point): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;

function draw({ callout, lines }: Placed, right: number, slot: number): readonly Mark[] {
  const { target, role } = callout;
  const lead = role === "failure" ? "failure" : "leader";
  return [
    ...lines.map((one, i) => text([right, slot + i * LINE + TEXT_SIZE * 0.36], one, { anchor: "end", role, part: "callout" })),
    polyline([[right + 4, slot], elbow(right, slot), target], { stroke: stroke(lead, 0.6), part: "leader" }),
    circle(target, 1.8, { fill: fill(lead), part: "leader" }),
  ];
}
