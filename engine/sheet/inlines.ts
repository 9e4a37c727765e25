// Short ways to make the pieces of running text.

import { symbolOf } from "../trace/index.ts";
import type { Cell, Inline, State } from "./model.ts";
import { stateShapes, stateWords } from "./model.ts";
import { type Typeset, typesetText } from "./typeset.ts";

export const text = (words: string): Inline => ({ kind: "text", text: words });
export const strong = (words: string): Inline => ({ kind: "strong", of: [text(words)] });
export const emphasis = (words: string): Inline => ({ kind: "emphasis", of: [text(words)] });
export const state = (which: State): Inline => ({ kind: "state", state: which });
export const maths = (of: Typeset): Inline => ({ kind: "maths", of });
export const cell = (words: string): Cell => (words === "" ? [] : [text(words)]);

const RAISED: Readonly<Record<string, string>> = {
  "-": "⁻",
  "−": "⁻",
  "0": "⁰",
  "1": "¹",
  "2": "²",
  "3": "³",
  "4": "⁴",
  "5": "⁵",
  "6": "⁶",
  "7": "⁷",
  "8": "⁸",
  "9": "⁹",
};

/** A shown value as print has it: `7e10 Pa` is 7 × 10¹⁰ Pa. */
export const valueText = (shown: string): string =>
  shown.replace(
    /(?<![\p{L}\p{N}.])(\d+(?:\.\d+)?)e([-−]?\d+)(?![\p{L}\p{N}])/gu,
    (_, mantissa: string, exponent: string) => `${mantissa}\u00a0×\u00a010${[...exponent].map((sign) => RAISED[sign] ?? sign).join("")}`,
  );
export const valueCell = (shown: string): Cell => cell(valueText(shown));

/** A name in running text: Greek where it is, its parts joined as they are written. */
export function nameText(name: string): string {
  const { base, subscript } = symbolOf(name);
  return subscript === "" ? base : `${base}_${subscript.replaceAll(",", "_")}`;
}

/** Running text without its dress. */
export const plainText = (inlines: readonly Inline[]): string => inlines.map(plain).join("");

function plain(inline: Inline): string {
  switch (inline.kind) {
    case "text":
    case "code":
    case "value":
      return inline.text;
    case "emphasis":
    case "strong":
    case "link":
      return plainText(inline.of);
    case "state":
      return `${stateShapes[inline.state]} ${stateWords[inline.state]}`;
    case "maths":
      return typesetText(inline.of);
    case "break":
      return " ";
  }
}
