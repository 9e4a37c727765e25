// One statement of a file as the session keeps it: read once, known by its name or by its text, never by its place.

import { type Checked, exposedSymbols } from "../check/index.ts";
import type { Diagnostic } from "../diagnostics/index.ts";
import type { Chunk, CsvPart } from "../notebook/index.ts";
import type { TableValue } from "../run/index.ts";
import { children, type Expression, namesUsed, parseStatement, type StatementTree } from "../syntax/index.ts";

export interface Statement {
  /** Full name (`file#name`, in the library the name) or `file#?text` for what has none: the key of its nodes. */
  readonly key: string;
  /** The part of the key that outputs go by. */
  readonly id: string;
  readonly file: string;
  readonly text: string;
  readonly tree: StatementTree;
  /** The csv part it stands for, instead of a chunk. */
  readonly csv?: CsvPart;
  readonly syntax: readonly Diagnostic[];
  /** The name it declares, normalised. */
  readonly name?: string;
  readonly uses: readonly string[];
  /** Symbols that stand alone after a number and could be names. */
  readonly exposed: readonly string[];
  /** Set by the last check of it. */
  checked: Checked | undefined;
  /** The value of a csv part. */
  table?: TableValue;
  /** A fault that the session itself found: defined twice, a loop, a file that is missing. */
  own: readonly Diagnostic[];
}

/** What is read from a chunk's text alone, kept while the chunk lives. */
export interface Parsed {
  readonly tree: StatementTree;
  readonly syntax: readonly Diagnostic[];
  readonly name?: string;
  readonly uses: readonly string[];
  readonly exposed: readonly string[];
}

const parsedChunks = new WeakMap<Chunk, Parsed>();

export function parseChunk(chunk: Chunk): Parsed {
  const known = parsedChunks.get(chunk);
  if (known !== undefined) return known;
  const { tree, diagnostics } = parseStatement(chunk.text);
  const name = declaredName(tree);
  const parsed: Parsed = {
    tree,
    syntax: diagnostics,
    uses: namesUsed(tree),
    exposed: exposedOf(tree),
    ...(name === undefined ? {} : { name }),
  };
  parsedChunks.set(chunk, parsed);
  return parsed;
}

function declaredName(tree: StatementTree): string | undefined {
  switch (tree.kind) {
    case "definition":
    case "formula":
    case "recordDeclaration":
    case "family":
      return tree.name.name;
    case "use":
      return tree.prefix.name;
    case "broken":
      return tree.name?.name;
    default:
      return undefined;
  }
}

/** Where the name stands in the statement's text, or its start. */
export function namePlace(tree: StatementTree): { readonly from: number; readonly to: number } {
  if ("name" in tree && tree.name !== undefined) return tree.name.range;
  return tree.kind === "use" ? tree.prefix.range : tree.working;
}

/** Every expression that stands directly in a statement. */
function expressionsOf(tree: StatementTree): readonly Expression[] {
  switch (tree.kind) {
    case "definition":
      return [tree.value];
    case "check":
      return tree.factor === undefined ? [tree.condition] : [tree.condition, tree.factor];
    case "formula":
      return tree.steps.map((step) => step.value);
    case "example":
      return [tree.actual, tree.expected];
    default:
      return [];
  }
}

function exposedOf(tree: StatementTree): readonly string[] {
  let found: string[] | undefined;
  const look = (expression: Expression): void => {
    if (expression.kind === "number") {
      if (expression.unit === undefined) return;
      for (const symbol of exposedSymbols(expression.unit.text)) {
        found ??= [];
        if (!found.includes(symbol)) found.push(symbol);
      }
      return;
    }
    for (const child of children(expression)) look(child);
  };
  for (const expression of expressionsOf(tree)) look(expression);
  return found ?? nothing;
}

const nothing: readonly string[] = [];
