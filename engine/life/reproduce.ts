// Which input, had it been otherwise, would have given what was seen: each is varied alone, the rest stays as written.

import type { LineOutput, Session } from "../session/index.ts";
import { type InputPlace, inputPlace } from "./input-place.ts";

export interface Observed {
  /** Name of the result that was measured, e.g. the load at which it failed. */
  readonly result: string;
  /** What was seen, in the unit in which the notebook shows that result. */
  readonly value: number;
  /** The failure mode that was seen, by its title in a ledger or its check; absent when nobody saw it. */
  readonly mode?: string;
}

export interface Candidate {
  readonly name: string;
  readonly unit: string;
  /** The value as written, and the one that comes nearest to what was seen. */
  readonly written: number;
  readonly needed: number;
  /** needed / written - 1; absent where the written value is 0. */
  readonly change?: number;
  /** The result with it, and its distance from what was seen as a share of that. */
  readonly gives: number;
  readonly miss: number;
  /** What governs with it: the mode of the highest utilisation; empty where the notebook has no check. */
  readonly governs: string;
  readonly sameMode: boolean;
}

/** Steps over an input's range before it is narrowed. */
const STEPS = 16;
const HALVINGS = 40;
/** Where the notebook gives no bounds: half and one and a half times the value. */
const SHARE = 0.5;
/** Nearer than this the input is said to reproduce what was seen. */
export const REPRODUCES = 0.01;

/**
 * Candidates, the likeliest first: those that reproduce the load with the mode that was seen by the smallest change, then those
 * that come near. Inputs that do not move the result are left out. Undefined where there is no such result with one number.
 */
export function reproduce(session: Session, file: string, observed: Observed): readonly Candidate[] | undefined {
  const before = session.text(file);
  const start = session.outputs(file);
  const result = start.find((output) => output.name === observed.result);
  if (numberOf(result) === undefined) return undefined;
  const found = start
    .filter((output) => output.name !== observed.result)
    .flatMap((output) => inputPlace(session, file, output) ?? [])
    .flatMap((place) => candidate(session, file, place, observed) ?? []);
  if (session.text(file) !== before) throw new Error("the notebook was not put back as it was");
  return found.sort((a, b) => rank(a) - rank(b) || size(a) - size(b) || (a.name < b.name ? -1 : 1));
}

/** Of the change, in millionths, so that the last digits of a search decide nothing. */
const size = ({ change }: Candidate): number => Math.round(Math.abs(change ?? 0) * 1e6);

const rank = ({ miss, sameMode }: Candidate): number => (miss <= REPRODUCES ? (sameMode ? 0 : 1) : 2 + Math.min(miss, 1e6));

const numberOf = (output: LineOutput | undefined): number | undefined => {
  const value = Number((output?.value?.number === "" ? undefined : output?.value?.full) ?? Number.NaN);
  return Number.isFinite(value) ? value : undefined;
};

interface Trial {
  readonly at: number;
  readonly gives: number | undefined;
  readonly outputs: readonly LineOutput[];
}

function candidate(session: Session, file: string, place: InputPlace, observed: Observed): Candidate | undefined {
  let to = place.to;
  const tryAt = (at: number): Trial => {
    const insert = String(at);
    session.edit(file, [{ from: place.from, to, insert }]);
    to = place.from + insert.length;
    const outputs = session.outputs(file);
    return { at, gives: numberOf(outputs.find((output) => output.name === observed.result)), outputs };
  };
  const written = session.text(file).slice(place.from, place.to);
  try {
    const best = search(tryAt, place, observed.value);
    if (best?.gives === undefined) return undefined;
    const governs = governing(best.outputs);
    return {
      name: place.name,
      unit: place.unit,
      written: place.value,
      needed: best.at,
      ...(place.value === 0 ? {} : { change: best.at / place.value - 1 }),
      gives: best.gives,
      miss: distance(best.gives, observed.value),
      governs,
      sameMode: observed.mode === undefined || governs === observed.mode,
    };
  } finally {
    session.edit(file, [{ from: place.from, to, insert: written }]);
  }
}

const distance = (gives: number, seen: number): number => Math.abs(gives - seen) / (seen === 0 ? 1 : Math.abs(seen));

/** A scan over the range, then halvings where the result crosses what was seen, the crossing nearest to the written value. */
function search(tryAt: (at: number) => Trial, place: InputPlace, seen: number): Trial | undefined {
  const half = Math.abs(place.value) * SHARE;
  const [low, high] = [place.low ?? place.value - half, place.high ?? place.value + half];
  if (!(low < high)) return undefined;
  const trials = Array.from({ length: STEPS + 1 }, (_, i) => tryAt(low + ((high - low) * i) / STEPS)).filter(
    ({ gives }) => gives !== undefined,
  );
  const values = trials.map(({ gives }) => gives as number);
  if (values.length < 2 || Math.max(...values) === Math.min(...values)) return undefined;
  const crossings = trials.slice(1).flatMap((after, i) => {
    const beforeIt = trials[i] as Trial;
    return ((beforeIt.gives as number) - seen) * ((after.gives as number) - seen) <= 0 ? [[beforeIt, after] as const] : [];
  });
  const away = ([a, b]: readonly [Trial, Trial]): number => Math.min(Math.abs(a.at - place.value), Math.abs(b.at - place.value));
  const crossing = crossings.sort((a, b) => away(a) - away(b))[0];
  if (crossing === undefined) {
    const nearest = trials.reduce((best, trial) =>
      distance(trial.gives as number, seen) < distance(best.gives as number, seen) ? trial : best,
    );
    return tryAt(nearest.at);
  }
  let [a, b] = crossing;
  for (let turn = 0; turn < HALVINGS && distance(b.gives as number, seen) > 1e-13; turn += 1) {
    const middle = tryAt((a.at + b.at) / 2);
    if (middle.gives === undefined) break;
    if (((a.gives as number) - seen) * (middle.gives - seen) <= 0) b = middle;
    else a = middle;
  }
  return tryAt(Number(b.at.toPrecision(12)));
}

/** The mode or check of the highest utilisation. */
function governing(outputs: readonly LineOutput[]): string {
  let [highest, title] = [Number.NEGATIVE_INFINITY, ""];
  for (const { check, grid } of outputs) {
    if (check?.utilisation !== undefined && check.modes === undefined && check.utilisation > highest)
      [highest, title] = [check.utilisation, check.title];
    const at = (head: string): number => grid?.columns.findIndex((column) => column.head === head) ?? -1;
    if (grid === undefined || at("utilisation") < 0 || at("mode") < 0) continue;
    for (const row of grid.rows) {
      const utilisation = Number(row.cells[at("utilisation")]?.full ?? Number.NaN);
      if (utilisation > highest) [highest, title] = [utilisation, row.cells[at("mode")]?.text ?? ""];
    }
  }
  return title;
}
