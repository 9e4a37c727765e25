// What makes a record a ledger of failure modes, so that one `check` can stand for all its rows.

import type { Scope } from "./scope.ts";
import type { Type } from "./types.ts";

/** Places of fields: `modes` in the ledger, the others in the record of one mode. */
export interface LedgerPlaces {
  readonly modes: number;
  readonly state: number;
  readonly mode: number;
  /** -1 where the record has none. */
  readonly utilisation: number;
}

/** The words a mode's state may have; a ledger's `state` field lists these and no others. */
export const modeStates = ["holds", "fails", "open", "ruled out"] as const;

export type ModeState = (typeof modeStates)[number];

/** A record with `modes`, a list of records with a text `mode` and a `state` of the four words; undefined for any other type. */
export function ledgerPlaces(type: Type, scope: Scope): LedgerPlaces | undefined {
  const ledger = fieldsOf(type, scope);
  const modes = ledger?.findIndex((field) => field.name === "modes") ?? -1;
  const list = ledger?.[modes]?.type;
  if (list?.type !== "list") return undefined;
  const row = fieldsOf(list.of, scope);
  if (row === undefined) return undefined;
  const place = (name: string): number => row.findIndex((field) => field.name === name);
  const [state, mode] = [row[place("state")]?.type, row[place("mode")]?.type];
  if (state?.type !== "text" || mode?.type !== "text") return undefined;
  const { choices } = state;
  if (choices?.length !== modeStates.length || !modeStates.every((word) => choices.includes(word))) return undefined;
  return { modes, state: place("state"), mode: place("mode"), utilisation: place("utilisation") };
}

function fieldsOf(type: Type, scope: Scope) {
  if (type.type !== "record") return undefined;
  const entry = scope.byFullName(type.name);
  return entry?.entry === "record" ? entry.fields : undefined;
}

/** Fields of a mode as a reviewer reads them; the ledger shows these and leaves out what only the drawing needs. */
const modeColumns = ["mode", "state", "case", "screw", "factor", "demand", "first", "ultimate", "utilisation", "reason", "method"];

/** Which fields of a record a ledger shows, by their place; undefined where the record is no mode. */
export function ledgerFields(names: readonly string[]): readonly number[] | undefined {
  if (!["mode", "state", "utilisation"].every((name) => names.includes(name))) return undefined;
  return modeColumns.map((name) => names.indexOf(name)).filter((at) => at >= 0);
}
