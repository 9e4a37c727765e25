// Prose as the pad shows it: headings, emphasis, lists and links from the one Markdown tree, marks out of sight while the
// caret is on another line.

import { type ProsePart, proseTree } from "../../engine/notebook/index.ts";

export interface ProseStyle {
  /** Whole lines, by an offset in them: headings, quotes. */
  readonly lines: readonly { readonly at: number; readonly className: string }[];
  readonly marks: readonly { readonly from: number; readonly to: number; readonly className: string }[];
  /** Marks to hide on lines where the caret is not; `shown` stands in their place. */
  readonly hidden: readonly { readonly from: number; readonly to: number; readonly shown: string }[];
}

const MARKS: Readonly<Record<string, string>> = {
  Emphasis: "jw-emphasis",
  StrongEmphasis: "jw-strong",
  InlineCode: "jw-code",
  Link: "jw-link",
  Autolink: "jw-link",
  Comment: "jw-aside",
  HTMLTag: "jw-aside",
  TableDelimiter: "jw-aside",
};

const LINES: Readonly<Record<string, string>> = {
  ATXHeading1: "jw-heading jw-heading-1",
  ATXHeading2: "jw-heading jw-heading-2",
  ATXHeading3: "jw-heading jw-heading-3",
  ATXHeading4: "jw-heading jw-heading-3",
  ATXHeading5: "jw-heading jw-heading-3",
  ATXHeading6: "jw-heading jw-heading-3",
  SetextHeading1: "jw-heading jw-heading-1",
  SetextHeading2: "jw-heading jw-heading-2",
  Blockquote: "jw-quote",
  CodeBlock: "jw-code-line",
  TableHeader: "jw-table jw-table-head",
  TableRow: "jw-table",
};

const HIDDEN = new Set(["HeaderMark", "EmphasisMark", "CodeMark", "LinkMark", "URL", "LinkTitle", "LinkLabel", "QuoteMark"]);

const known = new WeakMap<ProsePart, ProseStyle>();

/** Offsets from the part's start. Read once a part object. */
export function proseStyle(part: ProsePart): ProseStyle {
  const before = known.get(part);
  if (before !== undefined) return before;
  const style = read(part.text);
  known.set(part, style);
  return style;
}

function read(text: string): ProseStyle {
  const lines: ProseStyle["lines"][number][] = [];
  const marks: ProseStyle["marks"][number][] = [];
  const hidden: ProseStyle["hidden"][number][] = [];
  let plainUrl = false;
  proseTree(text).iterate({
    enter(node) {
      const lineClass = LINES[node.name];
      if (lineClass !== undefined) {
        for (let at = node.from; at < node.to; ) {
          lines.push({ at, className: lineClass });
          const end = text.indexOf("\n", at);
          if (end === -1) break;
          at = end + 1;
        }
      }
      if (node.name === "Image" || node.name === "LinkReference") return false;
      // The parser calls every bracketed text a link; one with an address or a label is meant as one.
      if (node.name === "Link" && node.node.getChild("URL") === null && node.node.getChild("LinkLabel") === null) return false;
      if (node.name === "Autolink") plainUrl = true;
      const mark = MARKS[node.name];
      if (mark !== undefined && node.from < node.to) marks.push({ from: node.from, to: node.to, className: mark });
      if (node.name === "ListMark") {
        const bullet = "-+*".includes(text[node.from] as string);
        if (bullet) hidden.push({ from: node.from, to: node.to, shown: "•" });
        else marks.push({ from: node.from, to: node.to, className: "jw-list-mark" });
        return undefined;
      }
      if (HIDDEN.has(node.name) && !(node.name === "URL" && plainUrl)) {
        // A heading's mark takes the space behind it along, so that the heading begins at the column's edge.
        const opens = node.name === "HeaderMark" && text[node.to] === " " && lines.at(-1)?.at === node.from;
        const to = opens ? node.to + 1 : node.to;
        if (text.slice(node.from, to).includes("\n")) return undefined;
        hidden.push({ from: node.from, to, shown: "" });
      }
      return undefined;
    },
    leave(node) {
      if (node.name === "Autolink") plainUrl = false;
    },
  });
  return { lines, marks, hidden };
}
