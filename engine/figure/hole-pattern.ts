// A pattern of screws seen along their axes, to scale: FigureValue "hole pattern", parts [xs, ys, hole diameter or none].

import type { FigureValue } from "../run/index.ts";
import { type Dimension, inRows, levelDimension, uprightDimension } from "./dimension.ts";
import { circle, fill, line, stroke, TEXT_SIZE, text } from "./marks.ts";
import type { FigureOptions } from "./quantity-axis.ts";
import type { Mark, Point, Scene } from "./scene.ts";
import { lengthWriter } from "./section-words.ts";
import { textWidth } from "./text-width.ts";

const ROOM = 300;
const MARGIN = 46;
const LEAST_HOLE = 5;
const MOST_HOLE = 26;
/** Positions that differ by less are the same row: finer than any hole can be drilled. */
const SAME = 1e-6;

export function drawHolePattern(value: FigureValue, options: FigureOptions): Scene {
  const [xs, ys, hole] = value.parts as readonly [readonly number[], readonly number[], number | null | undefined];
  const { length, lengthUnit } = lengthWriter(options);
  const places = xs.map((x, i): Point => [x, ys[i] ?? 0]);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const scale = ROOM / Math.max(right - left, high - low, 3 * (hole ?? 0), 1e-3);
  const rows = unique(ys);
  const columns = unique(xs);
  const round = circleOf(places);
  const list = round === undefined && columns.length * rows.length !== places.length;
  const r = Math.max(LEAST_HOLE, Math.min(MOST_HOLE, ((hole ?? 0) / 2) * scale || 7));
  const toX = (x: number): number => MARGIN + (x - left) * scale;
  const toY = (y: number): number => MARGIN + (high - y) * scale;
  const bodyRight = toX(right) + r;
  const bodyBottom = toY(low) + r;
  const holes = places.flatMap(([x, y], i) => {
    // On a circle the numbers stand outside it; elsewhere above at the right, clear of dimensions.
    const away = round === undefined ? -Math.PI / 4 : Math.atan2(-(y - round.y), x - round.x);
    return screwHole([toX(x), toY(y)], r, String(i + 1), away);
  });
  const marks: Mark[] = [];
  if (round !== undefined) {
    marks.push(circle([toX(round.x), toY(round.y)], round.r * scale, { stroke: stroke("centre", 0.8, [13, 3, 2.5, 3]), part: "centre" }));
    marks.push(...pitchCircle([toX(round.x), toY(round.y)], round.r * scale, `⌀ ${length(2 * round.r)}`));
  }
  const across = round === undefined && !list ? chain(columns, length, toX, bodyBottom) : [];
  const up = round === undefined && !list ? chain(rows, length, toY, bodyRight) : [];
  const level = inRows(across, { first: bodyBottom + 28, step: 27, draw: levelDimension });
  const upright = inRows(up, { first: bodyRight + 24, step: 46, draw: uprightDimension });
  marks.push(...holes, ...level.marks, ...upright.marks);
  const table = list || places.length > 12 ? coordinates(places, length, lengthUnit, bodyRight + 60) : { marks: [], width: 0, height: 0 };
  marks.push(...table.marks);
  const width = Math.max(upright.marks.length > 0 ? upright.last + 56 : bodyRight + MARGIN, bodyRight + 60 + table.width);
  const height = Math.max(level.marks.length > 0 ? level.last + 16 : bodyBottom + MARGIN - 10, table.height);
  return {
    width: Math.ceil(width),
    height: Math.ceil(height),
    marks,
    alternative: `Pattern of ${places.length} ${places.length === 1 ? "screw" : "screws"}, ${inWords(places, round?.r, length, lengthUnit)}.`,
    caption: `Pattern of the screws, to scale; dimensions in ${lengthUnit}.`,
    scale: (scale * 0.0254) / 96,
  };
}

/** A circle with its centre lines and its number beside it. */
function screwHole(at: Point, r: number, words: string, away: number): readonly Mark[] {
  const [x, y] = at;
  const centre = { stroke: stroke("centre", 0.6, [8, 2, 2, 2]), part: "centre" } as const;
  return [
    circle(at, r, { fill: fill("paper"), stroke: stroke("ink", 1.3), part: "hole" }),
    line([x - r - 5, y], [x + r + 5, y], centre),
    line([x, y - r - 5], [x, y + r + 5], centre),
    text([x + (r + 11) * Math.cos(away), y + (r + 11) * Math.sin(away) + TEXT_SIZE * 0.36], words, {
      anchor: "middle",
      weight: 600,
      part: "number",
    }),
  ];
}

const unique = (values: readonly number[]): readonly number[] =>
  [...values].sort((a, b) => a - b).filter((value, i, all) => i === 0 || value - (all[i - 1] as number) > SAME);

/** Spacings of neighbours; equal ones in one dimension; and the whole. */
function chain(
  places: readonly number[],
  length: (metres: number) => string,
  to: (metres: number) => number,
  start: number,
): readonly Dimension[] {
  if (places.length < 2) return [];
  const steps = places.slice(1).map((place, i) => place - (places[i] as number));
  const [first, last] = [places[0] as number, places.at(-1) as number];
  const equal = steps.every((step) => Math.abs(step - (steps[0] as number)) <= SAME);
  const whole: Dimension = { from: to(first), to: to(last), start, words: length(last - first) };
  if (steps.length === 1) return [whole];
  if (equal) {
    const one: Dimension = { from: to(first), to: to(places[1] as number), start, words: length(steps[0] as number) };
    return [one, { ...whole, words: `${steps.length} × ${length(steps[0] as number)} = ${length(last - first)}` }];
  }
  const each = steps.map(
    (step, i): Dimension => ({ from: to(places[i] as number), to: to(places[i + 1] as number), start, words: length(step) }),
  );
  return [...each, whole];
}

/** The circle that three or more screws stand on evenly; four at the corners of a rectangle are a grid. */
function circleOf(places: readonly Point[]): { readonly x: number; readonly y: number; readonly r: number } | undefined {
  if (places.length < 3) return undefined;
  const x = places.reduce((sum, place) => sum + place[0], 0) / places.length;
  const y = places.reduce((sum, place) => sum + place[1], 0) / places.length;
  const radii = places.map((place) => Math.hypot(place[0] - x, place[1] - y));
  const r = radii[0] as number;
  if (r <= SAME || radii.some((one) => Math.abs(one - r) > SAME)) return undefined;
  const grid = unique(places.map((place) => place[0])).length * unique(places.map((place) => place[1])).length === places.length;
  return grid ? undefined : { x, y, r };
}

/** The diameter on a leader that leaves between the screws. */
function pitchCircle([x, y]: Point, r: number, words: string): readonly Mark[] {
  const from: Point = [x, y];
  const reach = 0.62 * r;
  return [
    line([from[0] - 6, from[1]], [from[0] + 6, from[1]], { stroke: stroke("centre", 0.6), part: "centre" }),
    line([from[0], from[1] - 6], [from[0], from[1] + 6], { stroke: stroke("centre", 0.6), part: "centre" }),
    text([x, y + Math.min(24, reach) + TEXT_SIZE * 0.36], words, { anchor: "middle", part: "dimension" }),
  ];
}

/** Positions that no chain can tell, one row a screw. */
function coordinates(
  places: readonly Point[],
  length: (metres: number) => string,
  unit: string,
  left: number,
): { readonly marks: readonly Mark[]; readonly width: number; readonly height: number } {
  const cells = places.map(([x, y], i) => [String(i + 1), length(x), length(y)] as const);
  const columns = [left + 14, left + 74, left + 134];
  const head = ["", `x (${unit})`, `y (${unit})`];
  const row = (words: readonly string[], i: number, strong: boolean): readonly Mark[] =>
    words.map((word, k) =>
      text([columns[k] as number, 24 + 18 * i], word, {
        anchor: "end",
        weight: strong || k === 0 ? 600 : 400,
        role: strong ? "soft" : "ink",
        part: "table",
      }),
    );
  const wide = Math.max(...cells.flatMap((cell) => cell.slice(1).map((word) => textWidth(word, TEXT_SIZE))));
  return {
    marks: [...row(head, 0, true), ...cells.flatMap((cell, i) => row(cell, i + 1, false))],
    width: 150 + Math.max(0, wide - 50),
    height: 40 + 18 * cells.length,
  };
}

function inWords(places: readonly Point[], r: number | undefined, length: (metres: number) => string, unit: string): string {
  if (r !== undefined) return `on a circle of ${length(2 * r)} ${unit}`;
  return `at ${places
    .slice(0, 12)
    .map(([x, y]) => `(${length(x)}, ${length(y)})`)
    .join(", ")}${places.length > 12 ? " and more" : ""} ${unit}`;
}
