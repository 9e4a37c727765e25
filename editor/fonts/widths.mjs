// Makes the table of advance widths that figures measure their texts with: `node editor/fonts/widths.mjs`, after make.mjs.

import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import subsetFont from "subset-font";
import { advancesOf } from "./sfnt.mjs";

/** Face by the weight that a figure asks for; what it has not comes from the signs. */
const FACES = /** @type {const} */ ([
  ["400", "sans-400"],
  ["600", "sans-600"],
]);

/** @param {string} file advances by code point, in thousandths of the size */
export async function advancesOfFile(file) {
  const woff = readFileSync(new URL(`./${file}.woff2`, import.meta.url));
  return advancesOf(Buffer.from(await subsetFont(woff, null, { targetFormat: "sfnt", keepAllGlyphs: true })));
}

/** The text of the made file. */
export async function widthsSource() {
  const signs = await advancesOfFile("signs");
  const tables = [];
  for (const [weight, file] of FACES) {
    const all = new Map([...signs, ...(await advancesOfFile(file))]);
    /** @type {Map<number, string>} */
    const byWidth = new Map();
    for (const [point, width] of [...all].sort(([a], [b]) => a - b))
      byWidth.set(width, (byWidth.get(width) ?? "") + String.fromCodePoint(point));
    const rows = [...byWidth].sort(([a], [b]) => a - b).map(([width, symbols]) => `    ${width}: ${JSON.stringify(symbols)},`);
    tables.push(`  ${weight}: {\n${rows.join("\n")}\n  },`);
  }
  return `// Advance widths of the product's sans faces (IBM Plex Sans; DejaVu Sans for signs) in thousandths of the size, by width.
// Made by editor/fonts/widths.mjs from the committed font files.

export const advances: Readonly<Record<400 | 600, Readonly<Record<number, string>>>> = {
${tables.join("\n")}
};
`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL("../../engine/figure/sans-widths.generated.ts", import.meta.url), await widthsSource());
}
