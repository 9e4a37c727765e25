// Reads a thread designation as a drawing writes it. Lengths are in metres; which sizes exist the caller's tables say.

import { nearest } from "../../engine/base/index.ts";

export interface MetricRow {
  readonly d: number;
  readonly P: number;
  readonly series: string;
}

export interface UnifiedRow {
  readonly size: string;
  readonly D: number;
  readonly n: number;
  readonly series: string;
}

export interface ThreadFacts {
  readonly designation: string;
  readonly system: "ISO metric" | "Unified";
  readonly d: number;
  readonly P: number;
  readonly series: "coarse" | "fine" | "extra fine" | "constant pitch";
  readonly class: string;
  readonly hand: "right" | "left";
}

/** What was read, or in plain words why it was not and what to write. */
export type Reading = { readonly read: ThreadFacts } | { readonly problem: string; readonly advice: string };

const INCH = 0.0254;
const SERIES: Readonly<Record<string, ThreadFacts["series"]>> = { UNC: "coarse", UNF: "fine", UNEF: "extra fine" };
const METRIC = /^M(\d+(?:\.\d+)?)(?:x(\d+(?:\.\d+)?))?((?:-[^-]+)*)$/;
const UNIFIED = /^(#\d+|\d+-\d+\/\d+|\d+\/\d+|\d+)-(\d+(?:\.\d+)?)(?: ?(UNC|UNF|UNEF|UN))?((?:-[^-]+)*)$/;
/** ISO 965-1: grades 3 to 9, positions e f g h (and the wide a to d) outside, G H inside; one or two of them, or a pair. */
const METRIC_CLASS = /^(?:[3-9][a-h]){1,2}$|^(?:[3-9][GH]){1,2}$|^(?:[3-9][GH]){1,2}\/(?:[3-9][a-h]){1,2}$/;
const UNIFIED_CLASS = /^[123][AB]$|^[123]A\/[123]B$|^[123]B\/[123]A$/;
/** Other threads that look like one of ours, told apart so that nobody gets the wrong profile. */
const OTHERS: readonly (readonly [RegExp, string])[] = [
  [/^MJ/i, "an MJ thread with its larger root radius"],
  [/^Tr/i, "a trapezoidal thread"],
  [/^ST/i, "a tapping-screw thread"],
  [/^(?:G|R|Rp|Rc)\s*\d/, "a pipe thread"],
  [/NPT|NPS|BSP/i, "a pipe thread"],
  [/UNJ/i, "a UNJ thread with its larger root radius"],
  [/UNR/i, "a UNR thread (its root alone differs from UN: write the UN series)"],
  [/UNS/i, "a special Unified thread (for any pair of numbers there is unified_thread)"],
  [/Ph\d/i, "a thread with several starts"],
];

export function readDesignation(text: string, metric: readonly MetricRow[], unified: readonly UnifiedRow[]): Reading {
  const written = text.trim().replace(/[×✕]/g, "x").replace(/−|–/g, "-");
  const other = OTHERS.find(([pattern]) => pattern.test(written));
  if (other !== undefined) return refuse(`"${text}" names ${other[1]}, which this library does not have`, ANY);
  if (/\d,\d/.test(written)) return refuse(`"${text}" has a decimal comma`, `write "${written.replace(/(\d),(\d)/g, "$1.$2")}"`);
  const asMetric = METRIC.exec(written);
  if (asMetric !== null) return readMetric(text, asMetric, metric);
  const asUnified = UNIFIED.exec(written);
  if (asUnified !== null) return readUnified(text, asUnified, unified);
  return refuse(`"${text}" is not a thread designation`, suggestion(written, metric, unified));
}

function readMetric(text: string, match: RegExpExecArray, rows: readonly MetricRow[]): Reading {
  const size = Number(match[1]);
  const tail = readTail(match[3] ?? "", METRIC_CLASS);
  if (tail === undefined) {
    return refuse(`"${text}" ends in something that is no tolerance class`, `write it like "M${size}-6g", "M${size}-6H" or "M${size}-LH"`);
  }
  const ofSize = rows.filter((row) => inMillimetres(row.d) === size);
  if (ofSize.length === 0) return refuse(`M${size} is not a size of ISO 261`, neighbours(size, rows));
  const coarse = ofSize.find((row) => row.series === "coarse");
  const pitch = match[2] === undefined ? undefined : Number(match[2]);
  if (pitch === undefined && coarse === undefined) {
    return refuse(`M${size} has no coarse pitch in ISO 261`, `write ${either(ofSize.map(spellMetric))}`);
  }
  const row = pitch === undefined ? coarse : ofSize.find((one) => inMillimetres(one.P) === pitch);
  if (row === undefined) {
    return refuse(
      `M${size}x${pitch} is not in ISO 261`,
      `it has ${either(ofSize.map(spellMetric))}; for this very pitch write metric_thread(${size} mm, ${pitch} mm)`,
    );
  }
  const designation = spellMetric(row) + spellTail(tail);
  return { read: { designation, system: "ISO metric", d: row.d, P: row.P, series: row === coarse ? "coarse" : "fine", ...tail } };
}

function readUnified(text: string, match: RegExpExecArray, rows: readonly UnifiedRow[]): Reading {
  const [size, threads, series] = [match[1] ?? "", Number(match[2]), match[3]];
  const tail = readTail(match[4] ?? "", UNIFIED_CLASS);
  if (tail === undefined) return refuse(`"${text}" ends in something that is no class of ASME B1.1`, `write it like "1/4-20 UNC-2A"`);
  const ofSize = ofUnifiedSize(size, rows);
  if (ofSize.length === 0) {
    return refuse(`${size} is not a size of ASME B1.1 up to 4 in`, inchNeighbours(size, rows));
  }
  const row = ofSize.find((one) => one.n === threads);
  if (row === undefined) {
    return refuse(
      `${size}-${threads} is not in a series of ASME B1.1`,
      `it has ${either(ofSize.map(spellUnified))}; for this very pitch write unified_thread(${inInches(ofSize)} in, ${threads})`,
    );
  }
  if (series !== undefined && series !== "UN" && series !== row.series) {
    return refuse(`${size}-${threads} is ${row.series}, not ${series}`, `write "${spellUnified(row)}"`);
  }
  return {
    read: {
      designation: spellUnified(row) + spellTail(tail),
      system: "Unified",
      d: row.D,
      P: 254 / (10_000 * row.n),
      series: SERIES[row.series] ?? "constant pitch",
      ...tail,
    },
  };
}

/** Rows of a size; `4-40` is written for `#4-40` by the trade, and 1 alone may be an inch or number one. */
function ofUnifiedSize(size: string, rows: readonly UnifiedRow[]): readonly UnifiedRow[] {
  return rows.filter((row) => row.size === size || row.size === `#${size}`);
}

type Tail = Pick<ThreadFacts, "class" | "hand">;

function readTail(tail: string, classes: RegExp): Tail | undefined {
  const parts = tail.split("-").filter((part) => part !== "");
  const hand = parts.at(-1) === "LH" ? "left" : "right";
  const rest = hand === "left" ? parts.slice(0, -1) : parts;
  if (rest.length > 1) return undefined;
  const written = rest[0] ?? "";
  return written === "" || classes.test(written) ? { class: written, hand } : undefined;
}

/** ISO 965-1 writes diameter and pitch. `d` and `P` in metres. */
export const spellMetricPair = (d: number, P: number): string => `M${inMillimetres(d)}x${inMillimetres(P)}`;

/** A diameter in 64ths of an inch is written as a fraction, any other as a decimal. `D` in metres. */
export function spellUnifiedPair(D: number, n: number): string {
  const inches = Number((D / INCH).toPrecision(12));
  let [parts, whole] = [inches * 64, 64];
  if (!Number.isInteger(parts)) return `${inches}-${n} UN`;
  while (parts % 2 === 0 && whole > 1) [parts, whole] = [parts / 2, whole / 2];
  const full = Math.floor(parts / whole);
  const rest = parts % whole;
  if (rest === 0) return `${full}-${n} UN`;
  return `${full === 0 ? "" : `${full}-`}${rest}/${whole}-${n} UN`;
}

const ANY = `write it like "M6", "M8x1", "M6-6g" or "1/4-20 UNC"`;
const refuse = (problem: string, advice: string): Reading => ({ problem, advice });
const spellMetric = (row: MetricRow): string => (row.series === "coarse" ? `M${inMillimetres(row.d)}` : spellMetricPair(row.d, row.P));
const spellTail = (tail: Tail): string => `${tail.class === "" ? "" : `-${tail.class}`}${tail.hand === "left" ? "-LH" : ""}`;
const spellUnified = (row: UnifiedRow): string => `${row.size}-${row.n} ${row.series}`;
const inInches = (rows: readonly UnifiedRow[]): string => String(Number(((rows[0]?.D ?? 0) / INCH).toPrecision(12)));
/** Table lengths are decimal millimetres; twelve digits undo the one rounding of the conversion. */
const inMillimetres = (metres: number): number => Number((metres * 1000).toPrecision(12));

function either(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}

function neighbours(size: number, rows: readonly MetricRow[]): string {
  const sizes = [...new Set(rows.map((row) => inMillimetres(row.d)))];
  const near = [sizes.filter((one) => one < size).at(-1), sizes.find((one) => size < one)].filter((one) => one !== undefined);
  return `the nearest in the table ${near.length === 2 ? "are" : "is"} ${near.map((one) => `M${one}`).join(" and ")}`;
}

/** Numbered sizes are 0.060 in and 0.013 in a number (ASME B1.1), so #7 has its place between #6 and #8. */
function inchNeighbours(size: string, rows: readonly UnifiedRow[]): string {
  const parts = /^(?:(\d+)-)?(\d+)(?:\/(\d+))?$/.exec(size.replace("#", ""));
  const [whole, over, under] = [Number(parts?.[1] ?? 0), Number(parts?.[2] ?? 0), parts?.[3]];
  const D = INCH * (under === undefined ? 0.06 + 0.013 * over : whole + over / Number(under));
  const near = [rows.filter((row) => row.D < D).at(-1), rows.find((row) => D < row.D)].filter((row) => row !== undefined);
  return `the nearest in the table ${near.length === 2 ? "are" : "is"} ${near.map((row) => row.size).join(" and ")}`;
}

function suggestion(written: string, metric: readonly MetricRow[], unified: readonly UnifiedRow[]): string {
  const upper = written.replace(/\s+/g, "").replace(/^m/, "M").replace(/[X*]/, "x");
  if (METRIC.test(upper)) return `write "${upper}"`;
  if (/^\d+(\.\d+)?$/.test(upper) && metric.some((row) => inMillimetres(row.d) === Number(upper))) return `write "M${upper}"`;
  const sized = ofUnifiedSize(written, unified);
  if (sized.length > 0) return `an inch thread needs its threads per inch: ${either(sized.map(spellUnified))}`;
  const near = nearest(written, unified.map(spellUnified));
  return near === undefined ? ANY : `did you mean "${near}"`;
}
