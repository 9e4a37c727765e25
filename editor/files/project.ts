// The files that lie beside the open notebook, wherever they came from: what the engine gets to see of them, and which of them
// the browser's store and the disk still lack. It knows nothing of the editor.

import { diskChanges, type Folder, type FolderFile, readDirectory } from "./folder.ts";
import type { Keep, KeepOutcome, Kept, KeptFolder } from "./keep.ts";

export interface ProjectFile {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  /** The text is the one on disk. */
  readonly onDisk: boolean;
}

export interface Project {
  readonly key: string;
  readonly name: string;
  /** In the order of the names. */
  files(): readonly ProjectFile[];
  file(name: string): ProjectFile | undefined;
  /** All texts but that of `open`, as the engine is given them. */
  beside(open: string): readonly { readonly file: string; readonly text: string }[];
  /** Another text for a file, from the pad or a rename; kept by whoever has the pad when it is the open one. */
  hold(name: string, text: string): void;
  /** The same, and into the browser's store at once: for files that are not open. */
  change(name: string, text: string): Promise<KeepOutcome>;
  /** Files that were dropped on the page or made anew. */
  add(files: readonly FolderFile[]): Promise<KeepOutcome>;
  /** What changed on disk since it was read; undefined where the disk cannot be looked at (no folder, no permission). */
  lookAtDisk(): Promise<{ readonly changed: readonly FolderFile[]; readonly gone: readonly string[] } | undefined>;
  /** The browser lets the page at the folder only after a click. */
  needsPermission(): Promise<boolean>;
  /** To be called from a click. True when the folder may be read and written. */
  askPermission(): Promise<boolean>;
  handle(): FileSystemDirectoryHandle | undefined;
}

type Permitted = FileSystemDirectoryHandle & {
  queryPermission?(options: { mode: "readwrite" }): Promise<PermissionState>;
  requestPermission?(options: { mode: "readwrite" }): Promise<PermissionState>;
};

export const fileId = (folder: string, name: string): string => `${folder}/${name}`;

/** A project of a folder that was just read; its files go into the store, where there is one. */
export async function projectOf(folder: Folder, key: string, keep: Keep | undefined): Promise<Project> {
  const kept: KeptFolder = { key, name: folder.name, ...(folder.handle === undefined ? {} : { handle: folder.handle }) };
  await keep?.putFolder(
    kept,
    [...folder.files.values()].map((file) => keptFile(key, file)),
  );
  // The store may hold changes that the disk lacks: they stand.
  const stored = (await keep?.filesOf(key).catch(() => [])) ?? [];
  return makeProject(kept, folder, stored, keep);
}

/** The project a kept notebook lies in, from the store alone. */
export async function projectFromKeep(key: string, keep: Keep): Promise<Project | undefined> {
  const folder = await keep.folder(key).catch(() => undefined);
  if (folder === undefined) return undefined;
  const stored = await keep.filesOf(key).catch(() => []);
  const files = new Map(stored.map((kept) => [kept.name, folderFile(kept)] as const));
  return makeProject(
    folder,
    { name: folder.name, files, leftOut: [], ...(folder.handle === undefined ? {} : { handle: folder.handle }) },
    stored,
    keep,
  );
}

const keptFile = (key: string, file: FolderFile): Omit<Kept, "version" | "at"> => ({
  id: fileId(key, file.name),
  name: file.name,
  text: file.text,
  lineEnd: file.lineEnd,
  onDisk: file.handle !== undefined,
  modified: file.modified,
  folder: key,
  ...(file.handle === undefined ? {} : { handle: file.handle }),
});

const folderFile = (kept: Kept): FolderFile => ({
  name: kept.name,
  text: kept.text,
  lineEnd: kept.lineEnd,
  modified: kept.modified ?? 0,
  ...(kept.handle === undefined ? {} : { handle: kept.handle }),
});

function makeProject(folder: KeptFolder, read: Folder, stored: readonly Kept[], keep: Keep | undefined): Project {
  let disk = read;
  const held = new Map<string, ProjectFile>();
  for (const file of read.files.values()) {
    held.set(file.name, { id: fileId(folder.key, file.name), name: file.name, text: file.text, onDisk: file.handle !== undefined });
  }
  for (const kept of stored) if (!kept.onDisk) held.set(kept.name, { id: kept.id, name: kept.name, text: kept.text, onDisk: false });

  const project: Project = {
    key: folder.key,
    name: folder.name,
    files: () => [...held.values()].sort((a, b) => (a.name < b.name ? -1 : 1)),
    file: (name) => held.get(name),
    beside: (open) => [...held.values()].filter(({ name }) => name !== open).map(({ name, text }) => ({ file: name, text })),
    hold(name, text) {
      const before = held.get(name);
      if (before?.text === text) return;
      held.set(name, { id: before?.id ?? fileId(folder.key, name), name, text, onDisk: disk.files.get(name)?.text === text });
    },
    async change(name, text) {
      project.hold(name, text);
      const file = held.get(name);
      if (keep === undefined || file === undefined) return { kind: "unavailable", observed: "no store" };
      const before = await keep.read(file.id).catch(() => undefined);
      const known = disk.files.get(name);
      const {
        version,
        at: _at,
        ...rest
      } = before ?? {
        ...keptFile(folder.key, known ?? { name, text, lineEnd: "\n", modified: 0 }),
        version: 0,
        at: 0,
      };
      return keep.write({ ...rest, text, onDisk: file.onDisk }, version);
    },
    async add(files) {
      for (const file of files) {
        disk = { ...disk, files: new Map(disk.files).set(file.name, file) };
        held.set(file.name, { id: fileId(folder.key, file.name), name: file.name, text: file.text, onDisk: file.handle !== undefined });
      }
      if (keep === undefined) return { kind: "unavailable", observed: "no store" };
      return keep.putFolder(
        folder,
        files.map((file) => keptFile(folder.key, file)),
      );
    },
    async lookAtDisk() {
      if (folder.handle === undefined || (await project.needsPermission())) return undefined;
      try {
        const found = diskChanges(disk, await readDirectory(folder.handle));
        disk = found.now;
        return { changed: found.changed, gone: found.gone };
      } catch {
        return undefined;
      }
    },
    async needsPermission() {
      const state = await (folder.handle as Permitted | undefined)?.queryPermission?.({ mode: "readwrite" });
      return state !== undefined && state !== "granted";
    },
    async askPermission() {
      const state = await (folder.handle as Permitted | undefined)?.requestPermission?.({ mode: "readwrite" });
      return state === undefined || state === "granted";
    },
    handle: () => folder.handle,
  };
  return project;
}
