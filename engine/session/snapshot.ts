// What a session tells its caller, in the page through the worker and in Node alike: plain data, structured-clonable.

import type { ModeState } from "../check/index.ts";
import type { Mend, Severity } from "../diagnostics/index.ts";
import type { Scene } from "../figure/index.ts";
import type { ProvenanceLevel } from "../run/index.ts";

/** A shown value: `number` and `unit` are apart so that a column can align them; `text` is both, ready to print. */
export interface Shown {
  readonly text: string;
  /** Empty for records, texts, lists. A true minus; no grouping. */
  readonly number: string;
  readonly unit: string;
  /** The shortest decimal text that reads back to the same float64, in the shown unit. */
  readonly full: string;
}

export interface CheckOutcome {
  /** `nominal`: holds, but something it depends on has scatter that is not evaluated. `open`: not evaluated. */
  readonly state: "holds" | "fails" | "nominal" | "open";
  /** factor x demand / capacity; absent where both sides are not positive quantities, and where it leaves the range of numbers. */
  readonly utilisation?: number;
  /** capacity / (factor x demand) - 1 */
  readonly margin?: number;
  /** Margin as shown: never a negative margin as zero. */
  readonly marginText?: string;
  readonly utilisationText?: string;
  readonly factor?: number;
  readonly demand?: Shown;
  readonly capacity?: Shown;
  /** For a ledger: how many of its modes are in each state, and the names of those that fail or are open. */
  readonly modes?: {
    readonly counts: Readonly<Record<ModeState, number>>;
    readonly failing: readonly string[];
    readonly open: readonly string[];
  };
  /** The check's title: its note, else its working. */
  readonly title: string;
}

export interface PlacedMend {
  readonly label: string;
  /** In file offsets of the snapshot's text. */
  readonly changes: Mend["changes"];
}

/** A fault or notice at a place in the file. */
export interface Placed {
  readonly code: string;
  readonly severity: Severity;
  readonly from: number;
  readonly to: number;
  readonly message: string;
  readonly hint?: string;
  readonly mends: readonly PlacedMend[];
  readonly related: readonly { readonly message: string; readonly file: string; readonly from: number; readonly to: number }[];
}

/** The marks of a value, reduced to what one line shows. */
export interface ShownMarks {
  /** The weakest provenance that reached it and the input that brought it; absent for a pure number. */
  readonly provenance?: { readonly level: ProvenanceLevel; readonly text: string; readonly from: string };
  /** Broken limits of validity: which formula, which limit. */
  readonly outside: readonly { readonly formula: string; readonly limit: string; readonly note?: string }[];
  /** Depends on scatter that is not evaluated. */
  readonly nominalOnly: boolean;
}

/** Rows and columns as they are shown. Columns that say nothing in any row are left out. */
export interface Grid {
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
  /** Rows that the value has; more than are shown when it is long. */
  readonly count: number;
}

export interface GridColumn {
  /** Field or head as it is written. */
  readonly head: string;
  /** The unit of every cell, empty where they differ or have none. */
  readonly unit: string;
  readonly numeric: boolean;
}

export interface GridRow {
  /** A cell's unit stands in it only where the column has none. */
  readonly cells: readonly Shown[];
  readonly marks?: ShownMarks;
}

/** Everything the pad shows beside one statement, or the page of one live value in prose. */
export interface LineOutput {
  /** Stable while the statement keeps its name (or, without a name, its text and its count among equals). */
  readonly id: string;
  readonly kind:
    | "definition"
    | "check"
    | "formula"
    | "record"
    | "family"
    | "example"
    | "use"
    | "remark"
    | "broken"
    | "csv"
    | "live"
    | "title";
  /** File offsets of the statement's text (without the line end). */
  readonly from: number;
  readonly to: number;
  readonly name?: string;
  readonly value?: Shown;
  /** A short word about the type, e.g. "Force", "Length^2", "Insert", "3 rows". */
  readonly type?: string;
  readonly check?: CheckOutcome;
  readonly example?: { readonly state: "passes" | "fails" | "open"; readonly shown?: string };
  readonly marks?: ShownMarks;
  /** Of a table, a list of records, a ledger: its rows. */
  readonly grid?: Grid;
  readonly waitsFor?: readonly string[];
  /** Citation as the reference column shows it, e.g. "ISO 965-1, table 2"; empty text when there is none. */
  readonly citation: string;
  readonly note: string;
  /** Entered and not computed. */
  readonly input?: true;
  /** An input with bounds: the pad may offer a control. Values in `unit`; `from`/`to` are the file offsets of the number's text. */
  readonly control?: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly unit: string;
    readonly from: number;
    readonly to: number;
  };
  /** The picture of a definition whose value is a figure; its caption says what the drawing itself has to say, beside the note. */
  readonly figure?: Scene;
  readonly diagnostics: readonly Placed[];
}

/** What changed in the outputs of one file since the last snapshot of it. */
export interface Snapshot {
  readonly revision: number;
  readonly file: string;
  /** Outputs that are new or changed. Where a kept output now stands: `order`. */
  readonly changed: readonly LineOutput[];
  readonly removed: readonly string[];
  /** All ids in the order of the text with their offsets, only when something other than text inside one statement moved; else absent. */
  readonly order?: { readonly ids: readonly string[]; readonly from: readonly number[]; readonly to: readonly number[] };
  readonly title: TitleBlock;
  readonly counts: { readonly faults: number; readonly failing: number; readonly checks: number; readonly open: number };
  /** Statements whose value, marks or type were computed again for this snapshot (for tests and the bench). */
  readonly reran: readonly string[];
}

/** The front matter as the title block shows it; absent fields are empty text. */
export interface TitleBlock {
  readonly title: string;
  readonly number: string;
  readonly revision: string;
  readonly status: string;
  readonly date: string;
  readonly creator: string;
  readonly checker: string;
  readonly approval_person: string;
  readonly owner: string;
  readonly project: string;
}

export interface Completion {
  readonly label: string;
  readonly insert: string;
  readonly kind: "name" | "formula" | "record" | "unit" | "field" | "keyword" | "designation" | "reference";
  /** Type or unit, short. */
  readonly detail: string;
  /** One line of purpose. */
  readonly info?: string;
}
