// A branch from a released calculation for a failure in the field: the same text with what was found put in, in preparation again.

import { applyChanges, type TextChange } from "../base/index.ts";
import { editFrontMatter, readFrontMatter } from "../notebook/index.ts";
import { createSession, type Library } from "../session/index.ts";
import { inputPlace } from "./input-place.ts";

/** An input as it was found on the part: a number in the unit the notebook writes. */
export interface Found {
  readonly name: string;
  readonly value: number;
}

export interface Branch {
  readonly text: string;
  /** Names that are no input of one number; nothing was put in for them. */
  readonly unknown: readonly string[];
}

/** `files`: the notebook and what it uses; the released text itself stays as it is. `digest`: of the package it comes from. */
export function branchOf(
  library: Library,
  files: readonly { readonly name: string; readonly text: string }[],
  notebook: string,
  found: readonly Found[],
  origin: { readonly number: string; readonly digest: string },
): Branch {
  const session = createSession(library);
  for (const { name, text } of files) session.put(name, text);
  const outputs = session.outputs(notebook);
  const changes: TextChange[] = [];
  const unknown: string[] = [];
  for (const { name, value } of found) {
    const output = outputs.find((each) => each.name === name);
    const place = output === undefined ? undefined : inputPlace(session, notebook, output);
    if (place === undefined) unknown.push(name);
    else changes.push({ from: place.from, to: place.to, insert: String(value) });
  }
  const asFound = applyChanges(
    session.text(notebook),
    changes.sort((a, b) => a.from - b.from),
  );
  return { text: inPreparation(asFound, origin), unknown };
}

/** A new document: no number, no signatures, and a line that says where it comes from. */
function inPreparation(text: string, origin: { readonly number: string; readonly digest: string }): string {
  const set = (now: string, field: string, value: string | undefined): string => applyChanges(now, editFrontMatter(now, [field], value));
  const { title } = readFrontMatter(text).title;
  const fields: readonly (readonly [string, string | undefined])[] = [
    ["title", `${title}: as found`],
    ["number", undefined],
    ["revision", undefined],
    ["status", "in preparation"],
    ["date", undefined],
    ["checker", undefined],
    ["approval_person", undefined],
    ["branch_of", `${origin.number} sha256 ${origin.digest}`],
  ];
  return fields.reduce((now, [field, value]) => set(now, field, value), text);
}
