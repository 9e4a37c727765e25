// The unit table: every spelling that is read, with its exact factor, dimension and kind. Made once, never changed.

import { broken } from "../base/index.ts";
import { currencyCodes } from "./currency.ts";
import type { Definition } from "./definitions.ts";
import { inchDefinitions } from "./definitions-inch.ts";
import { siDefinitions } from "./definitions-si.ts";
import { dimensionFrom, dimensionless, dimensionOf, divide, length, mass, multiply, power, temperature, time } from "./dimension.ts";
import { decimalFactor, factorOne, factorZero, multiplyFactor } from "./exact.ts";
import type { Dimension, ExactFactor, Kind } from "./model.ts";
import { rational } from "./rational.ts";
import { runtimeDefinition } from "./runtime.ts";

/** One symbol as it may stand in a unit, prefix included. */
export interface Entry {
  /** Normal spelling: "µm", "°C", "lbf". */
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly factor: ExactFactor;
  readonly offset: ExactFactor;
  readonly point: boolean;
  readonly ucum: readonly (readonly [code: string, exponent: number])[];
  readonly description: string;
  readonly source: string;
  readonly prefix: string;
  /** The symbol without its prefix. */
  readonly base: string;
}

interface Prefix {
  readonly symbol: string;
  readonly word: string;
  readonly exponent: number;
}

/** The SI prefixes that any unit here takes, by the letter typed ("u" for micro). */
const prefixes: Readonly<Record<string, Prefix>> = {
  p: { symbol: "p", word: "pico", exponent: -12 },
  n: { symbol: "n", word: "nano", exponent: -9 },
  u: { symbol: "µ", word: "micro", exponent: -6 },
  m: { symbol: "m", word: "milli", exponent: -3 },
  c: { symbol: "c", word: "centi", exponent: -2 },
  d: { symbol: "d", word: "deci", exponent: -1 },
  da: { symbol: "da", word: "deca", exponent: 1 },
  h: { symbol: "h", word: "hecto", exponent: 2 },
  k: { symbol: "k", word: "kilo", exponent: 3 },
  M: { symbol: "M", word: "mega", exponent: 6 },
  G: { symbol: "G", word: "giga", exponent: 9 },
};

/** Everything that people put before a unit, for telling "a prefix not used here" from "no such unit". */
export const prefixSpellings: readonly string[] = [
  ..."fpnuµmcdhkKMGTP",
  "da",
  ...Object.values(prefixes).map(({ word }) => word),
  "tera",
  "femto",
];

const force = dimensionFrom([
  ["mass", rational(1)],
  ["length", rational(1)],
  ["time", rational(-2)],
]);

/** The dimensions that rows with a factor of our own name by `like`. */
const likes: Readonly<Record<string, Dimension>> = {
  "1": dimensionless,
  m: length,
  "m^2": power(length, rational(2)),
  "m^3": power(length, rational(3)),
  g: mass,
  K: temperature,
  Hz: power(time, rational(-1)),
  N: force,
  Pa: divide(force, power(length, rational(2))),
  J: multiply(force, length),
  W: divide(multiply(force, length), time),
  "Pa s": multiply(divide(force, power(length, rational(2))), time),
  "m^2 s^-1": divide(power(length, rational(2)), time),
};

/** Factor and dimension of a row; a float of mathjs is taken as the decimal it is written as, which a test compares. */
function resolved(row: Definition): { readonly factor: ExactFactor; readonly dimension: Dimension } {
  if (row.exact !== undefined) return { factor: row.exact, dimension: likes[row.like ?? ""] ?? broken(`no dimension for ${row.symbol}`) };
  const { value, dimension } = runtimeDefinition(row.from ?? row.symbol);
  return { factor: decimalFactor(String(value)), dimension };
}

const table = new Map<string, Entry>();
const listed: Entry[] = [];

function add(spelling: string, entry: Entry): void {
  const before = table.get(spelling);
  if (before !== undefined && before !== entry) broken(`unit symbol ${spelling} has two meanings`);
  table.set(spelling, entry);
}

const plural = (word: string): string => (/[sz]$|feet$/.test(word) ? word : `${word}s`);

/** UCUM allows prefixes only on its metric units, so the inch units take a power of ten. */
const prefixedUcum = (ucum: Entry["ucum"], exponent: number, letter: string): Entry["ucum"] => {
  const [first, ...rest] = ucum;
  if (first === undefined || exponent === 0) return ucum;
  return first[0].startsWith("[") ? [["10*", exponent], ...ucum] : [[letter + first[0], first[1]], ...rest];
};

function addRow(row: Definition): void {
  const { factor: value, dimension } = resolved(row);
  const make = (letter: string, prefix: Prefix | undefined): Entry => ({
    symbol: (prefix?.symbol ?? "") + row.symbol,
    dimension,
    kind: row.kind ?? "any",
    factor: prefix === undefined ? value : multiplyFactor(value, decimalFactor(`1e${prefix.exponent}`)),
    offset: row.offset ?? factorZero,
    point: row.offset !== undefined,
    ucum: prefixedUcum(row.ucum, prefix?.exponent ?? 0, letter),
    description: prefix === undefined ? row.description : `${prefix.word}, ${row.description}`,
    source: row.source ?? "mathjs unit table",
    prefix: prefix?.symbol ?? "",
    base: row.symbol,
  });
  const symbols = [row.symbol, ...(row.aliases ?? [])];
  const words = row.words ?? [];
  const plain = make("", undefined);
  listed.push(plain);
  for (const symbol of symbols) add(symbol, plain);
  for (const word of words) {
    add(word, plain);
    add(plural(word), plain);
  }
  for (const letter of row.prefixes?.split(" ") ?? []) {
    const prefix = prefixes[letter] ?? broken(`no prefix ${letter}`);
    const entry = make(letter, prefix);
    listed.push(entry);
    for (const symbol of symbols) {
      add(letter + symbol, entry);
      add(prefix.symbol + symbol, entry);
    }
    for (const word of words) {
      add(prefix.word + word, entry);
      add(prefix.word + plural(word), entry);
    }
  }
}

for (const row of siDefinitions) addRow(row);
for (const row of inchDefinitions) addRow(row);
const micron = table.get("um") ?? broken("no micrometre");
add("micron", micron);
add("microns", micron);
for (const code of currencyCodes) {
  const entry: Entry = {
    symbol: code,
    dimension: dimensionOf(code),
    kind: "any",
    factor: factorOne,
    offset: factorZero,
    point: false,
    ucum: [[`{${code}}`, 1]],
    description: "currency of ISO 4217",
    source: "ISO 4217",
    prefix: "",
    base: code,
  };
  listed.push(entry);
  add(code, entry);
}

/** The meaning of a spelling, or undefined. Case counts; both micro signs and both ohm signs are one. */
export const entryOf = (spelling: string): Entry | undefined =>
  table.get(spelling) ?? table.get(spelling.replace(/\u03bc/g, "\u00b5").replace(/\u2126/g, "\u03a9"));

/** Every spelling that is read. */
export const spellings = (): Iterable<string> => table.keys();

/** One entry per unit and prefix, in the order of the definitions. */
export const allEntries: readonly Entry[] = listed;

/** The forms in which a base symbol may be written with a prefix, e.g. "mN, kN". */
export const prefixedForms = (base: string): readonly string[] =>
  listed.filter((entry) => entry.base === base && entry.prefix !== "").map((entry) => entry.symbol);
