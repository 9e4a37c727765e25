// Which formulas a notebook comes to use, and what their worked examples say of them, run anew for the sheet.

import { type ReferenceColumn, readReference } from "../notebook/index.ts";
import { createSession, type Library, type LineOutput } from "../session/index.ts";
import { namesUsed, parseStatement, type StatementTree } from "../syntax/index.ts";
import type { Book } from "./book.ts";
import type { LibraryExample } from "./library-index.ts";

export interface VerifiedExample {
  /** `stress_area(thread("M5")) == 14.18 mm^2 ± 0.01 mm^2` */
  readonly text: string;
  /** Its note and its source. */
  readonly citation: string;
  /** Its source alone. */
  readonly source: string;
  readonly known: "published" | "memory" | "computed";
  readonly state: "passes" | "fails" | "open";
  readonly shown: string;
}

export interface VerifiedFormula {
  readonly name: string;
  /** The library's module, or the notebook that declares it. */
  readonly module: string;
  readonly note: string;
  readonly citation: string;
  readonly examples: readonly VerifiedExample[];
}

const FILE = "worked-examples.joint.md";

/** Formulas of the notebook first, then those of the library that its lines reach, each with every example that calls it by name. */
export function verification(book: Book): readonly VerifiedFormula[] {
  return [...ownFormulas(book), ...libraryFormulas(book)];
}

/** Names of the library that the working and the prose reach. */
export function usedLibraryNames(book: Book): readonly string[] {
  const names = new Set<string>();
  const own = new Set<string>();
  for (const { tree } of book.lines.values()) {
    for (const name of namesUsed(tree)) names.add(name);
    if (tree.kind === "definition" || tree.kind === "formula") own.add(tree.name.name);
  }
  return book.index.reach([...names].filter((name) => !own.has(name)));
}

function ownFormulas(book: Book): readonly VerifiedFormula[] {
  const lines = [...book.lines.values()];
  return lines.flatMap(({ tree }): VerifiedFormula[] => {
    if (tree.kind !== "formula") return [];
    const examples = lines.flatMap(({ tree: other, output, text }) =>
      other.kind === "example" && namesUsed(other).includes(tree.name.name) ? [exampleOf(other, text, output, book)] : [],
    );
    return [
      {
        name: tree.name.name,
        module: book.file,
        note: tree.columns?.note ?? "",
        citation: book.cite(readReference(tree.columns?.reference ?? "")),
        examples,
      },
    ];
  });
}

function libraryFormulas(book: Book): readonly VerifiedFormula[] {
  const formulas = usedLibraryNames(book).flatMap((name) => {
    const statement = book.index.statement(name);
    return statement?.tree.kind === "formula" ? [statement] : [];
  });
  const all = book.index.examples();
  const of = new Map(formulas.map(({ name }) => [name, examplesOf(name, all)]));
  const examples = [...new Set([...of.values()].flat())];
  const outcomes = run(
    book.library,
    examples.map(({ text }) => text),
  );
  return formulas.map(({ name, module, tree }) => ({
    name,
    module,
    note: tree.columns?.note ?? "",
    citation: book.cite(readReference(tree.columns?.reference ?? "")),
    examples: (of.get(name) ?? []).map(({ text }) => exampleOf(parseStatement(text).tree, text, outcomes.get(text), book)),
  }));
}

/** Examples about a formula; where there are none, those that call it on the way. */
function examplesOf(name: string, all: readonly LibraryExample[]): readonly LibraryExample[] {
  const about = all.filter((example) => example.about === name);
  return about.length > 0 ? about : all.filter(({ uses }) => uses.has(name));
}

const known = new WeakMap<Library, Map<string, LineOutput>>();

/** Examples run as a notebook of their own; what one library's example gave is remembered. */
function run(library: Library, texts: readonly string[]): ReadonlyMap<string, LineOutput> {
  const outcomes = known.get(library) ?? new Map<string, LineOutput>();
  known.set(library, outcomes);
  const wanted = [...new Set(texts)].filter((text) => !outcomes.has(text));
  if (wanted.length === 0) return outcomes;
  const session = createSession(library);
  session.put(FILE, ["```calc", ...wanted, "```", ""].join("\n"));
  const outputs = session.outputs(FILE).filter(({ kind }) => kind === "example");
  wanted.forEach((text, i) => {
    const output = outputs[i];
    if (output !== undefined) outcomes.set(text, output);
  });
  return outcomes;
}

function exampleOf(tree: StatementTree, text: string, output: LineOutput | undefined, book: Book): VerifiedExample {
  const reference = readReference(tree.columns?.reference ?? "");
  return {
    text: text
      .slice(tree.working.from, tree.working.to)
      .replace(/^example\s+/, "")
      .replace(/\s+/g, " "),
    source: book.cite(reference),
    citation: [tree.columns?.note ?? "", book.cite(reference)].filter((part) => part !== "").join("; "),
    known: knownBy(reference),
    state: output?.example?.state ?? "open",
    shown: output?.example?.shown ?? "",
  };
}

function knownBy({ level, key }: ReferenceColumn): VerifiedExample["known"] {
  if (level === "memory") return "memory";
  return level === "published" && key !== "recomputed" && key !== "statics" ? "published" : "computed";
}
