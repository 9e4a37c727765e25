// What every part of a section is drawn with: mirrored outlines, broken edges, zones of beads and layers.

import { box, hatch } from "./hatch.ts";
import { fill, HAIR, polygon, polyline, segments, stroke, THIN } from "./marks.ts";
import type { Mark, Point, Role } from "./scene.ts";

/** A broken edge runs up and down like a line drawn by hand; the same place always gives the same line. */
export const waver = (y: number): number => 1.7 * Math.sin(y / 9) + 1.1 * Math.sin(y / 4.3 + 1);

/** An upright edge between two heights: straight where the body ends there, wavering where it goes on. */
export function uprightEdge(x: number, from: number, to: number, ends: boolean): readonly Point[] {
  if (ends)
    return [
      [x, from],
      [x, to],
    ];
  const count = Math.max(2, Math.ceil(Math.abs(to - from) / 4));
  return Array.from({ length: count + 1 }, (_, i): Point => {
    const y = from + ((to - from) * i) / count;
    return [x + waver(y), y];
  });
}

/** A level edge, likewise. */
export function levelEdge(y: number, from: number, to: number, ends: boolean): readonly Point[] {
  return uprightEdge(y, from, to, ends).map(([a, b]): Point => [b, a]);
}

export interface ZoneLines {
  /** "upright" lines are beads of a wall, "level" ones layers. */
  readonly run: "upright" | "level";
  /** In pixels; lines too near to be seen apart are drawn less often. */
  readonly pitch: number;
  /** A pixel place that one line lies on. */
  readonly at: number;
}

const LEAST_PITCH = 2;
export const TINT = 0.09;

/** Solid printed matter: tinted, with the lines of its beads or layers. */
export function zone(outline: readonly Point[], lines: ZoneLines, role: Role = "printed"): readonly Mark[] {
  const pitch = lines.pitch * Math.max(1, Math.ceil(LEAST_PITCH / lines.pitch));
  const shift = lines.run === "level" ? lines.at : -lines.at;
  const ends = hatch([outline], { angle: lines.run === "level" ? 0 : Math.PI / 2, spacing: pitch, shift });
  return [
    polygon(outline, { fill: fill("paper") }),
    polygon(outline, { fill: fill(role, TINT) }),
    segments(ends, { stroke: stroke("layer", HAIR) }),
    polygon(outline, { stroke: stroke(role, THIN) }),
  ];
}

export const zoneBox = (left: number, top: number, right: number, bottom: number, lines: ZoneLines): readonly Mark[] =>
  right - left < 0.05 || bottom - top < 0.05 ? [] : zone(box(left, top, right, bottom), lines);

/** Cut metal. */
export function metal(outlines: readonly (readonly Point[])[], turned: boolean, role: Role = "metal", spacing = 7): readonly Mark[] {
  const angle = turned ? Math.PI / 4 : -Math.PI / 4;
  return [segments(hatch(outlines, { angle, spacing }), { stroke: stroke(role, HAIR) })];
}

/** The same outline on the other side of the axis. */
export const mirrored = (points: readonly Point[], axis: number): readonly Point[] => points.map(([x, y]): Point => [2 * axis - x, y]);

export const edgeMark = (points: readonly Point[], ends: boolean, role: Role): Mark =>
  polyline(points, { stroke: stroke(role, ends ? 1.4 : THIN) });
