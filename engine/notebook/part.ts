// What a notebook's text is made of. Parts tile the text: each begins where the one before ends.

import type { Diagnostic } from "../diagnostics/index.ts";

/**
 * One statement's text, from its first character to the end of its last line that is not blank, without that line's end.
 * Compared by identity: an edit elsewhere keeps the object. No object stands twice in a notebook.
 */
export interface Chunk {
  readonly text: string;
}

interface PartBase {
  /** Characters, with fence lines and the last line's end. */
  readonly length: number;
  /** Ranges count from the part's start. */
  readonly diagnostics: readonly Diagnostic[];
}

/** The title block with its `---` lines; `readFrontMatter(text)` reads it. */
export interface FrontPart extends PartBase {
  readonly kind: "front";
  readonly text: string;
}

export interface ProsePart extends PartBase {
  readonly kind: "prose";
  readonly text: string;
}

interface FencedPart extends PartBase {
  /** Offsets from the part's start: what stands between the fence lines. */
  readonly bodyFrom: number;
  readonly bodyTo: number;
  /** Whether a closing line stands after the body. */
  readonly closed: boolean;
}

/**
 * A ```calc fence, held in pieces so that an edit copies none of the rest:
 * its text is `open`, `gaps[0]`, `chunks[0].text`, `gaps[1]`, ..., the last gap, `close`.
 */
export interface CalcPart extends FencedPart {
  readonly kind: "calc";
  /** The opening line with its line end. */
  readonly open: string;
  /** The closing line with its line end; empty when not closed. */
  readonly close: string;
  /** One more than the chunks: line ends, blank lines and conflict marks before each chunk and after the last. */
  readonly gaps: readonly string[];
  readonly chunks: readonly Chunk[];
  /** Offset of each chunk from the part's start. */
  readonly starts: readonly number[];
}

/** A piece of an info string with its place, counted from the part's start. */
export interface Placed {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** A ```csv NAME | note | reference fence; `readCsv(body)` reads it. */
export interface CsvPart extends FencedPart {
  readonly kind: "csv";
  readonly text: string;
  /** Absent when the fence names nothing, which is a fault. As written, not folded. */
  readonly name?: Placed;
  readonly note?: Placed;
  readonly reference?: Placed;
  readonly body: string;
}

/** Any other fenced code, left alone. */
export interface FencePart extends FencedPart {
  readonly kind: "fence";
  readonly text: string;
  readonly info: string;
}

export type Part = FrontPart | ProsePart | CalcPart | CsvPart | FencePart;

/**
 * A notebook's parts and their places. Places are kept apart from parts, so that an edit shifts numbers and keeps objects.
 * Line ends are `\n` (`openText` sees to it); a stray `\r` counts as a blank.
 */
export interface Notebook {
  readonly length: number;
  readonly parts: readonly Part[];
  /** Offset of each part in the text. */
  readonly starts: readonly number[];
  /** The whole text, put together when first asked for: copying all of it would be most of the cost of a keystroke. */
  readonly text: string;
}

/** A notebook of parts that tile a text; `text` where it is at hand. */
export function notebookOf(length: number, parts: readonly Part[], starts: readonly number[], text?: string): Notebook {
  let whole = text;
  return {
    length,
    parts,
    starts,
    get text() {
      whole ??= parts.map(partText).join("");
      return whole;
    },
  };
}

/** A part's text, fence lines included. */
export function partText(part: Part): string {
  if (part.kind !== "calc") return part.text;
  return part.open + calcStretch(part, 0, part.chunks.length) + (part.gaps[part.chunks.length] as string) + part.close;
}

/** The text from the gap before chunk `from` to the end of chunk `to - 1`. */
export function calcStretch(part: CalcPart, from: number, to: number): string {
  const pieces: string[] = [];
  for (let i = from; i < to; i += 1) pieces.push(part.gaps[i] as string, (part.chunks[i] as Chunk).text);
  return pieces.join("");
}
