// The session as its callers see it: files in, snapshots out. The page reaches it through the worker link.

import type { TextChange } from "../base/index.ts";
import type { Natives } from "../run/index.ts";
import type { TraceView } from "../trace/index.ts";
import type { Completion, LineOutput, Shown, Snapshot } from "./snapshot.ts";
import type { SessionTools } from "./tools-api.ts";

/** The standard library as text, handed in by a composition root (the command line or the page's worker). */
export interface Library {
  readonly version: string;
  /** `name` is the module's file name, e.g. "threads.joint.md"; csv files that modules `use` are in `files`. */
  readonly modules: readonly { readonly name: string; readonly text: string }[];
  readonly files: readonly { readonly name: string; readonly text: string }[];
  readonly natives: Natives;
  /** CSL-YAML of every source that the modules cite. */
  readonly sources: string;
}

/** A value of one expression, for the command line. */
export interface Evaluated {
  readonly shown: Shown;
  readonly value: unknown;
  readonly si?: number;
  /** The value in `unit`. */
  readonly inUnit?: number;
  /** The quantity's name, e.g. "Force". */
  readonly quantity?: string;
  readonly unit?: string;
  readonly ucum?: string;
  readonly dimension?: string;
  readonly kind?: string;
  readonly outside: readonly string[];
  readonly references: readonly string[];
  readonly provenance?: string;
}

export interface Hover {
  readonly from: number;
  readonly to: number;
  /** e.g. "F_t: Force" or "stress_area(t: Thread): Area" */
  readonly head: string;
  readonly value?: Shown;
  readonly note?: string;
  readonly citation?: string;
  /** Of a formula: its steps with the numbers of the line under the pointer, calls opened below; without them as it stands. */
  readonly working?: readonly string[];
}

/** The working of a value, and the names and checks that read it. */
export interface Trace {
  readonly view: TraceView;
  readonly usedBy: readonly string[];
}

/** Every call is total: bad text gives diagnostics, never a throw. Not safe for two callers that interleave edits of one file. */
export interface Session {
  /** Puts a notebook or csv file in, or replaces its whole text. */
  put(file: string, text: string): void;
  remove(file: string): void;
  /** Changes counted in the old text, sorted, not overlapping. */
  edit(file: string, changes: readonly TextChange[]): void;
  text(file: string): string;
  files(): readonly string[];
  /** What changed in the file's outputs since the last call for it (the first call: everything). */
  snapshot(file: string): Snapshot;
  /** All outputs in the order of the text. */
  outputs(file: string): readonly LineOutput[];
  complete(file: string, offset: number): { readonly from: number; readonly to: number; readonly options: readonly Completion[] };
  hover(file: string, offset: number): Hover | undefined;
  /** The working of a value; `open` opens calls of formulas down to that depth. `name`: a name, or the id of an output. */
  trace(file: string, name: string, open: number): Trace | undefined;
  /** One expression in the scope of a file (or of the library alone), shown in `as` when given. Faults come back as diagnostics. */
  evaluate(
    expression: string,
    options: { readonly file?: string; readonly as?: string },
  ): { readonly result?: Evaluated; readonly diagnostics: LineOutput["diagnostics"] };
  /** The file's text with its columns tidied; meaning unchanged. */
  tidy(file: string): string;
  /** What an editor asks beside outputs. */
  readonly tools: SessionTools;
}
