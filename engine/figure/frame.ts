// The frame of a plot: ticks, grid, axes with their titles, legend; and where values stand in it.

import { line, segments, stroke, TEXT_SIZE, THIN, text } from "./marks.ts";
import type { Mark, Point, Role } from "./scene.ts";
import { symbolText } from "./symbol-text.ts";
import { textWidth } from "./text-width.ts";
import type { Ticks } from "./ticks.ts";

export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A linear scale from values to pixels. */
export const scaleOf =
  (low: number, high: number, from: number, to: number) =>
  (value: number): number =>
    from + ((value - low) / (high - low)) * (to - from);

/** Room for the labels of a vertical axis. */
export const labelRoom = (labels: readonly string[]): number => Math.max(...labels.map((label) => textWidth(label, TEXT_SIZE))) + 14;

/** Level lines with their values at the left. */
export function valueAxis(frame: Frame, ticks: Ticks, y: (value: number) => number): readonly Mark[] {
  const ends = ticks.at.flatMap((value) => [frame.left, y(value), frame.right, y(value)]);
  const labels = ticks.at.map((value, i) =>
    text([frame.left - 8, y(value) + TEXT_SIZE * 0.36], ticks.labels[i] ?? "", { anchor: "end", role: "soft", part: "tick" }),
  );
  return [segments(ends, { stroke: stroke("grid", THIN) }), ...labels];
}

/** Upright lines with their values below. */
export function baseAxis(frame: Frame, ticks: Ticks, x: (value: number) => number): readonly Mark[] {
  const ends = ticks.at.flatMap((value) => [x(value), frame.top, x(value), frame.bottom]);
  const labels = ticks.at.map((value, i) =>
    text([x(value), frame.bottom + TEXT_SIZE + 6], ticks.labels[i] ?? "", { anchor: "middle", role: "soft", part: "tick" }),
  );
  return [segments(ends, { stroke: stroke("grid", THIN) }), ...labels];
}

/** The two strong lines; the base line stands at `zero`, where that is in the picture. */
export const axisLines = (frame: Frame, zero: number): readonly Mark[] => [
  line([frame.left, frame.top], [frame.left, frame.bottom], { stroke: stroke("axis", 1) }),
  line([frame.left, zero], [frame.right, zero], { stroke: stroke("axis", 1) }),
];

export interface LegendEntry {
  readonly label: string;
  /** Draws the sample about a point, 22 wide. */
  readonly sample: (at: Point) => readonly Mark[];
}

const LEGEND_LINE = 18;
const SAMPLE = 22;

/** Rows of a legend that fits a width, from the right; gives its height. */
export function legend(
  entries: readonly LegendEntry[],
  right: number,
  width: number,
  top: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const rows: { readonly entry: LegendEntry; readonly room: number }[][] = [];
  for (const entry of entries) {
    const room = SAMPLE + 6 + textWidth(entry.label, TEXT_SIZE) + 18;
    const last = rows.at(-1);
    const used = last?.reduce((sum, one) => sum + one.room, 0) ?? 0;
    if (last !== undefined && used + room <= width) last.push({ entry, room });
    else rows.push([{ entry, room }]);
  }
  const marks = rows.flatMap((row, i) => {
    let x = right + 18 - row.reduce((sum, one) => sum + one.room, 0);
    const y = top + i * LEGEND_LINE + LEGEND_LINE / 2;
    return row.flatMap(({ entry, room }) => {
      const from = x;
      x += room;
      return [...entry.sample([from + SAMPLE / 2, y]), text([from + SAMPLE + 6, y + TEXT_SIZE * 0.36], entry.label, { part: "legend" })];
    });
  });
  return { marks, height: rows.length * LEGEND_LINE };
}

/** The title of a value axis stands level over it; that of the base axis ends under its right end. */
export const axisTitles = (frame: Frame, over: string, under: string): readonly Mark[] => [
  ...symbolText([frame.left, frame.top - 10], over, { anchor: "start", part: "title" }),
  ...symbolText([frame.right, frame.bottom + 2 * TEXT_SIZE + 14], under, { anchor: "end", part: "title" }),
];

export const seriesRoles: readonly Role[] = ["series1", "series2", "series3", "series4", "series5", "series6"];
/** Lines are told apart by their dashes as well, for print without colours. */
export const seriesDashes: readonly (readonly number[])[] = [[], [8, 3.5], [2, 3], [10, 3, 2, 3], [5, 2.5], [12, 4, 4, 4]];
