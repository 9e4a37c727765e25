// Colour for a terminal, and only there; every state has its word, so nothing is lost without.

import type { World } from "./world.ts";

export type Paint = (style: Style, text: string) => string;
export type Style = "good" | "bad" | "doubt" | "faint" | "strong";

const CODES: Readonly<Record<Style, readonly [number, number]>> = {
  good: [32, 39],
  bad: [31, 39],
  doubt: [33, 39],
  faint: [2, 22],
  strong: [1, 22],
};

const paintIf =
  (on: boolean): Paint =>
  (style, text) =>
    on ? `\u001b[${CODES[style][0]}m${text}\u001b[${CODES[style][1]}m` : text;

export const paintOut = (world: World): Paint => paintIf(world.colour && world.outIsTerminal);
export const paintErr = (world: World): Paint => paintIf(world.colour && world.errIsTerminal);
