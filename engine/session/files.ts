// The files of a session and what a change of one does to the graphs.

import { nearest } from "../base/index.ts";
import { intrinsicTypes } from "../check/index.ts";
import { faults } from "../diagnostics/index.ts";
import { type Notebook, openText, readCsv } from "../notebook/index.ts";
import { type Provenance, readProvenance } from "../run/index.ts";
import { csvEntry } from "./csv-entry.ts";
import { ambiguousKey, defineStatement, type EngineState, fileKey, fullName } from "./engine-state.ts";
import { noMentions } from "./exported.ts";
import { type FileChange, type FileState, takeNotebook } from "./file-state.ts";
import { resolvePath } from "./paths.ts";
import type { Statement } from "./statement.ts";

export interface Files {
  readonly notebooks: Map<string, FileState>;
  readonly csv: Map<string, string>;
}

/** The file a `use` prefix of a notebook names. */
export function prefixTarget(files: Files, file: string, name: string): string | undefined {
  const statement = files.notebooks.get(file)?.byName.get(name)?.[0];
  return statement?.tree.kind === "use" ? resolvePath(file, statement.tree.file.value) : undefined;
}

/** Brings the graphs after a new reading of a notebook. The caller updates them. */
export function applyReading(engine: EngineState, files: Files, state: FileState, now: Notebook): FileChange {
  const change = takeNotebook(state, now, (name) => fullName(state.file, name));
  const prefixesBefore = change.removed.filter((statement) => statement.tree.kind === "use");
  const gone = [
    ...change.removed.map((statement) => ({ statement, key: statement.key })),
    ...change.renamed.map(({ statement, oldKey }) => ({ statement, key: oldKey })),
  ];
  for (const { statement, key } of gone) {
    if (engine.byKey.get(key) !== statement) continue;
    engine.byKey.delete(key);
    engine.gone.add(key);
    engine.types.remove(key);
    engine.values.remove(key);
  }
  updateAmbiguities(engine, state, change);
  const used = [...prefixesBefore, ...change.added.filter((statement) => statement.tree.kind === "use")];
  for (const statement of change.added) {
    statement.own = ownFaults(engine, state, statement);
    defineStatement(engine, statement);
  }
  if (used.length > 0) {
    // What `prefix.name` means has changed, so those that use the prefix need other keys.
    for (const use of used) for (const key of engine.types.dependants(fullName(state.file, use.name ?? ""))) redefine(engine, key);
    markUseFaults(engine, files);
  }
  return change;
}

function redefine(engine: EngineState, key: string): void {
  const statement = engine.byKey.get(key);
  if (statement !== undefined) defineStatement(engine, statement);
}

function ownFaults(engine: EngineState, state: FileState, statement: Statement): Statement["own"] {
  if (statement.name === undefined) return [];
  const at = "name" in statement.tree && statement.tree.name !== undefined ? statement.tree.name.range : statement.tree.working;
  if (statement.id === statement.name)
    return isLibraryName(engine, statement.name) ? [faults.shadowsLibrary(at, { name: statement.name })] : [];
  const first = state.byName.get(statement.name)?.[0];
  const related = first === undefined ? [] : [{ message: "defined here first", range: first.tree.working, statement: first.key }];
  return [faults.duplicateName(at, { name: statement.name }, { related })];
}

const isLibraryName = (engine: EngineState, name: string): boolean =>
  engine.library.pieces.has(name) || Object.hasOwn(intrinsicTypes, name) || name === "pi";

function updateAmbiguities(engine: EngineState, state: FileState, change: FileChange): void {
  for (const name of new Set([...change.names, ...change.symbols])) {
    const key = ambiguousKey(state.file, name);
    const both = state.byName.has(name) && state.exposed.has(name);
    if (both === engine.types.has(key)) continue;
    if (both) engine.types.define(key, { needs: [], compute: () => true });
    else engine.types.remove(key);
  }
}

/** Faults of `use` lines: files that are missing, files that use each other in a loop. */
function markUseFaults(engine: EngineState, files: Files): void {
  for (const state of files.notebooks.values()) {
    for (const list of state.byName.values()) {
      const statement = list[0];
      if (statement?.tree.kind !== "use") continue;
      const faultsNow = [...ownFaults(engine, state, statement), ...useFaults(files, state, statement)];
      if (faultsNow.length === statement.own.length && faultsNow.every((fault, i) => fault.message === statement.own[i]?.message)) continue;
      statement.own = faultsNow;
      defineStatement(engine, statement);
    }
  }
}

function useFaults(files: Files, state: FileState, statement: Statement): Statement["own"] {
  if (statement.tree.kind !== "use") return [];
  const target = resolvePath(state.file, statement.tree.file.value);
  const at = statement.tree.file.range;
  const known = [...files.notebooks.keys(), ...files.csv.keys()];
  if (!known.includes(target)) {
    const near = nearest(
      target,
      known.filter((name) => name !== state.file),
    );
    const mends = near === undefined ? [] : [{ label: `Write "${near}"`, changes: [{ ...at, insert: `"${near}"` }] }];
    return [faults.useMissingFile(at, { file: target, nearest: near }, { mends })];
  }
  const loop = fileLoop(files, state.file, target);
  return loop === undefined ? [] : [faults.useLoop(at, { loop: loop.join(", ") })];
}

/** The files from `start` over `target` back to `start`, if there is such a way. */
function fileLoop(files: Files, start: string, target: string): readonly string[] | undefined {
  const seen = new Set<string>();
  const queue: (readonly string[])[] = [[start, target]];
  for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
    const last = path[path.length - 1] as string;
    if (last === start) return path;
    if (seen.has(last)) continue;
    seen.add(last);
    for (const list of files.notebooks.get(last)?.byName.values() ?? []) {
      const use = list[0];
      if (use?.tree.kind === "use") queue.push([...path, resolvePath(last, use.tree.file.value)]);
    }
  }
  return undefined;
}

/** A file came or went: its node, and the `use` lines that name it. */
export function fileCame(engine: EngineState, files: Files, file: string): void {
  const key = fileKey(file);
  const text = files.csv.get(file);
  if (text !== undefined) {
    const made = csvEntry(key, readCsv(text));
    engine.types.define(key, { needs: [], compute: () => ({ entry: made.entry, mentions: noMentions }) });
    if (made.entry.entry === "value") engine.values.defineConstant(key, made.value, unsourced(file));
    else engine.values.remove(key);
  } else if (files.notebooks.has(file))
    engine.types.define(key, { needs: [], compute: () => ({ entry: { entry: "prefix", file }, mentions: noMentions }) });
  else {
    engine.types.remove(key);
    engine.values.remove(key);
  }
  markUseFaults(engine, files);
}

const unsourced = (file: string): Provenance => readProvenance("", file);

export const readFileText = (raw: string): string => openText(raw).text;
