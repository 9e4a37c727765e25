// Stretches of a page that are never cut: what they are in the tree of the document, how tall, what they must stay with.

import type { Pen } from "./pen.ts";

/** An element of the document's structure; the same object is the same element. */
export interface Node {
  readonly type:
    | "Document"
    | "Sect"
    | "H1"
    | "H2"
    | "H3"
    | "P"
    | "L"
    | "LI"
    | "LBody"
    | "Lbl"
    | "BlockQuote"
    | "Code"
    | "Table"
    | "TR"
    | "TH"
    | "TD"
    | "Caption"
    | "Formula"
    | "Figure"
    | "TOC"
    | "TOCI"
    | "Div"
    | "Note";
  /** Alternative text: of figures and formulas. */
  readonly alt?: string;
}

export interface Part {
  /** From the outermost element to the one this part belongs to; empty for what is no content: rules, frames. */
  readonly within: readonly Node[];
  /** `y` is the top of the slab. */
  readonly draw: (pen: Pen, x: number, y: number) => void;
}

export interface Slab {
  readonly height: number;
  /** Room above it, dropped at the top of a page. */
  readonly before: number;
  /** Stays on one page with what follows. */
  readonly keep: boolean;
  readonly parts: readonly Part[];
  /** Drawn again above it where it begins a page: the head of its table. */
  readonly repeat?: Slab;
  readonly heading?: { readonly id: string; readonly level: 1 | 2 | 3; readonly title: string };
}

export interface PlacedSlab {
  readonly slab: Slab;
  /** From 0. */
  readonly page: number;
  /** From the top of the page's body. */
  readonly y: number;
  /** The head is drawn again above it. */
  readonly repeated: boolean;
}

/** Puts slabs on pages of a height. What is taller than a page by itself is told by its index in `tall` and placed nevertheless. */
export function placeSlabs(
  slabs: readonly Slab[],
  height: number,
): { readonly placed: readonly PlacedSlab[]; readonly pages: number; readonly tall: readonly number[] } {
  const placed: PlacedSlab[] = [];
  const tall: number[] = [];
  let page = 0;
  let y = 0;
  const put = (slab: Slab): void => {
    const top = y === 0;
    const head = top && slab.repeat !== undefined ? slab.repeat.height : 0;
    const at = top ? head : y + slab.before;
    placed.push({ slab, page, y: at, repeated: head > 0 });
    y = at + slab.height;
  };
  for (let i = 0; i < slabs.length; ) {
    const end = chainEnd(slabs, i);
    const chain = slabs.slice(i, end);
    const needed = (atTop: boolean): number =>
      chain.reduce((sum, slab, at) => sum + slab.height + (at === 0 && atTop ? (slab.repeat?.height ?? 0) : slab.before), 0);
    if (y > 0 && y + needed(false) > height) {
      // A chain that no page holds is not worth a page of its own: it breaks where it has to.
      page += 1;
      y = 0;
    }
    for (const slab of chain) {
      if (y > 0 && y + slab.before + slab.height > height) {
        page += 1;
        y = 0;
      }
      if (slab.height + (slab.repeat?.height ?? 0) > height) tall.push(slabs.indexOf(slab));
      put(slab);
    }
    i = end;
  }
  return { placed, pages: page + 1, tall };
}

function chainEnd(slabs: readonly Slab[], from: number): number {
  let end = from;
  while (end < slabs.length - 1 && slabs[end]?.keep === true) end += 1;
  return end + 1;
}
