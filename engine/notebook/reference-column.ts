// What stands in the reference column of a line: where its number comes from, and which works say so.

import { nearest, type Range, range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { shortCitation } from "./cite.ts";
import type { Reference } from "./reference.ts";

/** Strongest first. */
export const provenanceLevels = ["test", "published", "supplier", "given", "practice", "memory", "assumed", "unsourced"] as const;

export type ProvenanceLevel = (typeof provenanceLevels)[number];

/** One of the citations between `;`. */
export interface CitationItem {
  readonly level: ProvenanceLevel;
  /** The word it begins with: that of its level, `confirmed`, or nothing. */
  readonly said: string;
  /** The key of `@key`. */
  readonly key?: string;
  readonly keyRange?: Range;
  /** What follows the word or key: a place in the work, a drawing, a reason. Trimmed. */
  readonly place: string;
  readonly range: Range;
}

export interface ReferenceColumn {
  /** The whole text, trimmed. */
  readonly text: string;
  /** The strongest level of its citations: each of them alone would carry the number. */
  readonly level: ProvenanceLevel;
  /** The first key. */
  readonly key?: string;
  /** A `confirmed` stands in it: an assumption that somebody has checked since. Its level stays `assumed`. */
  readonly confirmed: boolean;
  readonly items: readonly CitationItem[];
}

const WORDS = new Set<string>(["test", "supplier", "given", "practice", "memory", "assumed"]);
/** Marks inside a key are followed by a letter or digit, so `@iso965: table 2` and `@iso965.` end before the mark. */
const KEY = /^@([\p{L}\p{N}_](?:[\p{L}\p{N}_]|[.:/-](?=[\p{L}\p{N}_]))*)/u;
const CONFIRMED = /^confirmed(?=[\s,:]|$)[\s,:]*/;

/** Reads a reference column; ranges count from the text's start. A text that begins with no known word is unsourced, kept as a place. */
export function readReference(text: string): ReferenceColumn {
  const items: CitationItem[] = [];
  let confirmed = false;
  for (const match of text.matchAll(/[^;]+/g)) {
    const body = match[0].trim();
    if (body === "") continue;
    const from = match.index + match[0].indexOf(body);
    const item = CONFIRMED.test(body) ? readConfirmation(body, from) : readItem(body, from);
    if (item.level === "assumed" && /(?:^|[\s,])confirmed(?:[\s,]|$)/.test(` ${item.said} ${item.place}`)) confirmed = true;
    items.push(item);
  }
  const rank = Math.min(provenanceLevels.length - 1, ...items.map(({ level }) => provenanceLevels.indexOf(level)));
  const key = items.find((item) => item.key !== undefined)?.key;
  return { text: text.trim(), level: provenanceLevels[rank] as ProvenanceLevel, confirmed, items, ...(key === undefined ? {} : { key }) };
}

/** `confirmed @log7 page 3` beside an `assumed`: the assumption stays one, with the work that bears it out. */
function readConfirmation(body: string, from: number): CitationItem {
  const word = CONFIRMED.exec(body)?.[0] ?? "";
  const rest = readItem(body.slice(word.length), from + word.length);
  return { ...rest, level: "assumed", said: "confirmed", range: range(from, from + body.length) };
}

function readItem(body: string, from: number): CitationItem {
  const whole = range(from, from + body.length);
  const key = KEY.exec(body);
  if (key !== null) {
    const place = body.slice(key[0].length).replace(/^[\s,]+/, "");
    return { level: "published", said: "", key: key[1] as string, keyRange: range(from, from + key[0].length), place, range: whole };
  }
  const word = /^\p{L}+(?=[\s,:]|$)/u.exec(body)?.[0] ?? "";
  if (!WORDS.has(word)) return { level: "unsourced", said: "", place: body, range: whole };
  return { level: word as ProvenanceLevel, said: word, place: body.slice(word.length).replace(/^[\s,:]+/, ""), range: whole };
}

/** A notice for each key that no reference has, with the nearest that one has. */
export function unknownKeys(column: ReferenceColumn, known: ReadonlyMap<string, unknown>): readonly Diagnostic[] {
  return column.items.flatMap(({ key, keyRange }) => {
    if (key === undefined || keyRange === undefined || known.has(key)) return [];
    const near = nearest(key, known.keys());
    const mends = near === undefined ? [] : [{ label: `@${near}`, changes: [{ ...keyRange, insert: `@${near}` }] }];
    return [faults.referenceUnknown(keyRange, { key, near }, { mends })];
  });
}

/** The column as it is shown: each key as its short citation, e.g. `ISO 965-1, table 2`; the rest as written. */
export const citation = (column: ReferenceColumn, references: ReadonlyMap<string, Reference>): string =>
  column.items.map((item) => shown(item, references)).join("; ");

function shown({ said, key, place }: CitationItem, references: ReadonlyMap<string, Reference>): string {
  const reference = key === undefined ? undefined : references.get(key);
  const work = reference !== undefined ? shortCitation(reference) : key === undefined ? "" : `@${key}`;
  const lead = [said, work].filter((text) => text !== "").join(" ");
  return [lead, place].filter((text) => text !== "").join(work === "" ? " " : ", ");
}
