// Finds the first fence that stands on its own in a piece of Markdown, by walking its blocks with the Markdown parser.

import { lineEnd, readOpening } from "./line.ts";
import { proseParser } from "./prose-tree.ts";

/**
 * Where a walk saw its fence, -1 while it saw none. The parser's block hooks get no state of their own; a walk is one
 * synchronous call, so one cell serves.
 */
let seen = -1;

/** Only blocks matter, so inline parsers are out. */
const watchingParser = proseParser.configure({
  remove: ["Escape", "Entity", "InlineCode", "HTMLTag", "Emphasis", "HardBreak", "Link", "Image", "LinkEnd"],
  parseBlock: [
    {
      name: "FenceWatch",
      before: "FencedCode",
      parse(context, line) {
        if (context.depth !== 1 || readOpening(line.text, 0, line.text.length) === undefined) return false;
        seen = context.lineStart;
        // "Taken", though nothing is: the walk is given up here, and an open fence need not be read to the text's end.
        return true;
      },
    },
  ],
});

/**
 * Offset of the first line from `from` on that opens a fence outside lists, quotes and HTML blocks; -1 if none does.
 * `from` is where a block may begin. The walk ends there: its cost is what it passes.
 */
export function firstFenceByBlocks(text: string, from: number): number {
  seen = -1;
  const walk = watchingParser.startParse(text.slice(from));
  while (seen === -1 && walk.advance() === null);
  return seen === -1 ? -1 : from + seen;
}

/**
 * The same, quickly where it can be: a line at column 0 ends every list and quote, so only HTML blocks and fences
 * indented by one to three spaces need the parser. Those are told by how a line begins.
 */
export function firstFence(text: string, from: number): number {
  for (let at = from; at < text.length; ) {
    const end = lineEnd(text, at);
    const code = text.charCodeAt(at);
    // Codes of space, `<`, backtick, tilde: the only line beginnings that matter.
    if (code === 32 || code === 60 || code === 96 || code === 126) {
      if (/^ {0,3}</.test(text.slice(at, at + 4))) return firstFenceByBlocks(text, from);
      const opening = readOpening(text, at, end);
      if (opening !== undefined) return opening.indent === 0 ? at : firstFenceByBlocks(text, from);
    }
    at = end + 1;
  }
  return -1;
}
