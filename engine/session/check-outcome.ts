// A check judged: verdict from the full values, utilisation and margin shown so that a negative margin never reads as zero.

import type { Checked, LedgerPlaces, ModeState } from "../check/index.ts";
import { equalNumbers, type Mark, type RecordValue, type Value } from "../run/index.ts";
import { showMargin, showUtilisation } from "../units/index.ts";
import { type ShowOptions, showValue } from "./show.ts";
import type { CheckOutcome } from "./snapshot.ts";

/** Holds when factor x demand is at most (for `<` below) the capacity; equal within the stated relative tolerance counts as equal. */
export function judge(checked: Checked, value: Value, mark: Mark, title: string, options: ShowOptions): CheckOutcome {
  if (checked.ledger !== undefined) return judgeLedger(checked.ledger, value as RecordValue, mark, title);
  if (checked.program === "condition") return { state: verdict(value === true, mark), title };
  const [demand, capacity, factor] = value as readonly [number, number, number];
  const wanted = factor * demand;
  // A product beyond the range of numbers equals no capacity, however wide a relative tolerance of it would be.
  const equal = Number.isFinite(wanted) && equalNumbers(wanted, capacity);
  const holds = checked.strict ? wanted < capacity && !equal : wanted < capacity || equal;
  const shown = {
    demand: showValue(demand, checked.type, undefined, options),
    capacity: showValue(capacity, checked.type, undefined, options),
    factor,
  };
  const base = { state: verdict(holds, mark), title, ...shown };
  if (!checked.ratio || !(0 < demand && 0 < capacity && 0 < factor)) return base;
  const utilisation = wanted / capacity;
  const margin = capacity / wanted - 1;
  // Beyond the range of numbers: the verdict stands, the ratio cannot be told.
  if (!Number.isFinite(utilisation) || !Number.isFinite(margin)) return base;
  return { ...base, utilisation, margin, marginText: showMargin(margin), utilisationText: showUtilisation(utilisation) };
}

/** One mode that fails fails the ledger; one that is open, or none at all, leaves it open. The highest utilisation stands for it. */
function judgeLedger(places: LedgerPlaces, value: RecordValue, mark: Mark, title: string): CheckOutcome {
  const rows = value.fields[places.modes] as readonly RecordValue[];
  const named = (state: ModeState): readonly string[] =>
    rows.filter((row) => row.fields[places.state] === state).map((row) => String(row.fields[places.mode]));
  const [failing, open] = [named("fails"), named("open")];
  const counts = { holds: named("holds").length, fails: failing.length, open: open.length, "ruled out": named("ruled out").length };
  const state = failing.length > 0 ? "fails" : open.length > 0 || counts.holds === 0 ? "open" : verdict(true, mark);
  const utilisations = rows.flatMap((row) => {
    const utilisation = row.fields[places.utilisation];
    return typeof utilisation === "number" ? [utilisation] : [];
  });
  const base: CheckOutcome = { state, title, modes: { counts, failing, open } };
  const utilisation = Math.max(...utilisations);
  if (utilisations.length === 0 || !Number.isFinite(utilisation)) return base;
  const shown = { ...base, utilisation, utilisationText: showUtilisation(utilisation) };
  return utilisation <= 0 ? shown : { ...shown, margin: 1 / utilisation - 1, marginText: showMargin(1 / utilisation - 1) };
}

const verdict = (holds: boolean, mark: Mark): CheckOutcome["state"] => (holds ? (mark.nominalOnly ? "nominal" : "holds") : "fails");

/** An example's [actual, expected, tolerance]: passes within the tolerance, without one within the stated relative tolerance. */
export function examplePasses(value: Value): boolean {
  const [actual, expected, tolerance] = value as readonly Value[];
  return closeTo(actual ?? null, expected ?? null, typeof tolerance === "number" ? tolerance : undefined);
}

function closeTo(actual: Value, expected: Value, tolerance: number | undefined): boolean {
  if (typeof actual === "number" && typeof expected === "number") {
    if (tolerance === undefined) return equalNumbers(actual, expected);
    const difference = Math.abs(actual - expected);
    return difference <= tolerance || equalNumbers(difference, tolerance);
  }
  if (Array.isArray(actual) && Array.isArray(expected)) {
    const others = expected as readonly Value[];
    return actual.length === others.length && (actual as readonly Value[]).every((item, i) => closeTo(item, others[i] ?? null, tolerance));
  }
  return JSON.stringify(actual) === JSON.stringify(expected);
}
