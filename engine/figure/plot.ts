// Curves and points over a quantity: FigureValue "plot" as engine/run makes it.

import type { FigureValue, Value } from "../run/index.ts";
import {
  axisLines,
  axisTitles,
  baseAxis,
  type Frame,
  type LegendEntry,
  labelRoom,
  legend,
  scaleOf,
  seriesDashes,
  seriesRoles,
  valueAxis,
} from "./frame.ts";
import { circle, fill, line, polygon, polyline, rect, stroke, TEXT_SIZE } from "./marks.ts";
import { axisWords, type FigureOptions, quantityAxis } from "./quantity-axis.ts";
import type { Mark, Point, Scene } from "./scene.ts";
import { textWidth } from "./text-width.ts";
import { thinOut, thinOutMarks } from "./thin-out.ts";
import { niceTicks, powerOfTen, type Ticks } from "./ticks.ts";

interface Series {
  readonly form: "line" | "points";
  readonly label: string;
  /** In shown units; undefined where a value is missing. */
  readonly points: readonly (Point | undefined)[];
}

export const PLOT_WIDTH = 560;
const PLOT_HEIGHT = 300;
const RIGHT = 20;
/** Points of a line before they are thinned out: a few for each pixel of width. */
const MOST_POINTS = 4 * PLOT_WIDTH;

export function drawPlot(value: FigureValue, options: FigureOptions): Scene {
  const [xPart, yPart, ...rest] = value.parts;
  const [x, y] = [quantityAxis(xPart, options), quantityAxis(yPart, options)];
  const series = rest.map((part) => readSeries(part, x.convert, y.convert));
  const all = series.flatMap(({ points }) => points).filter((point) => point !== undefined);
  const xTicks = ticksOf(all, 0, 7);
  const yTicks = ticksOf(all, 1, 5, true);
  const labelled = series.filter(({ label }) => label !== "");
  const entries = series.flatMap((one, i): LegendEntry[] =>
    one.label === "" ? [] : [{ label: one.label, sample: (at) => sample(one, i, at) }],
  );
  const over = axisWords(y, yTicks.exponent === 0 ? "" : powerOfTen(yTicks.exponent));
  const under = axisWords(x, xTicks.exponent === 0 ? "" : powerOfTen(xTicks.exponent));
  const titleRoom = textWidth(over, TEXT_SIZE) + 24;
  const left = labelRoom(yTicks.labels);
  const key = legend(entries, PLOT_WIDTH - RIGHT, Math.max(120, PLOT_WIDTH - RIGHT - left - titleRoom), 6);
  const frame: Frame = { left, right: PLOT_WIDTH - RIGHT, top: Math.max(30, key.height + 14), bottom: PLOT_HEIGHT - 48 };
  const toX = scaleOf(xTicks.low, xTicks.high, frame.left, frame.right);
  const toY = scaleOf(yTicks.low, yTicks.high, frame.bottom, frame.top);
  const base = yTicks.low <= 0 && 0 <= yTicks.high ? toY(0) : frame.bottom;
  const marks: Mark[] = [
    ...baseAxis(frame, xTicks, toX),
    ...valueAxis(frame, yTicks, toY),
    ...axisLines(frame, base),
    ...axisTitles(frame, over, under),
    ...key.marks,
    ...series.flatMap((one, i) => drawSeries(one, i, toX, toY)),
  ];
  return {
    width: PLOT_WIDTH,
    height: PLOT_HEIGHT,
    marks,
    alternative: inWords(series, over, under, xTicks, yTicks, labelled.length),
    caption: "",
  };
}

function readSeries(part: Value, toX: (si: number) => number, toY: (si: number) => number): Series {
  const [form, label, xs, ys] = part as readonly ["line" | "points", string, readonly Value[], readonly Value[]];
  const points = xs.map((x, i): Point | undefined => {
    const y = ys[i];
    return typeof x === "number" && typeof y === "number" ? [toX(x), toY(y)] : undefined;
  });
  return { form, label, points };
}

function extent(points: readonly Point[], axis: 0 | 1): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const point of points) {
    if (point[axis] < low) low = point[axis];
    if (high < point[axis]) high = point[axis];
  }
  return low <= high ? [low, high] : [0, 1];
}

/** An axis begins at zero where zero is near, so that heights compare. */
function ticksOf(points: readonly Point[], axis: 0 | 1, wanted: number, fromZero = false): Ticks {
  const [low, high] = extent(points, axis);
  const near = fromZero ? 0.6 : 0.25;
  const from = 0 < low && low <= near * high ? 0 : low;
  const to = high < 0 && near * low <= high ? 0 : high;
  return niceTicks(from, to, wanted);
}

const roleOf = (index: number) => seriesRoles[index % seriesRoles.length] ?? "series1";
const dashOf = (index: number): readonly number[] | undefined => {
  const dash = seriesDashes[index % seriesDashes.length] ?? [];
  return dash.length === 0 ? undefined : dash;
};

function drawSeries(series: Series, index: number, toX: (x: number) => number, toY: (y: number) => number): readonly Mark[] {
  const placed = series.points.map((point): Point | undefined => (point === undefined ? undefined : [toX(point[0]), toY(point[1])]));
  if (series.form === "points") {
    return thinOutMarks(placed.filter((point) => point !== undefined)).map((point) => spot(index, point));
  }
  const runs: Point[][] = [];
  placed.forEach((point, i) => {
    if (point === undefined) return;
    if (placed[i - 1] === undefined) runs.push([]);
    runs.at(-1)?.push(point);
  });
  return runs.map((run) => {
    const [only] = run;
    if (run.length === 1 && only !== undefined) return spot(index, only);
    return polyline(thinOut(run, MOST_POINTS), { stroke: stroke(roleOf(index), 1.6, dashOf(index)), part: "series" });
  });
}

const SPOT = 3.2;

/** Shapes tell series apart where colours do not. */
function spot(index: number, [x, y]: Point): Mark {
  const paint = { fill: fill("paper"), stroke: stroke(roleOf(index), 1.3), part: "series" };
  switch (index % 4) {
    case 0:
      return circle([x, y], SPOT, paint);
    case 1:
      return rect(x - SPOT + 0.3, y - SPOT + 0.3, x + SPOT - 0.3, y + SPOT - 0.3, paint);
    case 2:
      return polygon(
        [
          [x, y - SPOT - 0.6],
          [x + SPOT + 0.4, y + SPOT - 0.4],
          [x - SPOT - 0.4, y + SPOT - 0.4],
        ],
        paint,
      );
    default:
      return polygon(
        [
          [x, y - SPOT - 0.8],
          [x + SPOT + 0.8, y],
          [x, y + SPOT + 0.8],
          [x - SPOT - 0.8, y],
        ],
        paint,
      );
  }
}

function sample(series: Series, index: number, [x, y]: Point): readonly Mark[] {
  if (series.form === "points") return [spot(index, [x, y])];
  return [line([x - 11, y], [x + 11, y], { stroke: stroke(roleOf(index), 1.6, dashOf(index)), part: "legend" })];
}

function inWords(series: readonly Series[], over: string, under: string, x: Ticks, y: Ticks, labelled: number): string {
  const named =
    labelled === 0
      ? ""
      : `: ${series
          .map(({ label }) => label)
          .filter((label) => label !== "")
          .join(", ")}`;
  const what = series.every(({ form }) => form === "points") ? "Points" : series.length === 1 ? "Curve" : `${series.length} curves`;
  const of = over === "" ? "values" : over;
  const against = under === "" ? "" : ` over ${under}`;
  return `${what}${named}. ${of}${against}, from ${x.labels[0]} to ${x.labels.at(-1)} across and ${y.labels[0]} to ${y.labels.at(-1)} up.`;
}
