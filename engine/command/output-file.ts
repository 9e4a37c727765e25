// What the commands that write files share: names, choices, words of the system.

import { type Option, UsageFault, unknownWord } from "./arguments.ts";
import type { World } from "./world.ts";

export const PAPER = ["a4", "letter"] as const;
export const UNITS = ["notebook", "metric", "inch"] as const;

export const PAPER_OPTION: Option = { name: "paper", value: "a4|letter", help: "a4 without it" };
export const UNITS_OPTION: Option = {
  name: "units",
  value: "metric|inch",
  help: "show every value in these, as the notebook says without it",
};

/** One of the words that an option may have; the first without the option. Throws UsageFault. */
export function choice<T extends string>(values: ReadonlyMap<string, string>, name: string, words: readonly [T, ...T[]]): T {
  const given = values.get(name);
  if (given === undefined) return words[0];
  const found = words.find((word) => word === given.toLowerCase());
  if (found === undefined) throw new UsageFault(`${unknownWord(`value of --${name}`, given, words)} It is one of ${words.join(", ")}.`);
  return found;
}

/** A notebook's path without its ending. */
export const stem = (path: string): string => path.replace(/\.joint\.md$|\.[^./\\]*$/i, "");

/** Throws UsageFault with the system's words. */
export function write(path: string, bytes: Uint8Array, world: World): void {
  try {
    world.writeBytes(path, bytes);
  } catch (fault) {
    throw new UsageFault(`Cannot write ${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

/** Throws UsageFault with the system's words. */
export function readBytes(path: string, world: World): Uint8Array {
  try {
    return world.readBytes(path);
  } catch (fault) {
    throw new UsageFault(`Cannot read ${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}
