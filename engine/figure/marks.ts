// Short makers of marks, so that drawings read like drawings.

import type { Fill, Mark, Point, Role, Stroke, TextMark } from "./scene.ts";

/** Widths of lines in pixels. */
export const OUTLINE = 1.4;
export const THIN = 0.7;
export const HAIR = 0.45;

export const stroke = (role: Role, width: number = OUTLINE, dash?: readonly number[]): Stroke =>
  dash === undefined ? { role, width } : { role, width, dash };

export const fill = (role: Role, opacity?: number): Fill => (opacity === undefined ? { role } : { role, opacity });

export interface Paint {
  readonly stroke?: Stroke;
  readonly fill?: Fill;
  readonly part?: string;
}

export const line = (from: Point, to: Point, paint: Paint): Mark => ({ kind: "polyline", points: [from, to], ...paint });
export const polyline = (points: readonly Point[], paint: Paint): Mark => ({ kind: "polyline", points, ...paint });
export const polygon = (points: readonly Point[], paint: Paint): Mark => ({ kind: "polyline", points, closed: true, ...paint });
export const circle = ([x, y]: Point, r: number, paint: Paint): Mark => ({ kind: "circle", x, y, r, ...paint });
export const rect = (left: number, top: number, right: number, bottom: number, paint: Paint): Mark => ({
  kind: "rect",
  x: left,
  y: top,
  width: right - left,
  height: bottom - top,
  ...paint,
});
export const segments = (ends: readonly number[], paint: Paint): Mark => ({ kind: "segments", ends, ...paint });

export interface TextOptions {
  readonly size?: number;
  readonly anchor?: TextMark["anchor"];
  readonly weight?: TextMark["weight"];
  readonly role?: Role;
  readonly turn?: number;
  readonly part?: string;
}

export const TEXT_SIZE = 12.5;

export const text = ([x, y]: Point, words: string, options: TextOptions = {}): TextMark => ({
  kind: "text",
  x,
  y,
  text: words,
  size: options.size ?? TEXT_SIZE,
  anchor: options.anchor ?? "start",
  weight: options.weight ?? 400,
  role: options.role ?? "ink",
  ...(options.turn === undefined ? {} : { turn: options.turn }),
  ...(options.part === undefined ? {} : { part: options.part }),
});

/** A filled head whose tip is at `tip`, pointing along `direction` (radians, x to y). */
export function arrowHead(tip: Point, direction: number, length: number, role: Role, part?: string): Mark {
  const half = length * 0.26;
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  const at = (along: number, across: number): Point => [tip[0] + along * c - across * s, tip[1] + along * s + across * c];
  return polygon([tip, at(-length, half), at(-length, -half)], { fill: fill(role), ...(part === undefined ? {} : { part }) });
}
