// YAML as plain data with places. Every scalar is text (failsafe schema), so `4-40`, `1E5`, `no` and `007` stay as written.

import { isAlias, isMap, isScalar, isSeq, parseDocument } from "yaml";
import { type Range, range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";

export type Data = DataText | DataList | DataMap;

export interface DataText {
  readonly kind: "text";
  readonly text: string;
  readonly range: Range;
}
export interface DataList {
  readonly kind: "list";
  readonly items: readonly Data[];
  readonly range: Range;
}
export interface DataMap {
  readonly kind: "map";
  readonly entries: readonly DataEntry[];
  readonly range: Range;
}
export interface DataEntry {
  readonly key: string;
  readonly keyRange: Range;
  readonly value: Data;
}

export const parseOptions = { schema: "failsafe", prettyErrors: false, logLevel: "silent", keepSourceTokens: false } as const;

/**
 * Bounds of one entry. The YAML reader works by recursion and by expressions as wide as the indentation, and a hostile text
 * can take the process down with it (observed: 20,000 opening brackets); these keep it far from there.
 */
const LIMITS = { nesting: 60, indent: 200, line: 4_000, length: 200_000 };

/**
 * Reads YAML whose root is a map, entry by entry, so that a fault in one leaves the others readable. Ranges count from
 * `offset` before the text. A key that stands twice is a fault at the second, which is left out.
 */
export function readYamlMap(
  text: string,
  offset: number,
): { readonly entries: readonly DataEntry[]; readonly diagnostics: readonly Diagnostic[] } {
  const entries: DataEntry[] = [];
  const diagnostics: Diagnostic[] = [];
  const seen = new Set<string>();
  for (const piece of pieces(text)) {
    const found = readYaml(text.slice(piece.from, piece.to), offset + piece.from);
    diagnostics.push(...found.diagnostics);
    const entry = found.data?.kind === "map" ? found.data.entries[0] : undefined;
    if (entry === undefined) {
      if (found.diagnostics.length === 0) diagnostics.push(faults.frontMatterLine(firstLine(text, piece, offset), {}));
    } else if (seen.has(entry.key)) {
      diagnostics.push(faults.frontMatterTwice(entry.keyRange, { key: entry.key }));
    } else {
      seen.add(entry.key);
      entries.push(entry);
    }
  }
  return { entries, diagnostics };
}

/** Reads one YAML text; of several faults the first, since others follow from it. */
export function readYaml(text: string, offset: number): { readonly data: Data | undefined; readonly diagnostics: readonly Diagnostic[] } {
  if (!withinLimits(text))
    return { data: undefined, diagnostics: [faults.frontMatterDeep(firstLine(text, range(0, text.length), offset), {})] };
  const document = parsed(text);
  if (document === undefined) return { data: undefined, diagnostics: [faults.frontMatterSyntax(range(offset, offset + text.length), {})] };
  const diagnostics: Diagnostic[] = [];
  let broken = false;
  for (const error of document.errors) {
    const at = Math.min(error.pos[0], Math.max(0, text.length - 1));
    if (error.code === "DUPLICATE_KEY") {
      const key = /^[^:\s,}]*/.exec(text.slice(at))?.[0] ?? "";
      diagnostics.push(faults.frontMatterTwice(range(offset + at, offset + at + key.length), { key }));
    } else if (!broken) {
      broken = true;
      diagnostics.push(syntaxFault(error.code, text, at, offset));
    }
  }
  const data = broken ? undefined : toData(document.contents, offset, diagnostics);
  return { data, diagnostics };
}

function parsed(text: string): ReturnType<typeof parseDocument> | undefined {
  try {
    return parseDocument(text, parseOptions);
  } catch {
    return undefined;
  }
}

function syntaxFault(code: string, text: string, at: number, offset: number): Diagnostic {
  const here = range(offset + at, offset + Math.min(at + 1, text.length));
  switch (code) {
    case "BLOCK_AS_IMPLICIT_KEY":
    case "MULTILINE_IMPLICIT_KEY":
      return faults.frontMatterColon(here, {});
    case "TAB_AS_INDENT":
      return faults.frontMatterTab(here, {});
    case "MISSING_CHAR":
      return faults.frontMatterUnclosed(here, {});
    case "BAD_INDENT":
      return faults.frontMatterIndent(here, {});
    case "BAD_SCALAR_START":
      return faults.frontMatterCharacter(here, { character: text[at] ?? "" });
    default:
      return faults.frontMatterSyntax(here, {});
  }
}

function toData(node: unknown, offset: number, diagnostics: Diagnostic[]): Data | undefined {
  if (node === null || typeof node !== "object") return undefined;
  const [from, to] = (node as { range?: [number, number, number] }).range ?? [0, 0, 0];
  const at = range(offset + from, offset + to);
  if (isAlias(node)) {
    diagnostics.push(faults.frontMatterAlias(at, {}));
    return undefined;
  }
  if (isScalar(node)) return { kind: "text", text: typeof node.value === "string" ? node.value : "", range: at };
  if (isSeq(node)) {
    const items = node.items.map((item) => toData(item, offset, diagnostics)).filter((item) => item !== undefined);
    return { kind: "list", items, range: at };
  }
  if (!isMap(node)) return undefined;
  const entries: DataEntry[] = [];
  const seen = new Set<string>();
  for (const pair of node.items) {
    const key = toData(pair.key, offset, diagnostics);
    if (key?.kind !== "text" || seen.has(key.text)) continue;
    seen.add(key.text);
    const empty: DataText = { kind: "text", text: "", range: range(key.range.to, key.range.to) };
    const value = pair.value === null ? empty : toData(pair.value, offset, diagnostics);
    if (value !== undefined) entries.push({ key: key.text, keyRange: key.range, value });
  }
  return { kind: "map", entries, range: at };
}

/** Where entries begin: lines at column 0 that are no comment, no list item and no closing bracket. */
function pieces(text: string): Range[] {
  const found: Range[] = [];
  let from = -1;
  for (const line of text.matchAll(/^[^\n]*(?:\n|$)/gm)) {
    if (/^(?:\s|#|-(?:\s|$)|[\]}])/.test(line[0]) || line[0] === "") continue;
    if (from !== -1) found.push(range(from, line.index));
    from = line.index;
  }
  if (from !== -1) found.push(range(from, text.length));
  return found;
}

function firstLine(text: string, { from, to }: Range, offset: number): Range {
  const end = text.indexOf("\n", from);
  return range(offset + from, offset + (end === -1 ? to : Math.min(end, to)));
}

function withinLimits(text: string): boolean {
  if (text.length > LIMITS.length) return false;
  let nesting = 0;
  for (const line of text.split("\n")) {
    if (line.length > LIMITS.line || (/^[\s?-]*/.exec(line)?.[0].length ?? 0) > LIMITS.indent) return false;
    for (const character of line) {
      if (character === "[" || character === "{") nesting += 1;
      else if (character === "]" || character === "}") nesting = Math.max(0, nesting - 1);
      if (nesting > LIMITS.nesting) return false;
    }
  }
  return true;
}
