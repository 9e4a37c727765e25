// The csv blocks in which the check of a notebook is written down, so that any reader of the file sees it: one row a mark, an
// entry or a comment. They are parts of the notebook like any measured data.

import { applyChanges, type TextChange } from "../base/index.ts";
import { type CsvPart, type Notebook, readCsv, readNotebook } from "../notebook/index.ts";

export interface Block {
  readonly name: string;
  readonly note: string;
  readonly heads: readonly string[];
}

export const marksBlock: Block = {
  name: "check_marks",
  note: "which results were checked, by whom and how",
  heads: ["of", "value", "method", "by", "date", "note"],
};

export const entriesBlock: Block = {
  name: "check_entries",
  note: "inputs entered a second time without sight of the first",
  heads: ["of", "entered", "by", "date"],
};

export const commentsBlock: Block = {
  name: "check_comments",
  note: "comments of the check",
  heads: ["of", "by", "date", "text"],
};

/** The rows of a block by the heads it should have; a head that is missing gives empty texts, a block that is missing no rows. */
export function rowsOf(text: string, block: Block): readonly (readonly string[])[] {
  const found = partOf(readNotebook(text), block);
  if (found === undefined) return [];
  const table = readCsv(found.part.body);
  const places = block.heads.map((head) => table.heads.findIndex(({ name }) => name === head));
  return table.rows.map((row) => places.map((at) => row[at] ?? ""));
}

function partOf(notebook: Notebook, block: Block): { readonly part: CsvPart; readonly from: number } | undefined {
  const at = notebook.parts.findIndex((part) => part.kind === "csv" && part.name?.text === block.name);
  const part = notebook.parts[at];
  return part?.kind === "csv" ? { part, from: notebook.starts[at] ?? 0 } : undefined;
}

/** The change that adds a row; the first one puts the block at the end of the notebook. */
export function withRow(text: string, block: Block, cells: readonly string[]): TextChange {
  const row = cells.map(quoted).join(";");
  const found = partOf(readNotebook(text), block);
  if (found !== undefined && readCsv(found.part.body).heads.length > 0) {
    const end = found.from + found.part.bodyTo;
    const before = text.slice(0, end).endsWith("\n") ? "" : "\n";
    return { from: end, to: end, insert: `${before}${row}\n` };
  }
  const gap = text.endsWith("\n\n") || text === "" ? "" : text.endsWith("\n") ? "\n" : "\n\n";
  const fence = `${gap}\`\`\`csv ${block.name} | ${block.note}\n${block.heads.join(";")}\n${row}\n\`\`\`\n`;
  return { from: text.length, to: text.length, insert: fence };
}

/** A cell as csv: quoted where a sign of the format stands in it; a line end becomes a space, a row is one line. */
function quoted(cell: string): string {
  const line = cell.replace(/\s*\n\s*/g, " ").trim();
  return /[";,\t]|^\s|\s$/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
}

/** The text with the changes made, for callers that go on with it. */
export const changed = (text: string, change: TextChange): string => applyChanges(text, [change]);
