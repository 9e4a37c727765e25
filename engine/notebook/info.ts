// The line that opens a fence: which kind of part it makes, and what a csv fence says beside it.

import { range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import type { Opening } from "./line.ts";
import type { Placed } from "./part.ts";

export interface Info {
  readonly kind: "calc" | "csv" | "fence";
  readonly text: string;
  readonly name?: Placed;
  readonly note?: Placed;
  readonly reference?: Placed;
  readonly diagnostics: readonly Diagnostic[];
}

const NAME = /^[\p{L}_][\p{L}\p{M}\p{N}_]*$/u;

/** Reads an opening line; places count from `base`, the part's start. */
export function readInfo(text: string, opening: Opening, base: number): Info {
  const info = text.slice(opening.infoFrom, opening.infoTo);
  const from = opening.infoFrom - base;
  const first = /^\S*/.exec(info)?.[0] ?? "";
  const word = first.toLowerCase();
  const here = range(from, from + first.length);
  if (word !== "calc" && word !== "csv") return { kind: "fence", text: info, diagnostics: [] };
  if (opening.indent > 0) return { kind: "fence", text: info, diagnostics: [faults.fenceIndented(here, { word })] };
  if (first !== word) return { kind: "fence", text: info, diagnostics: [faults.fenceWordCase(here, { written: first, word })] };
  if (word === "csv") return readCsvInfo(info, from, first.length);
  const rest = info.slice(first.length).trim();
  const after = range(from + info.length - rest.length, from + info.length);
  return { kind: "calc", text: info, diagnostics: rest === "" ? [] : [faults.calcFenceWords(after, { words: rest })] };
}

function readCsvInfo(info: string, from: number, wordLength: number): Info {
  const [name, note, ...references] = columns(info.slice(wordLength), from + wordLength);
  const diagnostics: Diagnostic[] = [];
  if (name === undefined) diagnostics.push(faults.csvNoName(range(from, from + wordLength), {}));
  else if (!NAME.test(name.text)) diagnostics.push(faults.csvBadName(range(name.from, name.to), { name: name.text }));
  const reference = references.find((piece) => piece !== undefined);
  const extra = references.filter((piece) => piece !== undefined)[1];
  if (extra !== undefined) diagnostics.push(faults.csvFenceColumns(range(extra.from, extra.to), { words: extra.text }));
  const named = name !== undefined && NAME.test(name.text);
  return {
    kind: "csv",
    text: info,
    diagnostics,
    ...(named ? { name } : {}),
    ...(note === undefined ? {} : { note }),
    ...(reference === undefined ? {} : { reference }),
  };
}

/** Pieces between bars, `\|` being a bar of the text; a piece of blanks is undefined. */
function columns(text: string, from: number): (Placed | undefined)[] {
  const pieces: (Placed | undefined)[] = [];
  for (const match of text.matchAll(/((?:\\\||[^|])*)(?:\||$)/g)) {
    if (match.index === text.length && pieces.length > 0 && !text.endsWith("|")) break;
    const piece = match[1] as string;
    const trimmed = piece.trim();
    const at = from + match.index + (piece.length - piece.trimStart().length);
    pieces.push(trimmed === "" ? undefined : { text: trimmed.replaceAll("\\|", "|"), from: at, to: at + trimmed.length });
  }
  return pieces;
}
