// A notebook's text into its parts.

import { type Notebook, notebookOf, type Part } from "./part.ts";
import { freshPool } from "./pool.ts";
import { readPart } from "./scan.ts";

/** Reads a whole text (as `openText` gives it). Never throws; what is wrong stands in the parts' diagnostics. */
export function readNotebook(text: string): Notebook {
  const parts: Part[] = [];
  const starts: number[] = [];
  for (let at = 0; at < text.length; ) {
    const part = readPart(text, at, at === 0, freshPool);
    parts.push(part);
    starts.push(at);
    at += part.length;
  }
  return notebookOf(text.length, parts, starts, text);
}
