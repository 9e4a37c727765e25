// The works that a notebook and the formulas it uses cite, with every place in them that is cited.

import { formatReference, readReference } from "../notebook/index.ts";
import type { Columns, StatementTree } from "../syntax/index.ts";
import type { Book } from "./book.ts";
import { usedLibraryNames } from "./verification.ts";

export interface ReferenceRow {
  readonly key: string;
  /** The full entry: number, title, edition, year. */
  readonly entry: string;
  /** Clauses, tables, pages. */
  readonly places: readonly string[];
  readonly citedBy: "notebook" | "library" | "both";
  /** The key has no entry. */
  readonly missing: boolean;
}

/** In the order in which they are first cited, the notebook's own before the library's. */
export function referenceRows(book: Book): readonly ReferenceRow[] {
  const places = new Map<string, { readonly places: Set<string>; readonly by: Set<"notebook" | "library"> }>();
  const note = (text: string | undefined, by: "notebook" | "library"): void => {
    for (const { key, place } of readReference(text ?? "").items) {
      if (key === undefined) continue;
      const entry = places.get(key) ?? { places: new Set<string>(), by: new Set<"notebook" | "library">() };
      places.set(key, entry);
      if (place !== "") entry.places.add(place);
      entry.by.add(by);
    }
  };
  for (const { tree } of book.lines.values()) for (const column of columnsOf(tree)) note(column?.reference, "notebook");
  for (const part of book.notebook.parts) if (part.kind === "csv") note(part.reference?.text, "notebook");
  for (const name of usedLibraryNames(book)) {
    const tree = book.index.statement(name)?.tree;
    if (tree !== undefined) for (const column of columnsOf(tree)) note(column?.reference, "library");
  }
  return [...places].map(([key, { places: found, by }]) => {
    const reference = book.references.get(key);
    return {
      key,
      entry: reference === undefined ? "no entry of this key is known" : formatReference(reference),
      places: [...found],
      citedBy: by.size === 2 ? "both" : by.has("notebook") ? "notebook" : "library",
      missing: reference === undefined,
    };
  });
}

/** The columns of a statement, and of the fields and steps that have their own. */
function columnsOf(tree: StatementTree): readonly (Columns | undefined)[] {
  const inner: (Columns | undefined)[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== "object" || value === null) return;
    if (!Array.isArray(value) && "columns" in value) inner.push(value.columns as Columns | undefined);
    for (const part of Object.values(value) as readonly unknown[]) visit(part);
  };
  visit(tree);
  return inner;
}
