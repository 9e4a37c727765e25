// Reads a command's arguments against what it takes; every refusal is one plain sentence.

import { nearest } from "../base/index.ts";

/** A mistake in how the program was called; it ends with 2. */
export class UsageFault extends Error {}

export interface Option {
  /** Without the dashes. */
  readonly name: string;
  /** The word for its value in the help; absent for a switch. */
  readonly value?: string;
  readonly help: string;
}

export interface Arguments {
  readonly words: readonly string[];
  readonly switches: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
}

/** A dash and letters alone; `-2 m` and `-(a)` are words. */
const LOOKS_LIKE_OPTION = /^--?[A-Za-z][\w-]*(=|$)/;

/** Throws UsageFault. `--` ends the options; `-` alone is a word. */
export function readArguments(args: readonly string[], options: readonly Option[]): Arguments {
  const words: string[] = [];
  const switches = new Set<string>();
  const values = new Map<string, string>();
  const rest = [...args];
  for (let argument = rest.shift(); argument !== undefined; argument = rest.shift()) {
    if (argument === "--") {
      words.push(...rest);
      break;
    }
    if (!LOOKS_LIKE_OPTION.test(argument)) {
      words.push(argument);
      continue;
    }
    const equals = argument.indexOf("=");
    const given = equals === -1 ? argument : argument.slice(0, equals);
    const option = options.find(({ name }) => given === `--${name}`);
    if (option === undefined) throw new UsageFault(unknownWord("option", given, [...options.map(({ name }) => `--${name}`), "--help"]));
    if (option.value === undefined) {
      if (equals !== -1) throw new UsageFault(`${given} takes no value.`);
      switches.add(option.name);
      continue;
    }
    const value = equals === -1 ? rest.shift() : argument.slice(equals + 1);
    if (value === undefined || value === "") throw new UsageFault(`${given} needs a value: ${given} ${option.value}.`);
    if (values.has(option.name)) throw new UsageFault(`${given} is given twice.`);
    values.set(option.name, value);
  }
  return { words, switches, values };
}

/** Says that a word is not known, with the nearest that is. */
export function unknownWord(what: string, word: string, known: readonly string[]): string {
  const meant = nearest(word, known);
  return `Unknown ${what} "${word}".${meant === undefined ? "" : ` Did you mean ${meant}?`}`;
}
