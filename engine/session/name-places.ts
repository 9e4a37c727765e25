// Names at places: what stands under a caret, and where it is defined.

import { chunkAt, liveValues, partIndexAt } from "../notebook/index.ts";
import { normalName, tokens } from "../syntax/index.ts";
import { fullName } from "./engine-state.ts";
import type { FileState } from "./file-state.ts";
import { placeOf } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { namePlace } from "./statement.ts";
import type { DefinitionPlace, NamePlace } from "./tools-api.ts";

/** The name whose text holds the offset or ends at it, in working, in a live value of prose, or in the head of a csv block. */
export function nameAt(state: SessionState, file: string, offset: number): NamePlace | undefined {
  const notebook = state.files.notebooks.get(file);
  if (notebook === undefined) return undefined;
  return nameInWorking(notebook, offset) ?? nameInProse(notebook, offset) ?? nameOfCsv(notebook, offset);
}

function nameInWorking({ notebook }: FileState, offset: number): NamePlace | undefined {
  const found = chunkAt(notebook, offset);
  if (found === undefined) return undefined;
  const { text } = found.chunk;
  const at = offset - found.from;
  const list = tokens(text);
  const index = list.findIndex(
    (each) => each.from <= at && at <= each.to && (each.kind === "name" || each.kind === "type" || each.kind === "field"),
  );
  const token = list[index];
  if (token === undefined) return undefined;
  const written = text.slice(token.from, token.to);
  const place = { text: written, from: found.from + token.from, to: found.from + token.to };
  const [dot, owner] = [list[index - 1], list[index - 2]];
  // Behind a point it is a field, or a name of the notebook that the prefix stands for.
  if (dot !== undefined && text.slice(dot.from, dot.to) === "." && dot.to === token.from && owner?.to === dot.from)
    return { ...place, name: `${normalName(text.slice(owner.from, owner.to))}.${normalName(written)}` };
  return token.kind === "field" ? undefined : { ...place, name: normalName(written) };
}

function nameInProse({ notebook }: FileState, offset: number): NamePlace | undefined {
  const index = partIndexAt(notebook, offset);
  const part = notebook.parts[index];
  if (part?.kind !== "prose") return undefined;
  const start = notebook.starts[index] as number;
  for (const live of liveValues(part.text)) {
    const from = start + live.from + 1;
    if (offset < from || start + live.to < offset) continue;
    const head = /^\s*([\p{L}_][\p{L}\p{M}\p{N}_]*)/u.exec(live.inside);
    if (head === null) return undefined;
    const lead = head[0].length - (head[1] as string).length;
    return { name: normalName(head[1] as string), text: head[1] as string, from: from + lead, to: from + head[0].length };
  }
  return undefined;
}

function nameOfCsv({ notebook }: FileState, offset: number): NamePlace | undefined {
  const index = partIndexAt(notebook, offset);
  const part = notebook.parts[index];
  if (part?.kind !== "csv" || part.name === undefined) return undefined;
  const start = notebook.starts[index] as number;
  const { text, from, to } = part.name;
  return start + from <= offset && offset <= start + to ? { name: normalName(text), text, from: start + from, to: start + to } : undefined;
}

/** Where the name at a place is defined: in this notebook, in one it uses, or in the library. */
export function definitionOf(state: SessionState, file: string, offset: number): DefinitionPlace | undefined {
  const found = nameAt(state, file, offset);
  return found === undefined ? undefined : definitionOfName(state, file, found.name);
}

export function definitionOfName(state: SessionState, file: string, name: string): DefinitionPlace | undefined {
  const { engine, files } = state;
  const dot = name.indexOf(".");
  const target = dot < 0 ? undefined : engine.prefix(file, name.slice(0, dot));
  if (target !== undefined) return inNotebook(state, target, name.slice(dot + 1));
  const own = inNotebook(state, file, dot < 0 ? name : name.slice(0, dot));
  if (own !== undefined) return own;
  const piece = engine.library.pieces.get(name);
  if (piece === undefined || files.notebooks.get(file) === undefined) return undefined;
  return { in: "library", module: piece.module, name, from: piece.from, to: piece.from + piece.piece.text.length };
}

function inNotebook(state: SessionState, file: string, name: string): DefinitionPlace | undefined {
  const key = fullName(file, name);
  const statement = state.engine.byKey.get(key);
  const place = placeOf(state.files, state.engine, key);
  if (statement === undefined || place === undefined) return undefined;
  const at = statement.csv?.name ?? namePlace(statement.tree);
  return { in: "notebook", file: place.file, from: place.from + at.from, to: place.from + at.to };
}
