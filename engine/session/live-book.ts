// The live values of one file: read once per prose part, found by the names they show, told again only when those change.

import { liveValues, type ProsePart } from "../notebook/index.ts";
import { parseLive } from "../syntax/index.ts";
import type { EngineState } from "./engine-state.ts";
import type { FileState } from "./file-state.ts";
import { expressionKeys, type LiveText } from "./live.ts";

export interface LiveEntry {
  readonly id: string;
  readonly part: ProsePart;
  readonly live: LiveText;
}

export interface LiveBook {
  /** Reads the file's prose again; parts that are the same objects are not read twice. */
  readonly read: (state: FileState) => void;
  /** Notes that a name's value or marks changed. */
  readonly touch: (key: string) => void;
  /** All entries in the order of the text. */
  readonly entries: () => readonly LiveEntry[];
  /** Entries that are new or touched since the last call. */
  readonly takeTouched: () => readonly LiveEntry[];
  /** Ids that went away since the last call. */
  readonly takeRemoved: () => readonly string[];
}

const parsedParts = new WeakMap<ProsePart, readonly LiveText[]>();

/** The braces of a prose part that are live values. */
function livesOf(part: ProsePart): readonly LiveText[] {
  const known = parsedParts.get(part);
  if (known !== undefined) return known;
  const made = liveValues(part.text).flatMap((live) => {
    const parsed = parseLive(live.inside);
    return parsed === undefined ? [] : [{ ...live, ...parsed }];
  });
  parsedParts.set(part, made);
  return made;
}

export function createLiveBook(engine: EngineState): LiveBook {
  let entries: readonly LiveEntry[] = [];
  let byKey = new Map<string, LiveEntry[]>();
  const touched = new Set<LiveEntry>();
  const removed = new Set<string>();

  return {
    read: (state) => {
      const before = new Map(entries.map((entry) => [entry.id, entry]));
      const count = new Map<string, number>();
      const now: LiveEntry[] = [];
      byKey = new Map();
      touched.clear();
      for (const part of state.notebook.parts) {
        if (part.kind !== "prose") continue;
        for (const live of livesOf(part)) {
          const n = (count.get(live.inside) ?? 0) + 1;
          count.set(live.inside, n);
          const id = `live:${live.inside}${n === 1 ? "" : `~${n}`}`;
          const entry = { id, part, live };
          now.push(entry);
          touched.add(entry);
          before.delete(id);
          removed.delete(id);
          for (const key of expressionKeys(engine, state.file, live.path)) {
            const list = byKey.get(key);
            if (list === undefined) byKey.set(key, [entry]);
            else list.push(entry);
          }
        }
      }
      for (const id of before.keys()) removed.add(id);
      entries = now;
    },
    touch: (key) => {
      for (const entry of byKey.get(key) ?? []) touched.add(entry);
    },
    entries: () => entries,
    takeTouched: () => {
      const out = entries.length === touched.size ? entries : [...touched];
      touched.clear();
      return out;
    },
    takeRemoved: () => {
      const out = [...removed];
      removed.clear();
      return out;
    },
  };
}
