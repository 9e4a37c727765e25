// The library as one searches it: every name with its types, one opened with its maths and sources, and what fits at a caret.

import { checkStatement, type Type, typeText } from "../check/index.ts";
import { citation, formatReference, placedChunks, readReference } from "../notebook/index.ts";
import { prepareUnit, type Value } from "../run/index.ts";
import { namesUsed, normalName, type StatementTree } from "../syntax/index.ts";
import { formulaSteps } from "../trace/index.ts";
import { siSet } from "../units/index.ts";
import { examplePasses } from "./check-outcome.ts";
import { headText } from "./complete.ts";
import { ensureLibrary, fullName, keysOf, scopeOf } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { moduleNotebook } from "./library-names.ts";
import { recordEntry } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue } from "./show.ts";
import { parseChunk } from "./statement.ts";
import type { Fitting, InsertedCall, LibraryCard, LibraryListing, LibraryPage } from "./tools-api.ts";
import { agree, entryOf, wantedAt } from "./wanted.ts";

const DIGITS = 6;

/** Names checked at a time, so that nobody waits long for an answer. */
const AT_A_TIME = 80;

/** Public names of the library from the `from`th on, and where the next call goes on. */
export function libraryListings(state: SessionState, from: number): LibraryPage {
  const names = [...state.engine.library.pieces.keys()];
  const end = Math.min(names.length, from + AT_A_TIME);
  const listings = listingsOf(state, names.slice(from, end));
  return end < names.length ? { listings, next: end } : { listings };
}

function listingsOf(state: SessionState, names: readonly string[]): readonly LibraryListing[] {
  for (const name of names) ensureLibrary(state.engine, name);
  state.update();
  return names.flatMap((name) => {
    const listing = listingOf(state, name);
    return listing === undefined ? [] : [listing];
  });
}

function listingOf(state: SessionState, name: string): LibraryListing | undefined {
  const entry = entryOf(state, name);
  const piece = state.engine.library.pieces.get(name);
  if (entry === undefined || piece === undefined) return undefined;
  const columns = state.engine.byKey.get(name)?.tree.columns;
  const common = { name, module: piece.module, note: columns?.note ?? "", head: headText(name, entry) };
  const fields = (list: readonly { readonly name: string; readonly type: Type; readonly default?: unknown }[]) =>
    list.map((field) => ({ name: field.name, type: typeText(field.type), optional: field.default !== undefined }));
  switch (entry.entry) {
    case "formula": {
      const parameters = entry.type.parameters.map((each) => ({ name: each.name, type: typeText(each.type), optional: each.optional }));
      return { ...common, kind: "formula", gives: typeText(entry.type.result), parameters };
    }
    case "record":
      return { ...common, kind: "record", gives: name, parameters: fields(entry.fields) };
    case "family":
      return { ...common, kind: "family", gives: name, parameters: [] };
    case "value":
      return { ...common, kind: "value", gives: typeText(entry.type), parameters: [] };
    default:
      return undefined;
  }
}

export function libraryCard(state: SessionState, name: string): LibraryCard | undefined {
  const { engine } = state;
  const { sources, pieces } = engine.library;
  const piece = pieces.get(name);
  if (piece === undefined) return undefined;
  ensureLibrary(engine, name);
  state.update();
  const listing = listingOf(state, name);
  const statement = engine.byKey.get(name);
  if (listing === undefined || statement === undefined) return undefined;
  const entry = entryOf(state, name);
  const record = (full: string): ReturnType<typeof recordEntry> => recordEntry(engine, full);
  const show = { preferences: siSet, digits: DIGITS, record };
  const cite = (text: string | undefined): string => (text === undefined ? "" : citation(readReference(text), sources));
  const steps = entry?.entry === "formula" ? formulaSteps(entry.core, (value, type, unit) => showValue(value, type, unit, show)) : [];
  const cited = [statement.tree.columns?.reference, ...steps.map((step) => step.reference)].flatMap((text) =>
    text === undefined ? [] : readReference(text).items.flatMap((item) => (item.key === undefined ? [] : [item.key])),
  );
  return {
    listing,
    text: piece.piece.text,
    citation: cite(statement.tree.columns?.reference),
    sources: [...new Set(cited)].flatMap((key) => {
      const reference = sources.get(key);
      return reference === undefined ? [] : [formatReference(reference)];
    }),
    steps: steps.map(({ kind, name: symbol, maths, note, reference }) => ({
      kind,
      maths,
      note: note ?? "",
      citation: cite(reference),
      ...(symbol === undefined ? {} : { name: symbol }),
    })),
    examples: examplesOf(state, piece.module, name).map((tree) => ({
      text: printStatementWorking(tree),
      passes: passes(state, tree),
      citation: cite(tree.columns?.reference),
    })),
  };
}

const printStatementWorking = (tree: ExampleTree): string => tree.text.slice(tree.working.from, tree.working.to).replace(/^example\s+/, "");

type ExampleTree = Extract<StatementTree, { kind: "example" }> & { readonly text: string };

/** Worked examples of a module that call a formula. */
function examplesOf(state: SessionState, module: string, name: string): readonly ExampleTree[] {
  const found = state.engine.library.library.modules.find((each) => each.name === module);
  if (found === undefined) return [];
  return [...placedChunks(moduleNotebook(found))].flatMap(({ chunk }) => {
    if (!/^example\s/.test(chunk.text) || !chunk.text.includes(`${name}(`)) return [];
    const { tree } = parseChunk(chunk);
    return tree.kind === "example" && namesUsed(tree).includes(name) ? [{ ...tree, text: chunk.text }] : [];
  });
}

/** Evaluated as the library's own statements are, each time it is asked for. */
function passes(state: SessionState, tree: ExampleTree): boolean {
  const { engine } = state;
  const keys = [...new Set(namesUsed(tree).flatMap((used) => keysOf(engine, "", used)))];
  for (const key of keys) ensureLibrary(engine, key);
  state.update();
  const seen = new Map(keys.map((key) => [key, engine.types.value(key) as Exported | undefined]));
  const { unit } = checkStatement(tree, scopeOf(engine, "", seen));
  const worths = unit?.needs.map((need) => engine.values.worth(need)) ?? [];
  if (unit === undefined || worths.some((worth) => worth?.ok !== true)) return false;
  const outcome = prepareUnit(unit, engine.values.context)(worths.map((worth) => (worth as { readonly value: Value }).value));
  return outcome.ok && examplePasses(outcome.value);
}

// ---------------------------------------------------------------------------------------------- what fits

interface Held {
  readonly text: string;
  readonly name: string;
  readonly type: Type;
}

/** The values that a notebook has, by normalised name. */
function heldBy(state: SessionState, file: string): readonly Held[] {
  const out: Held[] = [];
  for (const [name, [first]] of state.files.notebooks.get(file)?.byName ?? []) {
    const entry = entryOf(state, fullName(file, name));
    if (entry?.entry !== "value") continue;
    out.push({ name, type: entry.type, text: first?.tree.kind === "definition" ? first.tree.name.text : name });
  }
  return out;
}

/** The value that fills a parameter: one of its name and type, or the only one of a type that is no quantity. */
function fillFor(held: readonly Held[], name: string, type: Type): Held | undefined {
  const fits = held.filter((one) => agree(one.type, type));
  const same = fits.find((one) => one.name === normalName(name));
  if (same !== undefined || type.type === "quantity" || type.type === "text" || type.type === "truth") return same;
  return fits.length === 1 ? fits[0] : undefined;
}

const openDimension = (type: Type): boolean => type.type === "quantity" && type.dimension.exponents.some(([base]) => base.startsWith("?"));

export function fittingAt(state: SessionState, file: string, offset: number): Fitting {
  const wanted = wantedAt(state, file, offset);
  const held = heldBy(state, file);
  const offers: { readonly name: string; readonly filled: number; readonly missing: number }[] = [];
  for (const { name, kind } of listingsOf(state, [...state.engine.library.pieces.keys()])) {
    const entry = entryOf(state, name);
    if (kind !== "formula" || entry?.entry !== "formula") continue;
    const { parameters, result } = entry.type;
    if (wanted !== undefined && (openDimension(result) || !agree(result, wanted))) continue;
    const needed = parameters.filter((parameter) => !parameter.optional);
    const filled = needed.filter((parameter) => fillFor(held, parameter.name, parameter.type) !== undefined).length;
    // With no type asked for, a formula fits when the notebook has all that it needs.
    if (wanted === undefined && (filled < needed.length || needed.length === 0)) continue;
    offers.push({ name, filled, missing: needed.length - filled });
  }
  offers.sort((a, b) => a.missing - b.missing || b.filled - a.filled || (a.name < b.name ? -1 : 1));
  return { wanted: wanted === undefined ? "" : typeText(wanted), offers };
}

export function callOf(state: SessionState, file: string, name: string): InsertedCall | undefined {
  ensureLibrary(state.engine, name);
  state.update();
  const entry = entryOf(state, name);
  const held = heldBy(state, file);
  const fill = (parameter: { readonly name: string; readonly type: Type }) => ({
    name: parameter.name,
    value: fillFor(held, parameter.name, parameter.type)?.text ?? "",
    hint: typeText(parameter.type),
  });
  if (entry?.entry === "formula")
    return { name, kind: "formula", arguments: entry.type.parameters.filter((each) => !each.optional).map(fill) };
  if (entry?.entry === "record")
    return { name, kind: "record", arguments: entry.fields.filter((field) => field.default === undefined).map(fill) };
  return entry === undefined ? undefined : { name, kind: "value", arguments: [] };
}
