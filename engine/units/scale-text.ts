// A dimension and kind as text, for values that carry what their numbers mean along with them: the axes of figures.

import { dimensionFrom, dimensionless } from "./dimension.ts";
import type { Dimension, Kind } from "./model.ts";
import { rational } from "./rational.ts";

export interface Scale {
  readonly dimension: Dimension;
  readonly kind: Kind;
  /** A temperature point. */
  readonly point: boolean;
}

const POINT = "point";

/** "any|length:1/1;time:-2/1;", or "point" for a temperature point; reads back with `readScale`. */
export const scaleText = ({ dimension, kind, point }: Scale): string => (point ? POINT : `${kind}|${dimension.key}`);

/** Undefined for a text that `scaleText` did not make. */
export function readScale(text: string): Scale | undefined {
  if (text === POINT) return { dimension: dimensionFrom([["temperature", rational(1)]]), kind: "any", point: true };
  const [kind, key] = text.split("|");
  if (kind === undefined || key === undefined || !KINDS.has(kind)) return undefined;
  if (key === "") return { dimension: dimensionless, kind: kind as Kind, point: false };
  const pairs = key
    .slice(0, -1)
    .split(";")
    .map((part) => /^([^:]+):(-?\d+)\/(\d+)$/.exec(part));
  if (pairs.includes(null)) return undefined;
  const exponents = pairs.map((pair) => [pair?.[1] ?? "", rational(Number(pair?.[2]), Number(pair?.[3]))] as const);
  return { dimension: dimensionFrom(exponents), kind: kind as Kind, point: false };
}

const KINDS: ReadonlySet<string> = new Set<Kind>(["any", "number", "angle", "torque", "energy", "frequency", "rotational speed"]);
