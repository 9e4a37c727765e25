// The bench's registry and runner: figures by name, each the median of several measurements.

/** One figure, as a line of the report. */
export interface Figure {
  readonly name: string;
  readonly unit: string;
  readonly value: number;
  /** Every measurement, in the order taken. */
  readonly samples: readonly number[];
}

/** Gives one measurement in the figure's unit; set-up that is not measured belongs outside the timed part. */
export type Measure = () => number | Promise<number>;

export interface Case {
  readonly name: string;
  readonly unit: string;
  readonly measure: Measure;
  readonly times: number;
}

const TIMES = 5;
const cases: Case[] = [];

/** Registers a figure. One measurement goes before the others and is thrown away, so that none pays for a cold start alone. */
export function bench(name: string, unit: string, measure: Measure, times = TIMES): void {
  if (cases.some((one) => one.name === name)) throw new Error(`two figures are named ${name}`);
  cases.push({ name, unit, measure, times });
}

export const registered = (): readonly Case[] => cases;

/** Milliseconds that the work takes. */
export async function milliseconds(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** Throws for an empty list. */
export function median(samples: readonly number[]): number {
  const sorted = [...samples].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined) throw new Error("no samples");
  return (upper + lower) / 2;
}

export async function runCase({ name, unit, measure, times }: Case): Promise<Figure> {
  await measure();
  const samples: number[] = [];
  for (let at = 0; at < times; at += 1) samples.push(await measure());
  if (!samples.every(Number.isFinite)) throw new Error(`${name}: not every measurement is a number: ${samples.join(", ")}`);
  return { name, unit, value: median(samples), samples };
}

/** Four significant digits, without an exponent where the size allows. */
export const shown = (value: number): string => String(Number(value.toPrecision(4)));
