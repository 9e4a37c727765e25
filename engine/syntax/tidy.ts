// Text made orderly: one statement, a tree without a text, and all the statements of a fence together.

import { alignLines, type Placed } from "./align.ts";
import { layoutLines } from "./layout.ts";
import { parseStatement } from "./parse.ts";
import { printColumns, printWorking } from "./print-tree.ts";
import type { StatementTree } from "./tree.ts";

/** The lines of each chunk; a chunk with a syntax fault gives none. */
function placed(chunk: string, statement: number): readonly Placed[] | undefined {
  const { tree, diagnostics } = parseStatement(chunk);
  if (diagnostics.length > 0) return undefined;
  const lines = layoutLines(chunk.replace(/\r?\n$/, ""), tree);
  const alone = lines.filter((line) => line.cells.length > 0).length === 1;
  return lines.map((line) => ({ ...line, statement, alone: alone && line.cells.length > 0 }));
}

/** Short lines share one column for their notes, so that a longer neighbour moves them rarely. */
const FIRST_BAR = 38;

const BLANK: Omit<Placed, "statement"> = { indent: 0, cells: [], row: false, block: 0, alone: false };

/** A statement in its normal form; `text` is its own text and holds its comments. With an empty text: from the tree alone. */
export function printStatement(tree: StatementTree, text: string): string {
  const source = text === "" ? printWorking(tree) + printColumns(tree.columns) : text;
  return aligned([source], [], 0)[0] as string;
}

/**
 * The chunks of one fence, in order, tidied: `=` and bars of one-line statements in columns, wrapped lines indented. Line breaks,
 * comments and blank lines stay; a chunk with a syntax fault is given back unchanged. `gaps[i]` is what stands between chunk
 * i - 1 and chunk i where chunks come without the blank lines behind them; a blank line ends a run of aligned `=`.
 */
export const tidy = (chunks: readonly string[], gaps: readonly string[] = []): readonly string[] => aligned(chunks, gaps, FIRST_BAR);

function aligned(chunks: readonly string[], gaps: readonly string[], least: number): readonly string[] {
  const lines: Placed[] = [];
  const spans = chunks.map((chunk, i) => {
    if (/\n[^\S\n]*\n/.test(gaps[i] ?? "")) lines.push({ ...BLANK, statement: i });
    const from = lines.length;
    const own = placed(chunk, i);
    if (own === undefined) return undefined;
    lines.push(...own);
    return { from, to: lines.length };
  });
  const texts = alignLines(lines, least);
  return chunks.map((chunk, i) => {
    const span = spans[i];
    if (span === undefined) return chunk;
    const end = chunk.includes("\r\n") ? "\r\n" : "\n";
    return texts.slice(span.from, span.to).join(end) + (/\n$/.test(chunk) ? end : "");
  });
}
