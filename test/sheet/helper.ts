// One way into the sheet for its tests: a notebook's text over an empty library, or over the standard one.

import { createSession, type Library, type Session } from "../../engine/session/index.ts";
import { type Block, makeSheet, plainText, type Sheet, type TableBlock, type WorkingBlock } from "../../engine/sheet/index.ts";

export const noLibrary: Library = { version: "0.0.0", modules: [], files: [], natives: {}, sources: "" };

export const FILE = "a.joint.md";

export function opened(text: string, library: Library = noLibrary, files: Readonly<Record<string, string>> = {}): Session {
  const session = createSession(library);
  for (const [name, other] of Object.entries(files)) session.put(name, other);
  session.put(FILE, text);
  return session;
}

export const calc = (...lines: readonly string[]): string => ["```calc", ...lines, "```", ""].join("\n");

export const sheetOf = (text: string, library: Library = noLibrary, files: Readonly<Record<string, string>> = {}): Sheet =>
  makeSheet(opened(text, library, files), library, FILE, { version: "9.9.9" });

export const tablesOf = (sheet: Sheet): readonly TableBlock[] =>
  sheet.blocks.filter((block): block is TableBlock => block.kind === "table");
export const workingOf = (sheet: Sheet): readonly WorkingBlock[] =>
  sheet.blocks.filter((block): block is WorkingBlock => block.kind === "working");

/** Cells of a table as plain text, the head first. */
export function tableText(sheet: Sheet, id: string): readonly (readonly string[])[] {
  const table = tablesOf(sheet).find((each) => each.id === id);
  if (table === undefined) throw new Error(`no table ${id}`);
  return [
    table.columns.map(({ head }) => plainText(head)),
    ...table.rows.map((row) => row.map((cell) => plainText(cell).replaceAll("\u00a0", " "))),
  ];
}

/** Everything the blocks say, a line a block. */
export const sayings = (blocks: readonly Block[]): readonly string[] =>
  blocks.flatMap((block) => {
    if (block.kind === "heading") return [`${block.number} ${block.text}`];
    if (block.kind === "paragraph" || block.kind === "caution") return [plainText(block.of)];
    if (block.kind === "list") return block.items.flatMap(sayings);
    return [];
  });
