// What tests ask of a drawing: which lines and texts meet.

import { type Box, type Mark, type Point, type Scene, type TextMark, textBox } from "../../engine/figure/index.ts";

export interface Segment {
  readonly from: Point;
  readonly to: Point;
  readonly part: string;
  readonly mark: Mark;
}

export const texts = (scene: Scene): readonly TextMark[] => scene.marks.filter((mark) => mark.kind === "text");

/** Straight pieces of polylines and segments, closed ones with their last side. */
export function segmentsOf(scene: Scene, ...parts: readonly string[]): readonly Segment[] {
  return scene.marks.flatMap((mark): Segment[] => {
    if (mark.kind === "text" || mark.part === undefined || !parts.includes(mark.part)) return [];
    const { part } = mark;
    if (mark.kind === "segments") {
      const out: Segment[] = [];
      for (let i = 0; i + 3 < mark.ends.length; i += 4) {
        const [a, b, c, d] = mark.ends.slice(i, i + 4) as [number, number, number, number];
        out.push({ from: [a, b], to: [c, d], part, mark });
      }
      return out;
    }
    if (mark.kind !== "polyline") return [];
    const points = mark.closed === true ? [...mark.points, mark.points[0] as Point] : mark.points;
    return points.slice(1).map((to, i) => ({ from: points[i] as Point, to, part, mark }));
  });
}

const side = (a: Point, b: Point, p: Point): number => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);

/** Whether two pieces cross between their ends. */
export const crosses = (a: Segment, b: Segment): boolean =>
  side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < -1e-6 && side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < -1e-6;

/** Whether a piece passes through a box: an end inside, or a side crossed. */
export function meets(segment: Segment, { left, top, right, bottom }: Box): boolean {
  const inside = ([x, y]: Point): boolean => left < x && x < right && top < y && y < bottom;
  if (inside(segment.from) || inside(segment.to)) return true;
  const corners: readonly Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return corners.some((corner, i) => crosses(segment, { ...segment, from: corner, to: corners[(i + 1) % 4] as Point }));
}

export const boxOf = textBox;

/** Everything that a mark covers, but for strokes' widths; paths by the numbers they hold. */
export function reach(mark: Mark): Box {
  switch (mark.kind) {
    case "text":
      return textBox(mark);
    case "rect":
      return { left: mark.x, top: mark.y, right: mark.x + mark.width, bottom: mark.y + mark.height };
    case "circle":
      return { left: mark.x - mark.r, top: mark.y - mark.r, right: mark.x + mark.r, bottom: mark.y + mark.r };
    case "path":
      return around((mark.d.match(/-?[\d.]+/g) ?? []).map(Number));
    case "segments":
      return around(mark.ends);
    case "polyline":
      return around(mark.points.flat());
  }
}

function around(numbers: readonly number[]): Box {
  const xs = numbers.filter((_, i) => i % 2 === 0);
  const ys = numbers.filter((_, i) => i % 2 === 1);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
