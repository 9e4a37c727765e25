// What could stand at the caret: names, the library, units after a number, fields after a point, references after @.

import { type Entry, intrinsicTypes, shortName, typeText } from "../check/index.ts";
import { chunkAt } from "../notebook/index.ts";
import { intrinsics } from "../run/index.ts";
import { normalName, reservedWords } from "../syntax/index.ts";
import { unitSymbols } from "../units/index.ts";
import type { Session } from "./api.ts";
import { textAt } from "./complete-text.ts";
import { ensureLibrary, fullName } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import { recordEntry } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import type { Completion } from "./snapshot.ts";
import { agree, entryOf, wantedAt } from "./wanted.ts";

type Answer = ReturnType<Session["complete"]>;

const WORD = /[\p{L}_][\p{L}\p{M}\p{N}_]*$/u;
const LIMIT = 60;

export function completeAt(state: SessionState, file: string, offset: number): Answer {
  const notebook = state.files.notebooks.get(file);
  const found = notebook === undefined ? undefined : chunkAt(notebook.notebook, offset);
  const nothing: Answer = { from: offset, to: offset, options: [] };
  if (found === undefined) return nothing;
  const before = found.chunk.text.slice(0, offset - found.from);
  const line = before.slice(before.lastIndexOf("\n") + 1);
  const word = WORD.exec(line)?.[0] ?? "";
  const from = offset - word.length;
  const lead = line.slice(0, line.length - word.length);
  const answer = (options: readonly Completion[]): Answer => ({ from, to: offset, options: ranked(options, word) });
  if (/@$/.test(lead)) return answer(references(state, file));
  if (insideText(line)) {
    const text = textAt(state, file, before);
    return text === undefined ? nothing : { from: offset - text.typed.length, to: offset, options: ranked(text.options, text.typed) };
  }
  if (/\|/.test(line)) return nothing;
  if (/(?:\d|\d\s)$/.test(lead) || /\bas\s+$/.test(lead) || /[\d]\s?[\p{L}°µ%^0-9·/*]*[·/*]$/u.test(lead)) return answer(units());
  const path = /([\p{L}_][\p{L}\p{M}\p{N}_]*)\.$/u.exec(lead)?.[1];
  if (path !== undefined) return answer(members(state, file, path));
  if (word === "") return nothing;
  const wanted = wantedAt(state, file, offset);
  const fits = (name: string): boolean => {
    const entry = wanted === undefined ? undefined : entryOf(state, fullName(file, normalName(name)));
    return wanted !== undefined && entry?.entry === "value" && agree(entry.type, wanted);
  };
  return { from, to: offset, options: ranked([...names(state, file), ...library(state, file), ...keywords()], word, fits) };
}

const insideText = (line: string): boolean => (line.match(/"/g)?.length ?? 0) % 2 === 1;

/** By how well the typed word fits, of equals those whose type is wanted first. */
function ranked(options: readonly Completion[], word: string, fits?: (name: string) => boolean): readonly Completion[] {
  const low = word.toLowerCase();
  const score = (label: string): number =>
    label.startsWith(word) ? 0 : label.toLowerCase().startsWith(low) ? 1 : label.toLowerCase().includes(low) ? 2 : 3;
  return options
    .map((option) => ({ option, score: score(option.label) - (option.kind === "name" && fits?.(option.label) === true ? 0.5 : 0) }))
    .filter((each) => each.score < 3)
    .sort((a, b) => a.score - b.score || (a.option.label < b.option.label ? -1 : 1))
    .slice(0, LIMIT)
    .map((each) => each.option);
}

export const headText = (name: string, entry: Entry): string => {
  if (entry.entry === "formula" || entry.entry === "native") {
    const parameters = entry.type.parameters.map(
      (parameter) =>
        `${parameter.name}${parameter.type.type === "quantity" && typeText(parameter.type) === "Quantity" ? "" : `: ${typeText(parameter.type)}`}${parameter.optional ? "?" : ""}`,
    );
    return `${name}(${parameters.join(", ")}): ${typeText(entry.type.result)}`;
  }
  if (entry.entry === "value") return `${name}: ${typeText(entry.type)}`;
  if (entry.entry === "record")
    return `record ${name} { ${entry.fields.map((field) => `${field.name}: ${typeText(field.type)}`).join(", ")} }`;
  if (entry.entry === "family") return `family ${name} = ${entry.members.map(shortName).join(" or ")}`;
  return name;
};

function ofEntry(name: string, entry: Entry, info: string): Completion {
  const kind =
    entry.entry === "formula" || entry.entry === "native"
      ? "formula"
      : entry.entry === "record" || entry.entry === "family"
        ? "record"
        : "name";
  const head = headText(name, entry);
  const detail = kind === "formula" ? head.slice(name.length) : entry.entry === "value" ? typeText(entry.type) : kind;
  const insert = kind === "formula" ? `${name}(` : entry.entry === "record" ? `${name} { ` : name;
  return { label: name, insert, kind, detail, ...(info === "" ? {} : { info }) };
}

function names(state: SessionState, file: string): Completion[] {
  const out: Completion[] = [];
  for (const [name, list] of state.files.notebooks.get(file)?.byName ?? []) {
    const exported = state.engine.types.value(fullName(file, name)) as Exported | undefined;
    const note = list[0]?.tree.columns?.note ?? "";
    if (exported !== undefined && exported.entry.entry !== "faulty")
      out.push(ofEntry(list[0]?.tree.kind === "definition" ? list[0].tree.name.text : name, exported.entry, note));
    else out.push({ label: name, insert: name, kind: "name", detail: "" });
  }
  return out;
}

/** The library's names and the language's own functions. Heads of formulas are those written, so nothing is checked for the list. */
function library(state: SessionState, file: string): Completion[] {
  const own = state.files.notebooks.get(file)?.byName;
  const out: Completion[] = [];
  for (const [name, piece] of state.engine.library.pieces) {
    if (own?.has(name)) continue;
    const head = piece.piece.text.split("\n", 1)[0] ?? "";
    const formula = /^formula\s+[^(]*(\([^|]*?\)(?:\s*:\s*[^=|{]+)?)\s*=/u.exec(head);
    const record = /^(record|family)\b/.exec(head)?.[1];
    const note =
      piece.piece.text
        .slice(piece.piece.text.lastIndexOf("\n") + 1)
        .split("|")[1]
        ?.trim() ?? "";
    if (formula !== null) out.push({ label: name, insert: `${name}(`, kind: "formula", detail: (formula[1] ?? "").trim(), info: note });
    else if (record !== undefined) out.push({ label: name, insert: `${name} { `, kind: "record", detail: record });
    else out.push({ label: name, insert: name, kind: "name", detail: piece.module, info: note });
  }
  for (const name of Object.keys(intrinsicTypes)) {
    const intrinsic = intrinsics[name];
    if (intrinsic !== undefined && own?.has(name) !== true)
      out.push({ label: name, insert: `${name}(`, kind: "formula", detail: intrinsic.head.slice(name.length), info: intrinsic.purpose });
  }
  return out;
}

const keywords = (): Completion[] => [...reservedWords].map((word) => ({ label: word, insert: word, kind: "keyword", detail: "" }));

const units = (): Completion[] =>
  unitSymbols().map((unit) => ({ label: unit.symbol, insert: unit.symbol, kind: "unit", detail: unit.description }));

function members(state: SessionState, file: string, name: string): Completion[] {
  const target = state.engine.prefix(file, name);
  if (target !== undefined && state.files.notebooks.has(target)) return names(state, target);
  const key = state.files.notebooks.get(file)?.byName.has(name) ? fullName(file, name) : name;
  ensureLibrary(state.engine, name);
  state.update();
  const entry = (state.engine.types.value(key) as Exported | undefined)?.entry;
  if (entry?.entry !== "value") return [];
  const { type } = entry;
  if (type.type === "table")
    return type.columns.map((column) => ({
      label: column.name,
      insert: /^[\p{L}_][\p{L}\p{N}_]*$/u.test(column.name) ? column.name : JSON.stringify(column.name),
      kind: "field",
      detail: typeText(column.type),
    }));
  if (type.type !== "record") return [];
  return (recordEntry(state.engine, type.name)?.fields ?? []).map((field) => ({
    label: field.name,
    insert: field.name,
    kind: "field",
    detail: typeText(field.type),
  }));
}

function references(state: SessionState, file: string): Completion[] {
  const all = new Map([...state.engine.library.sources, ...(state.files.notebooks.get(file)?.front.references ?? [])]);
  return [...all].map(([id, reference]) => ({
    label: id,
    insert: id,
    kind: "reference",
    detail: reference.number === "" ? reference.title : reference.number,
    info: reference.title,
  }));
}
