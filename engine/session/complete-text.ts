// What a text between quotes could be: a choice that the type allows, a designation or name that the library's own examples and
// tables use at the same place.

import type { Type } from "../check/index.ts";
import { normalName } from "../syntax/index.ts";
import { ensureLibrary, fullName } from "./engine-state.ts";
import { csvOf } from "./file-state.ts";
import { dataTable, type LibraryNames } from "./library-names.ts";
import type { SessionState } from "./session.ts";
import type { Completion } from "./snapshot.ts";
import { entryOf } from "./wanted.ts";

const NAME = "[\\p{L}_][\\p{L}\\p{M}\\p{N}_]*";
/** `thread("M5` and `socket_screw("M5", "8.` : the call, what stands before the text, the text so far. */
const IN_CALL = new RegExp(`(${NAME})\\(((?:[^()"]|"[^"]*")*)"([^"]*)$`, "u");
/** `seat = "on` inside a record: its fields stand between the brace and here. */
const IN_FIELD = new RegExp(`(${NAME})\\s*\\{(?:[^{}"]|"[^"]*")*?(${NAME})\\s*=\\s*"([^"]*)$`, "u");

export interface TextPlace {
  /** Characters typed of the text. */
  readonly typed: string;
  readonly options: readonly Completion[];
}

/** `before`: the statement up to the caret. Undefined where no text is open. */
export function textAt(state: SessionState, file: string, before: string): TextPlace | undefined {
  const call = IN_CALL.exec(before);
  const field = IN_FIELD.exec(before);
  if (field !== null && (call === null || call.index < field.index)) {
    const type = entryFor(state, file, field[1] ?? "", "record", normalName(field[2] ?? ""), 0);
    return { typed: field[3] ?? "", options: choices(type) };
  }
  if (call === null) return undefined;
  const [, name = "", lead = "", typed = ""] = call;
  const at = lead.replaceAll(/"[^"]*"/g, "").split(",").length - 1;
  const named = new RegExp(`(${NAME})\\s*=\\s*$`, "u").exec(lead)?.[1];
  const allowed = choices(entryFor(state, file, name, "formula", named === undefined ? undefined : normalName(named), at));
  if (allowed.length > 0) return { typed, options: allowed };
  return { typed, options: seenTexts(state.engine.library, name, at).map((text) => option(text, name)) };
}

const option = (text: string, detail: string): Completion => ({ label: text, insert: text, kind: "designation", detail });

const choices = (type: Type | undefined): readonly Completion[] =>
  type?.type === "text" && type.choices !== undefined ? type.choices.map((text) => option(text, "choice")) : [];

function entryFor(
  state: SessionState,
  file: string,
  name: string,
  kind: "formula" | "record",
  part: string | undefined,
  at: number,
): Type | undefined {
  const plain = normalName(name);
  ensureLibrary(state.engine, plain);
  state.update();
  const entry = entryOf(state, fullName(file, plain)) ?? entryOf(state, plain);
  if (kind === "record") return entry?.entry === "record" ? entry.fields.find((each) => each.name === part)?.type : undefined;
  if (entry?.entry !== "formula") return undefined;
  return (part === undefined ? entry.type.parameters[at] : entry.type.parameters.find((each) => each.name === part))?.type;
}

const known = new WeakMap<LibraryNames, Map<string, readonly string[]>>();

/** Texts that the library gives to a formula at a place, and the first column of the table that goes by the formula's plural. */
function seenTexts(library: LibraryNames, name: string, at: number): readonly string[] {
  const kept = known.get(library) ?? new Map<string, readonly string[]>();
  known.set(library, kept);
  const key = `${name} ${at}`;
  const before = kept.get(key);
  if (before !== undefined) return before;
  const found = new Set<string>();
  const calls = new RegExp(`(?<![\\p{L}\\p{N}_])${name}\\(([^()]*)\\)`, "gu");
  for (const { text } of library.library.modules) {
    for (const match of text.matchAll(calls)) {
      const argument = (match[1] ?? "").match(/(?:[^,"]|"[^"]*")+/g)?.[at]?.trim() ?? "";
      const given = /^"([^"]+)"$/.exec(argument)?.[1];
      if (given !== undefined) found.add(given);
    }
  }
  if (at === 0) for (const text of tableTexts(library, `${name}s`)) found.add(text);
  const list = [...found];
  kept.set(key, list);
  return list;
}

function tableTexts(library: LibraryNames, name: string): readonly string[] {
  const data = library.data.get(name);
  const piece = library.pieces.get(name)?.piece;
  const table = data !== undefined ? dataTable(data) : piece !== undefined && "bodyFrom" in piece ? csvOf(piece) : undefined;
  if (table === undefined) return [];
  const column = table.heads.findIndex(({ unit }) => unit === undefined);
  return table.rows.flatMap((row) => {
    const cell = row[column];
    return cell === undefined || cell === "" ? [] : [cell];
  });
}
