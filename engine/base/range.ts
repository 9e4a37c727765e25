// Half-open character ranges, the one way a place in a text is named.

/** A half-open range of UTF-16 offsets. Relative to what, the holder says (a statement's text, a file's text). */
export interface Range {
  readonly from: number;
  readonly to: number;
}

export const range = (from: number, to: number): Range => ({ from, to });

/** The smallest range that holds both. */
export const cover = (a: Range, b: Range): Range => ({ from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) });

export const shift = (r: Range, by: number): Range => ({ from: r.from + by, to: r.to + by });

/** One replacement in a text: `insert` in place of what stands from `from` to `to`. */
export interface TextChange extends Range {
  readonly insert: string;
}

/** Applies changes that are sorted, do not overlap and are all counted in the old text. */
export function applyChanges(text: string, changes: readonly TextChange[]): string {
  let out = "";
  let at = 0;
  for (const change of changes) {
    out += text.slice(at, change.from) + change.insert;
    at = change.to;
  }
  return out + text.slice(at);
}

/** Line (from 1) and column (from 1) of an offset. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
  let line = 1;
  let start = 0;
  for (let end = text.indexOf("\n"); end !== -1 && end < offset; end = text.indexOf("\n", start)) {
    line += 1;
    start = end + 1;
  }
  return { line, column: offset - start + 1 };
}
