// What the library holds, statement by statement, for a page that people read and for search.

import { citation, formatReference, readReference } from "../notebook/index.ts";
import { defaultLimits } from "../run/index.ts";
import { parseStatement, printExpression } from "../syntax/index.ts";
import type { Library } from "./api.ts";
import { buildValues } from "./build-values.ts";
import { headText } from "./complete.ts";
import { createEngine, ensureLibrary } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { runExamples } from "./library-examples.ts";
import { readLibrary } from "./library-names.ts";

export interface LibraryEntry {
  readonly module: string;
  readonly name: string;
  readonly kind: "formula" | "record" | "family" | "value";
  /** With its inferred types, e.g. "stress_area(t: Thread): Area". */
  readonly head: string;
  readonly note: string;
  readonly citation: string;
  /** Conditions of `require` and `valid`, with their notes. */
  readonly limits: readonly { readonly kind: "require" | "valid"; readonly condition: string; readonly note: string }[];
  /** Worked examples that call it: the statement without its columns, and its source. */
  readonly examples: readonly { readonly text: string; readonly citation: string }[];
}

/** Every public statement of the library, in the order of the modules. Throws where the library has a fault: the build's fault. */
export function libraryEntries(library: Library): readonly LibraryEntry[] {
  const names = readLibrary(library);
  const engine = createEngine(
    names,
    { natives: library.natives, limits: defaultLimits, describe: String },
    () => undefined,
    () => [],
  );
  for (const name of names.pieces.keys()) ensureLibrary(engine, name);
  buildValues(engine, engine.types.update().computed);
  const examples = runExamples(library);
  return [...names.pieces].flatMap(([name, { module }]): LibraryEntry[] => {
    const entry = (engine.types.value(name) as Exported | undefined)?.entry;
    const statement = engine.byKey.get(name);
    if (entry === undefined || statement === undefined || entry.entry === "prefix" || entry.entry === "native") return [];
    if (entry.entry === "faulty")
      throw new Error(
        `${module}: ${name}: ${[...statement.syntax, ...(statement.checked?.diagnostics ?? [])].map((each) => each.message).join(" ")}`,
      );
    const { tree } = statement;
    const steps = tree.kind === "formula" ? tree.steps : [];
    const cite = (reference: string | undefined): string => citation(readReference(reference ?? ""), names.sources);
    return [
      {
        module,
        name,
        kind: entry.entry === "value" ? "value" : entry.entry,
        head: headText(name, entry),
        note: tree.columns?.note ?? "",
        citation: cite(tree.columns?.reference),
        limits: steps.flatMap((step) =>
          step.kind === "require" || step.kind === "valid"
            ? [{ kind: step.kind, condition: printExpression(step.value), note: step.columns?.note ?? "" }]
            : [],
        ),
        examples: examples
          .filter((each) => each.formulas.includes(name))
          .map((each) => {
            const example = parseStatement(each.text).tree;
            return {
              text: each.text.slice(example.working.from, example.working.to).replace(/^example\s+/, ""),
              citation: cite(example.columns?.reference),
            };
          }),
      },
    ];
  });
}

/** The library as a Markdown page. */
export function libraryPage(library: Library): string {
  const entries = libraryEntries(library);
  const sources = [...readLibrary(library).sources.values()];
  const title = (module: string): string =>
    /^title:\s*(.*)$/m.exec(library.modules.find((each) => each.name === module)?.text ?? "")?.[1] ?? module;
  const modules = library.modules.map(({ name }) => {
    const own = entries.filter((entry) => entry.module === name);
    return [`## ${title(name)}`, "", `Module \`${name}\`.`, "", ...own.flatMap(entryLines)].join("\n");
  });
  return [
    "# Library",
    "",
    "Made from the modules by `npm run library`. Each formula can be opened in a trace, line by line. `valid` marks a result outside",
    "it, `require` stops. Results are an aid: local codes and licensed practice come first.",
    "",
    ...modules,
    "## Sources",
    "",
    ...sources.map((source) => `- \`${source.id}\` ${formatReference(source)}`),
    "",
  ].join("\n");
}

function entryLines(entry: LibraryEntry): readonly string[] {
  return [
    `### \`${entry.head}\``,
    "",
    `${entry.note === "" ? "" : `${entry.note.charAt(0).toUpperCase()}${entry.note.slice(1)}.`}${entry.citation === "" ? "" : ` *${entry.citation}*`}`.trim(),
    "",
    ...entry.limits.map((limit) => `- ${limit.kind} \`${limit.condition}\`${limit.note === "" ? "" : `: ${limit.note}`}`),
    ...entry.examples.map((example) => `- example \`${example.text}\`${example.citation === "" ? "" : ` (${example.citation})`}`),
    ...(entry.limits.length + entry.examples.length === 0 ? [] : [""]),
  ];
}
