// Makes the committed font files of this folder: `node editor/fonts/make.mjs`. Needed only when symbols.mjs changes.
//
// The fonts are IBM Plex (SIL Open Font License, reserved name "Plex") and, for Greek in the monospaced face and for signs
// and shapes that Plex has not, DejaVu (free licence, see DEJAVU-LICENSE.txt). Each is subset and renamed, as both licences
// ask of a changed font. The packages are fetched as archives, pinned by version and digest; none of their code is run.

import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import subsetFont from "subset-font";
import { codePointsOf, namesOf, withNames } from "./sfnt.mjs";
import { ALL, GREEK, SLANTED } from "./symbols.mjs";

const here = fileURLToPath(new URL(".", import.meta.url));

const PACKAGES = {
  sans: {
    name: "@ibm/plex-sans@1.1.0",
    integrity: "sha512-WPgvO6Yfj2w5YbhyAr1tv95RUz4LRJlqN+CmYvBglabXteufP1D1E9BABMde+ZIKdRbFJDoKF5eQzfhpnbgZcQ==",
  },
  condensed: {
    name: "@ibm/plex-sans-condensed@2.0.0",
    integrity: "sha512-dzgR4Npf/JJMiTYf6iOBQJpTDQfllZFLN0A0FkW5gtWhNr9JeQNvRrIRwJvbZHfL0I8wae8kIhO/ukYdeXW54g==",
  },
  mono: {
    name: "@ibm/plex-mono@2.5.0",
    integrity: "sha512-STBJIPxPomOYPmBMO7z5TKPJUotAF9u3gAUumTqVgwgrAO+K4FRNh0MlhsoJjKhJKsMbBJR10/bk4inkj/wc1w==",
  },
  serif: {
    name: "@ibm/plex-serif@2.0.0",
    integrity: "sha512-xVu9JsC18tBoQF2M6fofpsWrHj5a94saxlOZbYmXoC0E3UfjgS1JlibgrnaUJjnkLlEyCpMgI2PdhkDxijw0gA==",
  },
  math: {
    name: "@ibm/plex-math@1.1.0",
    integrity: "sha512-MfJKbsCUFzAn7W8gaqElPcFYh/RcHdYWolydhGLdYV4qw9MeVM9fogDwBWWMlYDnaHBaFCLYwf20gXSEh2sfmQ==",
  },
  dejavu: {
    name: "dejavu-fonts-ttf@2.37.3",
    integrity: "sha512-f1hd7jJbeQa1VWcw+K2KrTXS50zTMaHpVC4XIKJpNcDeYR5ajMtj/iLlQDYNvLOKamUB3ARVVCf79lNwNVztSQ==",
  },
};

const PLEX = "fonts/complete/woff2/IBMPlex";

/** @typedef {keyof typeof PACKAGES} Source */
/**
 * One file to make. `fallback` faces hold what the main face of the family has not.
 * @type {readonly { file: string, family: string, source: Source, from: string, weight: number, italic?: boolean, fallback?: boolean }[]}
 */
const FACES = [
  { file: "sans-400", family: "Jointwright Sans", source: "sans", from: `${PLEX}Sans-Regular.woff2`, weight: 400 },
  { file: "sans-500", family: "Jointwright Sans", source: "sans", from: `${PLEX}Sans-Medium.woff2`, weight: 500 },
  { file: "sans-600", family: "Jointwright Sans", source: "sans", from: `${PLEX}Sans-SemiBold.woff2`, weight: 600 },
  {
    file: "condensed-400",
    family: "Jointwright Sans Condensed",
    source: "condensed",
    from: `${PLEX}SansCondensed-Regular.woff2`,
    weight: 400,
  },
  {
    file: "condensed-500",
    family: "Jointwright Sans Condensed",
    source: "condensed",
    from: `${PLEX}SansCondensed-Medium.woff2`,
    weight: 500,
  },
  {
    file: "condensed-600",
    family: "Jointwright Sans Condensed",
    source: "condensed",
    from: `${PLEX}SansCondensed-SemiBold.woff2`,
    weight: 600,
  },
  { file: "mono-400", family: "Jointwright Mono", source: "mono", from: `${PLEX}Mono-Regular.woff2`, weight: 400 },
  { file: "mono-500", family: "Jointwright Mono", source: "mono", from: `${PLEX}Mono-Medium.woff2`, weight: 500 },
  { file: "serif-400", family: "Jointwright Serif", source: "serif", from: `${PLEX}Serif-Regular.woff2`, weight: 400 },
  { file: "serif-400-italic", family: "Jointwright Serif", source: "serif", from: `${PLEX}Serif-Italic.woff2`, weight: 400, italic: true },
  { file: "serif-600", family: "Jointwright Serif", source: "serif", from: `${PLEX}Serif-SemiBold.woff2`, weight: 600 },
  { file: "math-400", family: "Jointwright Math", source: "math", from: `${PLEX}Math-Regular.woff2`, weight: 400 },
  { file: "signs", family: "Jointwright Signs", source: "dejavu", from: "ttf/DejaVuSans.ttf", weight: 400, fallback: true },
  { file: "signs-mono", family: "Jointwright Signs Mono", source: "dejavu", from: "ttf/DejaVuSansMono.ttf", weight: 400, fallback: true },
];

/** Faces that a PDF embeds; its writer takes no woff2, so these stand in `print/` as TrueType as well. */
const PRINTED = new Set([
  "serif-400",
  "serif-400-italic",
  "serif-600",
  "sans-400",
  "sans-600",
  "condensed-400",
  "condensed-500",
  "mono-400",
  "signs",
]);

const MONO = "Jointwright Mono";
const MATH = "Jointwright Math";

/** Fetches a pinned package and gives the folder it was unpacked in. @param {Source} source @param {string} work */
function fetchPackage(source, work) {
  const { name, integrity } = PACKAGES[source];
  const folder = join(work, source);
  mkdirSync(folder);
  execFileSync("npm", ["pack", name, "--ignore-scripts", "--silent"], { cwd: folder });
  const archive = join(folder, /** @type {string} */ (readdirSync(folder)[0]));
  const digest = `sha512-${createHash("sha512").update(readFileSync(archive)).digest("base64")}`;
  if (digest !== integrity) throw new Error(`${name} is not what was pinned: ${digest}`);
  execFileSync("tar", ["-xzf", archive, "-C", folder]);
  return join(folder, "package");
}

const STYLES = new Map([
  [400, "Regular"],
  [500, "Medium"],
  [600, "SemiBold"],
]);

/** @param {(typeof FACES)[number]} face @param {ReadonlyMap<number, string>} before */
function namesFor(face, before) {
  const weight = STYLES.get(face.weight) ?? "Regular";
  const style = face.italic ? "Italic" : weight;
  const plain = weight === "Regular";
  const full = `${face.family} ${style}`;
  const names = new Map([
    [0, before.get(0) ?? ""],
    [1, plain ? face.family : full],
    [2, plain ? style : "Regular"],
    [3, `${full}; subset`],
    [4, full],
    [5, before.get(5) ?? "Version 1"],
    [6, full.replace(/ (?=\w+$)/, "-").replaceAll(" ", "")],
    [13, face.source === "dejavu" ? "See DEJAVU-LICENSE.txt" : "SIL Open Font License, Version 1.1"],
    [14, face.source === "dejavu" ? "https://dejavu-fonts.github.io/License.html" : "https://openfontlicense.org"],
  ]);
  if (!plain) names.set(16, face.family).set(17, style);
  return names;
}

/** Code points as the ranges of a style sheet. @param {readonly number[]} points sorted */
function unicodeRange(points) {
  const hex = (/** @type {number} */ point) => point.toString(16).toUpperCase();
  /** @type {[number, number][]} */
  const ranges = [];
  for (const point of points) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === point - 1) last[1] = point;
    else ranges.push([point, point]);
  }
  return ranges.map(([from, to]) => (from === to ? `U+${hex(from)}` : `U+${hex(from)}-${hex(to)}`)).join(", ");
}

/** Greek of the monospaced face comes whole from the fallback: Plex Mono has a few letters of it only. @param {string} family */
function wantedFrom(family) {
  if (family === MATH) return ALL + SLANTED;
  return family === MONO ? [...ALL].filter((symbol) => !GREEK.includes(symbol)).join("") : ALL;
}

async function main() {
  const work = mkdtempSync(join(tmpdir(), "fonts-"));
  mkdirSync(join(here, "print"), { recursive: true });
  const folders = Object.fromEntries(Object.keys(PACKAGES).map((source) => [source, fetchPackage(/** @type {Source} */ (source), work)]));
  /** @type {Map<string, number[]>} */
  const has = new Map();
  for (const face of FACES) {
    const original = readFileSync(join(/** @type {string} */ (folders[face.source]), face.from));
    const plain = Buffer.from(await subsetFont(original, null, { targetFormat: "sfnt", keepAllGlyphs: true, preserveNameIds: [13, 14] }));
    const subset = Buffer.from(await subsetFont(plain, wantedFrom(face.family), { targetFormat: "sfnt", noHinting: true }));
    const named = withNames(subset, namesFor(face, namesOf(plain)));
    const packed = await subsetFont(named, null, { targetFormat: "woff2", keepAllGlyphs: true, preserveNameIds: [13, 14, 16, 17] });
    writeFileSync(join(here, `${face.file}.woff2`), packed);
    if (PRINTED.has(face.file)) writeFileSync(join(here, "print", `${face.file}.ttf`), named);
    has.set(
      face.file,
      [...codePointsOf(subset)].sort((a, b) => a - b),
    );
  }
  writeFileSync(join(here, "fonts.css"), styleSheet(has));
  writeFileSync(join(here, "PLEX-LICENSE.txt"), readFileSync(join(/** @type {string} */ (folders.sans), "LICENSE.txt")));
  writeFileSync(join(here, "DEJAVU-LICENSE.txt"), readFileSync(join(/** @type {string} */ (folders.dejavu), "LICENSE")));
  rmSync(work, { recursive: true, force: true });
}

/**
 * One rule a file, and one more for each face's missing signs: rules of one family make one face only when their weight and
 * style are the same, so the signs are named again for each.
 * @param {ReadonlyMap<string, readonly number[]>} has
 */
function styleSheet(has) {
  const rule = (/** @type {(typeof FACES)[number]} */ face, /** @type {string} */ file, /** @type {readonly number[]} */ points) =>
    `@font-face {
  font-family: "${face.family}";
  font-style: ${face.italic ? "italic" : "normal"};
  font-weight: ${face.weight};
  font-display: block;
  src: url("./${file}.woff2") format("woff2");
  unicode-range: ${unicodeRange(points)};
}
`;
  const rules = FACES.filter((face) => !face.fallback).flatMap((face) => {
    const signs = face.family === MONO ? "signs-mono" : "signs";
    const own = has.get(face.file) ?? [];
    const missing = (has.get(signs) ?? []).filter((point) => !own.includes(point));
    return [rule(face, face.file, own), rule(face, signs, missing)];
  });
  return `/* The product's own fonts. Made by make.mjs. */\n\n${rules.join("\n")}`;
}

await main();
