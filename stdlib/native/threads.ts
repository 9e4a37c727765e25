// Natives of threads.joint.md: designations are text, and the language does not take text apart.

import { type Native, Refusal, type TableValue, type Value } from "../../engine/run/index.ts";
import { type MetricRow, readDesignation, spellMetricPair, spellUnifiedPair, type UnifiedRow } from "./designation.ts";

/** Designation text against the tables of sizes. Refuses what stands in none, with what is near. Source: ISO 965-1 clause 5, ASME B1.1 clause 6. */
export const readThread: Native = {
  head: "read_thread(text: Text, metric: Table { d [mm], P [mm], series }, unified: Table { size, D [in], n [1], series }): Thread",
  purpose: "a thread from its designation and the tables of sizes",
  reference: "@iso965 5",
  apply: ([text, metric, unified]) => {
    const reading = readDesignation(String(text), metricRows(metric as TableValue), unifiedRows(unified as TableValue));
    if ("problem" in reading) throw new Refusal(reading.problem, { argument: 0, advice: sentence(reading.advice) });
    const { designation, system, d, P, series, class: tolerance, hand } = reading.read;
    return { shape: "record", record: "Thread", fields: [designation, system, d, P, series, tolerance, hand] };
  },
};

export const metricDesignation: Native = {
  head: "metric_designation(d: Length, P: Length): Text",
  purpose: "how a metric thread of this diameter and pitch is written",
  reference: "@iso965 5",
  apply: ([d, P]) => spellMetricPair(Number(d), Number(P)),
};

export const unifiedDesignation: Native = {
  head: "unified_designation(D: Length, n: Number): Text",
  purpose: "how a Unified thread of this diameter and number of threads per inch is written",
  reference: "@asmeb11 6",
  apply: ([D, n]) => spellUnifiedPair(Number(D), Number(n)),
};

const rowsOf = new WeakMap<TableValue, readonly unknown[]>();

/** A table is the same object on every call, so its rows are made once. */
function metricRows(table: TableValue): readonly MetricRow[] {
  return rows(table, (cell) => ({ d: Number(cell("d")), P: Number(cell("P")), series: String(cell("series")) }));
}

function unifiedRows(table: TableValue): readonly UnifiedRow[] {
  return rows(table, (cell) => ({
    size: String(cell("size")),
    D: Number(cell("D")),
    n: Number(cell("n")),
    series: String(cell("series")),
  }));
}

function rows<Row>(table: TableValue, make: (cell: (head: string) => Value | undefined) => Row): readonly Row[] {
  const known = rowsOf.get(table);
  if (known !== undefined) return known as readonly Row[];
  const made = Array.from({ length: table.rows }, (_, i) => make((head) => table.columns[table.heads.indexOf(head)]?.[i]));
  rowsOf.set(table, made);
  return made;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
