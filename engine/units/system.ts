// Which system a unit belongs to, for views that show a whole notebook in one.

import { inchDefinitions } from "./definitions-inch.ts";
import { dimensionless, dimensionOf } from "./dimension.ts";
import type { Unit } from "./model.ts";
import { inchSet, metricSet, type Preferences } from "./preferences.ts";

export type UnitSystem = "metric" | "inch";

/** Gravitational units of the metric system stand in the same table. */
const METRIC = new Set(["kgf", "gf"]);
const inchSymbols = new Set([
  ...inchDefinitions.map(({ symbol }) => symbol).filter((symbol) => !METRIC.has(symbol)),
  ...["µin", "thou", "°F", "degF_diff", "degR"],
]);

const time = dimensionOf("time");

/** Undefined for what both systems share: plain numbers, angles, times and their rates. */
export function systemOf(unit: Unit): UnitSystem | undefined {
  if (unit.text.split(/[·/()^ ]+/).some((symbol) => inchSymbols.has(symbol))) return "inch";
  const shared = unit.dimension === dimensionless || unit.dimension.exponents.every(([base]) => base === "time");
  return shared || unit.dimension === time ? undefined : "metric";
}

/** What a view in one system prefers: the notebook's own units where they belong to it, else those of the trade. */
export const preferencesIn = (system: UnitSystem, own: Preferences): Preferences => ({
  units: [...own.units.filter(({ unit }) => systemOf(unit) === system), ...(system === "inch" ? inchSet : metricSet).units],
});

/** Whether a unit may stand in a view of the system. */
export const fitsSystem = (unit: Unit, system: UnitSystem): boolean => (systemOf(unit) ?? system) === system;
