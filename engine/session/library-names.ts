// The library's statements by name. Modules are split into statements at once; a statement is read when something first needs it.

import {
  type Chunk,
  type CsvPart,
  type CsvTable,
  type Notebook,
  placedChunks,
  type Reference,
  readCsv,
  readNotebook,
  readSources,
} from "../notebook/index.ts";
import { normalName } from "../syntax/index.ts";
import type { Library } from "./api.ts";

export interface LibraryPiece {
  readonly module: string;
  readonly piece: Chunk | CsvPart;
  /** Offset in the module's text. */
  readonly from: number;
}

export interface LibraryNames {
  readonly version: string;
  readonly pieces: ReadonlyMap<string, LibraryPiece>;
  /** `use "data/x.csv" as name` in a module: the data file. */
  readonly data: ReadonlyMap<string, LibraryFile>;
  readonly sources: ReadonlyMap<string, Reference>;
  readonly library: Library;
}

type LibraryFile = Library["files"][number];

const read = new WeakMap<LibraryFile, Notebook>();
const tables = new WeakMap<LibraryFile, CsvTable>();

/** A module's parts, read once for as long as the module's object lives, so that sessions over one library share them. */
export function moduleNotebook(module: LibraryFile): Notebook {
  const known = read.get(module);
  if (known !== undefined) return known;
  const made = readNotebook(module.text);
  read.set(module, made);
  return made;
}

/** A data file's table, read once likewise. */
export function dataTable(file: LibraryFile): CsvTable {
  const known = tables.get(file);
  if (known !== undefined) return known;
  const made = readCsv(file.text);
  tables.set(file, made);
  return made;
}

const HEAD = /^(?:(formula|record|family)\s+)?([\p{L}_][\p{L}\p{M}\p{N}_]*)/u;
const USE = /^use\s+"([^"]*)"\s+as\s+([\p{L}_][\p{L}\p{M}\p{N}_]*)/u;

const known = new WeakMap<Library, LibraryNames>();

/** Reads a library once, however many sessions use it: nothing in it changes, and its statements keep their identity. */
export function readLibrary(library: Library): LibraryNames {
  const names = known.get(library) ?? readModules(library);
  known.set(library, names);
  return names;
}

function readModules(library: Library): LibraryNames {
  const pieces = new Map<string, LibraryPiece>();
  const data = new Map<string, LibraryFile>();
  const files = new Map(library.files.map((file) => [file.name, file]));
  for (const module of library.modules) {
    const notebook = moduleNotebook(module);
    for (const { chunk, from } of placedChunks(notebook)) {
      const use = USE.exec(chunk.text);
      const word = /^\w+/.exec(chunk.text)?.[0];
      if (use !== null) {
        const name = normalName(use[2] ?? "");
        pieces.set(name, { module: module.name, piece: chunk, from });
        data.set(name, files.get(use[1] ?? "") ?? { name: use[1] ?? "", text: "" });
      } else if (word !== "check" && word !== "example") {
        const head = HEAD.exec(chunk.text);
        if (head !== null) pieces.set(normalName(head[2] ?? ""), { module: module.name, piece: chunk, from });
      }
    }
    notebook.parts.forEach((part, i) => {
      if (part.kind === "csv" && part.name !== undefined)
        pieces.set(normalName(part.name.text), { module: module.name, piece: part, from: notebook.starts[i] ?? 0 });
    });
  }
  return { version: library.version, pieces, data, sources: readSources(library.sources), library };
}
