// Plots as values: what is drawn, with the meaning of its axes. engine/figure makes the picture from them.

import { faults } from "../diagnostics/index.ts";
import { dimensionless, scaleText } from "../units/index.ts";
import type { Intrinsic } from "./intrinsics.ts";
import { type Given, OwnRefusal } from "./native.ts";
import type { FigureValue, Value } from "./value.ts";

/**
 * A plot is { figure: "plot", parts: [axis of x, axis of y, series, ...] }, bars are
 * { figure: "bars", parts: [axis of the values, labels, values, label] }.
 * An axis is [scale as text, name or ""], a series ["line" or "points", label, xs, ys]; an x or y without a value is none.
 */
function plot(form: "line" | "points", args: readonly Value[], given: readonly Given[] | undefined): FigureValue {
  const [xs, ys, label] = args as readonly [readonly Value[], readonly Value[], Value | undefined];
  if (xs.length !== ys.length)
    throw new OwnRefusal((call) => faults.lengthsDiffer(call.at(1), { first: String(xs.length), second: String(ys.length) }));
  needsItems(xs);
  return { shape: "figure", figure: "plot", parts: [figureAxis(given?.[0]), figureAxis(given?.[1]), [form, label ?? "", xs, ys]] };
}

function needsItems(items: readonly Value[]): void {
  if (items.length === 0) throw new OwnRefusal((call) => faults.listEmpty(call.at(0), { function: call.name }));
  if (items.every((item) => item === null))
    throw new OwnRefusal((call) => faults.nothingPresent(call.at(0), { function: call.name, count: String(items.length) }));
}

/** What an argument measures, as figures carry it; the items of a list stand for the list. */
export function figureAxis(given: Given | undefined): Value {
  const type = given?.type.type === "list" ? given.type.of : given?.type;
  const name = given?.name ?? "";
  if (type?.type === "quantity") return [scaleText({ dimension: type.dimension, kind: type.kind, point: false }), name];
  if (type?.type === "point") return [scaleText({ dimension: dimensionless, kind: "any", point: true }), name];
  return [scaleText({ dimension: dimensionless, kind: "number", point: false }), name];
}

export const figureFunctions: Readonly<Record<string, Intrinsic>> = {
  line_plot: {
    head: 'line_plot(x: List, y: List, label = ""): Figure',
    purpose: "A curve through the points in their order; where a value is missing it breaks.",
    least: 2,
    most: 3,
    apply: (args, given) => plot("line", args, given),
  },
  point_plot: {
    head: 'point_plot(x: List, y: List, label = ""): Figure',
    purpose: "A mark at each point.",
    least: 2,
    most: 3,
    apply: (args, given) => plot("points", args, given),
  },
  bar_chart: {
    head: 'bar_chart(labels: List Text, values: List, label = ""): Figure',
    purpose: "A bar for each label, as long as its value.",
    least: 2,
    most: 3,
    apply: ([labels, values, label], given) => {
      const [words, items] = [labels as readonly Value[], values as readonly Value[]];
      if (words.length !== items.length)
        throw new OwnRefusal((call) => faults.lengthsDiffer(call.at(1), { first: String(words.length), second: String(items.length) }));
      needsItems(words);
      return { shape: "figure", figure: "bars", parts: [figureAxis(given?.[1]), words, items, label ?? ""] };
    },
  },
};
