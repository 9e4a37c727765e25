// Figures that the library draws: plots laid over each other, patterns of screws, windows, sections of joints.

import { type FigureValue, figureAxis, type Native, type RecordValue, Refusal, type Value } from "../../engine/run/index.ts";

/** Fields that these natives read, by record, in the order of its declaration; a test holds them against the declarations. */
export const readFields: Readonly<Record<string, readonly string[]>> = { Pattern: ["x", "y"] };

const field = (record: RecordValue, name: string): Value => record.fields[readFields[record.record]?.indexOf(name) ?? -1] ?? null;

const figure = (name: string, parts: readonly Value[]): FigureValue => ({ shape: "figure", figure: name, parts });

export const overlay: Native = {
  head: "draw_overlay(figures: List Figure): Figure",
  purpose: "curves and points of several plots in one picture, on the axes of the first",
  apply: ([given]) => {
    const plots = given as readonly FigureValue[];
    const [first] = plots;
    if (first === undefined)
      throw new Refusal("there is no plot in the list", { argument: 0, advice: "Give at least one line_plot or point_plot" });
    plots.forEach((one, i) => {
      if (one.figure !== "plot")
        throw new Refusal(`item ${i + 1} is no plot`, { argument: 0, advice: "Only line_plot and point_plot lie over each other" });
      for (const [axis, word] of [
        [0, "x"],
        [1, "y"],
      ] as const) {
        if (scaleOf(one, axis) === scaleOf(first, axis)) continue;
        throw new Refusal(`item ${i + 1} shows another quantity along ${word} than item 1`, {
          argument: 0,
          advice: "Plots that share axes show the same quantities along them",
        });
      }
    });
    return figure("plot", [...first.parts.slice(0, 2), ...plots.flatMap((one) => one.parts.slice(2))]);
  },
};

const scaleOf = (plot: FigureValue, axis: number): Value => (plot.parts[axis] as readonly Value[])[0] ?? null;

export const holePattern: Native = {
  head: "draw_hole_pattern(p: Pattern, hole: Maybe Length): Figure",
  purpose: "the screws of a pattern seen along their axes, numbered, to scale, with dimensions",
  apply: ([p, hole]) => {
    const pattern = p as RecordValue;
    const [xs, ys] = [field(pattern, "x") as readonly number[], field(pattern, "y") as readonly number[]];
    if (xs.length === 0 || xs.length !== ys.length)
      throw new Refusal("the pattern has no screws, or not both coordinates of each", {
        argument: 0,
        advice: "Make it with grid_pattern, circle_pattern or list_pattern",
      });
    if (xs.length > MOST_HOLES)
      throw new Refusal(`the pattern has ${xs.length} screws`, { argument: 0, advice: `Draw at most ${MOST_HOLES} in one picture` });
    return figure("hole pattern", [xs, ys, hole ?? null]);
  },
};

const MOST_HOLES = 500;

export const torqueWindowFigure: Native = {
  head: "draw_torque_window(low: Torque, high: Torque, marks: List Text, at: List Torque, label: Text): Figure",
  purpose: "tightening torques between two bounds on a line, with marks of what lies beyond",
  apply: ([low, high, marks, at, label], given) => {
    const [words, places] = [(marks ?? []) as readonly Value[], (at ?? []) as readonly Value[]];
    if (words.length !== places.length)
      throw new Refusal(`there are ${words.length} marks and ${places.length} torques`, {
        argument: 2,
        advice: "Give each mark its torque",
      });
    const [scale] = figureAxis(given?.[0]) as readonly Value[];
    return figure("window", [[scale ?? "", ""], low ?? 0, high ?? 0, words, places, label ?? ""]);
  },
};

export const drawSection: Native = {
  head: "draw_section(view: SectionView): Figure",
  purpose: "a joint in section through the screw axis, to scale",
  apply: ([view]) => figure("section", [view ?? null]),
};
