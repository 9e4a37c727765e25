// The product's fonts read from this folder, for programs that run on the system: those a browser takes and those a PDF embeds.

import { readFileSync } from "node:fs";

const read = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(name, import.meta.url)));

/** The rules of fonts.css, each with the bytes of its file. */
export function webFonts(): readonly {
  readonly family: string;
  readonly weight: number;
  readonly italic: boolean;
  readonly range: string;
  readonly bytes: Uint8Array;
}[] {
  const css = readFileSync(new URL("fonts.css", import.meta.url), "utf8");
  return [...css.matchAll(/@font-face \{([^}]*)\}/g)].map(([, body = ""]) => {
    const field = (name: string): string => new RegExp(`${name}: ([^;]*);`).exec(body)?.[1] ?? "";
    return {
      family: field("font-family").slice(1, -1),
      weight: Number(field("font-weight")),
      italic: field("font-style") === "italic",
      range: field("unicode-range"),
      bytes: read(/url\("\.\/(.*?)"\)/.exec(body)?.[1] ?? ""),
    };
  });
}

/** TrueType files by their name without ending, as `print/` holds them. */
export const printFont = (name: string): Uint8Array => read(`print/${name}.ttf`);
