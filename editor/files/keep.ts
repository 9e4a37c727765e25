// The browser's own store of notebooks: every change is kept there, whether or not it is saved to disk.

import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** One notebook as kept. `version` grows by one with each write; a write names the version it was made from. */
export interface Kept {
  readonly id: string;
  /** The file's name on disk, or the name it would get. */
  readonly name: string;
  /** With \n line ends; `lineEnd` is what the file on disk has. */
  readonly text: string;
  readonly lineEnd: "\n" | "\r\n";
  readonly version: number;
  /** The text is what was last read from or written to a file of this name on the user's disk. */
  readonly onDisk: boolean;
  /** Where the browser lets the page write to the user's file itself. */
  readonly handle?: FileSystemFileHandle;
  /** Milliseconds since 1970, for the list of recent notebooks. */
  readonly at: number;
}

export type KeepOutcome =
  | { readonly kind: "kept"; readonly version: number }
  /** Somebody else (another tab) wrote a newer version; nothing was written. */
  | { readonly kind: "newer"; readonly newer: Kept }
  | { readonly kind: "full" }
  | { readonly kind: "unavailable"; readonly observed: string };

export interface Keep {
  /** Writes when the stored version is `base` (0: not stored yet). */
  write(notebook: Omit<Kept, "version" | "at">, base: number): Promise<KeepOutcome>;
  read(id: string): Promise<Kept | undefined>;
  /** The newest first. */
  recent(): Promise<readonly Kept[]>;
  last(): Promise<string | undefined>;
  setLast(id: string): Promise<void>;
  /** Calls back when another tab has written a notebook. Gives the way to stop. */
  onWritten(listener: (id: string, version: number) => void): () => void;
  close(): void;
}

interface Stores extends DBSchema {
  notebooks: { key: string; value: Kept; indexes: { at: number } };
  settings: { key: string; value: string };
}

const NAME = "jointwright";

/** Opens the store; throws where the browser has none to give (a private window, storage switched off). */
export async function openKeep(name = NAME, now: () => number = Date.now): Promise<Keep> {
  const database: IDBPDatabase<Stores> = await openDB<Stores>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore("notebooks", { keyPath: "id" }).createIndex("at", "at");
      fresh.createObjectStore("settings");
    },
    // A newer page wants to upgrade: let go, the next write reports that the store is gone.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });
  const channel = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel(name);
  const listeners = new Set<(id: string, version: number) => void>();
  if (channel !== undefined) {
    channel.onmessage = (event: MessageEvent<{ id: string; version: number }>) => {
      for (const listener of listeners) listener(event.data.id, event.data.version);
    };
  }

  return {
    async write(notebook, base) {
      try {
        // Reading and writing in one transaction: two tabs cannot both find the same base.
        const transaction = database.transaction("notebooks", "readwrite", { durability: "relaxed" });
        const stored = await transaction.store.get(notebook.id);
        if (stored !== undefined && stored.version !== base) {
          await transaction.done;
          return { kind: "newer", newer: stored };
        }
        const version = base + 1;
        await transaction.store.put({ ...notebook, version, at: now() });
        await transaction.done;
        channel?.postMessage({ id: notebook.id, version });
        return { kind: "kept", version };
      } catch (fault) {
        const observed = fault instanceof Error ? fault : new Error(String(fault));
        if (observed.name === "QuotaExceededError") return { kind: "full" };
        return { kind: "unavailable", observed: observed.message };
      }
    },
    read: (id) => database.get("notebooks", id),
    async recent() {
      return (await database.getAllFromIndex("notebooks", "at")).reverse();
    },
    last: () => database.get("settings", "last"),
    async setLast(id) {
      await database.put("settings", id, "last");
    },
    onWritten(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close() {
      channel?.close();
      database.close();
    },
  };
}
