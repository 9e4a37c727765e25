// Hatching as plain lines, cut at the outline: no writer needs patterns or clip paths.

import type { Point } from "./scene.ts";

export interface Hatching {
  /** Radians; 0 is level, positive turns from x to y (down). */
  readonly angle: number;
  /** Between the lines, in pixels. */
  readonly spacing: number;
  /** Where the pattern starts, so that neighbours differ. */
  readonly shift?: number;
}

/**
 * Ends of the lines that fill the outlines (even-odd: an outline within another is a hole), four numbers each.
 * The pattern hangs on the picture's corner, so pieces of one body match.
 */
export function hatch(outlines: readonly (readonly Point[])[], { angle, spacing, shift = 0 }: Hatching): readonly number[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned = outlines.map((outline) => outline.map(([x, y]): Point => [x * c + y * s, -x * s + y * c]));
  const heights = turned.flat().map(([, y]) => y);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const out: number[] = [];
  for (let k = Math.ceil((low - shift) / spacing); shift + k * spacing < high; k += 1) {
    const y = shift + k * spacing;
    const cuts = turned.flatMap((outline) => crossings(outline, y)).sort((a, b) => a - b);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      const [from, to] = [cuts[i] as number, cuts[i + 1] as number];
      if (to - from > 0.01) out.push(from * c - y * s, from * s + y * c, to * c - y * s, to * s + y * c);
    }
  }
  return out;
}

/** Where a level line meets an outline; an end that lies on the line counts for the edge above alone. */
function crossings(outline: readonly Point[], y: number): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i < outline.length; i += 1) {
    const [x1, y1] = outline[i] as Point;
    const [x2, y2] = outline[(i + 1) % outline.length] as Point;
    if (y1 <= y !== y2 <= y) found.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
  }
  return found;
}

export const box = (left: number, top: number, right: number, bottom: number): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];
