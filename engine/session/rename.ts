// Renaming a name wherever it stands: its definition, other lines, live values in prose, and notebooks that use this one.

import { applyChanges, type Range, type TextChange } from "../base/index.ts";
import { liveValues, placedChunks } from "../notebook/index.ts";
import {
  expressionUsePlaces,
  normalName,
  parseLive,
  parseStatement,
  reservedWords,
  type StatementTree,
  usePlaces,
} from "../syntax/index.ts";
import type { FileState } from "./file-state.ts";
import type { SessionState } from "./session.ts";
import { namePlace, parseChunk } from "./statement.ts";
import type { Renaming } from "./tools-api.ts";

const NAME = /^[\p{L}_][\p{L}\p{M}\p{N}_]*$/u;

/** `name`: as normalised or as written. Refuses what would change the meaning of any line. */
export function renameEdits(state: SessionState, file: string, name: string, newName: string): Renaming {
  const notebook = state.files.notebooks.get(file);
  const old = normalName(name);
  const wanted = newName.normalize("NFC").trim();
  if (notebook?.byName.has(old) !== true) return { ok: false, why: "unknown" };
  if (!NAME.test(wanted)) return { ok: false, why: "form" };
  if (reservedWords.includes(wanted)) return { ok: false, why: "reserved" };
  const target = normalName(wanted);
  if (target !== old && notebook.byName.has(target)) return { ok: false, why: "taken" };
  if (target !== old && state.engine.library.pieces.has(target)) return { ok: false, why: "library" };
  const edits: { readonly file: string; readonly changes: readonly TextChange[] }[] = [];
  let places = 0;
  for (const other of state.files.notebooks.values()) {
    const uses = other === notebook ? old : prefixedName(state, other, file, old);
    if (uses === undefined) continue;
    const changes = changesIn(other, uses, other === notebook, wanted, target);
    if (changes === undefined) return { ok: false, why: "bound" };
    if (changes.length === 0) continue;
    places += changes.length;
    edits.push({ file: other.file, changes });
  }
  return { ok: true, edits, places };
}

/** `shop.F_max`, where `shop` is what the other notebook calls this one. */
function prefixedName(state: SessionState, other: FileState, file: string, name: string): string | undefined {
  for (const prefix of other.byName.keys()) if (state.engine.prefix(other.file, prefix) === file) return `${prefix}.${name}`;
  return undefined;
}

/** Undefined when the new name would be caught by a name that a statement binds itself. */
function changesIn(file: FileState, uses: string, own: boolean, text: string, target: string): readonly TextChange[] | undefined {
  const { notebook } = file;
  const changes: TextChange[] = [];
  for (const { chunk, from } of placedChunks(notebook)) {
    const { tree } = parseChunk(chunk);
    const inside = changesOf(tree, uses, own, text);
    if (inside.length === 0) continue;
    if (isCaught(chunk.text, tree, inside, uses, target)) return undefined;
    changes.push(...inside.map((change) => ({ ...change, from: from + change.from, to: from + change.to })));
  }
  notebook.parts.forEach((part, index) => {
    const start = notebook.starts[index] as number;
    if (part.kind === "csv" && own && part.name !== undefined && normalName(part.name.text) === uses)
      changes.push({ from: start + part.name.from, to: start + part.name.to, insert: text });
    if (part.kind !== "prose") return;
    for (const live of liveValues(part.text)) {
      const at = start + live.from + 1;
      const path = parseLive(live.inside)?.path;
      if (path === undefined) continue;
      for (const { name, range } of expressionUsePlaces(path))
        if (name === uses) changes.push({ from: at + range.from, to: at + range.to, insert: text });
    }
  });
  return changes.sort((a, b) => a.from - b.from);
}

function changesOf(tree: StatementTree, uses: string, own: boolean, text: string): TextChange[] {
  const at = ({ from, to }: Range): TextChange => ({ from, to, insert: text });
  const changes = usePlaces(tree)
    .filter(({ name }) => name === uses)
    .map(({ range }) => at(range));
  if (own && declared(tree) === uses) changes.push(at(namePlace(tree)));
  return changes.sort((a, b) => a.from - b.from);
}

function declared(tree: StatementTree): string | undefined {
  if (tree.kind === "use") return tree.prefix.name;
  return "name" in tree ? tree.name?.name : undefined;
}

/** Whether the statement, renamed, uses the new name freely in as many places as it used the old one. */
function isCaught(text: string, tree: StatementTree, changes: readonly TextChange[], uses: string, target: string): boolean {
  const dot = uses.indexOf(".");
  const now = dot < 0 ? target : `${uses.slice(0, dot)}.${target}`;
  const count = (of: StatementTree, name: string): number => usePlaces(of).filter((place) => place.name === name).length;
  const after = parseStatement(applyChanges(text, changes)).tree;
  return count(after, now) !== count(tree, uses) + (now === uses ? 0 : count(tree, now));
}
