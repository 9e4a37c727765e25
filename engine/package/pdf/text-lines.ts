// Running text broken into lines of a width, with its emphasis, links, states and formulas.

import { type Inline, stateShapes, stateWords } from "../../sheet/index.ts";
import { type Box, rowBox, textBox } from "./box.ts";
import { mathsBox } from "./maths-box.ts";
import { ACCENT, FAILS, type Face, HOLDS, OPEN, type Pen, type Ruler, SOFT, type TextStyle } from "./pen.ts";

export interface Line {
  readonly box: Box;
}

/** A piece that no line breaks. `space` is what stands before it when it does not begin a line. */
interface Piece {
  readonly box: Box;
  readonly space: number;
  /** A line ends before it, wanted or not. */
  readonly broken: boolean;
}

const EMPHASIS: Readonly<Partial<Record<Face, Face>>> = {
  "serif-400": "serif-400-italic",
  "sans-400": "serif-400-italic",
  "condensed-400": "condensed-400",
};
const STRONG: Readonly<Partial<Record<Face, Face>>> = {
  "serif-400": "serif-600",
  "serif-400-italic": "serif-600",
  "sans-400": "sans-600",
  "condensed-400": "condensed-500",
};

const STATES: Readonly<Record<keyof typeof stateWords, string>> = {
  holds: HOLDS,
  nominal: HOLDS,
  passes: HOLDS,
  fails: FAILS,
  fault: FAILS,
  open: OPEN,
  waits: OPEN,
  outside: OPEN,
  assumed: OPEN,
  "ruled out": SOFT,
};

export function textLines(inlines: readonly Inline[], width: number, style: TextStyle, ruler: Ruler): readonly Line[] {
  const lines: Line[] = [];
  let line: Box[] = [];
  let used = 0;
  const end = (): void => {
    lines.push({ box: line.length === 0 ? textBox(" ", style, ruler) : rowBox(line) });
    line = [];
    used = 0;
  };
  for (const piece of pieces(inlines, style, ruler, width)) {
    const space = line.length === 0 ? 0 : piece.space;
    if (piece.broken || (line.length > 0 && used + space + piece.box.width > width + 0.01)) {
      if (line.length > 0 || piece.broken) end();
      line.push(piece.box);
      used = piece.box.width;
      continue;
    }
    if (space > 0) line.push({ width: space, up: 0, down: 0, draw: () => undefined });
    line.push(piece.box);
    used += space + piece.box.width;
  }
  if (line.length > 0) end();
  return lines;
}

/** One below the other from a first base line on. */
export function drawLines(lines: readonly Line[], pen: Pen, x: number, base: number, leading: number): void {
  for (const [i, { box }] of lines.entries()) box.draw(pen, x, base + i * leading);
}

/** The widest piece that cannot be broken, for the widths of columns; long words count up to `most`, since they are broken. */
export function leastWidth(inlines: readonly Inline[], style: TextStyle, ruler: Ruler, most: number): number {
  return Math.max(0, ...pieces(inlines, style, ruler, most).map(({ box }) => box.width));
}

export function wholeWidth(inlines: readonly Inline[], style: TextStyle, ruler: Ruler): number {
  let widest = 0;
  let width = 0;
  for (const { box, space, broken } of pieces(inlines, style, ruler, Number.POSITIVE_INFINITY)) {
    width = broken ? box.width : width + (width === 0 ? 0 : space) + box.width;
    widest = Math.max(widest, width);
  }
  return widest;
}

/** Pieces with nothing between them stay together: `(`, a value, `)`. */
function pieces(inlines: readonly Inline[], style: TextStyle, ruler: Ruler, width: number): readonly Piece[] {
  const out: Piece[] = [];
  let glued: Box[] = [];
  let space = 0;
  let broken = false;
  const flush = (): void => {
    if (glued.length === 0) return;
    out.push({ box: glued.length === 1 ? (glued[0] as Box) : rowBox(glued), space, broken });
    glued = [];
    space = 0;
    broken = false;
  };
  const add = (box: Box): void => {
    if (glued.length > 0 && glued.reduce((sum, each) => sum + each.width, 0) + box.width > width) {
      flush();
    }
    glued.push(box);
  };
  const text = (words: string, own: TextStyle, decorate: (box: Box) => Box = (box) => box): void => {
    for (const part of words.split(/([ \t\n]+)/)) {
      if (part === "") continue;
      if (/^[ \t\n]/.test(part)) {
        flush();
        space = ruler.width(" ", own);
        continue;
      }
      for (const stretch of stretches(part, own, ruler, width)) {
        if (stretch.first) add(decorate(textBox(stretch.text, own, ruler)));
        else {
          flush();
          glued.push(decorate(textBox(stretch.text, own, ruler)));
        }
      }
    }
  };
  const walk = (all: readonly Inline[], own: TextStyle, decorate?: (box: Box) => Box): void => {
    for (const inline of all) {
      switch (inline.kind) {
        case "text":
          text(inline.text, own, decorate);
          break;
        case "emphasis":
          walk(
            inline.of,
            { ...own, face: EMPHASIS[own.face] ?? own.face, ...(own.face.startsWith("serif") ? {} : { colour: SOFT }) },
            decorate,
          );
          break;
        case "strong":
          walk(inline.of, { ...own, face: STRONG[own.face] ?? own.face }, decorate);
          break;
        case "code":
          text(inline.text, { ...own, face: "mono-400", size: own.size * 0.88 }, decorate);
          break;
        case "link":
          walk(inline.of, { ...own, colour: ACCENT }, linked(inline.address));
          break;
        case "value":
          text(inline.text, { ...own, face: STRONG[own.face] ?? own.face, ...(inline.missing ? { colour: FAILS } : {}) }, decorate);
          break;
        case "state": {
          const colour = STATES[inline.state];
          const bold: TextStyle = { face: "sans-600", size: own.size * 0.97, colour };
          add(
            rowBox([
              textBox(`${stateShapes[inline.state]}`, { face: "signs", size: own.size * 0.8, colour }, ruler),
              textBox(" ", bold, ruler),
            ]),
          );
          text(stateWords[inline.state].replaceAll(" ", "\u00a0"), bold, decorate);
          break;
        }
        case "maths":
          add(mathsBox(inline.of, own.size * 1.04, own.colour, ruler));
          break;
        case "break":
          flush();
          broken = true;
          break;
      }
    }
  };
  walk(inlines, style);
  flush();
  return out;
}

const linked =
  (address: string) =>
  (box: Box): Box => ({
    ...box,
    draw: (pen, x, base) => {
      box.draw(pen, x, base);
      pen.link(x, base - box.up, box.width, box.up + box.down, address);
    },
  });

/** A word in stretches that fit: words that are too long by themselves (digests, addresses) are broken anywhere, behind a slash or point first. */
function stretches(
  word: string,
  style: TextStyle,
  ruler: Ruler,
  width: number,
): readonly { readonly text: string; readonly first: boolean }[] {
  if (ruler.width(word, style) <= width) return [{ text: word, first: true }];
  const out: { text: string; first: boolean }[] = [];
  let line = "";
  for (const sign of word) {
    if (line !== "" && ruler.width(line + sign, style) > width) {
      out.push({ text: line, first: out.length === 0 });
      line = "";
    }
    line += sign;
  }
  return [...out, { text: line, first: out.length === 0 }];
}
