// A store in memory that keeps the contract of the browser's one; `fault` stands in for a write.

import type { Keep, KeepOutcome, Kept, KeptFolder } from "../../editor/index.ts";

export interface MemoryKeep {
  readonly keep: Keep;
  readonly stored: Map<string, Kept>;
  readonly writes: () => number;
  readonly fail: (outcome: KeepOutcome | undefined) => void;
}

export function memoryKeep(): MemoryKeep {
  const stored = new Map<string, Kept>();
  const folders = new Map<string, KeptFolder>();
  const listeners = new Set<(id: string, version: number) => void>();
  let writes = 0;
  let fault: KeepOutcome | undefined;
  const keep: Keep = {
    async write(notebook, base) {
      writes += 1;
      await Promise.resolve();
      if (fault !== undefined) return fault;
      const before = stored.get(notebook.id);
      if (before !== undefined && before.version !== base) return { kind: "newer", newer: before };
      stored.set(notebook.id, { ...notebook, version: base + 1, at: 0 });
      for (const listener of listeners) listener(notebook.id, base + 1);
      return { kind: "kept", version: base + 1 };
    },
    read: async (id) => stored.get(id),
    recent: async () => [...stored.values()],
    folder: async (key) => folders.get(key),
    folders: async () => [...folders.values()],
    filesOf: async (folder) => [...stored.values()].filter((kept) => kept.folder === folder),
    async putFolder(folder, files) {
      if (fault !== undefined) return fault;
      folders.set(folder.key, folder);
      for (const file of files) {
        const before = stored.get(file.id);
        if (before !== undefined && !before.onDisk) continue;
        stored.set(file.id, { ...file, version: (before?.version ?? 0) + 1, at: before?.at ?? 0 });
      }
      return { kind: "kept", version: 0 };
    },
    remove: async (id) => void stored.delete(id),
    last: async () => undefined,
    setLast: async () => {},
    onWritten(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => {},
  };
  return {
    keep,
    stored,
    writes: () => writes,
    fail: (outcome) => {
      fault = outcome;
    },
  };
}
