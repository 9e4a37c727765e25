// One file of a session: its parts, its statements by chunk and by name, and what an edit changed among them.

import {
  type Chunk,
  type CsvPart,
  type CsvTable,
  differences,
  type FrontMatter,
  type Notebook,
  type Part,
  placedChunks,
  readCsv,
  readFrontMatter,
  readNotebook,
} from "../notebook/index.ts";
import { normalName } from "../syntax/index.ts";
import { parseChunk, type Statement } from "./statement.ts";

export interface FileState {
  readonly file: string;
  notebook: Notebook;
  /** Statements by the chunk or csv part they stand for. */
  readonly statements: Map<Chunk | CsvPart, Statement>;
  /** Every statement that declares a name; the first in the text has it. */
  readonly byName: Map<string, Statement[]>;
  /** Statements without a name, by text. */
  readonly byText: Map<string, Statement[]>;
  /** Statements in which a symbol stands alone after a number. */
  readonly exposed: Map<string, Set<Statement>>;
  front: FrontMatter;
}

export interface FileChange {
  readonly removed: readonly Statement[];
  /** New statements, and old ones whose key changed. */
  readonly added: readonly Statement[];
  /** What the old ones among them were called before. */
  readonly renamed: readonly Renamed[];
  /** Names whose meaning in this file may be another. */
  readonly names: ReadonlySet<string>;
  readonly symbols: ReadonlySet<string>;
  readonly frontChanged: boolean;
  /** Prose parts came or went. */
  readonly proseChanged: boolean;
  /** Ids may stand in another order. */
  readonly reordered: boolean;
}

export interface Renamed {
  readonly statement: Statement;
  readonly oldKey: string;
  readonly oldId: string;
}

/** Of a notebook without front matter: every field empty. */
export const emptyFront = readFrontMatter("");

export const newFile = (file: string): FileState => ({
  file,
  notebook: readNotebook(""),
  statements: new Map(),
  byName: new Map(),
  byText: new Map(),
  exposed: new Map(),
  front: emptyFront,
});

/** Takes a new reading of the file in; `base` makes the full name of what it declares. */
export function takeNotebook(state: FileState, now: Notebook, fullName: (name: string) => string): FileChange {
  const diff = differences(state.notebook, now);
  const names = new Set<string>();
  const symbols = new Set<string>();
  const removed: Statement[] = [];
  const gone = [...diff.removed, ...diff.removedParts.filter(isNamedCsv)];
  for (const piece of gone) {
    const statement = state.statements.get(piece);
    if (statement === undefined) continue;
    state.statements.delete(piece);
    drop(state, statement, names, symbols);
    removed.push(statement);
  }
  const added: Statement[] = [];
  for (const chunk of diff.added) added.push(put(state, chunk, read(state.file, chunk), names, symbols));
  for (const part of diff.addedParts.filter(isNamedCsv)) added.push(put(state, part, readCsvStatement(state.file, part), names, symbols));
  state.notebook = now;
  const renamed = nameStatements(state, added, names, fullName);
  const frontChanged = [...diff.addedParts, ...diff.removedParts].some((part) => part.kind === "front");
  if (frontChanged) {
    const front = now.parts[0];
    state.front = front?.kind === "front" ? readFrontMatter(front.text) : emptyFront;
  }
  const sameIds = removed.length === added.length && removed.every((statement, i) => statement.id === added[i]?.id);
  return {
    removed,
    added: [...added, ...renamed.map((each) => each.statement)],
    renamed,
    names,
    symbols,
    frontChanged,
    proseChanged: [...diff.addedParts, ...diff.removedParts].some((part) => part.kind === "prose"),
    reordered: !sameIds || diff.addedParts.length > 0 || diff.removedParts.length > 0 || renamed.length > 0,
  };
}

const isNamedCsv = (part: Part): part is CsvPart => part.kind === "csv" && part.name !== undefined;

type Fresh = Omit<Statement, "key" | "id"> & { key: string; id: string };

function read(file: string, chunk: Chunk): Fresh {
  const parsed = parseChunk(chunk);
  return { key: "", id: "", file, text: chunk.text, ...parsed, checked: undefined, own: [] };
}

function readCsvStatement(file: string, part: CsvPart): Fresh {
  const at = { from: part.name?.from ?? 0, to: part.name?.to ?? 0 };
  return {
    key: "",
    id: "",
    file,
    text: part.text,
    tree: { kind: "remark", range: at, working: at },
    csv: part,
    syntax: [],
    name: normalName(part.name?.text ?? ""),
    uses: [],
    exposed: [],
    checked: undefined,
    own: [],
  };
}

function put(state: FileState, piece: Chunk | CsvPart, statement: Fresh, names: Set<string>, symbols: Set<string>): Statement {
  state.statements.set(piece, statement);
  const list = statement.name === undefined ? listAt(state.byText, statement.text) : listAt(state.byName, statement.name);
  list.push(statement);
  if (statement.name !== undefined) names.add(statement.name);
  for (const symbol of statement.exposed) {
    const set = state.exposed.get(symbol);
    if (set === undefined) state.exposed.set(symbol, new Set([statement]));
    else set.add(statement);
    symbols.add(symbol);
  }
  return statement;
}

function drop(state: FileState, statement: Statement, names: Set<string>, symbols: Set<string>): void {
  const [map, key] = statement.name === undefined ? [state.byText, statement.text] : [state.byName, statement.name];
  const list = map.get(key)?.filter((other) => other !== statement) ?? [];
  if (list.length === 0) map.delete(key);
  else map.set(key, list);
  if (statement.name !== undefined) names.add(statement.name);
  for (const symbol of statement.exposed) {
    const set = state.exposed.get(symbol);
    set?.delete(statement);
    if (set?.size === 0) state.exposed.delete(symbol);
    symbols.add(symbol);
  }
}

function listAt(map: Map<string, Statement[]>, key: string): Statement[] {
  const list = map.get(key);
  if (list !== undefined) return list;
  const made: Statement[] = [];
  map.set(key, made);
  return made;
}

/** Gives every statement of the touched names and texts its key; says which old statements got another one. */
function nameStatements(
  state: FileState,
  added: readonly Statement[],
  names: ReadonlySet<string>,
  fullName: (name: string) => string,
): Renamed[] {
  const fresh = new Set(added);
  const renamed: Renamed[] = [];
  let order: Map<Chunk | CsvPart, number> | undefined;
  for (const name of names) {
    const list = state.byName.get(name);
    if (list === undefined) continue;
    if (list.length > 1) {
      order ??= orderOf(state.notebook);
      const places = new Map([...state.statements].map(([piece, statement]) => [statement, order?.get(piece) ?? 0]));
      list.sort((a, b) => (places.get(a) ?? 0) - (places.get(b) ?? 0));
    }
    list.forEach((statement, i) => {
      const id = i === 0 ? name : `${name}~${i + 1}`;
      if (statement.id === id) return;
      if (!fresh.has(statement)) renamed.push({ statement, oldKey: statement.key, oldId: statement.id });
      rename(statement, id, fullName);
    });
  }
  for (const statement of added) {
    if (statement.name !== undefined) continue;
    const list = state.byText.get(statement.text) ?? [];
    const taken = new Set(list.map((other) => other.id));
    let count = 1;
    const base = `?${statement.text}`;
    while (taken.has(count === 1 ? base : `${base}~${count}`)) count += 1;
    rename(statement, count === 1 ? base : `${base}~${count}`, fullName);
  }
  return renamed;
}

function rename(statement: Statement, id: string, fullName: (name: string) => string): void {
  const open = statement as { key: string; id: string };
  open.id = id;
  open.key = fullName(id);
}

function orderOf(notebook: Notebook): Map<Chunk | CsvPart, number> {
  const order = new Map<Chunk | CsvPart, number>();
  for (const placed of placedChunks(notebook)) order.set(placed.chunk, placed.from);
  notebook.parts.forEach((part, i) => {
    if (part.kind === "csv") order.set(part, notebook.starts[i] ?? 0);
  });
  return order;
}

const tables = new WeakMap<CsvPart, CsvTable>();

/** The table of a csv part, read once. */
export function csvOf(part: CsvPart): CsvTable {
  const known = tables.get(part);
  if (known !== undefined) return known;
  const table = readCsv(part.body);
  tables.set(part, table);
  return table;
}
