// A window between two bounds on a line, with marks of what lies beyond: FigureValue "window",
// parts [axis, low, high, labels of marks, their values, label].

import type { FigureValue, Value } from "../run/index.ts";
import { showNumber } from "../units/index.ts";
import { wrap } from "./callouts.ts";
import { scaleOf } from "./frame.ts";
import { fill, line, rect, stroke, TEXT_SIZE, text } from "./marks.ts";
import { axisWords, type FigureOptions, quantityAxis } from "./quantity-axis.ts";
import type { Mark, Scene } from "./scene.ts";
import { textWidth } from "./text-width.ts";

const WIDTH = 560;
const LEFT = 26;
const RIGHT = 30;
const ROW = 17;
const TITLE_LINE = 18;
const EMPTY = "empty, the lower end lies above the upper";

export function drawWindow(value: FigureValue, options: FigureOptions): Scene {
  const [axisPart, lowPart, highPart, labels, at, label] = value.parts as readonly [
    Value,
    number,
    number,
    readonly string[],
    readonly number[],
    string,
  ];
  const axis = quantityAxis(axisPart, options);
  const [low, high] = [axis.convert(lowPart), axis.convert(highPart)];
  const marked = labels.map((words, i) => ({ words, at: axis.convert(at[i] as number) })).sort((a, b) => a.at - b.at);
  const most = Math.max(high, low, ...marked.map((one) => one.at));
  const least = Math.min(0, low, high);
  const end = least + (most - least) * 1.12 || 1;
  const x = scaleOf(least, end, LEFT, WIDTH - RIGHT);
  const open = low <= high;
  const title = open ? label || "Window" : label === "" ? EMPTY : `${label}: ${EMPTY}`;
  const lines = wrap(title, (WIDTH - 2 * LEFT) * 0.94);
  const axisY = 48 + lines.length * TITLE_LINE;
  const number = (one: number): string => showNumber(one, options.digits);
  const unit = axisWords({ ...axis, title: "" });
  const marks: Mark[] = [];
  if (open) marks.push(rect(x(low), axisY - 10, x(high), axisY + 10, { fill: fill("holds", 0.18), part: "window" }));
  marks.push(line([LEFT, axisY], [WIDTH - RIGHT, axisY], { stroke: stroke("axis", 1) }));
  for (const one of [low, high])
    marks.push(line([x(one), axisY - 13], [x(one), axisY + 13], { stroke: stroke(open ? "holds" : "failure", 2), part: "bound" }));
  const above = bounds(low, high, axisY, x, number, unit.replace(/[()]/g, ""));
  marks.push(...above);
  const rows = below(marked, x);
  for (const { words, place, left, width, row } of rows) {
    const y = axisY + 26 + row * ROW;
    const beside = x(place) < left || left + width < x(place);
    marks.push(line([x(place), axisY - 11], [x(place), beside ? y : y - TEXT_SIZE + 1], { stroke: stroke("failure", 1.2), part: "mark" }));
    marks.push(text([left, y], words, { role: "failure", part: "mark" }));
  }
  marks.push(text([x(least), axisY + 26], number(least), { anchor: "middle", role: "soft", part: "tick" }));
  lines.forEach((one, i) => {
    marks.push(text([LEFT, 18 + i * TITLE_LINE], one, { weight: 600, role: open ? "ink" : "failure", part: "title" }));
  });
  const depth = Math.max(0, ...rows.map(({ row }) => row));
  return {
    width: WIDTH,
    height: axisY + 26 + depth * ROW + 16,
    marks,
    alternative: `${title}: from ${number(low)} to ${number(high)} ${unit.replace(/[()]/g, "")}${marked.length === 0 ? "" : `; ${marked.map((one) => `${one.words} ${number(one.at)}`).join(", ")}`}.`,
    caption: "",
  };
}

/** The two bounds over the line, moved apart where they would touch; the unit follows the last. */
function bounds(
  low: number,
  high: number,
  axisY: number,
  x: (value: number) => number,
  number: (value: number) => string,
  unit: string,
): readonly Mark[] {
  const [first, second] = low <= high ? [low, high] : [high, low];
  const words = [number(first), `${number(second)} ${unit}`.trimEnd()] as const;
  const [a, b] = words.map((word) => textWidth(word, TEXT_SIZE, 600)) as [number, number];
  let [left, right] = [x(first), x(second)];
  const lack = a / 2 + b / 2 + 10 - (right - left);
  if (lack > 0) [left, right] = [left - lack / 2, right + lack / 2];
  const shift = Math.max(0, LEFT - (left - a / 2));
  return [
    text([left + shift, axisY - 20], words[0], { anchor: "middle", weight: 600, part: "bound" }),
    text([Math.min(right + shift, WIDTH - 8 - b / 2), axisY - 20], words[1], { anchor: "middle", weight: 600, part: "bound" }),
  ];
}

interface MarkWords {
  readonly words: string;
  readonly place: number;
  readonly row: number;
  readonly left: number;
  readonly width: number;
}

/**
 * Words under their marks where all have room for it, else each beside its mark's line, in rows: never on another word, nor on the
 * line of a mark that goes further down. From the right, so that a line further left runs down past what stands at its right.
 */
function below(marked: readonly { readonly words: string; readonly at: number }[], x: (value: number) => number): readonly MarkWords[] {
  const centred = wordsBelow(marked, x, true);
  return centred.some(({ row }) => row > 0) ? wordsBelow(marked, x, false) : centred;
}

function wordsBelow(
  marked: readonly { readonly words: string; readonly at: number }[],
  x: (value: number) => number,
  centred: boolean,
): readonly MarkWords[] {
  const placed: MarkWords[] = [];
  for (const { words, at } of [...marked].reverse()) {
    const width = textWidth(words, TEXT_SIZE);
    const line = x(at);
    const free = (left: number, row: number): boolean =>
      LEFT + 16 <= left &&
      left + width <= WIDTH - 4 &&
      placed.every((other) => {
        const [start, end] = [other.left - 6, other.left + other.width + 6];
        if (other.row === row) return left + width < start || end < left;
        const further = x(other.place);
        return other.row > row ? further < left - 3 || left + width + 3 < further : line < start || end < line;
      });
    let found: MarkWords | undefined;
    for (let row = 0; found === undefined; row += 1) {
      const wishes = centred ? [line - width / 2] : [line + 5, line - 5 - width];
      const left = wishes.find((one) => free(one, row)) ?? (row === MOST_ROWS ? Math.min(line + 5, WIDTH - 4 - width) : undefined);
      if (left !== undefined) found = { words, place: at, row, left, width };
    }
    placed.push(found);
  }
  return placed;
}

const MOST_ROWS = 24;
