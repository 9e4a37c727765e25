// Boxes of set matter: each knows its size and how to draw itself with its base line at a place. Lengths are points, y grows downward.

import type { Pen, Ruler, TextStyle } from "./pen.ts";

export interface Box {
  readonly width: number;
  /** Above and below the base line. */
  readonly up: number;
  readonly down: number;
  readonly draw: (pen: Pen, x: number, base: number) => void;
}

export const nothing: Box = { width: 0, up: 0, down: 0, draw: () => undefined };

/** Of the fonts, in shares of the size. */
const UP = 0.78;
const DOWN = 0.22;

export function textBox(text: string, style: TextStyle, ruler: Ruler): Box {
  return {
    width: ruler.width(text, style),
    up: UP * style.size,
    down: DOWN * style.size,
    draw: (pen, x, base) => pen.text(text, x, base, style),
  };
}

export const roomBox = (width: number): Box => ({ ...nothing, width });

/** Side by side on one base line. */
export function rowBox(boxes: readonly Box[]): Box {
  return {
    width: boxes.reduce((sum, box) => sum + box.width, 0),
    up: Math.max(0, ...boxes.map((box) => box.up)),
    down: Math.max(0, ...boxes.map((box) => box.down)),
    draw: (pen, x, base) => {
      let at = x;
      for (const box of boxes) {
        box.draw(pen, at, base);
        at += box.width;
      }
    },
  };
}

/** The box with its base line moved down by `by`. */
export const lowered = (box: Box, by: number): Box => ({
  width: box.width,
  up: box.up - by,
  down: box.down + by,
  draw: (pen, x, base) => box.draw(pen, x, base + by),
});
