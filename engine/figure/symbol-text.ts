// A text that may hold names with a lowered part (`F_t (N)`), as one or more text marks in a row.

import { TEXT_SIZE, type TextOptions, text } from "./marks.ts";
import type { Point, TextMark } from "./scene.ts";
import { textWidth } from "./text-width.ts";

const LOWERED = 0.74;

/** What follows an underscore, up to a space or bracket, is lowered. Level text alone. */
export function symbolText([x, y]: Point, words: string, options: TextOptions = {}): readonly TextMark[] {
  if (words === "") return [];
  const size = options.size ?? TEXT_SIZE;
  const weight = options.weight ?? 400;
  const runs = [...words.matchAll(/([^_]+)(?:_([^\s()_]+(?:_[^\s()_]+)*))?/g)].flatMap(([, plain, low]) => [
    { words: plain ?? "", low: false },
    ...(low === undefined ? [] : [{ words: low.replaceAll("_", ","), low: true }]),
  ]);
  // Writers drop blanks at a text's start, so a run begins with its first letter, moved on.
  const blank = (words: string): number => words.length - words.trimStart().length;
  const sizeOf = (low: boolean): number => (low ? size * LOWERED : size);
  const widths = runs.map((run) => textWidth(run.words, sizeOf(run.low), weight));
  const whole = widths.reduce((sum, width) => sum + width, 0);
  let at = options.anchor === "end" ? x - whole : options.anchor === "middle" ? x - whole / 2 : x;
  return runs.map((run, i) => {
    const from = at;
    at += widths[i] ?? 0;
    const shift = textWidth(" ".repeat(blank(run.words)), sizeOf(run.low), weight);
    return text([from + shift, run.low ? y + size * 0.22 : y], run.words.trimStart(), {
      ...options,
      anchor: "start",
      size: sizeOf(run.low),
    });
  });
}
