// A notebook opened for the sheet: its text in parts, what the session says of each line, the works that it may cite.

import {
  citation,
  type FrontMatter,
  type Notebook,
  type Reference,
  type ReferenceColumn,
  readFrontMatter,
  readNotebook,
  readSources,
} from "../notebook/index.ts";
import type { Library, LineOutput, Session } from "../session/index.ts";
import { parseStatement, type StatementTree } from "../syntax/index.ts";
import { type LibraryIndex, libraryIndex } from "./library-index.ts";

export interface BookLine {
  readonly output: LineOutput;
  readonly tree: StatementTree;
  readonly text: string;
}

export interface Book {
  readonly session: Session;
  readonly library: Library;
  readonly file: string;
  readonly text: string;
  readonly notebook: Notebook;
  readonly front: FrontMatter;
  /** Everything the session shows, in the order of the text. */
  readonly outputs: readonly LineOutput[];
  /** Statements of the working by the offset they begin at. */
  readonly lines: ReadonlyMap<number, BookLine>;
  readonly references: ReadonlyMap<string, Reference>;
  /** A reference column as it is shown: `ISO 965-1, table 2`. */
  readonly cite: (column: ReferenceColumn) => string;
  readonly index: LibraryIndex;
}

const STATEMENTS = new Set<LineOutput["kind"]>([
  "definition",
  "check",
  "formula",
  "record",
  "family",
  "example",
  "use",
  "remark",
  "broken",
]);

/** `file` must have been put into the session, with what it uses. */
export function openBook(session: Session, library: Library, file: string): Book {
  const text = session.text(file);
  const outputs = session.outputs(file);
  const front = readFrontMatter(text);
  const lines = new Map(
    outputs
      .filter(({ kind }) => STATEMENTS.has(kind))
      .map((output): [number, BookLine] => {
        const own = text.slice(output.from, output.to);
        return [output.from, { output, text: own, tree: parseStatement(own).tree }];
      }),
  );
  const references = new Map([...readSources(library.sources), ...front.references]);
  return {
    session,
    library,
    file,
    text,
    notebook: readNotebook(text),
    front,
    outputs,
    lines,
    references,
    cite: (column) => citation(column, references),
    index: libraryIndex(library),
  };
}
