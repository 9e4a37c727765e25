// The door of engine/session: files in, snapshots out.

export type { Evaluated, Hover, Library, Session, Trace } from "./api.ts";
export { type LibraryEntry, libraryEntries, libraryPage } from "./library-entries.ts";
export { type ExampleResult, libraryFormulas, type Perturbation, perturb, runExamples } from "./library-examples.ts";
export { createSession } from "./session.ts";
export type {
  CheckOutcome,
  Completion,
  Grid,
  GridColumn,
  GridRow,
  LineOutput,
  Placed,
  PlacedMend,
  Shown,
  ShownMarks,
  Snapshot,
  TitleBlock,
} from "./snapshot.ts";
export type {
  DefinitionPlace,
  Fitting,
  InsertedCall,
  LibraryCard,
  LibraryListing,
  LibraryPage,
  NamePlace,
  Renaming,
  ReviewItem,
  ReviewKind,
  SensitivityPage,
  SessionTools,
  UnitChoice,
  UnitChoices,
  ViewSystem,
} from "./tools-api.ts";
