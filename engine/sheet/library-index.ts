// The library's statements by name, read when first asked for; and which of them a notebook comes to use.

import { placedChunks, readNotebook } from "../notebook/index.ts";
import type { Library } from "../session/index.ts";
import { type Expression, namesUsed, normalName, parseStatement, type StatementTree } from "../syntax/index.ts";

export interface LibraryStatement {
  readonly module: string;
  readonly name: string;
  readonly text: string;
  readonly tree: StatementTree;
}

export interface LibraryIndex {
  readonly statement: (name: string) => LibraryStatement | undefined;
  /** Names of the library that these reach, themselves included, in the order they are reached. */
  readonly reach: (names: Iterable<string>) => readonly string[];
  /** Worked examples of the modules, with the names each uses, in the order of the modules. */
  readonly examples: () => readonly LibraryExample[];
}

export interface LibraryExample {
  readonly module: string;
  readonly text: string;
  readonly uses: ReadonlySet<string>;
  /** The formula whose answer it states: `f(x)`, `f(x).d`; absent where several are put together. */
  readonly about?: string;
}

const HEAD = /^(?:(?:formula|record|family)\s+)?([\p{L}_][\p{L}\p{M}\p{N}_]*)/u;
const OTHER = /^(?:check|example|use)\s/;

const known = new WeakMap<Library, LibraryIndex>();

/** One index a library, however many sheets are made with it. */
export function libraryIndex(library: Library): LibraryIndex {
  const made = known.get(library) ?? makeIndex(library);
  known.set(library, made);
  return made;
}

function calledFirst(expression: Expression): string | undefined {
  if (expression.kind === "member" || expression.kind === "index") return calledFirst(expression.of);
  return expression.kind === "call" && expression.callee.kind === "name" ? expression.callee.name : undefined;
}

function makeIndex(library: Library): LibraryIndex {
  const texts = new Map<string, { readonly module: string; readonly text: string }>();
  for (const module of library.modules) {
    for (const { chunk } of placedChunks(readNotebook(module.text))) {
      const head = OTHER.test(chunk.text) ? null : HEAD.exec(chunk.text);
      if (head !== null) texts.set(normalName(head[1] as string), { module: module.name, text: chunk.text });
    }
  }
  let examples: readonly LibraryExample[] | undefined;
  const readExamples = (): readonly LibraryExample[] =>
    library.modules.flatMap((module) =>
      [...placedChunks(readNotebook(module.text))]
        .filter(({ chunk }) => /^example\s/.test(chunk.text))
        .map(({ chunk }): LibraryExample => {
          const { tree } = parseStatement(chunk.text);
          const about = tree.kind === "example" ? calledFirst(tree.actual) : undefined;
          return { module: module.name, text: chunk.text, uses: new Set(namesUsed(tree)), ...(about === undefined ? {} : { about }) };
        }),
    );
  const statements = new Map<string, LibraryStatement>();
  const statement = (name: string): LibraryStatement | undefined => {
    const found = statements.get(name);
    const text = texts.get(name);
    if (found !== undefined || text === undefined) return found;
    const made = { module: text.module, name, text: text.text, tree: parseStatement(text.text).tree };
    statements.set(name, made);
    return made;
  };
  return {
    examples: () => {
      examples ??= readExamples();
      return examples;
    },
    statement,
    reach: (names) => {
      const reached = new Set<string>();
      const waiting = [...names];
      for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
        if (reached.has(name)) continue;
        const found = statement(name);
        if (found === undefined) continue;
        reached.add(name);
        waiting.push(...namesUsed(found.tree));
      }
      return [...reached];
    },
  };
}
