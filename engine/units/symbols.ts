// The unit symbols as a list, for completion and for the page that explains them.

import type { Dimension, Kind } from "./model.ts";
import { allEntries } from "./table.ts";

export interface UnitSymbol {
  /** As it is best typed: "mm", "um", "degC". */
  readonly symbol: string;
  /** As it is shown: "µm", "°C". */
  readonly shown: string;
  readonly description: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly point: boolean;
  /** A prefix stands before it: "mm" is, "m" is not. */
  readonly prefixed: boolean;
  /** Where the value comes from. */
  readonly source: string;
}

const typed: Readonly<Record<string, string>> = { "°C": "degC", "°F": "degF", "°": "deg", Å: "angstrom" };

const list: readonly UnitSymbol[] = allEntries.map((entry) => ({
  symbol: typed[entry.symbol] ?? entry.symbol.replace("µ", "u").replace("Ω", "ohm"),
  shown: entry.symbol,
  description: entry.description,
  dimension: entry.dimension,
  kind: entry.kind,
  point: entry.point,
  prefixed: entry.prefix !== "",
  source: entry.source,
}));

/** Every symbol with every prefix it takes, and the currencies; in the order of the tables. */
export const unitSymbols = (): readonly UnitSymbol[] => list;
