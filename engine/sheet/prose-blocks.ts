// The prose of a notebook as blocks: headings, paragraphs, lists, quotes, tables, with live values put in. Raw HTML stays text.

import { proseTree } from "../notebook/index.ts";
import { cell, plainText, text } from "./inlines.ts";
import type { Block, Cell, Column, Inline } from "./model.ts";

type Node = ReturnType<typeof proseTree>["topNode"];

/** What stands at a place of the prose: the braces' range, and what to show for them. */
export interface PlacedValue {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly missing: boolean;
}

interface Reading {
  readonly source: string;
  readonly values: readonly PlacedValue[];
  /** Addresses by label, lower case. */
  readonly links: ReadonlyMap<string, string>;
}

/** `values` count in the text of this prose part. Headings are not numbered yet. */
export function proseBlocks(source: string, values: readonly PlacedValue[]): readonly Block[] {
  const tree = proseTree(covered(source, values));
  const links = new Map<string, string>();
  for (const node of kids(tree.topNode)) {
    if (node.name !== "LinkReference") continue;
    const [label, address] = [node.getChild("LinkLabel"), node.getChild("URL")];
    if (label !== null && address !== null) links.set(labelOf(source.slice(label.from, label.to)), source.slice(address.from, address.to));
  }
  return blocksIn(tree.topNode, { source, values, links });
}

/** The text for the Markdown parser: what stands in the braces of a live value (`N*m`, `F_t`) is none of its business. */
function covered(source: string, values: readonly PlacedValue[]): string {
  let out = "";
  let at = 0;
  for (const { from, to } of values) {
    out += source.slice(at, from) + "\ue000".repeat(to - from);
    at = to;
  }
  return out + source.slice(at);
}

const labelOf = (written: string): string => written.slice(1, -1).trim().toLowerCase();

function kids(node: Node): readonly Node[] {
  const out: Node[] = [];
  for (let child = node.firstChild; child !== null; child = child.nextSibling) out.push(child);
  return out;
}

const blocksIn = (node: Node, reading: Reading): readonly Block[] => kids(node).flatMap((child) => block(child, reading));

function block(node: Node, reading: Reading): readonly Block[] {
  const { source } = reading;
  const heading = /^(?:ATX|Setext)Heading([1-6])$/.exec(node.name)?.[1];
  if (heading !== undefined) {
    const level = Math.min(3, Number(heading)) as 1 | 2 | 3;
    return [{ kind: "heading", level, number: "", text: plainText(inlines(node, reading)).trim(), id: "" }];
  }
  switch (node.name) {
    case "Paragraph":
      return [{ kind: "paragraph", of: trimmed(inlines(node, reading)) }];
    case "BulletList":
    case "OrderedList": {
      const items = kids(node).filter((child) => child.name === "ListItem");
      const mark = items[0]?.getChild("ListMark") ?? null;
      const start = mark === null ? 1 : Number.parseInt(source.slice(mark.from, mark.to), 10);
      const ordered = node.name === "OrderedList";
      return [{ kind: "list", ordered, start: ordered && start >= 0 ? start : 1, items: items.map((item) => blocksIn(item, reading)) }];
    }
    case "Blockquote":
      return [{ kind: "quote", of: blocksIn(node, reading) }];
    case "FencedCode":
    case "CodeBlock":
      return [
        {
          kind: "code",
          text: kids(node)
            .filter((child) => child.name === "CodeText")
            .map((child) => source.slice(child.from, child.to))
            .join(""),
        },
      ];
    case "HTMLBlock":
    case "ProcessingInstructionBlock":
      return [{ kind: "code", text: source.slice(node.from, node.to) }];
    case "HorizontalRule":
      return [{ kind: "rule" }];
    case "Table":
      return [table(node, reading)];
    default:
      return [];
  }
}

function table(node: Node, reading: Reading): Block {
  const cells = (of: Node): readonly Cell[] => {
    // An empty cell has no node: it is what stands between two bars.
    const out: Cell[] = [];
    let filled = false;
    const line = kids(of);
    line.forEach((child, i) => {
      if (child.name === "TableCell") {
        out.push(trimmed(inlines(child, reading)));
        filled = true;
      } else if (child.name === "TableDelimiter") {
        if (!filled && i > 0) out.push([]);
        filled = false;
      }
    });
    return out;
  };
  const head = node.getChild("TableHeader");
  const marks = kids(node).find((child) => child.name === "TableDelimiter");
  const sides =
    marks === undefined
      ? []
      : reading.source
          .slice(marks.from, marks.to)
          .replace(/^\s*\||\|\s*$/g, "")
          .split("|");
  const heads = head === null ? [] : cells(head);
  const columns = heads.map(
    (of, i): Column => ({ head: of, align: /:\s*$/.test(sides[i] ?? "") && !/^\s*:/.test(sides[i] ?? "") ? "right" : "left", share: 1 }),
  );
  const rows = node.getChildren("TableRow").map((line) => {
    const found = cells(line);
    return columns.map((_, i) => found[i] ?? []);
  });
  return { kind: "table", id: "", caption: "", columns, rows };
}

const MARKS = new Set([
  "HeaderMark",
  "EmphasisMark",
  "CodeMark",
  "LinkMark",
  "ListMark",
  "QuoteMark",
  "LinkTitle",
  "LinkLabel",
  "CodeInfo",
]);

function inlines(node: Node, reading: Reading): readonly Inline[] {
  const out: Inline[] = [];
  let at = node.from;
  for (const child of kids(node)) {
    // What the parser sees inside the braces of a live value is part of the value.
    if (reading.values.some(({ from, to }) => from <= child.from && child.to <= to)) continue;
    out.push(...running(at, child.from, reading));
    if (!MARKS.has(child.name)) out.push(...inline(child, reading));
    at = child.to;
  }
  out.push(...running(at, node.to, reading));
  return joined(out);
}

/** Text between two places, with the live values that stand there. */
function running(from: number, to: number, { source, values }: Reading): readonly Inline[] {
  const out: Inline[] = [];
  let at = from;
  for (const value of values) {
    if (value.from < at || to < value.to) continue;
    if (at < value.from) out.push(text(oneLine(source.slice(at, value.from))));
    out.push({ kind: "value", text: value.text, missing: value.missing });
    at = value.to;
  }
  if (at < to) out.push(text(oneLine(source.slice(at, to))));
  return out;
}

const oneLine = (words: string): string => words.replace(/\s+/g, " ");

const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: "\u00a0",
  deg: "°",
  plusmn: "±",
  times: "×",
  middot: "·",
  micro: "µ",
  le: "≤",
  ge: "≥",
  ne: "≠",
  ndash: "–",
  mdash: "—",
  hellip: "…",
};

function entity(written: string): string {
  const name = written.slice(1, -1);
  const code = /^#x([0-9a-f]+)$/i.exec(name)?.[1];
  const point = code === undefined ? Number(/^#(\d+)$/.exec(name)?.[1] ?? Number.NaN) : Number.parseInt(code, 16);
  if (Number.isInteger(point)) return 0 < point && point <= 0x10ffff ? String.fromCodePoint(point) : "\ufffd";
  return ENTITIES[name] ?? written;
}

function inline(node: Node, reading: Reading): readonly Inline[] {
  const { source } = reading;
  const written = source.slice(node.from, node.to);
  switch (node.name) {
    case "Emphasis":
      return [{ kind: "emphasis", of: inlines(node, reading) }];
    case "StrongEmphasis":
      return [{ kind: "strong", of: inlines(node, reading) }];
    case "InlineCode": {
      const marks = node.getChildren("CodeMark");
      return [{ kind: "code", text: oneLine(source.slice(marks[0]?.to ?? node.from, marks[1]?.from ?? node.to)).trim() }];
    }
    case "Escape":
      return [text(written.slice(1))];
    case "Entity":
      return [text(entity(written))];
    case "HardBreak":
      return [{ kind: "break" }];
    case "Autolink":
    case "URL":
      return link([text(written.replace(/^<|>$/g, ""))], written.replace(/^<|>$/g, ""));
    case "Link":
      return linkOf(node, reading);
    case "Image":
      return [text("(picture: "), ...inlines(node, reading), text(")")];
    case "Comment":
      return [];
    default:
      return [text(oneLine(written))];
  }
}

function linkOf(node: Node, reading: Reading): readonly Inline[] {
  const { source, links } = reading;
  const [open, close] = node.getChildren("LinkMark");
  const address = node.getChild("URL");
  const label = node.getChild("LinkLabel");
  const inner = open === undefined || close === undefined ? [] : inlinesBetween(node, open.to, close.from, reading);
  const words = open === undefined || close === undefined ? source.slice(node.from, node.to) : source.slice(open.from, close.to);
  const named = label === null || label.to - label.from <= 2 ? labelOf(words) : labelOf(source.slice(label.from, label.to));
  const target = address === null ? links.get(named) : source.slice(address.from, address.to);
  // Brackets that lead nowhere are brackets.
  return target === undefined ? [text("["), ...inner, text("]")] : link(inner, target);
}

function inlinesBetween(node: Node, from: number, to: number, reading: Reading): readonly Inline[] {
  const out: Inline[] = [];
  let at = from;
  for (const child of kids(node)) {
    if (child.from < from || to < child.to || MARKS.has(child.name) || child.name === "URL") continue;
    if (reading.values.some((value) => value.from <= child.from && child.to <= value.to)) continue;
    out.push(...running(at, child.from, reading), ...inline(child, reading));
    at = child.to;
  }
  return [...out, ...running(at, to, reading)];
}

const link = (of: readonly Inline[], written: string): readonly Inline[] => {
  const address = written.replace(/^<|>$/g, "");
  if (/^(?:https?:\/\/|mailto:)/i.test(address)) return [{ kind: "link", of, address }];
  const shown = plainText(of);
  // A path to another file means nothing on paper but its name.
  return shown === address ? cell(shown) : [...of, text(` (${address})`)];
};

function joined(parts: readonly Inline[]): readonly Inline[] {
  const out: Inline[] = [];
  for (const part of parts) {
    const last = out[out.length - 1];
    if (part.kind === "text" && last?.kind === "text") out[out.length - 1] = text(last.text + part.text);
    else if (part.kind !== "text" || part.text !== "") out.push(part);
  }
  return out;
}

function trimmed(parts: readonly Inline[]): readonly Inline[] {
  return parts.flatMap((part, i): readonly Inline[] => {
    if (part.kind !== "text") return [part];
    const start = i === 0 ? part.text.trimStart() : part.text;
    const words = i === parts.length - 1 ? start.trimEnd() : start;
    return words === "" ? [] : [text(words)];
  });
}
