// What a calculation comes to, as data for machines: inputs, results, checks, each with SI value, unit, UCUM code, source and validity.

import { utf8 } from "../base/index.ts";
import { readReference } from "../notebook/index.ts";
import type { Grid, Library, LineOutput, Session } from "../session/index.ts";
import { type Book, checkRows, computedLines, inputRows, libraryDigest, openBook, sourceDigests, verification } from "../sheet/index.ts";

/** A number of a quantity, or a list of such; absent parts cannot be told. */
export interface NumberValue {
  /** SI; kelvin for a temperature point. */
  readonly si?: number | readonly number[];
  readonly value?: number | readonly number[];
  readonly unit?: string;
  readonly ucum?: string;
  readonly quantity?: string;
}

export interface InputEntry extends NumberValue {
  readonly name: string;
  readonly text: string;
  readonly range?: string;
  readonly note?: string;
  readonly reference?: string;
  readonly provenance: string;
  readonly confirmed?: boolean;
}

export interface ResultEntry extends NumberValue {
  readonly name: string;
  readonly text: string;
  readonly note?: string;
  readonly reference?: string;
  /** The weakest level that reached it, and the input that brought it. */
  readonly provenance?: string;
  readonly provenanceFrom?: string;
  readonly validity: "within" | readonly string[];
  readonly table?: {
    readonly columns: readonly { readonly head: string; readonly unit?: string }[];
    readonly rows: readonly (readonly string[])[];
    readonly count: number;
  };
}

export interface CheckEntry {
  readonly title: string;
  readonly ledger?: string;
  readonly state: string;
  readonly case?: string;
  readonly factor?: number;
  readonly demand?: string;
  readonly capacity?: string;
  readonly firstDamage?: string;
  readonly ultimate?: string;
  readonly utilisation?: number;
  readonly margin?: number;
  readonly worstCase: "not evaluated";
  readonly chanceOfFailing: "not evaluated";
  readonly weakest?: string;
  readonly validity: "within" | "outside";
  readonly reason?: string;
}

export interface Results {
  readonly format: "jointwright-results";
  readonly formatVersion: 1;
  readonly title: Readonly<Record<string, string>>;
  readonly notebook: string;
  readonly sources: readonly { readonly name: string; readonly sha256: string }[];
  readonly program: string;
  readonly library: { readonly version: string; readonly sha256: string };
  readonly inputs: readonly InputEntry[];
  readonly results: readonly ResultEntry[];
  readonly checks: readonly CheckEntry[];
  /** Formulas that can come to be used, each with its worked examples as they were run. */
  readonly verification: readonly {
    readonly formula: string;
    readonly module: string;
    readonly source: string;
    readonly examples: readonly {
      readonly text: string;
      readonly source: string;
      readonly known: string;
      readonly state: string;
      readonly gives: string;
    }[];
  }[];
  readonly faults: readonly { readonly line: number; readonly code: string; readonly message: string }[];
}

/** Reads the results of a notebook that the session holds. */
export function readResults(session: Session, library: Library, file: string, version: string): Results {
  const book = openBook(session, library, file);
  return {
    format: "jointwright-results",
    formatVersion: 1,
    title: Object.fromEntries(Object.entries(book.front.title).filter(([, value]) => value !== "")),
    notebook: file,
    sources: sourceDigests(session, file),
    program: version,
    library: { version: library.version, sha256: libraryDigest(library) },
    inputs: inputRows(book).map(
      ({ name, value, bounds, note, reference, citation, si, inUnit, unit, ucum }): InputEntry => ({
        name,
        text: value,
        ...told({ si, value: inUnit, unit, ucum, range: bounds, note, reference: citation }),
        provenance: reference.level,
        ...(reference.confirmed ? { confirmed: true } : {}),
      }),
    ),
    results: computedLines(book).map(({ output, tree }) =>
      resultOf(output, tree.kind === "definition" ? (tree.columns?.reference ?? "") : "", book),
    ),
    checks: checkRows(book).map(
      (row): CheckEntry => ({
        title: row.title,
        state: row.state,
        ...told({
          ledger: row.ledger,
          case: row.case,
          factor: row.factor === "" ? undefined : Number(row.factor),
          demand: row.demand,
          capacity: row.capacity,
          firstDamage: row.first,
          ultimate: row.ultimate,
          utilisation: row.utilisation,
          margin: row.utilisation === undefined || !(row.utilisation > 0) ? undefined : 1 / row.utilisation - 1,
        }),
        worstCase: "not evaluated",
        chanceOfFailing: "not evaluated",
        validity: row.outside ? "outside" : "within",
        ...told({ weakest: row.weakest, reason: row.reason }),
      }),
    ),
    verification: verification(book).map(({ name, module, citation, examples }) => ({
      formula: name,
      module,
      source: citation,
      examples: examples.map(({ text, citation: source, known, state, shown }) => ({ text, source, known, state, gives: shown })),
    })),
    faults: book.outputs.flatMap(({ diagnostics }) =>
      diagnostics
        .filter(({ severity }) => severity === "fault")
        .map(({ from, code, message }) => ({ line: book.text.slice(0, from).split("\n").length, code, message })),
    ),
  };
}

/** The entries that say something. */
function told<T extends Record<string, unknown>>(entries: T): { readonly [Key in keyof T]?: NonNullable<T[Key]> } {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined && value !== "")) as {
    readonly [Key in keyof T]?: NonNullable<T[Key]>;
  };
}

function resultOf(output: LineOutput, reference: string, book: Book): ResultEntry {
  const name = output.name ?? "";
  const outside = (output.marks?.outside ?? []).map(
    ({ formula, limit, note }) => `${formula}: ${limit}${note === undefined ? "" : ` (${note})`}`,
  );
  const provenance = output.marks?.provenance;
  return {
    name,
    text: output.value?.text ?? "",
    ...numbersOf(name, book),
    ...told({
      note: output.note,
      reference: book.cite(readReference(reference)),
      provenance: provenance?.level,
      provenanceFrom: provenance?.from,
    }),
    validity: outside.length === 0 ? "within" : outside,
    ...(output.grid === undefined ? {} : { table: tableOf(output.grid) }),
  };
}

function numbersOf(name: string, book: Book): NumberValue {
  const { result } = book.session.evaluate(name, { file: book.file });
  if (result === undefined) return {};
  const { si, inUnit, unit, ucum, quantity, value } = result;
  if (si !== undefined) return told({ si, value: inUnit, unit, ucum, quantity });
  if (!Array.isArray(value) || value.length === 0 || !value.every((item) => typeof item === "number")) return {};
  const items = value as readonly number[];
  // The unit that the list is shown in holds for every item.
  const written = /\] (.+)$/.exec(result.shown.full)?.[1] ?? "";
  const first = book.session.evaluate(`${name}[1]`, { file: book.file, ...(written === "" ? {} : { as: written }) }).result;
  const shown = itemsIn(result.shown.full, items.length);
  if (first?.unit !== written || shown.length !== items.length) return { si: items };
  return told({ si: items, value: shown, unit: first.unit, ucum: first.ucum, quantity: first.quantity });
}

/** The numbers of a shown list: `[18.55, 18.05] MPa`. */
function itemsIn(full: string, count: number): readonly number[] {
  const numbers = (/^\[(.*)\]/.exec(full)?.[1] ?? "").split(", ").map((item) => Number(item.split(" ")[0]));
  return numbers.length === count && numbers.every(Number.isFinite) ? numbers : [];
}

const tableOf = (grid: Grid): NonNullable<ResultEntry["table"]> => ({
  columns: grid.columns.map(({ head, unit }) => ({ head, ...(unit === "" ? {} : { unit }) })),
  rows: grid.rows.map(({ cells }) => cells.map((shown) => (shown.number === "" ? shown.text : shown.full))),
  count: grid.count,
});

/** UTF-8, two blanks a level, one line end at the end. */
export const resultsJson = (results: Results): Uint8Array => utf8(`${JSON.stringify(results, null, 2)}\n`);
