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
  let file = "";
  let entries: readonly LiveEntry[] = [];
  const byKey = new Map<string, Set<LiveEntry>>();
  const keysOfEntry = new Map<LiveEntry, readonly string[]>();
  const touched = new Set<LiveEntry>();
  const removed = new Set<string>();

  const unlist = (entry: LiveEntry): void => {
    for (const key of keysOfEntry.get(entry) ?? []) {
      const set = byKey.get(key);
      set?.delete(entry);
      if (set?.size === 0) byKey.delete(key);
    }
    keysOfEntry.delete(entry);
  };
  /** What the names of an entry mean hangs on the `use` lines, so a touched entry is listed anew. */
  const list = (entry: LiveEntry): void => {
    unlist(entry);
    const keys = expressionKeys(engine, file, entry.live.path);
    for (const key of keys) {
      const set = byKey.get(key);
      if (set === undefined) byKey.set(key, new Set([entry]));
      else set.add(entry);
    }
    keysOfEntry.set(entry, keys);
  };

  return {
    read: (state) => {
      file = state.file;
      const before = new Map(entries.map((entry) => [entry.id, entry]));
      const count = new Map<string, number>();
      const now: LiveEntry[] = [];
      for (const part of state.notebook.parts) {
        if (part.kind !== "prose") continue;
        for (const live of livesOf(part)) {
          const n = (count.get(live.inside) ?? 0) + 1;
          count.set(live.inside, n);
          const id = `live:${live.inside}${n === 1 ? "" : `~${n}`}`;
          const old = before.get(id);
          before.delete(id);
          removed.delete(id);
          if (old?.live === live) {
            now.push(old);
            continue;
          }
          const entry = { id, part, live };
          now.push(entry);
          touched.add(entry);
          // At once, because names of the library get their nodes by it and the graphs are brought up to date next.
          list(entry);
          if (old !== undefined) forget(old);
        }
      }
      for (const [id, entry] of before) {
        removed.add(id);
        forget(entry);
      }
      entries = now;
    },
    touch: (key) => {
      for (const entry of byKey.get(key) ?? []) touched.add(entry);
    },
    entries: () => entries,
    takeTouched: () => {
      const out = [...touched];
      for (const entry of out) list(entry);
      touched.clear();
      return out;
    },
    takeRemoved: () => {
      const out = [...removed];
      removed.clear();
      return out;
    },
  };

  function forget(entry: LiveEntry): void {
    unlist(entry);
    touched.delete(entry);
  }
}
