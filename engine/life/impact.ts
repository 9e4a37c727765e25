// What a change of the library or of a shared notebook does to a package that was handed over: old and new margins side by side.

import { compareResults, type Difference, type OpenPackage, type Results, readResults } from "../package/index.ts";
import { createSession, type Library } from "../session/index.ts";

/** One check or mode before and after; a text is empty where there is none. */
export interface ImpactRow {
  readonly title: string;
  readonly before: { readonly state: string; readonly margin?: number };
  readonly after: { readonly state: string; readonly margin?: number };
}

export interface Impact {
  readonly title: string;
  /** Something that was computed has moved; the library's version alone is no move. */
  readonly touched: boolean;
  readonly differences: readonly Difference[];
  /** Checks and modes whose state or margin moved, the smallest new margin first. */
  readonly rows: readonly ImpactRow[];
}

/**
 * Recomputes a package's source with this library, or with another text for one of its sources, and holds it against the
 * results the package states. Undefined where the package does not use that source. Throws where its results cannot be read.
 */
export function impactOf(
  opened: OpenPackage,
  library: Library,
  version: string,
  changed?: { readonly name: string; readonly text: string },
): Impact | undefined {
  const { results: stated, sources, manifest } = opened;
  if (stated === undefined) throw new Error("its results.json cannot be read");
  if (changed !== undefined && !sources.some(({ name }) => name === changed.name)) return undefined;
  const now = sources.map((source) => (source.name === changed?.name ? { name: source.name, text: changed.text } : source));
  const session = createSession(library);
  for (const { name, text } of now) session.put(name, text);
  const fresh = readResults(session, library, manifest.notebook, version);
  const differences = compareResults({ results: stated, sources }, { results: fresh, sources: now }).filter(
    ({ kind }) => kind !== "program" && kind !== "title" && kind !== "text",
  );
  const title = [stated.title.number, stated.title.revision, stated.title.title]
    .filter((part) => part !== undefined && part !== "")
    .join(" ");
  return {
    title: title === "" ? manifest.notebook : title,
    touched: differences.some(({ kind }) => kind !== "library"),
    differences,
    rows: movedRows(stated, fresh),
  };
}

type Check = Results["checks"][number];

function movedRows(before: Results, after: Results): readonly ImpactRow[] {
  const nameOf = ({ ledger, title }: Check): string => (ledger === undefined ? title : `${ledger}: ${title}`);
  const [old, now] = [
    new Map(before.checks.map((check) => [nameOf(check), check])),
    new Map(after.checks.map((check) => [nameOf(check), check])),
  ];
  const side = (check: Check | undefined): ImpactRow["before"] =>
    check === undefined ? { state: "" } : { state: check.state, ...(check.margin === undefined ? {} : { margin: check.margin }) };
  const rows = [...new Set([...old.keys(), ...now.keys()])].map(
    (title): ImpactRow => ({ title, before: side(old.get(title)), after: side(now.get(title)) }),
  );
  const least = (row: ImpactRow): number => row.after.margin ?? (row.after.state === "fails" ? -1 : Number.POSITIVE_INFINITY);
  return rows.filter(({ before: a, after: b }) => a.state !== b.state || a.margin !== b.margin).sort((a, b) => least(a) - least(b));
}
