// Dimensions as drawings have them: extension lines, a line with heads, the number beside it; in rows that keep clear of each other.

import { arrowHead, line, segments, stroke, TEXT_SIZE, text } from "./marks.ts";
import type { Mark } from "./scene.ts";
import { type Box, overlap, textBox, textWidth } from "./text-width.ts";

const HEAD = 6.5;
const GAP = 1.5;
const OVER = 3.5;
/** How far a line goes on outside its heads where there is no room between them. */
const TAIL = 2.2 * HEAD;
const HALF_TEXT = TEXT_SIZE * 0.5 + 2;

export interface Dimension {
  readonly from: number;
  readonly to: number;
  /** Where its extension lines begin: at the feature, across the direction of measure. */
  readonly start: number;
  /** The extension line of the further end, when it begins elsewhere. */
  readonly startTo?: number;
  readonly words: string;
}

/** Draws a dimension whose line stands at `place`; `avoid`: places along it where lines of others pass. */
export type DrawDimension = (dimension: Dimension, place: number, avoid: readonly number[]) => readonly Mark[];

const shaft = { stroke: stroke("dimension", 0.8), part: "dimension" } as const;
const extension = { stroke: stroke("soft", 0.45), part: "extension" } as const;

/** Measured upright, its line right of the feature; the number stands level at its right. */
export const uprightDimension: DrawDimension = ({ from, to, start, startTo, words }, x, avoid) => {
  const [low, high] = from < to ? [from, to] : [to, from];
  const ends = [start + GAP, from, x + OVER, from, (startTo ?? start) + GAP, to, x + OVER, to];
  const heads = (down: boolean): readonly Mark[] => [
    arrowHead([x, low], down ? Math.PI / 2 : -Math.PI / 2, HEAD, "dimension", "dimension"),
    arrowHead([x, high], down ? -Math.PI / 2 : Math.PI / 2, HEAD, "dimension", "dimension"),
  ];
  const roomy = high - low > 2 * HEAD + 3;
  const [a, b] = roomy ? [low, high] : [low - TAIL, high + TAIL];
  const at = freePlace(low, high, HALF_TEXT, avoid) ?? beside(low, high, HALF_TEXT, avoid);
  return [
    segments(ends, extension),
    line([x, a], [x, b], shaft),
    ...heads(!roomy),
    text([x + 6, at + TEXT_SIZE * 0.36], words, { part: "dimension" }),
  ];
};

/** Measured level, its line below the feature; the number over the line, or at its right where it is too short. */
export const levelDimension: DrawDimension = ({ from, to, start, startTo, words }, y, avoid) => {
  const [low, high] = from < to ? [from, to] : [to, from];
  const room = textWidth(words, TEXT_SIZE);
  const ends = [from, start + GAP, from, y + OVER, to, (startTo ?? start) + GAP, to, y + OVER];
  const roomy = high - low > 2 * HEAD + 3;
  const middle = freePlace(low, high, room / 2 + 3, avoid);
  const outside = high + (roomy ? 7 : TAIL);
  const reach = middle === undefined ? outside + room + 2 : roomy ? high : high + TAIL;
  const heads = roomy ? [Math.PI, 0] : [0, Math.PI];
  return [
    segments(ends, extension),
    line([roomy ? low : low - TAIL, y], [reach, y], shaft),
    arrowHead([low, y], heads[0] as number, HEAD, "dimension", "dimension"),
    arrowHead([high, y], heads[1] as number, HEAD, "dimension", "dimension"),
    middle === undefined
      ? text([outside, y - 5], words, { part: "dimension" })
      : text([middle, y - 5], words, { anchor: "middle", part: "dimension" }),
  ];
};

/** The middle of a span, or of its widest piece between the places to avoid; undefined when none has the room. */
function freePlace(low: number, high: number, half: number, avoid: readonly number[]): number | undefined {
  const cuts = [low, ...avoid.filter((one) => low < one && one < high).sort((a, b) => a - b), high];
  const middle = (low + high) / 2;
  if (2 * half <= high - low && cuts.every((one) => Math.abs(one - middle) >= half)) return middle;
  let best: readonly [number, number] | undefined;
  for (let i = 0; i + 1 < cuts.length; i += 1) {
    const [a, b] = [cuts[i] as number, cuts[i + 1] as number];
    if (b - a >= 2 * half && (best === undefined || b - a > best[1] - best[0])) best = [a, b];
  }
  return best === undefined ? undefined : (best[0] + best[1]) / 2;
}

/** Beside a short span: at its middle, else above or below it, away from lines that pass. */
function beside(low: number, high: number, half: number, avoid: readonly number[]): number {
  const middle = (low + high) / 2;
  const free = (at: number): boolean => avoid.every((one) => Math.abs(one - at) >= half - 1);
  for (let away = 0; away < 80; away += 2) {
    for (const at of [middle - away, middle + away]) if (free(at)) return at;
  }
  return middle;
}

export interface Rows {
  /** Place of the first row's line, and from each to the next. */
  readonly first: number;
  readonly step: number;
  readonly draw: DrawDimension;
}

/**
 * In as few rows as keep texts and lines clear of each other, the short ones nearest; one that spans another stands outside
 * it, so that no extension line crosses a dimension line. Gives the marks and the place of the last row.
 */
export function inRows(
  dimensions: readonly Dimension[],
  { first, step, draw }: Rows,
): { readonly marks: readonly Mark[]; readonly last: number } {
  const placed: { readonly dimension: Dimension; readonly row: number; readonly room: readonly Box[] }[] = [];
  const marks: Mark[] = [];
  const sorted = [...dimensions].sort((a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from));
  for (const dimension of sorted) {
    const avoid = sorted.filter((other) => other !== dimension).flatMap(({ from, to }) => [from, to]);
    let row = Math.max(0, ...placed.filter((other) => spans(dimension, other.dimension)).map((other) => other.row + 1));
    for (; ; row += 1) {
      const drawn = draw(dimension, first + row * step, avoid);
      const room = roomOf(drawn);
      if (placed.some((other) => other.row === row && other.room.some((box) => room.some((one) => overlap(box, one))))) continue;
      placed.push({ dimension, row, room });
      marks.push(...drawn);
      break;
    }
  }
  return { marks, last: first + step * Math.max(0, ...placed.map(({ row }) => row)) };
}

const TOUCH = 0.5;

/** Whether the outer one covers the inner one's whole length. */
const spans = (outer: Dimension, inner: Dimension): boolean =>
  Math.min(outer.from, outer.to) <= Math.min(inner.from, inner.to) + TOUCH &&
  Math.max(inner.from, inner.to) <= Math.max(outer.from, outer.to) + TOUCH;

/** Room of the texts and of the line, a little larger. */
function roomOf(marks: readonly Mark[]): readonly Box[] {
  return marks.flatMap((mark): Box[] => {
    if (mark.kind === "text") {
      const { left, top, right, bottom } = textBox(mark);
      return [{ left: left - 4, top: top - 1, right: right + 4, bottom: bottom + 1 }];
    }
    if (mark.kind !== "polyline" || mark.closed === true) return [];
    const xs = mark.points.map(([x]) => x);
    const ys = mark.points.map(([, y]) => y);
    // Neighbours of a chain share an end.
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const level = right - left > bottom - top;
    return [
      level
        ? { left: left + 1, top: top - 3, right: right - 1, bottom: bottom + 3 }
        : { left: left - 3, top: top + 1, right: right + 3, bottom: bottom - 1 },
    ];
  });
}
