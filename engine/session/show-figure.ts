// The picture of a value that is a figure, drawn once for each value and choice of units.

import { drawFigure, type Scene } from "../figure/index.ts";
import type { FigureValue, Value } from "../run/index.ts";
import { greekSign } from "../syntax/index.ts";
import type { ShowOptions } from "./show.ts";

const drawn = new WeakMap<FigureValue, { readonly options: ShowOptions; readonly scene: Scene | undefined }>();

/** Undefined for a value that is no figure. */
export function showFigure(value: Value, options: ShowOptions): Scene | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  const held = value as Exclude<typeof value, readonly Value[]>;
  if (held.shape !== "figure") return undefined;
  const known = drawn.get(held);
  if (known?.options === options) return known.scene;
  const scene = drawFigure(held, { preferences: options.preferences, digits: options.digits, symbol: symbolOf });
  drawn.set(held, { options, scene });
  return scene;
}

/** `tau_max` as `τ_max`: whole segments that name a Greek letter. */
const symbolOf = (name: string): string =>
  name
    .split("_")
    .map((segment) => greekSign(segment) ?? segment)
    .join("_");
