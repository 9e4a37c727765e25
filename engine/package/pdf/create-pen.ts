// The pen over a PDF document: text in runs of faces that have its signs, lines, paths, links.

import type { Face, Pen, TextStyle } from "./pen.ts";

interface Run {
  readonly face: Face;
  readonly text: string;
}

/** The part of the font library's object that tells which signs a font has; the writer holds it as `font`. */
interface OpenFont {
  readonly font: { readonly hasGlyphForCodePoint: (point: number) => boolean };
}

/** Signs that take no room and need no glyph. */
const SILENT = /\u200b|\u200c|\u200d|\u2060|\ufeff|\u00ad/g;

export function createPen(document: PDFKit.PDFDocument, problem: (what: string) => void, pageOf: (id: string) => number | undefined): Pen {
  const covered = new Map<string, boolean>();
  const runsOf = new Map<string, readonly Run[]>();
  const widths = new Map<string, number>();

  const has = (face: Face, sign: string): boolean => {
    const key = `${face}${sign}`;
    const known = covered.get(key);
    if (known !== undefined) return known;
    document.font(face);
    const open = (document as unknown as { readonly _font: OpenFont })._font;
    const found = open.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0);
    covered.set(key, found);
    return found;
  };

  const runs = (words: string, face: Face): readonly Run[] => {
    const key = `${face}|${words}`;
    const known = runsOf.get(key);
    if (known !== undefined) return known;
    const out: { face: Face; text: string }[] = [];
    for (const sign of words.replace(/[\t\n\r]/g, " ").replace(SILENT, "")) {
      const own = has(face, sign) ? face : has("signs", sign) ? "signs" : undefined;
      if (own === undefined)
        problem(
          `No glyph for ${sign} (U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}) in: ${words.slice(0, 60)}`,
        );
      const last = out[out.length - 1];
      if (last !== undefined && last.face === (own ?? face)) last.text += sign;
      else out.push({ face: own ?? face, text: sign });
    }
    runsOf.set(key, out);
    return out;
  };

  /** At a size of 100. */
  const runWidth = ({ face, text }: Run): number => {
    const key = `${face}|${text}`;
    const known = widths.get(key);
    if (known !== undefined) return known;
    document.font(face).fontSize(100);
    const found = document.widthOfString(text, {});
    widths.set(key, found);
    return found;
  };

  const width = (words: string, { face, size }: TextStyle): number =>
    runs(words, face).reduce((sum, run) => sum + runWidth(run), 0) * (size / 100);

  return {
    document,
    width,
    pageOf,
    text: (words, x, base, { face, size, colour }) => {
      let at = x;
      for (const run of runs(words, face)) {
        document.font(run.face).fontSize(size).fillColor(colour);
        document.text(run.text, at, base, { lineBreak: false, baseline: "alphabetic" });
        at += (runWidth(run) * size) / 100;
      }
    },
    line: ([x1, y1], [x2, y2], thick, colour) => void document.moveTo(x1, y1).lineTo(x2, y2).lineWidth(thick).strokeColor(colour).stroke(),
    path: (d, paint) => {
      document.path(d);
      if (paint.stroke !== undefined) document.lineWidth(paint.stroke.width).lineJoin("round").strokeColor(paint.stroke.colour).stroke();
      else if (paint.fill !== undefined) document.fillColor(paint.fill).fill();
    },
    rectangle: (x, y, w, h, paint) => {
      document.rect(x, y, w, h);
      if (paint.stroke !== undefined) document.lineWidth(paint.stroke.width).strokeColor(paint.stroke.colour).stroke();
      else if (paint.fill !== undefined) document.fillColor(paint.fill).fill();
    },
    link: (x, y, w, h, address) => void document.link(x, y, w, h, address),
    goTo: (x, y, w, h, id) => void document.goTo(x, y, w, h, id),
  };
}
