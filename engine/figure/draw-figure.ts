// A figure of the language as a scene: which drawing serves which value.

import type { FigureValue } from "../run/index.ts";
import { drawBars } from "./bars.ts";
import { drawHolePattern } from "./hole-pattern.ts";
import { drawPlot } from "./plot.ts";
import type { FigureOptions } from "./quantity-axis.ts";
import type { Scene } from "./scene.ts";
import { drawSection } from "./section.ts";
import { readSection } from "./section-read.ts";
import { drawWindow } from "./window.ts";

const drawings: Readonly<Record<string, (value: FigureValue, options: FigureOptions) => Scene>> = {
  plot: drawPlot,
  bars: drawBars,
  "hole pattern": drawHolePattern,
  window: drawWindow,
  section: (value, options) => drawSection(readSection(value.parts[0]), options),
};

/** Undefined for a figure of a kind that nothing here draws. The same value and options give the same scene. */
export const drawFigure = (value: FigureValue, options: FigureOptions): Scene | undefined =>
  Object.hasOwn(drawings, value.figure) ? drawings[value.figure]?.(value, options) : undefined;
