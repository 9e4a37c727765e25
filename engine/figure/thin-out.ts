// Many points on few pixels: the first, lowest, highest and last of each run within a column, so that no peak is lost.

import type { Point } from "./scene.ts";

/** Points in their order, in pixels. What a line through them would show at this resolution stays the same. */
export function thinOut(points: readonly Point[], most: number): readonly Point[] {
  if (points.length <= most) return points;
  const out: Point[] = [];
  let from = 0;
  while (from < points.length) {
    const column = Math.floor((points[from] as Point)[0]);
    let [low, high, to] = [from, from, from];
    while (to + 1 < points.length && Math.floor((points[to + 1] as Point)[0]) === column) {
      to += 1;
      if ((points[to] as Point)[1] < (points[low] as Point)[1]) low = to;
      if ((points[high] as Point)[1] < (points[to] as Point)[1]) high = to;
    }
    for (const i of [...new Set([from, Math.min(low, high), Math.max(low, high), to])]) out.push(points[i] as Point);
    from = to + 1;
  }
  return out;
}

/** One of the points that fall on the same half pixel. */
export function thinOutMarks(points: readonly Point[]): readonly Point[] {
  const seen = new Set<string>();
  return points.filter(([x, y]) => {
    const cell = `${Math.round(2 * x)},${Math.round(2 * y)}`;
    if (seen.has(cell)) return false;
    seen.add(cell);
    return true;
  });
}
