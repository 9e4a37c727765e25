// The worked examples of a library: run as they stand, and run again with every number of the library changed in turn.

import { cellRange, placedChunks, readReference } from "../notebook/index.ts";
import { children, type Expression, type NumberLiteral, namesUsed, parseStatement, type StatementTree } from "../syntax/index.ts";
import type { Library } from "./api.ts";
import { dataTable, moduleNotebook } from "./library-names.ts";
import { createSession } from "./session.ts";

export interface ExampleResult {
  readonly module: string;
  readonly text: string;
  /** Formulas of the library that it calls. */
  readonly formulas: readonly string[];
  /** How its answer is known: read in a publication, remembered, or computed independently. */
  readonly known: "read" | "memory" | "computed";
  readonly passes: boolean;
  /** The value it gives. */
  readonly shown: string;
  readonly faults: readonly string[];
}

interface Statement {
  readonly module: string;
  readonly text: string;
  /** Offset in the module's text. */
  readonly from: number;
}

const FILE = "examples.joint.md";

const statementsOf = (library: Library): readonly Statement[] =>
  library.modules.flatMap((module) =>
    [...placedChunks(moduleNotebook(module))].map(({ chunk, from }) => ({ module: module.name, text: chunk.text, from })),
  );

const isFormula = (statement: Statement): boolean => /^formula\s/.test(statement.text);
const isExample = (statement: Statement): boolean => /^example\s/.test(statement.text);

/** Names of the formulas that each module declares. */
export function libraryFormulas(library: Library): ReadonlyMap<string, readonly string[]> {
  const out = new Map<string, string[]>(library.modules.map((module) => [module.name, []]));
  for (const statement of statementsOf(library).filter(isFormula)) {
    const { tree } = parseStatement(statement.text);
    if (tree.kind === "formula") out.get(statement.module)?.push(tree.name.name);
  }
  return out;
}

/** Runs every example of the library, or of one module, in the order of the text. */
export function runExamples(library: Library, module?: string): readonly ExampleResult[] {
  const formulas = new Set([...libraryFormulas(library).values()].flat());
  const examples = statementsOf(library).filter(
    (statement) => isExample(statement) && (module === undefined || statement.module === module),
  );
  const outcomes = outcomesOf(library, examples);
  return examples.map((example, i) => {
    const outcome = outcomes[i];
    const { tree } = parseStatement(example.text);
    const { level, key } = readReference(tree.columns?.reference ?? "");
    return {
      module: example.module,
      text: example.text,
      formulas: namesUsed(tree).filter((name) => formulas.has(name)),
      known: level === "memory" ? "memory" : level === "published" && key !== "recomputed" ? "read" : "computed",
      passes: outcome?.example?.state === "passes",
      shown: outcome?.example?.shown ?? "",
      faults: outcome?.diagnostics.filter((each) => each.severity === "fault").map((each) => each.message) ?? [],
    };
  });
}

/** Examples run as a notebook of their own over a library. */
function outcomesOf(library: Library, examples: readonly Statement[]) {
  const session = createSession(library);
  session.put(FILE, ["```calc", ...examples.map((example) => example.text), "```", ""].join("\n"));
  return session.outputs(FILE).filter((line) => line.kind === "example");
}

export interface Perturbation {
  readonly module: string;
  /** The file the number stands in, its line there (from 1), and the line's text. */
  readonly file: string;
  readonly line: number;
  readonly text: string;
  readonly number: string;
  /** `bound`: one side of a comparison, which says which branch serves and goes into no result. */
  readonly kind: "constant" | "bound" | "cell";
  readonly noticed: boolean;
}

interface Place {
  readonly module: string;
  /** The library's name that the number belongs to: a formula, a constant, a table. */
  readonly owner: string;
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly kind: Perturbation["kind"];
}

/**
 * Makes numbers of the library one per cent larger, one at a time, and says whether an example notices: constants of
 * formulas, bounds in conditions, cells of tables with a unit. Left out: `require` and `valid`, which go into no result;
 * exponents, which are no measured numbers; zeros, which one per cent does not change. `every`: takes each `every`th of them.
 * `step` hears how far it has come.
 */
export function perturb(
  library: Library,
  module: string | undefined,
  step: (done: number, of: number) => void,
  every = 1,
): readonly Perturbation[] {
  const modules = library.modules.filter((each) => module === undefined || each.name === module);
  const statements = statementsOf(library);
  const reach = reachOf(statements);
  const examples = statements.filter(isExample).map((example) => ({ example, reaches: reach(parseStatement(example.text).tree) }));
  const all = modules.flatMap((each) => [...constantsOf(each.name, statements), ...cellsOf(each, library)]);
  const places = all.filter((_, i) => i % every === 0);
  const part = partOf(library, statements);
  return places.map((place, i) => {
    step(i, places.length);
    const touched = examples.filter(({ reaches }) => reaches.has(place.owner)).sort((a, b) => a.reaches.size - b.reaches.size);
    const text = textOf(library, place.file);
    const lineFrom = text.lastIndexOf("\n", place.from - 1) + 1;
    const lineTo = text.indexOf("\n", place.from);
    return {
      module: place.module,
      file: place.file,
      line: text.slice(0, place.from).split("\n").length,
      text: text.slice(lineFrom, lineTo < 0 ? text.length : lineTo).trim(),
      number: text.slice(place.from, place.to),
      kind: place.kind,
      noticed: noticed(part, place, touched),
    };
  });
}

interface Reaching {
  readonly example: Statement;
  readonly reaches: ReadonlySet<string>;
}

/** The examples that reach least are nearest to the number, and one of the first mostly fails; so a few run before all the others. */
function noticed(part: ReturnType<typeof partOf>, place: Place, nearestFirst: readonly Reaching[]): boolean {
  for (let from = 0, size = 1; from < nearestFirst.length; from += size, size *= 2) {
    const batch = nearestFirst.slice(from, from + size);
    const names = new Set(batch.flatMap(({ reaches }) => [...reaches]));
    const outcomes = outcomesOf(
      part(names, place),
      batch.map(({ example }) => example),
    );
    if (outcomes.some((line) => line.example?.state !== "passes")) return true;
  }
  return false;
}

/** The library names that a statement reaches over those it uses. */
function reachOf(statements: readonly Statement[]): (tree: StatementTree) => ReadonlySet<string> {
  const uses = new Map<string, readonly string[]>();
  for (const statement of statements) {
    const { tree } = parseStatement(statement.text);
    const name = "name" in tree ? tree.name?.name : undefined;
    if (name !== undefined) uses.set(name, namesUsed(tree));
  }
  return (tree) => {
    const reached = new Set<string>();
    const waiting = [...namesUsed(tree)];
    for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
      if (reached.has(name)) continue;
      reached.add(name);
      waiting.push(...(uses.get(name) ?? []));
    }
    return reached;
  };
}

const textOf = (library: Library, file: string): string =>
  [...library.modules, ...library.files].find((each) => each.name === file)?.text ?? "";

function constantsOf(module: string, statements: readonly Statement[]): readonly Place[] {
  const places: Place[] = [];
  for (const statement of statements.filter((each) => each.module === module)) {
    const { tree } = parseStatement(statement.text);
    if (tree.kind !== "formula" && tree.kind !== "definition") continue;
    for (const { literal, bound } of expressionsWithNumbers(tree).flatMap((each) => literalsOf(each, false))) {
      const digits = /^[\d_.]+(?:e[+-]?\d+)?/i.exec(statement.text.slice(literal.range.from))?.[0] ?? "";
      const from = statement.from + literal.range.from;
      if (Number(literal.digits) === 0) continue;
      places.push({ module, owner: tree.name.name, file: module, from, to: from + digits.length, kind: bound ? "bound" : "constant" });
    }
  }
  return places;
}

function expressionsWithNumbers(tree: Extract<StatementTree, { kind: "formula" | "definition" }>): readonly Expression[] {
  if (tree.kind === "definition") return [tree.value];
  const steps = tree.steps.filter((each) => each.kind === "step" || each.kind === "result").map((each) => each.value);
  return [...steps, ...tree.parameters.flatMap((each) => (each.default === undefined ? [] : [each.default]))];
}

/** Number literals that measure something: no exponents, no places of items; inside a comparison they are bounds. */
function literalsOf(expression: Expression, bound: boolean): readonly { readonly literal: NumberLiteral; readonly bound: boolean }[] {
  if (expression.kind === "number") return [{ literal: expression, bound }];
  if (expression.kind === "binary" && expression.operator === "^") return literalsOf(expression.left, bound);
  if (expression.kind === "index") return literalsOf(expression.of, bound);
  return children(expression).flatMap((child) => literalsOf(child, bound || expression.kind === "compare"));
}

const USE = /^use\s+"([^"]*)"\s+as\s+([\p{L}_][\p{L}\p{M}\p{N}_]*)/gmu;

function cellsOf(module: Library["modules"][number], library: Library): readonly Place[] {
  return [...module.text.matchAll(USE)].flatMap(([, name, owner = ""]) => {
    const file = library.files.find((each) => each.name === name);
    if (file === undefined) return [];
    const table = dataTable(file);
    return table.heads.flatMap((head, column) =>
      head.unit === undefined
        ? []
        : table.rows.flatMap((row, at) => {
            const cell = row[column] ?? "";
            if (cell === "" || Number(cell) === 0) return [];
            const range = cellRange(file.text, table, at, column);
            return [{ module: module.name, owner, file: file.name, from: range.from, to: range.to, kind: "cell" as const }];
          }),
    );
  });
}

/**
 * What examples need of a library and no more, as one module, one number of it made one per cent larger: reading a whole library
 * again takes twenty times as long as running an example. Records and families come along, for types name them.
 */
function partOf(library: Library, statements: readonly Statement[]): (names: ReadonlySet<string>, place: Place) => Library {
  const named = statements.flatMap((statement) => {
    const { tree } = parseStatement(statement.text);
    const name = tree.kind === "use" ? tree.prefix.name : "name" in tree ? tree.name?.name : undefined;
    return name === undefined ? [] : [{ statement, name, always: tree.kind === "recordDeclaration" || tree.kind === "family" }];
  });
  return (names, place) => {
    const needed = named.filter(({ name, always }) => always || names.has(name));
    const texts = needed.map(({ statement }) =>
      statement.module === place.file && statement.from <= place.from && place.to <= statement.from + statement.text.length
        ? withMore(statement.text, place.from - statement.from, place.to - statement.from)
        : statement.text,
    );
    const files = library.files.filter((file) => texts.some((text) => text.startsWith(`use "${file.name}"`)));
    return {
      ...library,
      sources: "",
      modules: [{ name: place.module, text: ["```calc", ...texts, "```", ""].join("\n") }],
      files: files.map((file) => (file.name === place.file ? { name: file.name, text: withMore(file.text, place.from, place.to) } : file)),
    };
  };
}

const withMore = (text: string, from: number, to: number): string =>
  text.slice(0, from) + String(Number(text.slice(from, to).replaceAll("_", "")) * 1.01) + text.slice(to);
