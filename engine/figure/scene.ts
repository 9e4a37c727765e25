// A figure as plain data: marks with what they mean instead of colours. Every writer (SVG text, page, PDF) walks the same list.

/**
 * What a mark stands for; a palette says how each looks. Of the trade's drawing: `ink` outlines, `metal` hatching, `printed`
 * matter, `infill`, `layer` lines, `insert`, `fibre`, `load`, `failure`, `dimension` and `leader` lines, `centre` lines.
 * Of plots: `axis`, `grid`, `series1` to `series6`, `holds` and `open` for bounds. `paper` covers what lies below.
 */
export type Role =
  | "ink"
  | "soft"
  | "paper"
  | "metal"
  | "printed"
  | "infill"
  | "layer"
  | "insert"
  | "fibre"
  | "load"
  | "failure"
  | "dimension"
  | "leader"
  | "centre"
  | "axis"
  | "grid"
  | "holds"
  | "open"
  | "series1"
  | "series2"
  | "series3"
  | "series4"
  | "series5"
  | "series6";

export const roles: readonly Role[] = [
  "ink",
  "soft",
  "paper",
  "metal",
  "printed",
  "infill",
  "layer",
  "insert",
  "fibre",
  "load",
  "failure",
  "dimension",
  "leader",
  "centre",
  "axis",
  "grid",
  "holds",
  "open",
  "series1",
  "series2",
  "series3",
  "series4",
  "series5",
  "series6",
];

/** A number of the picture: pixels of 1/96 in, x to the right, y down. */
export type Point = readonly [x: number, y: number];

export interface Stroke {
  readonly role: Role;
  readonly width: number;
  /** Lengths of dashes and gaps. */
  readonly dash?: readonly number[];
}

export interface Fill {
  readonly role: Role;
  /** Share of the colour that covers, 1 when absent. */
  readonly opacity?: number;
}

interface Painted {
  readonly stroke?: Stroke;
  readonly fill?: Fill;
  /** What the mark is a part of, for programs that look for it: "dimension", "callout", "failure". */
  readonly part?: string;
}

export type Mark =
  | (Painted & { readonly kind: "rect"; readonly x: number; readonly y: number; readonly width: number; readonly height: number })
  | (Painted & { readonly kind: "circle"; readonly x: number; readonly y: number; readonly r: number })
  | (Painted & { readonly kind: "polyline"; readonly points: readonly Point[]; readonly closed?: boolean })
  /** Straight lines on their own, four numbers each: hatching, layers, grids. */
  | (Painted & { readonly kind: "segments"; readonly ends: readonly number[] })
  /** A path of SVG: M, L, A, Q, C and Z with absolute numbers. */
  | (Painted & { readonly kind: "path"; readonly d: string })
  | {
      readonly kind: "text";
      /** Of the anchor, on the base line. */
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly anchor: "start" | "middle" | "end";
      readonly weight: 400 | 600;
      readonly role: Role;
      /** Degrees, counted clockwise, about the anchor. */
      readonly turn?: number;
      readonly part?: string;
    };

export type TextMark = Extract<Mark, { kind: "text" }>;

/** Structured-clonable. `alternative` says in words what the picture shows; `caption` is one line to stand below it. */
export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  readonly alternative: string;
  readonly caption: string;
  /** Millimetres of the thing to a millimetre of the picture at 96 pixels an inch; absent for what has no scale. */
  readonly scale?: number;
}

/** Rounded for the file: a hundredth of a pixel is finer than any device, and keeps the same bytes on every machine. */
export function tidyNumber(value: number): string {
  const text = value.toFixed(2);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}
