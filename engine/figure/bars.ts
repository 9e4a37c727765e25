// Bars with their labels at the left and their values at their ends: FigureValue "bars" as engine/run makes it.

import type { FigureValue, Value } from "../run/index.ts";
import { showNumber } from "../units/index.ts";
import { baseAxis, type Frame, scaleOf } from "./frame.ts";
import { fill, line, rect, stroke, TEXT_SIZE, text } from "./marks.ts";
import { axisWords, type FigureOptions, quantityAxis } from "./quantity-axis.ts";
import type { Mark, Scene } from "./scene.ts";
import { symbolText } from "./symbol-text.ts";
import { fitText, textWidth } from "./text-width.ts";
import { niceTicks, powerOfTen } from "./ticks.ts";

const WIDTH = 560;
const ROW = 24;
const BAR = 13;
const MOST_LABEL = 220;

/** Long lists grow the picture row by row; a value without a number is said so. */
export function drawBars(value: FigureValue, options: FigureOptions): Scene {
  const [axisPart, labelPart, valuePart, label] = value.parts as readonly [Value, readonly string[], readonly (number | null)[], string];
  const axis = quantityAxis(axisPart, options);
  const values = valuePart.map((si) => (si === null ? undefined : axis.convert(si)));
  const present = values.filter((one) => one !== undefined);
  const ticks = niceTicks(Math.min(0, ...present), Math.max(0, ...present), 6);
  const words = values.map((one) => (one === undefined ? "no value" : showNumber(one, options.digits)));
  const labels = labelPart.map((one) => fitText(one, MOST_LABEL, TEXT_SIZE));
  const left = Math.max(24, ...labels.map((one) => textWidth(one, TEXT_SIZE))) + 14;
  const right = WIDTH - 24 - Math.max(...words.map((one) => textWidth(one, TEXT_SIZE)));
  const top = label === "" ? 10 : 30;
  const frame: Frame = { left, right, top, bottom: top + ROW * values.length + 4 };
  const toX = scaleOf(ticks.low, ticks.high, left, right);
  const title = axisWords(axis, ticks.exponent === 0 ? "" : powerOfTen(ticks.exponent));
  const rows = values.flatMap((one, i): readonly Mark[] => {
    const y = top + ROW * i + ROW / 2 + 2;
    const [from, to] = [toX(Math.min(0, one ?? 0)), toX(Math.max(0, one ?? 0))];
    return [
      text([left - 10, y + TEXT_SIZE * 0.36], labels[i] ?? "", { anchor: "end", part: "label" }),
      ...(one === undefined ? [] : [rect(from, y - BAR / 2, to, y + BAR / 2, { fill: fill("series1", 0.85), part: "bar" })]),
      text([to + 7, y + TEXT_SIZE * 0.36], words[i] ?? "", { weight: 600, role: one === undefined ? "soft" : "ink", part: "value" }),
    ];
  });
  const height = frame.bottom + 48;
  return {
    width: WIDTH,
    height,
    marks: [
      ...(label === "" ? [] : [text([left, 18], label, { weight: 600 })]),
      ...baseAxis(frame, ticks, toX),
      line([toX(0), frame.top], [toX(0), frame.bottom], { stroke: stroke("axis", 1) }),
      ...symbolText([frame.right, frame.bottom + 2 * TEXT_SIZE + 14], title, { anchor: "end", part: "title" }),
      ...rows,
    ],
    alternative: `Bars${label === "" ? "" : `, ${label}`}: ${labelPart.map((one, i) => `${one} ${words[i]}${values[i] === undefined || axis.unit === "" ? "" : ` ${axis.unit}`}`).join("; ")}.`,
    caption: "",
  };
}
