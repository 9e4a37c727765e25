// What draws and what measures: the few things that set matter asks of a page.

/** The faces of `editor/fonts/print`, by file name without ending. */
export const faces = [
  "serif-400",
  "serif-400-italic",
  "serif-600",
  "sans-400",
  "sans-600",
  "condensed-400",
  "condensed-500",
  "mono-400",
  "signs",
] as const;

export type Face = (typeof faces)[number];

/** TrueType bytes of a face. */
export type PrintFonts = (face: Face) => Uint8Array;

export interface TextStyle {
  readonly face: Face;
  readonly size: number;
  readonly colour: string;
}

export interface Ruler {
  readonly width: (text: string, style: TextStyle) => number;
}

export interface Pen extends Ruler {
  /** `base` is the base line. */
  readonly text: (text: string, x: number, base: number, style: TextStyle) => void;
  readonly line: (from: readonly [number, number], to: readonly [number, number], width: number, colour: string) => void;
  /** A path of SVG, stroked with a width or filled. */
  readonly path: (
    d: string,
    paint: { readonly stroke?: { readonly width: number; readonly colour: string }; readonly fill?: string },
  ) => void;
  readonly rectangle: (
    x: number,
    y: number,
    width: number,
    height: number,
    paint: { readonly stroke?: { readonly width: number; readonly colour: string }; readonly fill?: string },
  ) => void;
  readonly link: (x: number, y: number, width: number, height: number, address: string) => void;
  /** A link to a heading by its id. */
  readonly goTo: (x: number, y: number, width: number, height: number, id: string) => void;
  /** The page, from 1, that a heading stands on. */
  readonly pageOf: (id: string) => number | undefined;
  /** The document underneath, for figures. */
  readonly document: PDFKit.PDFDocument;
}

export const INK = "#1d2430";
export const SOFT = "#5b6472";
export const RULE = "#d4d3cb";
export const STRONG = "#3c4656";
export const ACCENT = "#23528f";
export const HOLDS = "#1d6a52";
export const FAILS = "#b0341c";
export const OPEN = "#7d5b00";
