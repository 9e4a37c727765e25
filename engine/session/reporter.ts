// What is to be told of each file: which outputs changed since the last snapshot, in which order they stand, the counts.

import { type Diagnostic, faults } from "../diagnostics/index.ts";
import type { Update } from "../graph/index.ts";
import { type Chunk, type CsvPart, type Part, placedChunks, type Reference } from "../notebook/index.ts";
import { preferenceFault, preferencesIn, preferences as readPreferences, type UnitSystem } from "../units/index.ts";
import type { EngineState } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { emptyFront, type FileChange, type FileState } from "./file-state.ts";
import type { Files } from "./files.ts";
import { liveOutput } from "./live.ts";
import { createLiveBook, type LiveBook, type LiveEntry } from "./live-book.ts";
import { lineOutput, type OutputContext, place } from "./outputs.ts";
import type { ShowOptions } from "./show.ts";
import type { LineOutput, Snapshot } from "./snapshot.ts";
import type { Statement } from "./statement.ts";
import { createTally, type Tally } from "./tally.ts";
import { keyOfMarks, marksKey } from "./values.ts";

export interface Reporter {
  readonly edited: (file: FileState, change: FileChange) => void;
  /** `kinds`: keys of values that are now used as other kinds. */
  readonly ran: (types: Update, values: Update, kinds: readonly string[]) => void;
  readonly forget: (file: string) => void;
  readonly snapshot: (file: string) => Snapshot;
  readonly outputs: (file: string) => readonly LineOutput[];
  readonly context: (file: FileState) => OutputContext;
  /** Every value of every file in the units of one system, or as the notebooks say. */
  readonly setSystem: (system: UnitSystem | undefined) => void;
}

/** What one file has not been told yet. */
interface Pending {
  revision: number;
  everything: boolean;
  readonly statements: Set<Statement>;
  readonly removed: Set<string>;
  reordered: boolean;
  readonly lives: LiveBook;
  readonly reran: Set<string>;
  readonly tally: Tally;
  /** What the title line said last. */
  problems: string;
}

const DIGITS = 4;

export function createReporter(engine: EngineState, files: Files): Reporter {
  const pendings = new Map<string, Pending>();
  let system: UnitSystem | undefined;
  let shows = new WeakMap<FileState["front"], { readonly show: ShowOptions; readonly problems: readonly Diagnostic[] }>();
  const references = new WeakMap<FileState["front"], ReadonlyMap<string, Reference>>();

  const pendingOf = (file: string): Pending => {
    const known = pendings.get(file);
    if (known !== undefined) return known;
    const made: Pending = {
      revision: 0,
      everything: true,
      statements: new Set(),
      removed: new Set(),
      reordered: true,
      lives: createLiveBook(engine),
      reran: new Set(),
      tally: createTally(),
      problems: "",
    };
    pendings.set(file, made);
    return made;
  };

  const showOf = (state: FileState): { readonly show: ShowOptions; readonly problems: readonly Diagnostic[] } => {
    const known = shows.get(state.front);
    if (known !== undefined) return known;
    const map = Object.fromEntries([...state.front.units].map(([key, placed]) => [key, placed.text]));
    const { preferences: own, problems } = readPreferences(map);
    const preferences = system === undefined ? own : preferencesIn(system, own);
    const made = {
      problems: problems.map((problem) => preferenceFault(problem, state.front.units.get(problem.key) ?? { from: 0, to: 0 })),
      show: { preferences, digits: state.front.digits ?? DIGITS, record: (name: string) => recordEntry(engine, name), system },
    };
    shows.set(state.front, made);
    return made;
  };

  const referencesOf = (state: FileState): ReadonlyMap<string, Reference> => {
    const known = references.get(state.front);
    if (known !== undefined) return known;
    const made = new Map([...engine.library.sources, ...state.front.references]);
    references.set(state.front, made);
    return made;
  };

  const context = (state: FileState): OutputContext => ({
    engine,
    show: showOf(state).show,
    references: referencesOf(state),
    place: (key) => placeOf(files, engine, key),
  });

  const note = (key: string, reran: boolean): void => {
    const ofMarks = keyOfMarks(key);
    const plain = ofMarks ?? key;
    const statement = engine.byKey.get(plain);
    if (statement === undefined || statement.file === "") return;
    const pending = pendingOf(statement.file);
    pending.statements.add(statement);
    if (reran) pending.reran.add(ofMarks === undefined ? statement.id : marksKey(statement.id));
    pending.lives.touch(plain);
  };

  /** Every line that is told now, in the order of the text. */
  const collect = (state: FileState, pending: Pending, all: boolean): LineOutput[] => {
    const wanted = context(state);
    const out: LineOutput[] = [];
    const starts = startsOf(state, all ? undefined : pending.statements);
    for (const [statement, from] of starts) {
      const at = { id: statement.id, from, to: from + statement.text.length };
      out.push(caught(at, wanted, state.file, () => lineOutput(statement, from, wanted)));
    }
    return out;
  };

  const titleOutput = (state: FileState): LineOutput => {
    const problems: { readonly diagnostic: Diagnostic; readonly at: number }[] = [];
    state.notebook.parts.forEach((part, i) => {
      const at = state.notebook.starts[i] ?? 0;
      for (const diagnostic of part.diagnostics) problems.push({ diagnostic, at });
    });
    for (const diagnostic of [...state.front.diagnostics, ...showOf(state).problems]) problems.push({ diagnostic, at: 0 });
    const wanted = context(state);
    return {
      id: "title:",
      kind: "title",
      from: 0,
      to: 0,
      citation: "",
      note: "",
      diagnostics: problems.map(({ diagnostic, at }) => place(diagnostic, at, wanted, state.file)),
    };
  };

  const lives = (state: FileState, entries: readonly LiveEntry[]): LineOutput[] => {
    if (entries.length === 0) return [];
    const wanted = context(state);
    const starts = partStarts(state);
    return entries.map((entry) => {
      const start = starts.get(entry.part) ?? 0;
      const at = { id: entry.id, from: start + entry.live.from, to: start + entry.live.to };
      return caught(at, wanted, state.file, () => liveOutput(engine, state.file, entry.live, entry.id, start, wanted));
    });
  };

  return {
    context,
    setSystem: (wanted) => {
      system = wanted;
      shows = new WeakMap();
      for (const pending of pendings.values()) pending.everything = true;
    },
    edited: (state, change) => {
      const pending = pendingOf(state.file);
      for (const statement of change.removed) {
        pending.statements.delete(statement);
        pending.removed.add(statement.id);
      }
      for (const { oldId } of change.renamed) pending.removed.add(oldId);
      // What is gone is computed no more, so nothing else says that its readers in prose have changed.
      const gone = [...change.removed.map((statement) => statement.key), ...change.renamed.map((each) => each.oldKey)];
      for (const { lives: book } of pendings.values()) for (const key of gone) book.touch(key);
      for (const statement of change.added) pending.statements.add(statement);
      if (change.frontChanged) pending.everything = true;
      if (change.reordered) pending.reordered = true;
      if (change.proseChanged) pending.lives.read(state);
    },
    ran: (types, values, kinds) => {
      for (const key of types.computed) note(key, true);
      for (const key of values.computed) note(key, true);
      for (const key of values.changed) note(key, false);
      for (const key of kinds) note(key, false);
    },
    forget: (file) => {
      pendings.delete(file);
    },
    snapshot: (file) => {
      const state = files.notebooks.get(file);
      const pending = pendingOf(file);
      pending.revision += 1;
      if (state === undefined) return emptySnapshot(file, pending.revision, pending.tally.ids());
      const changed = collect(state, pending, pending.everything);
      const still = new Set(changed.map((line) => line.id));
      const removed = [...pending.removed].filter((id) => !still.has(id));
      // Conflict marks inside a working come and go without a part coming or going.
      const title = titleOutput(state);
      const problems = JSON.stringify(title.diagnostics);
      if (pending.reordered || pending.everything || problems !== pending.problems) changed.push(title);
      pending.problems = problems;
      const touched = pending.lives.takeTouched();
      changed.push(...lives(state, pending.everything ? pending.lives.entries() : touched));
      removed.push(...pending.lives.takeRemoved());
      for (const id of removed) pending.tally.drop(id);
      for (const line of changed) pending.tally.set(line);
      const order = pending.reordered || pending.everything ? orderOf(state, pending.lives.entries()) : undefined;
      const snapshot: Snapshot = {
        revision: pending.revision,
        file,
        changed,
        removed,
        ...(order === undefined ? {} : { order }),
        title: state.front.title,
        counts: pending.tally.counts(),
        reran: [...pending.reran],
      };
      pending.everything = false;
      pending.reordered = false;
      pending.statements.clear();
      pending.removed.clear();
      pending.reran.clear();
      return snapshot;
    },
    outputs: (file) => {
      const state = files.notebooks.get(file);
      if (state === undefined) return [];
      return [titleOutput(state), ...collect(state, pendingOf(file), true), ...lives(state, pendingOf(file).lives.entries())].sort(
        (a, b) => a.from - b.from,
      );
    },
  };
}

/** A mistake of ours in the making of one line is a fault of that line alone. */
function caught(
  at: { readonly id: string; readonly from: number; readonly to: number },
  context: OutputContext,
  file: string,
  make: () => LineOutput,
): LineOutput {
  try {
    return make();
  } catch (problem) {
    const observed = problem instanceof Error ? problem.message : String(problem);
    const diagnostic = faults.internal({ from: 0, to: at.to - at.from }, { observed });
    return { ...at, kind: "broken", citation: "", note: "", diagnostics: [place(diagnostic, at.from, context, file)] };
  }
}

export function recordEntry(engine: EngineState, name: string): ReturnType<ShowOptions["record"]> {
  const entry = (engine.types.value(name) as Exported | undefined)?.entry;
  return entry?.entry === "record" ? entry : undefined;
}

/** Statements with their offsets: all of them in order, or those asked for. */
function startsOf(state: FileState, only: ReadonlySet<Statement> | undefined): readonly (readonly [Statement, number])[] {
  if (only?.size === 0) return [];
  const out: [Statement, number][] = [];
  const add = (piece: Chunk | CsvPart, from: number): boolean => {
    const statement = state.statements.get(piece);
    if (statement !== undefined && (only === undefined || only.has(statement))) out.push([statement, from]);
    return only !== undefined && out.length === only.size;
  };
  state.notebook.parts.forEach((part, i) => {
    if (part.kind === "csv") add(part, state.notebook.starts[i] ?? 0);
  });
  for (const placed of placedChunks(state.notebook)) if (add(placed.chunk, placed.from)) break;
  return out.sort((a, b) => a[1] - b[1]);
}

const partStarts = (state: FileState): ReadonlyMap<Part, number> =>
  new Map(state.notebook.parts.map((part, i) => [part, state.notebook.starts[i] ?? 0]));

function orderOf(state: FileState, lives: readonly LiveEntry[]): NonNullable<Snapshot["order"]> {
  const starts = partStarts(state);
  const rows = startsOf(state, undefined).map(([statement, from]) => ({ id: statement.id, from, to: from + statement.text.length }));
  for (const { id, part, live } of lives) {
    const start = starts.get(part) ?? 0;
    rows.push({ id, from: start + live.from, to: start + live.to });
  }
  rows.sort((a, b) => a.from - b.from);
  return { ids: rows.map((row) => row.id), from: rows.map((row) => row.from), to: rows.map((row) => row.to) };
}

const emptySnapshot = (file: string, revision: number, removed: readonly string[]): Snapshot => ({
  revision,
  file,
  changed: [],
  removed,
  order: { ids: [], from: [], to: [] },
  title: emptyFront.title,
  counts: { faults: 0, failing: 0, checks: 0, open: 0 },
  reran: [],
});

/** The file and offset of a statement by its key. */
export function placeOf(files: Files, engine: EngineState, key: string): { readonly file: string; readonly from: number } | undefined {
  const statement = engine.byKey.get(key);
  if (statement === undefined) return undefined;
  if (statement.file === "") {
    const piece = engine.library.pieces.get(key);
    return piece === undefined ? undefined : { file: `library:${piece.module}`, from: piece.from };
  }
  const state = files.notebooks.get(statement.file);
  const found = state === undefined ? undefined : startsOf(state, new Set([statement]))[0];
  return found === undefined ? undefined : { file: statement.file, from: found[1] };
}
