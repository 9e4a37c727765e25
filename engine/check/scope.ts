// What a name means to the checker, and what checking one statement gives.

import type { Diagnostic } from "../diagnostics/index.ts";
import type { Kind, Unit } from "../units/index.ts";
import type { Core, CoreFormula, CoreUnit } from "./core.ts";
import type { LedgerPlaces } from "./ledger.ts";
import type { FormulaType, Type } from "./types.ts";

export interface FieldType {
  readonly name: string;
  readonly type: Type;
  /** The unit written in its type or default, to show it in. */
  readonly unit?: Unit;
  /** Reaches what it needs through `needs` of the record's entry. */
  readonly default?: Core;
}

/** A declared thing. `name` is the full name that values and types carry. */
export type Entry =
  /** `closed`: neither an input nor computed from one, so a formula's body may use it. */
  | { readonly entry: "value"; readonly name: string; readonly type: Type; readonly closed: boolean; readonly input: boolean }
  | { readonly entry: "formula"; readonly name: string; readonly type: FormulaType; readonly core: CoreFormula; readonly unit?: Unit }
  | {
      readonly entry: "record";
      readonly name: string;
      readonly variables: readonly string[];
      readonly fields: readonly FieldType[];
      readonly needs: readonly string[];
      readonly slots: number;
    }
  | { readonly entry: "family"; readonly name: string; readonly members: readonly string[] }
  | { readonly entry: "native"; readonly name: string; readonly type: FormulaType }
  /** Another notebook; its names are found as `prefix.name`. */
  | { readonly entry: "prefix"; readonly file: string }
  /** Declared, but its statement has a fault: everything about it is unknown and what uses it waits. */
  | { readonly entry: "faulty"; readonly name: string };

export interface Found {
  /** The full name by which a unit's `needs` call it. */
  readonly key: string;
  readonly entry: Entry;
}

/** How names are looked up while one statement is checked. */
export interface Scope {
  /** `name` may be dotted: a prefix of `use` and a name in that notebook. */
  readonly find: (name: string) => Found | undefined;
  /** The entry of a record or family by its full name. */
  readonly byFullName: (name: string) => Entry | undefined;
  /** Every name that could have been meant. */
  readonly names: () => Iterable<string>;
  /** What the notebook behind a prefix of `use` declares. */
  readonly namesBehind: (prefix: string) => Iterable<string>;
  /** Names that this notebook defines and that also stand as a unit after a number somewhere in it. */
  readonly ambiguous: (name: string) => boolean;
  /** The full name a declaration of this notebook gets. */
  readonly fullName: (name: string) => string;
  /** In the library literals are constants, in a notebook they are inputs. */
  readonly library: boolean;
}

export interface CheckedWithin {
  readonly from: number;
  readonly to: number;
}

/** What checking one statement gives; where `diagnostics` has a fault the rest must not be evaluated. */
export interface Checked {
  readonly diagnostics: readonly Diagnostic[];
  /** What the statement declares, if anything; "faulty" where it has a fault. */
  readonly entry?: Entry;
  /**
   * The program: a definition's value; a comparison's [demand, capacity, factor] as a list; a condition's truth;
   * an example's [actual, expected, tolerance] as a list; a ledger's record.
   */
  readonly unit?: CoreUnit;
  readonly program: "value" | "comparison" | "condition" | "ledger" | "example" | "formula" | "none";
  readonly type: Type;
  /** `as`, or the unit of an input's literal, or the declared unit of the formula it calls. */
  readonly shownIn?: Unit;
  readonly input: boolean;
  readonly within?: CheckedWithin;
  /** A comparison's demand and capacity may form a utilisation. */
  readonly ratio: boolean;
  /** Names without a kind that this statement uses as one of a kind, by key. */
  readonly kindUses: ReadonlyMap<string, Kind>;
  /** For the check of a ledger. */
  readonly ledger?: LedgerPlaces;
  /** For a comparison: `<=`, `<`, after turning so that demand stands first. */
  readonly strict: boolean;
}
