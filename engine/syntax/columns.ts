// The raw columns behind the working: note and reference.

import type { IToken } from "chevrotain";
import type { Range } from "../base/index.ts";
import { endOf } from "./token-types.ts";
import type { Columns } from "./tree.ts";

interface Trimmed {
  readonly text: string;
  readonly range: Range;
}

/** `\|` is a bar. */
function column(token: IToken | undefined): Trimmed | undefined {
  if (token === undefined) return undefined;
  const raw = token.image;
  const text = raw.trim();
  if (text === "") return undefined;
  const from = token.startOffset + raw.length - raw.trimStart().length;
  return { text: text.replaceAll("\\|", "|"), range: { from, to: from + text.length } };
}

/** Absent when both columns are empty. */
export function columnsOf(bar: IToken, end: number, noteToken?: IToken, referenceToken?: IToken): Columns | undefined {
  const note = column(noteToken);
  const reference = column(referenceToken);
  if (note === undefined && reference === undefined) return undefined;
  return {
    range: { from: bar.startOffset, to: end },
    ...(note === undefined ? {} : { note: note.text, noteRange: note.range }),
    ...(reference === undefined ? {} : { reference: reference.text, referenceRange: reference.range }),
  };
}

/** A column as it is written: bars escaped. */
export const escapeBars = (text: string): string => text.replaceAll("|", "\\|");

export const columnEnd = (tokens: readonly (IToken | undefined)[]): number =>
  tokens.reduce((end, token) => (token === undefined ? end : Math.max(end, endOf(token))), 0);
