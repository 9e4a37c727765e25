// What an editor may ask of a session beside outputs: units to choose, places of names, the library, review, renaming.

import type { TextChange } from "../base/index.ts";
import type { Maths, Sensitivity } from "../trace/index.ts";
import type { Shown } from "./snapshot.ts";

/** A view of the whole notebook: its own units, or every value in those of one system. No value changes. */
export type ViewSystem = "written" | "metric" | "inch";

/** A unit that fits a value, as it is typed after `as`, and the value shown in it. */
export interface UnitChoice {
  readonly unit: string;
  readonly shown: Shown;
}

export interface UnitChoices {
  readonly choices: readonly UnitChoice[];
  /** The `as` part of the statement as it is, or an empty place where one would go; file offsets. */
  readonly from: number;
  readonly to: number;
}

/** A name of a notebook at a place: what may be renamed. */
export interface NamePlace {
  readonly name: string;
  /** As the text writes it there. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** Where a name is defined: in a notebook, or in a module of the library. */
export type DefinitionPlace =
  | { readonly in: "notebook"; readonly file: string; readonly from: number; readonly to: number }
  | { readonly in: "library"; readonly module: string; readonly name: string; readonly from: number; readonly to: number };

export interface LibraryListing {
  readonly name: string;
  readonly kind: "formula" | "record" | "family" | "value";
  readonly module: string;
  readonly note: string;
  /** Types of its parameters, and what it gives; empty text until the statement has been checked. */
  readonly head: string;
  readonly gives: string;
  readonly parameters: readonly { readonly name: string; readonly type: string; readonly optional: boolean }[];
}

/** Some names of the library; `next` where there are more. */
export interface LibraryPage {
  readonly listings: readonly LibraryListing[];
  readonly next?: number;
}

/** One statement of the library, opened. */
export interface LibraryCard {
  readonly listing: LibraryListing;
  readonly text: string;
  readonly citation: string;
  /** The full entries of the works it cites. */
  readonly sources: readonly string[];
  readonly steps: readonly {
    readonly kind: "step" | "require" | "valid" | "result";
    readonly name?: Maths;
    readonly maths: Maths;
    readonly note: string;
    readonly citation: string;
  }[];
  readonly examples: readonly { readonly text: string; readonly passes: boolean; readonly citation: string }[];
}

export interface SensitivityPage {
  readonly list: readonly Sensitivity[];
  readonly next?: number;
}

/** What fits at a place: the type that is wanted there where it is known, and names of the library that give it. */
export interface Fitting {
  readonly wanted: string;
  /** The best first: how many of the needed parameters the notebook's values fill by type and name, and how many are left. */
  readonly offers: readonly { readonly name: string; readonly filled: number; readonly missing: number }[];
}

export interface InsertedCall {
  readonly name: string;
  readonly kind: "formula" | "record" | "value";
  /** One for each parameter that has no default; empty `value` where the notebook has none that fits. */
  readonly arguments: readonly { readonly name: string; readonly value: string; readonly hint: string }[];
}

export type ReviewKind =
  | "no reference"
  | "no note"
  | "unused"
  | "outside validity"
  | "bare number"
  | "unit not shown"
  | "check without factor";

export interface ReviewItem {
  readonly kind: ReviewKind;
  /** Id of the output it belongs to. */
  readonly id: string;
  readonly name: string;
  /** What a reviewer would ask, one sentence. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

export type Renaming =
  | {
      readonly ok: true;
      readonly edits: readonly { readonly file: string; readonly changes: readonly TextChange[] }[];
      readonly places: number;
    }
  | { readonly ok: false; readonly why: string };

/** Every call is total. `id`: the id of an output, for which a name of the file may stand. */
export interface SessionTools {
  setSystem(system: ViewSystem): void;
  unitChoices(file: string, id: string): UnitChoices | undefined;
  /** By some of the inputs that reach it, from the `from`th on: each costs as much as evaluating all between, twice. */
  sensitivities(file: string, id: string, from: number, count: number): SensitivityPage;
  /** Names and ids that read it. */
  readers(file: string, id: string): readonly string[];
  nameAt(file: string, offset: number): NamePlace | undefined;
  definitionOf(file: string, offset: number): DefinitionPlace | undefined;
  moduleText(module: string): string;
  /** The library from its `from`th name on, a page at a time: the first look at a name checks it. */
  library(from: number): LibraryPage;
  /** The quantity that a unit measures, e.g. "Area"; empty text for what is no unit. */
  quantityOfUnit(unit: string): string;
  libraryCard(name: string): LibraryCard | undefined;
  fitting(file: string, offset: number): Fitting;
  callOf(file: string, name: string): InsertedCall | undefined;
  /** The whole entry of what a statement cites, and the outputs that cite the same. */
  citations(file: string, id: string): readonly { readonly entry: string; readonly alsoAt: readonly string[] }[];
  review(file: string): readonly ReviewItem[];
  /** The changes that rename a name of the file wherever it stands, in every open notebook. */
  rename(file: string, name: string, newName: string): Renaming;
}
