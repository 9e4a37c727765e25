// How wide a text stands in the product's sans face, from the face's own advance widths; kerning is left out.

import { advances } from "./sans-widths.generated.ts";
import type { TextMark } from "./scene.ts";

const tables = new Map<400 | 600, ReadonlyMap<string, number>>();

/** What a symbol is taken for that the face has not. */
const UNKNOWN_WIDTH = 600;
/** Of the face, in shares of the size: from the base line up to the tallest sign, and down. */
export const ASCENT = 0.78;
export const DESCENT = 0.22;

function tableOf(weight: 400 | 600): ReadonlyMap<string, number> {
  const known = tables.get(weight);
  if (known !== undefined) return known;
  const made = new Map(
    Object.entries(advances[weight]).flatMap(([width, symbols]) => [...symbols].map((symbol) => [symbol, Number(width)])),
  );
  tables.set(weight, made as ReadonlyMap<string, number>);
  return made as ReadonlyMap<string, number>;
}

/** In the unit of `size`. */
export function textWidth(text: string, size: number, weight: 400 | 600 = 400): number {
  const table = tableOf(weight);
  let sum = 0;
  for (const symbol of text) sum += table.get(symbol) ?? UNKNOWN_WIDTH;
  return (sum * size) / 1000;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The room a text takes up; turned texts stand on quarter turns. */
export function textBox(mark: TextMark): Box {
  const width = textWidth(mark.text, mark.size, mark.weight);
  const before = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? width / 2 : width;
  const [up, down] = [mark.size * ASCENT, mark.size * DESCENT];
  if (mark.turn === undefined || mark.turn % 360 === 0)
    return { left: mark.x - before, right: mark.x - before + width, top: mark.y - up, bottom: mark.y + down };
  // Turned anticlockwise by a quarter: what was right is up, what was up is left.
  return { left: mark.x - up, right: mark.x + down, top: mark.y + before - width, bottom: mark.y + before };
}

export const overlap = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** The text cut so that it fits, with an ellipsis where it was. */
export function fitText(text: string, width: number, size: number, weight: 400 | 600 = 400): string {
  if (textWidth(text, size, weight) <= width) return text;
  const symbols = [...text];
  while (symbols.length > 1 && textWidth(`${symbols.join("").trimEnd()}…`, size, weight) > width) symbols.pop();
  return `${symbols.join("").trimEnd()}…`;
}
