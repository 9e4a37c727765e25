// Made texts: soups of characters and words, notebooks made by rule, and known notebooks cut up and changed.

import { soberWorking } from "./fuzz-sober.ts";
import type { Sources } from "./fuzz-sources.ts";
import { calls, names, numbers, oddities, signs, units, words } from "./fuzz-words.ts";
import type { Chance } from "./random.ts";

/** One text by chance. */
export function makeText(sources: Sources, by: Chance): string {
  switch (by.below(10)) {
    case 0:
      return soup(by);
    case 1:
      return fenced(wordSoup(by), by);
    case 2:
    case 3:
      return fenced(soberWorking(by), by);
    case 4:
      return by.oneIn(2) ? mutate(fenced(made(by), by), by) : mutateOnce(fenced(soberWorking(by), by), by);
    case 5:
      return by.oneIn(3) ? mutate(splice(by.from(sources.notebooks), by.from(sources.notebooks), by), by) : mutate(piece(sources, by), by);
    case 6:
    case 7:
      return mutate(by.oneIn(2) ? by.from(sources.samples) : by.from(sources.samples) + by.from(sources.samples), by);
    default:
      return mutate(piece(sources, by), by);
  }
}

const many = (by: Chance, most: number, one: () => string, between = ""): string =>
  Array.from({ length: by.below(most + 1) }, one).join(between);

function character(by: Chance): string {
  if (by.oneIn(4)) return by.from(oddities);
  return by.oneIn(8) ? String.fromCharCode(by.below(0x1_0000)) : String.fromCharCode(32 + by.below(95));
}

function soup(by: Chance): string {
  const text = many(by, 200, () => character(by));
  return by.oneIn(2) ? text : fenced(text, by);
}

function word(by: Chance): string {
  const kind = by.below(12);
  if (kind < 3) return by.from(names);
  if (kind < 5) return by.from(numbers);
  if (kind < 6) return `${by.from(numbers)} ${by.from(units)}`;
  if (kind < 9) return by.from(signs);
  if (kind < 10) return by.from(words);
  return kind < 11 ? `${by.from(calls)}(` : by.from(oddities);
}

const wordSoup = (by: Chance): string => many(by, 8, () => many(by, 14, () => word(by), by.oneIn(3) ? "" : " "), "\n");

/** A working inside a notebook, at times with front matter, prose and live values around it. */
function fenced(working: string, by: Chance): string {
  const front = by.oneIn(6)
    ? `---\ntitle: made\nunits: { length: ${by.from(units)}, force: ${by.from(units)} }\ndigits: ${by.below(20)}\n---\n`
    : "";
  const prose = by.oneIn(4) ? `Of {${by.from(names)}} and {${word(by)} as ${by.from(units)}}.\n\n` : "";
  const end = by.oneIn(8) ? "" : "\n```\n";
  return `${front}${prose}\`\`\`calc\n${working}${end}${by.oneIn(5) ? `after {${by.from(names)}}\n` : ""}`;
}

// ---------------------------------------------------------------------------------------------- made by rule

/** Statements whose words are in place and whose types are not. */
function made(by: Chance): string {
  const count = 1 + by.below(12);
  const own = Array.from({ length: count }, (_, at) => `v_${at}`);
  return own.map((name) => statement(name, own, by)).join("\n");
}

function statement(name: string, known: readonly string[], by: Chance): string {
  const value = (depth: number): string => (by.oneIn(2) ? quantity(known, by, depth) : anything(known, by, depth));
  const columns = by.oneIn(3) ? ` | note | ${by.from(["given", "assumed", "@iso68", "test own", "memory", "@nobody"])}` : "";
  switch (by.below(14)) {
    case 0:
      return `check ${value(2)} ${by.from(["<=", "<", ">=", ">", "=="])} ${value(2)}${by.oneIn(3) ? ` factor ${by.from(numbers)}` : ""}${columns}`;
    case 1:
      return `formula ${name}(a, b = ${by.from(numbers)}) = ${anything(["a", "b"], by, 3)}${columns}`;
    case 2:
      return `formula ${name}(a) = {\n  require a > 0\n  valid a < 100 | note\n  s = ${quantity(["a"], by, 2)}\n  result = ${quantity(["a", "s"], by, 2)}\n}`;
    case 3:
      return `${name} = [${many(by, 5, () => value(1), ", ")}]${columns}`;
    case 4:
      return `${name} = [${quantity(["e"], by, 2)} for e in ${by.from([...known, "1 .. 9 step 2", "[1, 2, 3]"])}]`;
    case 5:
      return `${name} = accumulate s = ${by.from(numbers)} for e in [${many(by, 6, () => by.from(numbers), ", ")}]: ${quantity(["s", "e"], by, 2)}`;
    case 6:
      return `record R_${name} { p: Length, q = ${value(0)} }\n${name} = R_${name} { p = ${value(1)} }`;
    case 7:
      return `${name} = ${value(0)} within ${by.from(numbers)} .. ${by.from(numbers)}${columns}`;
    case 8:
      return `${name} = ${by.from(numbers)} ${by.from(units)}${by.from(["", " ± 1 %", " ~ 0.1", ` ± 1 ${by.from(units)}`, " ± 5 % of 3"])}${columns}`;
    default:
      return `${name} = ${value(3)}${by.oneIn(4) ? ` as ${by.from(units)}` : ""}${columns}`;
  }
}

const leaf = (known: readonly string[], by: Chance): string =>
  known.length > 0 && by.oneIn(2) ? by.from(known) : by.from(numbers.slice(0, 22));

/** Mostly numbers without units: what can go wrong here is arithmetic. */
function quantity(known: readonly string[], by: Chance, depth: number): string {
  if (depth === 0) return leaf(known, by);
  const part = (): string => quantity(known, by, depth - 1);
  switch (by.below(10)) {
    case 0:
      return leaf(known, by);
    case 1:
      return `${by.from(["sqrt", "abs", "exp", "ln", "sin", "tan", "atan", "round", "floor"])}(${part()})`;
    case 2:
      return `${by.from(["min", "max", "mod", "atan2"])}(${part()}, ${part()})`;
    case 3:
      return `(${part()})^${by.from(["2", "3", "-1", "0.5", "(1/3)", "0", "400", "x"])}`;
    case 4:
      return `(if ${part()} ${by.from(["<", "<=", "==", "!="])} ${part()} then ${part()} else ${part()})`;
    case 5:
      return `${by.from(["sum", "mean", "min", "max", "count"])}([${part()}, ${part()}])`;
    case 6:
      return `-${part()}`;
    default:
      return `(${part()} ${by.from(["+", "-", "*", "/"])} ${part()})`;
  }
}

function anything(known: readonly string[], by: Chance, depth: number): string {
  const part = (): string => anything(known, by, depth - 1);
  if (depth === 0) return by.oneIn(2) ? `${by.from(numbers)} ${by.from(units)}` : leaf(known, by);
  switch (by.below(18)) {
    case 0:
      return `${by.from(calls)}(${many(by, 3, part, ", ")})`;
    case 1:
      return `[${many(by, 4, part, ", ")}]`;
    case 2:
      return `${part()}[${part()}]`;
    case 3:
      return `[${part()} for x in ${part()} where ${part()}]`;
    case 4:
      return `if ${part()} then ${part()} else ${part()}`;
    case 5:
      return `${part()} .. ${part()} step ${part()}`;
    case 6:
      return `${part()} with { ${by.from(names)} = ${part()} }`;
    case 7:
      return `match (${part()}) { none: ${part()}, some v: ${part()} }`;
    case 8:
      return `${part()}.${by.from(names)}`;
    case 9:
      return `${part()} where .${by.from(names)} ${by.from(["<", "==", ">"])} ${part()}`;
    case 10:
      return `${part()} ${by.from(["and", "or", "<", "<=", "==", "!=", ">"])} ${part()}`;
    case 11:
      return `not ${part()}`;
    case 12:
      return by.from(['"text"', "none", "true", "pi", '"M6"', '"a \\" b"', "23 degC", "-4 degF"]);
    case 13:
      return `(${part()})^${by.from(["2", "-1", "(1/2)", "0.5", "n"])}`;
    default:
      return `${part()} ${by.from(["+", "-", "*", "/"])} ${part()}`;
  }
}

// ---------------------------------------------------------------------------------------------- cut and changed

function splice(one: string, other: string, by: Chance): string {
  return one.slice(0, by.below(one.length + 1)) + other.slice(by.below(other.length + 1));
}

/** A few neighbouring lines of one or two workings. */
function piece(sources: Sources, by: Chance): string {
  const run = (): string[] => {
    const lines = by.from(sources.workings);
    const from = by.below(lines.length);
    return lines.slice(from > 3 ? from : 0, from + 1 + by.below(24));
  };
  const lines = by.oneIn(2) ? run() : [...run(), ...run()];
  return fenced(lines.join("\n"), by);
}

const TOKEN = /\s+|[\p{L}_][\p{L}\p{M}\p{N}_]*|\d+(?:\.\d+)?|[\s\S]/gu;

/** Changes a text in one place, at times in up to six. */
export function mutate(text: string, by: Chance): string {
  let out = text;
  for (let i = by.oneIn(3) ? by.below(6) : 0; i >= 0; i -= 1) out = mutateOnce(out, by);
  return out;
}

function mutateOnce(text: string, by: Chance): string {
  const kind = by.below(16);
  if (kind < 4) {
    const lines = text.split("\n");
    const [at, other] = [by.below(lines.length), by.below(lines.length)];
    const [line = "", second = ""] = [lines[at], lines[other]];
    if (kind === 0) lines.splice(at, 1);
    if (kind === 1) lines.splice(other, 0, line);
    if (kind === 2) [lines[at], lines[other]] = [second, line];
    if (kind === 3) lines[at] = by.from([`  ${line}`, line.trimStart(), `${line} |`, `${line}\r`, `# ${line}`, `{ ${line}`, `${line})`]);
    return lines.join("\n");
  }
  if (kind === 4 && by.oneIn(3)) return text.slice(0, by.below(text.length + 1));
  const tokens = text.match(TOKEN) ?? [];
  if (tokens.length === 0) return word(by);
  const at = by.below(tokens.length);
  const [token = "", other = by.below(tokens.length)] = [tokens[at]];
  switch (kind) {
    case 5:
      tokens.splice(at, 1 + by.below(3));
      break;
    case 6:
      tokens.splice(at, 0, token);
      break;
    case 7:
      [tokens[at], tokens[other]] = [tokens[other] ?? "", token];
      break;
    case 8:
      tokens[at] = word(by);
      break;
    case 9:
      replaceOne(tokens, /^\d/, by, () => by.from(numbers));
      break;
    case 10:
      replaceOne(tokens, /^(?:mm|m|N|kN|MPa|deg|in|K|s|kg|degC)$/, by, () => by.from(units));
      break;
    case 11:
      replaceOne(tokens, /^[()[\]{}|"]$/, by, () => by.from([...'()[]{}|"', ""]));
      break;
    case 12:
      replaceOne(tokens, /^[\p{L}_]/u, by, () => by.from([...names, ...words, token]));
      break;
    case 13:
      replaceOne(tokens, /^[-+*/^<>=]$/, by, () => by.from(signs));
      break;
    default:
      tokens.splice(at, 0, word(by));
  }
  return tokens.join("");
}

/** Replaces one token that fits the pattern, if there is one near a place by chance. */
function replaceOne(tokens: string[], pattern: RegExp, by: Chance, make: () => string): void {
  const start = by.below(tokens.length);
  for (let i = 0; i < tokens.length; i += 1) {
    const at = (start + i) % tokens.length;
    if (!pattern.test(tokens[at] ?? "")) continue;
    tokens[at] = make();
    return;
  }
}
