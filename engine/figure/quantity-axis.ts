// What the numbers of an axis mean and in which unit they are shown: the notebook's, chosen when the figure is drawn.

import type { Value } from "../run/index.ts";
import { chooseUnit, describeDimension, dimensionless, fromSI, type Preferences, readScale, typographic } from "../units/index.ts";

export interface FigureOptions {
  /** The notebook's units. */
  readonly preferences: Preferences;
  /** Significant digits of single values. */
  readonly digits: number;
  /** How a name is written as a symbol (`tau_max` as `τ_max`); names stay as they are when absent. */
  readonly symbol?: (name: string) => string;
}

export interface QuantityAxis {
  /** The name, or the quantity where there is none; empty for a plain number without a name. */
  readonly title: string;
  /** Empty for plain numbers. */
  readonly unit: string;
  /** From SI. */
  readonly convert: (si: number) => number;
}

/** Reads [scale as text, name] as engine/run writes it. */
export function quantityAxis(part: Value | undefined, options: FigureOptions): QuantityAxis {
  const [text, name] = part as readonly [string, string];
  const scale = readScale(text) ?? { dimension: dimensionless, kind: "number" as const, point: false };
  const unit = chooseUnit(scale.dimension, scale.kind, options.preferences, scale.point);
  // Two exact conversions fix the line; thousands of them would be slow.
  const [zero, one] = [fromSI(0, unit), fromSI(1, unit)];
  const slope = zero === 0 ? one : one - zero;
  const written = name === "" ? "" : (options.symbol?.(name) ?? name);
  const plain = scale.dimension === dimensionless && scale.kind === "number";
  const quantity = scale.point ? "Temperature" : describeDimension(scale.dimension, scale.kind);
  return {
    title: written !== "" ? written : plain ? "" : quantity,
    unit: typographic(unit),
    convert: zero === 0 ? (si) => si * slope : (si) => zero + si * slope,
  };
}

export const axisWords = ({ title, unit }: QuantityAxis, exponent = ""): string => {
  const scaled = [exponent, unit].filter((part) => part !== "").join(" ");
  return scaled === "" ? title : title === "" ? scaled : `${title} (${scaled})`;
};
