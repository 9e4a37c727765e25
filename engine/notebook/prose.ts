// What the engine sees in prose: live values and headings.

import { proseTree } from "./prose-tree.ts";

/** `{F_strip as kN}`: the braces' place in the prose, and what stands between them. */
export interface LiveValue {
  readonly from: number;
  readonly to: number;
  /** As written; begins at `from + 1`. */
  readonly inside: string;
}

export interface Heading {
  /** 1 to 6. */
  readonly level: number;
  /** Without marks. */
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const NAME = "[\\p{L}_][\\p{L}\\p{M}\\p{N}_]*";
/** A name path with an optional unit; whatever else stands in braces is text. Lengths are bounded so that no text makes the search slow. */
const LIVE = new RegExp(
  `\\{[ \\t]{0,20}${NAME}(?:\\.(?:${NAME}|"[^"{}\\n]{0,200}"))*(?:[ \\t]{1,20}as[ \\t]{1,20}[^{}\\n]{1,80})?[ \\t]{0,20}\\}`,
  "gu",
);

/** Where braces are not live: code, HTML, addresses, escapes. Links are told apart below. */
const DEAD = new Set([
  "InlineCode",
  "FencedCode",
  "CodeBlock",
  "HTMLBlock",
  "HTMLTag",
  "Comment",
  "CommentBlock",
  "ProcessingInstruction",
  "ProcessingInstructionBlock",
  "Autolink",
  "URL",
  "Image",
  "LinkReference",
  "Escape",
]);

/** Texts remembered; a notebook with more prose parts than this only reads some again. */
const REMEMBERED = 20_000;

/** A pure function of a text that remembers what it gave, the oldest forgotten first. */
function remembering<T>(compute: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const found = known.get(text);
    if (found !== undefined) return found;
    if (known.size >= REMEMBERED) known.delete(known.keys().next().value as string);
    const made = compute(text);
    known.set(text, made);
    return made;
  };
}

/**
 * Longest stretch without a blank line that is read for live values. The Markdown parser takes time that grows with the
 * square of some texts nobody writes (thousands of brackets or blanks on end); past this a text is taken for one, and
 * its part carries a notice.
 */
const LONGEST_BLOCK = 50_000;

/** Whether a prose part is read for live values and headings. */
export const isReadable = (text: string): boolean =>
  text.length <= LONGEST_BLOCK || text.split(/\n[ \t]*\n/).every((block) => block.length <= LONGEST_BLOCK);

const readLive = remembering((text: string): readonly LiveValue[] => {
  const matches = [...text.matchAll(LIVE)];
  if (matches.length === 0 || !isReadable(text)) return [];
  const dead = deadRanges(text);
  const found: LiveValue[] = [];
  let next = 0;
  for (const match of matches) {
    const from = match.index;
    const to = from + match[0].length;
    while (next < dead.length && (dead[next] as Dead).to <= from) next += 1;
    const stretch = dead[next];
    if (stretch !== undefined && stretch.from < to) continue;
    found.push({ from, to, inside: match[0].slice(1, -1) });
  }
  return found;
});

/** The live values of one prose part, in order. Code spans and blocks, links, HTML and escaped braces hold none. */
export const liveValues = (proseText: string): readonly LiveValue[] => (proseText.includes("{") ? readLive(proseText) : []);

interface Dead {
  readonly from: number;
  readonly to: number;
}

/** Sorted, without overlap. */
function deadRanges(text: string): readonly Dead[] {
  const found: Dead[] = [];
  proseTree(text).iterate({
    enter: (node) => {
      const dead = DEAD.has(node.name) || (node.name === "Link" && isLink(node.node));
      if (!dead) return true;
      found.push({ from: node.from, to: node.to });
      return false;
    },
  });
  return found;
}

/** The parser calls every bracketed text a link; one with an address or a label is meant as one. */
const isLink = (node: { getChild(name: string): unknown }): boolean => node.getChild("URL") !== null || node.getChild("LinkLabel") !== null;

const readHeadings = remembering((text: string): readonly Heading[] => {
  const found: Heading[] = [];
  const tree = proseTree(text);
  for (let node = tree.topNode.firstChild; node !== null; node = node.nextSibling) {
    const level = /^(?:ATX|Setext)Heading([1-6])$/.exec(node.name)?.[1];
    if (level === undefined) continue;
    let words = "";
    let at = node.from;
    for (let mark = node.firstChild; mark !== null; mark = mark.nextSibling) {
      if (mark.name !== "HeaderMark") continue;
      words += text.slice(at, mark.from);
      at = mark.to;
    }
    words += text.slice(at, node.to);
    found.push({ level: Number(level), text: words.trim().replace(/\s+/g, " "), from: node.from, to: node.to });
  }
  return found;
});

/** The headings of one prose part that stand on their own, not in a list or quote. */
export const headings = (proseText: string): readonly Heading[] =>
  /(?:^|\n) {0,3}[#=-]/.test(proseText) && isReadable(proseText) ? readHeadings(proseText) : [];
