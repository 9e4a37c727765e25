// New marks, second entries and comments as changes of the notebook's text. The date comes from whoever calls: no clock here.

import type { TextChange } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { readFrontMatter } from "../notebook/index.ts";
import type { LineOutput, Session } from "../session/index.ts";
import { isInput, type Method } from "./read-signoff.ts";
import { resultName, resultText } from "./result-state.ts";
import { samePerson } from "./roles.ts";
import { type Block, commentsBlock, entriesBlock, marksBlock, withRow } from "./tables.ts";

export type Added = { readonly change: TextChange } | { readonly refused: Diagnostic };

interface By {
  /** Name of a definition or title of a check. */
  readonly of: string;
  readonly by: string;
  /** As 2026-03-04. */
  readonly date: string;
}

const nowhere = { from: 0, to: 0 };

/** A checker's mark on a result as it is now. Refused for who made the calculation, for what is no result, without a name. */
export function addMark(session: Session, file: string, mark: By & { readonly method: Method; readonly note?: string }): Added {
  const found = resultOf(session, file, mark.of);
  if (found === undefined) return { refused: faults.markOfNothing(nowhere, { name: mark.of }) };
  const { creator } = readFrontMatter(session.text(file)).title;
  if (samePerson(mark.by, creator)) return { refused: faults.markOfOwnWork(nowhere, { name: mark.by.trim() }) };
  return added(session, file, marksBlock, mark, [mark.of, resultText(found), mark.method, mark.by, mark.date, mark.note ?? ""]);
}

/** An input entered again by somebody who did not see it. `entered`: value and unit as typed. */
export function addEntry(session: Session, file: string, entry: By & { readonly entered: string }): Added {
  const found = resultOf(session, file, entry.of);
  if (found === undefined || !isInput(found)) return { refused: faults.markOfNothing(nowhere, { name: entry.of }) };
  return added(session, file, entriesBlock, entry, [entry.of, entry.entered, entry.by, entry.date]);
}

/** A comment on a result, on an input, or with an empty `of` on the whole. */
export function addComment(session: Session, file: string, comment: By & { readonly text: string }): Added {
  return added(session, file, commentsBlock, comment, [comment.of, comment.by, comment.date, comment.text]);
}

function added(session: Session, file: string, block: Block, { by }: By, cells: readonly string[]): Added {
  if (by.trim() === "") return { refused: faults.markWithoutName(nowhere, {}) };
  return { change: withRow(session.text(file), block, cells) };
}

const resultOf = (session: Session, file: string, name: string): LineOutput | undefined =>
  session.outputs(file).find((output) => resultName(output) === name);
