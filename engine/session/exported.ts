// What one statement shows to those that use it: its entry and the records, families and formulas that its type speaks of.

import type { Entry, Type } from "../check/index.ts";

export interface Exported {
  readonly entry: Entry;
  /** Entries by full name that a reader of this type may have to open. */
  readonly mentions: ReadonlyMap<string, Entry>;
}

export const noMentions: ReadonlyMap<string, Entry> = new Map();

/** Full names of records and families in a type. */
function named(type: Type, into: Set<string>): void {
  switch (type.type) {
    case "record":
    case "family":
      into.add(type.name);
      return;
    case "list":
    case "maybe":
      named(type.of, into);
      return;
    case "table":
      for (const column of type.columns) named(column.type, into);
      return;
    default:
  }
}

function namesOf(entry: Entry): ReadonlySet<string> {
  const names = new Set<string>();
  switch (entry.entry) {
    case "value":
      named(entry.type, names);
      break;
    case "formula":
      for (const need of entry.core.needs) names.add(need);
      named(entry.type.result, names);
      for (const parameter of entry.type.parameters) named(parameter.type, names);
      break;
    case "native":
      named(entry.type.result, names);
      for (const parameter of entry.type.parameters) named(parameter.type, names);
      break;
    case "record":
      for (const field of entry.fields) named(field.type, names);
      for (const need of entry.needs) names.add(need);
      break;
    case "family":
      for (const member of entry.members) names.add(member);
      break;
    default:
  }
  return names;
}

/** The mentions of an entry: those found in what its statement itself could see, and theirs in turn. */
export function mentionsOf(entry: Entry, seen: ReadonlyMap<string, Entry>): ReadonlyMap<string, Entry> {
  const direct = namesOf(entry);
  if (direct.size === 0) return noMentions;
  const out = new Map<string, Entry>();
  const queue = [...direct];
  for (let name = queue.pop(); name !== undefined; name = queue.pop()) {
    if (out.has(name) || name === entryName(entry)) continue;
    const found = seen.get(name);
    if (found === undefined) continue;
    out.set(name, found);
    for (const next of namesOf(found)) queue.push(next);
  }
  return out;
}

const entryName = (entry: Entry): string => (entry.entry === "prefix" ? entry.file : entry.name);

/** Equal for everyone who uses it: the types are, and the records they speak of are the same. */
export function sameExported(a: unknown, b: unknown): boolean {
  const [old, now] = [a as Exported | undefined, b as Exported | undefined];
  if (old === undefined || now === undefined) return old === now;
  if (old.mentions.size !== now.mentions.size) return false;
  for (const [name, entry] of now.mentions) if (old.mentions.get(name) !== entry) return false;
  return sameEntry(old.entry, now.entry);
}

function sameEntry(a: Entry, b: Entry): boolean {
  if (a === b) return true;
  // A formula's or record's program is part of what callers are built on, so another object is another formula.
  if (a.entry !== "value" || b.entry !== "value") return a.entry === "faulty" && b.entry === "faulty" && a.name === b.name;
  return a.name === b.name && a.closed === b.closed && a.input === b.input && sameType(a.type, b.type);
}

function sameType(a: Type, b: Type): boolean {
  if (a === b) return true;
  switch (a.type) {
    case "quantity":
      return b.type === "quantity" && a.dimension === b.dimension && a.kind === b.kind;
    case "list":
      return b.type === "list" && sameType(a.of, b.of);
    case "maybe":
      return b.type === "maybe" && sameType(a.of, b.of);
    case "text":
      return b.type === "text" && a.choices?.join("\n") === b.choices?.join("\n");
    case "record":
      return b.type === "record" && a.name === b.name && a.arguments.every((argument, i) => argument === b.arguments[i]);
    case "family":
      return b.type === "family" && a.name === b.name;
    case "table":
      return (
        b.type === "table" &&
        a.columns.length === b.columns.length &&
        a.columns.every((column, i) => column.name === b.columns[i]?.name && sameType(column.type, b.columns[i]?.type ?? column.type))
      );
    default:
      return a.type === b.type;
  }
}
