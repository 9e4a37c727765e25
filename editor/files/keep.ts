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
  /** Time of that file on disk when it was last read or written. */
  readonly modified?: number;
  /** The folder it lies in, as `KeptFolder` names it. */
  readonly folder?: string;
  /** Milliseconds since 1970, for the list of recent notebooks; 0: lies in a folder and was never opened itself. */
  readonly at: number;
}

/** A folder whose files are kept: the store has them also when the browser does not let the page at the disk again. */
export interface KeptFolder {
  readonly key: string;
  readonly name: string;
  readonly handle?: FileSystemDirectoryHandle;
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
  /** Those the user opened, the newest first. */
  recent(): Promise<readonly Kept[]>;
  folder(key: string): Promise<KeptFolder | undefined>;
  folders(): Promise<readonly KeptFolder[]>;
  filesOf(folder: string): Promise<readonly Kept[]>;
  /** Puts a folder and its files in; a file with changes that are not on disk stays as it is. */
  putFolder(folder: KeptFolder, files: readonly Omit<Kept, "version" | "at">[]): Promise<KeepOutcome>;
  remove(id: string): Promise<void>;
  last(): Promise<string | undefined>;
  setLast(id: string): Promise<void>;
  /** Calls back when another tab has written a notebook. Gives the way to stop. */
  onWritten(listener: (id: string, version: number) => void): () => void;
  close(): void;
}

interface Stores extends DBSchema {
  notebooks: { key: string; value: Kept; indexes: { at: number; folder: string } };
  folders: { key: string; value: KeptFolder };
  settings: { key: string; value: string };
}

const NAME = "jointwright";

/** Opens the store; throws where the browser has none to give (a private window, storage switched off). */
export async function openKeep(name = NAME, now: () => number = Date.now): Promise<Keep> {
  const database: IDBPDatabase<Stores> = await openDB<Stores>(name, 2, {
    upgrade(fresh, from, _to, transaction) {
      if (from < 1) {
        fresh.createObjectStore("notebooks", { keyPath: "id" }).createIndex("at", "at");
        fresh.createObjectStore("settings");
      }
      transaction.objectStore("notebooks").createIndex("folder", "folder");
      fresh.createObjectStore("folders", { keyPath: "key" });
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
        return refusal(fault);
      }
    },
    read: (id) => database.get("notebooks", id),
    async recent() {
      return (await database.getAllFromIndex("notebooks", "at")).filter(({ at }) => at > 0).reverse();
    },
    folder: (key) => database.get("folders", key),
    folders: () => database.getAll("folders"),
    filesOf: (folder) => database.getAllFromIndex("notebooks", "folder", folder),
    async putFolder(folder, files) {
      try {
        const transaction = database.transaction(["notebooks", "folders"], "readwrite");
        const notebooks = transaction.objectStore("notebooks");
        await transaction.objectStore("folders").put(folder);
        for (const file of files) {
          const stored = await notebooks.get(file.id);
          if (stored !== undefined && !stored.onDisk) continue;
          if (stored !== undefined && stored.text === file.text) await notebooks.put({ ...stored, ...file });
          else await notebooks.put({ ...file, version: (stored?.version ?? 0) + 1, at: stored?.at ?? 0 });
        }
        await transaction.done;
        return { kind: "kept", version: 0 };
      } catch (fault) {
        return refusal(fault);
      }
    },
    remove: (id) => database.delete("notebooks", id),
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

function refusal(fault: unknown): KeepOutcome {
  const observed = fault instanceof Error ? fault : new Error(String(fault));
  if (observed.name === "QuotaExceededError") return { kind: "full" };
  return { kind: "unavailable", observed: observed.message };
}
