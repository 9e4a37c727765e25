// Changes of the title block that leave everything else in it as it was written.

import { Document, isMap, isScalar, isSeq, parseDocument, Scalar, visit } from "yaml";
import { applyChanges, type TextChange } from "../base/index.ts";
import { frontRange } from "./front-range.ts";
import { parseOptions, readYaml } from "./yaml-data.ts";

/** What a field may be set to. */
export type FrontValue = string | readonly FrontValue[] | { readonly [key: string]: FrontValue };

/** `references`, 0, `title` is the title of the first reference. */
export type FrontPath = readonly (string | number)[];

/**
 * The changes of a notebook's text that set a field of its front matter, or take it out (`undefined`). Comments and order
 * stay: a text in place of a text touches only that text, a new field comes after the last. Without front matter one is
 * put on top. None when the value is there already, or when the YAML is broken, which `readFrontMatter` reports.
 */
export function editFrontMatter(text: string, path: FrontPath, value: FrontValue | undefined): readonly TextChange[] {
  const front = frontRange(text);
  if (path.length === 0) return [];
  if (front === undefined)
    return value === undefined ? [] : [{ from: 0, to: 0, insert: `---\n${written(path, value)}---\n${text === "" ? "" : "\n"}` }];
  const body = text.slice(front.body.from, front.body.to);
  const source = body.replace(/\r\n/g, "\n");
  if (source !== body || readYaml(body, 0).diagnostics.length > 0) return [];
  const document = parseDocument(body, parseOptions);
  if (document.contents !== null && !isMap(document.contents)) return [];
  if (!change(document, path, value)) return [];
  const goal = JSON.stringify(plainOf(document.contents));
  const candidates = [inPlace(body, path, value), appended(body, path, value), smallest(body, textOf(document))];
  const found = candidates.find((candidate) => candidate !== undefined && dataOf(applyChanges(body, [candidate])) === goal);
  return found === undefined ? [] : [{ from: found.from + front.body.from, to: found.to + front.body.from, insert: found.insert }];
}

/** Never folded: a folded text or flow map is a line that moves in every later comparison. */
const LAYOUT = { lineWidth: 0, minContentWidth: 0, doubleQuotedMinMultiLineLength: Number.MAX_SAFE_INTEGER } as const;

type YamlDocument = ReturnType<typeof parseDocument>;

/** Makes the change in the document; false when it changes nothing or its path leads through a text. */
function change(document: YamlDocument, path: FrontPath, value: FrontValue | undefined): boolean {
  try {
    if (value === undefined) return document.deleteIn(path);
    const old = document.getIn(path, true);
    if (typeof value === "string" && isScalar(old)) {
      if (old.value === value) return false;
      // The same scalar, so that its comment stays.
      old.value = value;
      old.type = styleOf(value);
    } else {
      document.setIn(path, toNode(document, value));
    }
    return true;
  } catch {
    return false;
  }
}

/** Texts plain only where that is safe: left to itself the writer sets some texts of several lines so that they do not read back. */
function toNode(document: Document, value: FrontValue): unknown {
  const node = document.createNode(value);
  visit(node, {
    Scalar: (_, scalar) => {
      scalar.type = styleOf(String(scalar.value));
    },
  });
  return node;
}

const isPlain = (value: string): boolean => /^[\p{L}\p{N}](?:[\p{L}\p{N} _.()/*^·+-]*[\p{L}\p{N}_.()/*^·+-])?$/u.test(value);

const styleOf = (value: string): "PLAIN" | "QUOTE_DOUBLE" => (isPlain(value) ? Scalar.PLAIN : Scalar.QUOTE_DOUBLE);

const textOf = (document: YamlDocument): string =>
  isMap(document.contents) && document.contents.items.length === 0 ? "" : document.toString(LAYOUT);

/** One text put in place of another on one line. */
function inPlace(body: string, path: FrontPath, value: FrontValue | undefined): TextChange | undefined {
  if (typeof value !== "string") return undefined;
  const node = parseDocument(body, parseOptions).getIn(path, true);
  if (!isScalar(node) || node.range === undefined || node.range === null) return undefined;
  const [from, to] = node.range;
  const old = body.slice(from, to);
  if (old.includes("\n") || node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL) return undefined;
  const gap = from > 0 && !/\s/.test(body[from - 1] as string) ? " " : "";
  return { from, to, insert: gap + scalarText(value, old) };
}

/** A new field on a line of its own after the last. */
function appended(body: string, path: FrontPath, value: FrontValue | undefined): TextChange | undefined {
  if (value === undefined) return undefined;
  const gap = body === "" || body.endsWith("\n") ? "" : "\n";
  return { from: body.length, to: body.length, insert: gap + written(path, value) };
}

function written(path: FrontPath, value: FrontValue): string {
  const document = new Document(undefined, parseOptions);
  document.contents = toNode(
    document,
    path.reduceRight<FrontValue>((inner, key) => ({ [key]: inner }), value),
  ) as typeof document.contents;
  return document.toString(LAYOUT);
}

/** Plain or in quotes, on one line: in the quotes it had, where it had any. */
function scalarText(value: string, old: string): string {
  if (old.startsWith("'") && !/[\n\r\t']/.test(value)) return `'${value}'`;
  return isPlain(value) && !old.startsWith('"') ? value : JSON.stringify(value);
}

/** What a YAML text says, in its order; undefined when it is broken. */
function dataOf(text: string): string | undefined {
  const document = parseDocument(text, parseOptions);
  return document.errors.length > 0 ? undefined : JSON.stringify(plainOf(document.contents));
}

function plainOf(node: unknown): unknown {
  if (isMap(node)) return { map: node.items.map(({ key, value }) => [plainOf(key), plainOf(value)]) };
  if (isSeq(node)) return node.items.map(plainOf);
  if (isScalar(node)) return node.value ?? "";
  // A key that was just set stands as bare text.
  return typeof node === "string" ? node : "";
}

/** The change from one text to another without their common start and end. */
function smallest(old: string, now: string): TextChange | undefined {
  if (old === now) return undefined;
  let from = 0;
  while (from < old.length && from < now.length && old[from] === now[from]) from += 1;
  let end = 0;
  while (end < Math.min(old.length, now.length) - from && old[old.length - 1 - end] === now[now.length - 1 - end]) end += 1;
  return { from, to: old.length - end, insert: now.slice(from, now.length - end) };
}
