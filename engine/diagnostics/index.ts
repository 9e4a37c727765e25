// The door of engine/diagnostics: the catalogue of messages as typed functions. No other room holds a fault's text.

export type { Diagnostic, Extras, Mend, Related, Severity } from "./diagnostic.ts";
export { entries } from "./entries.generated.ts";
export type { CatalogueEntry } from "./entry.ts";
export { faults } from "./faults.generated.ts";
