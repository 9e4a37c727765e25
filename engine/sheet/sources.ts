// The files a notebook is made of, itself and what it uses, each with its digest; and the digest of a library.

import { sha256, utf8 } from "../base/index.ts";
import { placedChunks, readNotebook } from "../notebook/index.ts";
import type { Library, Session } from "../session/index.ts";
import { parseStatement } from "../syntax/index.ts";
import type { SheetFile } from "./model.ts";

/** Names of the notebook and of every file that it uses, directly or not, as the session holds them; the notebook first. */
export function sourceFiles(session: Session, file: string): readonly string[] {
  const known = new Set(session.files());
  const found = new Set<string>();
  const waiting = [file];
  for (let name = waiting.shift(); name !== undefined; name = waiting.shift()) {
    if (found.has(name) || !known.has(name)) continue;
    found.add(name);
    if (name.toLowerCase().endsWith(".csv")) continue;
    const folder = name.includes("/") ? name.slice(0, name.lastIndexOf("/") + 1) : "";
    for (const { chunk } of placedChunks(readNotebook(session.text(name)))) {
      const { tree } = parseStatement(chunk.text);
      if (tree.kind === "use") waiting.push(resolved(folder + tree.file.value));
    }
  }
  return [...found];
}

/** `a/../b.csv` is `b.csv`. */
function resolved(path: string): string {
  const out: string[] = [];
  for (const piece of path.split("/")) {
    if (piece === "" || piece === ".") continue;
    if (piece === ".." && out.length > 0 && out.at(-1) !== "..") out.pop();
    else out.push(piece);
  }
  return out.join("/");
}

export const sourceDigests = (session: Session, file: string): readonly SheetFile[] =>
  sourceFiles(session, file).map((name) => ({ name, sha256: sha256(utf8(session.text(name))) }));

const digests = new WeakMap<Library, string>();

/** One digest of all modules, data files and sources: names and texts, each led by its length. */
export function libraryDigest(library: Library): string {
  const made = digests.get(library) ?? sha256(utf8(spelled(library)));
  digests.set(library, made);
  return made;
}

function spelled({ modules, files, sources }: Library): string {
  const entries = [...modules, ...files, { name: "sources.yaml", text: sources }];
  return entries.map(({ name, text }) => `${name.length}:${name}${text.length}:${text}`).join("");
}
