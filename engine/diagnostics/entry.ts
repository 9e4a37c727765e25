// What the catalogue holds of one fault, for the page that explains it.

import type { Severity } from "./diagnostic.ts";

export interface CatalogueEntry {
  readonly code: string;
  /** The catalogue file it stands in, which is the room that raises it. */
  readonly area: string;
  readonly severity: Severity | string;
  /** The message with its slots in braces. */
  readonly message: string;
  readonly hint?: string;
  /** Plain words: why it is a fault and what to do. */
  readonly text: string;
  /** A notebook that shows it, as Markdown with fences. Fences of another file are ```` ```file NAME ````. */
  readonly wrong: string;
  readonly right: string;
  /** How it comes about, where no notebook alone can show it. */
  readonly shown?: string;
}
