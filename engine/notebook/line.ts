// Lines of a text by offsets: blank, fence, chunk start. All work on the whole text, so that nothing is cut out before it is needed.

export const NEWLINE = 10;
const TAB = 9;
const RETURN = 13;
const SPACE = 32;
const BACKTICK = 96;
const TILDE = 126;
const CLOSERS = new Set([41, 93, 125]);

/** Offset of the line's end: its `\n` or the end of the text. */
export function lineEnd(text: string, from: number): number {
  const end = text.indexOf("\n", from);
  return end === -1 ? text.length : end;
}

/** Offset of the line after the one that ends at `end`; the text's length after the last. */
export const lineAfter = (text: string, end: number): number => (end < text.length ? end + 1 : end);

export const isBlankCode = (code: number): boolean => code === SPACE || code === TAB || code === RETURN;

export function isBlank(text: string, from: number, to: number): boolean {
  for (let i = from; i < to; i += 1) if (!isBlankCode(text.charCodeAt(i))) return false;
  return true;
}

/** A line that begins with this character begins a statement: neither indented, nor blank, nor a closing bracket. */
export const startsChunk = (code: number): boolean => !isBlankCode(code) && code !== NEWLINE && !CLOSERS.has(code);

/** The opening line of a fence, offsets in the text. */
export interface Opening {
  /** Spaces before it, 0 to 3. */
  readonly indent: number;
  readonly mark: number;
  /** How many marks: a closing line has at least as many. */
  readonly size: number;
  readonly infoFrom: number;
  readonly infoTo: number;
}

/** Reads a line as the opening of a fence, as CommonMark has it (section 4.5), or undefined. */
export function readOpening(text: string, from: number, to: number): Opening | undefined {
  const at = afterIndent(text, from);
  const mark = text.charCodeAt(at);
  if (mark !== BACKTICK && mark !== TILDE) return undefined;
  const marksEnd = afterMarks(text, at, to, mark);
  if (marksEnd - at < 3) return undefined;
  if (mark === BACKTICK) for (let i = marksEnd; i < to; i += 1) if (text.charCodeAt(i) === BACKTICK) return undefined;
  let infoFrom = marksEnd;
  let infoTo = to;
  while (infoFrom < infoTo && isBlankCode(text.charCodeAt(infoFrom))) infoFrom += 1;
  while (infoTo > infoFrom && isBlankCode(text.charCodeAt(infoTo - 1))) infoTo -= 1;
  return { indent: at - from, mark, size: marksEnd - at, infoFrom, infoTo };
}

/** Whether a line closes the fence. */
export function closes(text: string, from: number, to: number, mark: number, size: number): boolean {
  const at = afterIndent(text, from);
  if (text.charCodeAt(at) !== mark) return false;
  const marksEnd = afterMarks(text, at, to, mark);
  return marksEnd - at >= size && isBlank(text, marksEnd, to);
}

/** Past at most three spaces; a fourth, or a tab, makes it indented code. */
export function afterIndent(text: string, from: number): number {
  let at = from;
  while (at < from + 3 && text.charCodeAt(at) === SPACE) at += 1;
  return at;
}

function afterMarks(text: string, from: number, to: number, mark: number): number {
  let at = from;
  while (at < to && text.charCodeAt(at) === mark) at += 1;
  return at;
}

/**
 * A copy that stands alone. A slice keeps the whole text it was cut from alive; a notebook that is edited for hours would
 * keep one old text for every statement that was ever touched.
 */
export const ownCopy = (slice: string): string => (slice.length < 13 ? slice : ` ${slice}`.slice(1));
