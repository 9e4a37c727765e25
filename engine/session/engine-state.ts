// The two graphs of a session: what names mean (types), then what they are worth (values and marks). The second is built
// from the first, because what a program needs is known only when it has been checked.

import { type Checked, checkStatement, type Entry, type Found, nativeType, type Scope } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { createGraph, type Graph } from "../graph/index.ts";
import type { RunContext } from "../run/index.ts";
import { namesUsed, parseHead } from "../syntax/index.ts";
import type { Kind } from "../units/index.ts";
import { csvEntry } from "./csv-entry.ts";
import { type Exported, mentionsOf, noMentions, sameExported } from "./exported.ts";
import { csvOf } from "./file-state.ts";
import { dataTable, type LibraryNames } from "./library-names.ts";
import { namePlace, parseChunk, type Statement } from "./statement.ts";
import { createValues, type Values } from "./values.ts";

export interface EngineState {
  readonly types: Graph;
  readonly values: Values;
  readonly library: LibraryNames;
  /** Every statement that has nodes, by key. */
  readonly byKey: Map<string, Statement>;
  /** As which kinds the values without one are used: by key, then by the key of the statement that does. */
  readonly kindUses: Map<string, Map<string, Kind>>;
  readonly kindsUsedBy: Map<string, readonly string[]>;
  /** Keys whose statements went away since the last update: nothing computes them, and what they said of others must go too. */
  readonly gone: Set<string>;
  /** The target of a `use` prefix in a file; undefined when the name is no prefix there. */
  readonly prefix: (file: string, name: string) => string | undefined;
  /** Names that a file declares, for near misses. */
  readonly ownNames: (file: string) => Iterable<string>;
}

export const ambiguousKey = (file: string, name: string): string => `ambiguous:${file}#${name}`;
export const fileKey = (file: string): string => `file:${file}`;
export const fullName = (file: string, name: string): string => (file === "" ? name : `${file}#${name}`);

export function createEngine(
  library: LibraryNames,
  context: RunContext,
  prefix: EngineState["prefix"],
  ownNames: EngineState["ownNames"],
): EngineState {
  const byKey = new Map<string, Statement>();
  const types = createGraph({
    onThrow: (error, key) => {
      const statement = byKey.get(key);
      const observed = error instanceof Error ? error.message : String(error);
      if (statement !== undefined) statement.checked = faultyChecked([faults.internal(statement.tree.working, { observed })]);
      return faultyExport(key);
    },
  });
  return {
    types,
    values: createValues(context),
    library,
    byKey,
    kindUses: new Map(),
    kindsUsedBy: new Map(),
    gone: new Set(),
    prefix,
    ownNames,
  };
}

const faultyExport = (name: string): Exported => ({ entry: { entry: "faulty", name }, mentions: noMentions });

const faultyChecked = (diagnostics: readonly Diagnostic[]): Checked => ({
  diagnostics,
  program: "none",
  type: { type: "unknown" },
  input: false,
  ratio: false,
  strict: false,
  kindUses: new Map(),
});

// ---------------------------------------------------------------------------------------------- names to keys

/** The keys a name may mean in a file, the nearest first. Library statements get their nodes when first named. */
export function keysOf(engine: EngineState, file: string, name: string): readonly string[] {
  const dot = name.indexOf(".");
  if (dot > 0) {
    const target = engine.prefix(file, name.slice(0, dot));
    return target === undefined ? [] : [fullName(target, name.slice(dot + 1))];
  }
  // The library's own names are given nodes by the walk that called for them (ensureLibrary).
  if (file === "") return hasLibraryName(engine, name) ? [name] : [];
  const own = fullName(file, name);
  return ensureLibrary(engine, name) ? [own, name] : [own];
}

/** Gives a library name its node, and the names it uses theirs; false when the library has no such name. */
export function ensureLibrary(engine: EngineState, name: string): boolean {
  if (!hasLibraryName(engine, name)) return false;
  const waiting = [name];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (engine.types.has(next)) continue;
    const uses = defineLibraryName(engine, next);
    for (const used of uses) if (hasLibraryName(engine, used) && !engine.types.has(used)) waiting.push(used);
  }
  return true;
}

const hasLibraryName = (engine: EngineState, name: string): boolean =>
  engine.library.pieces.has(name) || Object.hasOwn(engine.library.library.natives, name);

function defineLibraryName(engine: EngineState, name: string): readonly string[] {
  const piece = engine.library.pieces.get(name);
  if (piece === undefined) return defineNative(engine, name);
  const base = { key: name, id: name, file: "", checked: undefined, own: [], name };
  if ("bodyFrom" in piece.piece) {
    const at = { from: 0, to: 0 };
    const statement: Statement = {
      ...base,
      text: piece.piece.text,
      tree: { kind: "remark", range: at, working: at },
      csv: piece.piece,
      syntax: [],
      uses: [],
      exposed: [],
    };
    defineStatement(engine, statement);
    return [];
  }
  const statement: Statement = { ...base, text: piece.piece.text, ...parseChunk(piece.piece), name };
  defineStatement(engine, statement);
  return statement.uses;
}

function defineNative(engine: EngineState, name: string): readonly string[] {
  const native = engine.library.library.natives[name];
  const head = parseHead(native?.head ?? "");
  const at = { from: 0, to: 0 };
  const uses = namesUsed({
    kind: "formula",
    range: at,
    working: at,
    name: head.name ?? { name, text: name, range: at },
    parameters: head.parameters,
    steps: [],
    braced: false,
    ...(head.type === undefined ? {} : { type: head.type }),
  });
  const keys = uses.filter((used) => hasLibraryName(engine, used));
  engine.types.define(name, {
    needs: keys,
    equal: sameExported,
    compute: (values) => {
      const seen = new Map(keys.map((key, i) => [key, values[i] as Exported | undefined]));
      const scope = scopeOf(engine, "", seen);
      const entry: Entry = { entry: "native", name, type: nativeType(head, scope) };
      return { entry, mentions: mentionsOf(entry, gather(seen)) };
    },
  });
  return keys;
}

// ---------------------------------------------------------------------------------------------- the type node of a statement

export function defineStatement(engine: EngineState, statement: Statement): void {
  engine.byKey.set(statement.key, statement);
  const uses = statement.uses.map((name) => keysOf(engine, statement.file, name));
  const ambiguities =
    statement.file === ""
      ? []
      : [...new Set([...(statement.name === undefined ? [] : [statement.name]), ...statement.exposed])].map((name) =>
          ambiguousKey(statement.file, name),
        );
  const files = statement.tree.kind === "use" ? [fileKey(useTarget(engine, statement))] : [];
  const keys = [...new Set([...uses.flat(), ...ambiguities, ...files])].filter((key) => key !== "");
  engine.types.define(statement.key, {
    needs: keys,
    equal: sameExported,
    compute: (values) => {
      const seen = new Map(keys.map((key, i) => [key, values[i] as Exported | undefined]));
      return checkOne(engine, statement, seen);
    },
    loop: (loop) => {
      const names = loop.map((key) => key.slice(key.lastIndexOf("#") + 1));
      const first = names.indexOf(statement.name ?? "");
      const turned = first < 0 ? names : [...names.slice(first), ...names.slice(0, first)];
      statement.checked = faultyChecked([faults.loop(namePlace(statement.tree), { loop: [...turned, turned[0]].join(", ") })]);
      return faultyExport(statement.key);
    },
  });
}

const useTarget = (engine: EngineState, statement: Statement): string =>
  statement.name === undefined ? "" : (engine.prefix(statement.file, statement.name) ?? "");

function checkOne(engine: EngineState, statement: Statement, seen: ReadonlyMap<string, Exported | undefined>): Exported | undefined {
  const name = statement.name === undefined ? undefined : statement.key;
  const first = [...statement.syntax, ...statement.own];
  if (first.some((diagnostic) => diagnostic.severity === "fault")) {
    statement.checked = faultyChecked([]);
    return name === undefined ? undefined : faultyExport(name);
  }
  if (statement.csv !== undefined) return csvExport(statement);
  if (statement.tree.kind === "use") return useExport(engine, statement, seen);
  const scope = scopeOf(engine, statement.file, seen);
  const checked = checkStatement(statement.tree, scope);
  statement.checked = checked;
  const { entry } = checked;
  return entry === undefined ? undefined : { entry, mentions: mentionsOf(entry, gather(seen)) };
}

function csvExport(statement: Statement): Exported {
  const part = statement.csv;
  if (part === undefined) return faultyExport(statement.key);
  const made = csvEntry(statement.key, csvOf(part));
  const shift = part.bodyFrom;
  const diagnostics = made.diagnostics.map((diagnostic) => ({
    ...diagnostic,
    range: { from: diagnostic.range.from + shift, to: diagnostic.range.to + shift },
  }));
  statement.checked = {
    ...faultyChecked(diagnostics),
    type: made.entry.entry === "value" ? made.entry.type : { type: "unknown" },
    input: true,
  };
  statement.table = made.value;
  return { entry: made.entry, mentions: noMentions };
}

/** `use "x.csv"` is a table, `use "x.joint.md"` a prefix. */
function useExport(engine: EngineState, statement: Statement, seen: ReadonlyMap<string, Exported | undefined>): Exported {
  if (statement.file === "") {
    const made = csvEntry(statement.key, dataTable(engine.library.data.get(statement.key) ?? { name: statement.key, text: "" }));
    statement.checked = faultyChecked(made.diagnostics);
    statement.table = made.value;
    return { entry: made.entry.entry === "value" ? { ...made.entry, closed: true, input: false } : made.entry, mentions: noMentions };
  }
  const target = useTarget(engine, statement);
  const file = seen.get(fileKey(target));
  statement.checked = faultyChecked([]);
  if (file === undefined) return faultyExport(statement.key);
  if (file.entry.entry !== "value") return { entry: { entry: "prefix", file: target }, mentions: noMentions };
  statement.checked = { ...faultyChecked([]), type: file.entry.type, program: "value" };
  return { entry: { ...file.entry, name: statement.key }, mentions: noMentions };
}

// ---------------------------------------------------------------------------------------------- scope

const gather = (seen: ReadonlyMap<string, Exported | undefined>): ReadonlyMap<string, Entry> => {
  const all = new Map<string, Entry>();
  for (const exported of seen.values()) {
    // A need that only says "this name is ambiguous" exports nothing.
    if (exported?.entry === undefined) continue;
    const { entry } = exported;
    all.set(entry.entry === "prefix" ? `prefix:${entry.file}` : entry.name, entry);
    for (const [name, mentioned] of exported.mentions) all.set(name, mentioned);
  }
  return all;
};

/** How names are found while a statement of `file` is checked; `seen` has what its nodes need, by key. */
export function scopeOf(engine: EngineState, file: string, seen: ReadonlyMap<string, Exported | undefined>): Scope {
  let entries: ReadonlyMap<string, Entry> | undefined;
  const at = (key: string): Found | undefined => {
    const exported = seen.get(key);
    return exported?.entry === undefined ? undefined : { key, entry: exported.entry };
  };
  return {
    library: file === "",
    find: (name) => {
      const dot = name.indexOf(".");
      if (dot > 0) {
        const target = engine.prefix(file, name.slice(0, dot));
        return target === undefined ? undefined : at(fullName(target, name.slice(dot + 1)));
      }
      const own = file === "" ? undefined : at(fullName(file, name));
      if (own !== undefined) return own;
      const found = at(name);
      return found?.entry.entry === "native" && file !== "" ? undefined : found;
    },
    byFullName: (name) => {
      entries ??= gather(seen);
      return entries.get(name);
    },
    names: function* () {
      yield* engine.ownNames(file);
      yield* engine.library.pieces.keys();
    },
    namesBehind: (prefix) => engine.ownNames(engine.prefix(file, prefix) ?? ""),
    ambiguous: (name) => seen.get(ambiguousKey(file, name)) !== undefined,
    fullName: (name) => fullName(file, name),
  };
}
