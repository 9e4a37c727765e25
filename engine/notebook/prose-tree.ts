// The one Markdown grammar of editor, sheet and engine.

import { type MarkdownParser, parser, Table } from "@lezer/markdown";

/** CommonMark with tables. */
export const proseParser: MarkdownParser = parser.configure([Table]);

export type ProseTree = ReturnType<MarkdownParser["parse"]>;

/** The tree of one prose part's text. */
export const proseTree = (text: string): ProseTree => proseParser.parse(text);
