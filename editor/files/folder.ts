// A folder as a project: the notebooks and csv files that lie beside each other, so that `use` lines resolve. Read from the
// user's disk where the browser can, from an upload or a drop elsewhere.

import { openText } from "../../engine/notebook/index.ts";
import { ENDING, gaveUp } from "./disk.ts";

/** One file of a folder. `name` is its path in the folder with `/` between the parts. */
export interface FolderFile {
  readonly name: string;
  /** With \n line ends, without a byte-order mark. */
  readonly text: string;
  readonly lineEnd: "\n" | "\r\n";
  /** Of the file on disk when it was last read or written; what changed it since is somebody else. */
  readonly modified: number;
  readonly handle?: FileSystemFileHandle;
}

/** A file that was left alone, and why. */
export interface LeftOut {
  readonly name: string;
  readonly why: "too large" | "too many" | "unreadable";
}

export interface Folder {
  readonly name: string;
  readonly files: ReadonlyMap<string, FolderFile>;
  readonly leftOut: readonly LeftOut[];
  readonly handle?: FileSystemDirectoryHandle;
}

/** Beyond these a folder is no project of notebooks; what is left out is said, never silent. */
export const folderLimits = { files: 500, bytes: 20_000_000, depth: 4 } as const;

export const isNotebook = (name: string): boolean => name.endsWith(ENDING);
export const isData = (name: string): boolean => name.toLowerCase().endsWith(".csv");
const ours = (name: string): boolean => isNotebook(name) || isData(name);

interface DirectoryPicker {
  showDirectoryPicker?(options: object): Promise<FileSystemDirectoryHandle>;
}

/** A file as some source of folders hands it over. */
export interface Source {
  readonly name: string;
  readonly size: number;
  readonly modified: number;
  readonly handle?: FileSystemFileHandle;
  readonly text: () => Promise<string>;
}

/** Asks for a folder. Undefined when the user gave up. Throws what the disk says. */
export async function openFolder(): Promise<Folder | undefined> {
  const { showDirectoryPicker } = window as DirectoryPicker;
  if (showDirectoryPicker === undefined) return uploadFolder();
  try {
    return await readDirectory(await showDirectoryPicker.call(window, { id: "notebooks", mode: "readwrite" }));
  } catch (fault) {
    if (gaveUp(fault)) return undefined;
    throw fault;
  }
}

/** Reads all of a folder on disk again. */
export async function readDirectory(handle: FileSystemDirectoryHandle): Promise<Folder> {
  const sources: Source[] = [];
  await collect(handle, "", 1, sources);
  return { ...(await readSources(handle.name, sources)), handle };
}

type Entries = FileSystemDirectoryHandle & { values(): AsyncIterable<FileSystemFileHandle | FileSystemDirectoryHandle> };

async function collect(directory: FileSystemDirectoryHandle, path: string, depth: number, into: Source[]): Promise<void> {
  for await (const entry of (directory as Entries).values()) {
    if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
    const name = `${path}${entry.name}`;
    if (entry.kind === "directory") {
      if (depth < folderLimits.depth) await collect(entry, `${name}/`, depth + 1, into);
    } else if (ours(name)) {
      const file = await entry.getFile();
      into.push({ name, size: file.size, modified: file.lastModified, handle: entry, text: () => file.text() });
    }
  }
}

/** Takes what fits the limits, in the order of the names. */
export async function readSources(name: string, sources: readonly Source[]): Promise<Folder> {
  const files = new Map<string, FolderFile>();
  const leftOut: LeftOut[] = [];
  let bytes = 0;
  for (const source of [...sources].sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (!ours(source.name)) continue;
    bytes += source.size;
    if (files.size >= folderLimits.files) leftOut.push({ name: source.name, why: "too many" });
    else if (bytes > folderLimits.bytes) {
      leftOut.push({ name: source.name, why: "too large" });
      bytes -= source.size;
    } else {
      try {
        const { text, lineEnd } = openText(await source.text());
        const { modified, handle } = source;
        files.set(source.name, { name: source.name, text, lineEnd, modified, ...(handle === undefined ? {} : { handle }) });
      } catch {
        leftOut.push({ name: source.name, why: "unreadable" });
      }
    }
  }
  return { name, files, leftOut };
}

/** Where a browser gives no folders: the files of one as an upload. */
function uploadFolder(): Promise<Folder | undefined> {
  const input = document.createElement("input");
  input.type = "file";
  input.setAttribute("webkitdirectory", "");
  return new Promise((resolve, reject) => {
    input.addEventListener("cancel", () => resolve(undefined));
    input.addEventListener("change", () => {
      const list = [...(input.files ?? [])];
      const top = list[0]?.webkitRelativePath.split("/")[0] ?? "";
      readSources(
        top,
        list.map((file) => sourceOf(file, file.webkitRelativePath.slice(top.length + 1) || file.name)),
      ).then(resolve, reject);
    });
    input.click();
  });
}

const sourceOf = (file: File, name: string): Source => ({
  name,
  size: file.size,
  modified: file.lastModified,
  text: () => file.text(),
});

/** The files of a drop; what is no notebook and no csv file is left alone. */
export const droppedFiles = (files: Iterable<File>): Promise<Folder> =>
  readSources(
    "",
    [...files].map((file) => sourceOf(file, file.name)),
  );

/** The folder with one file put in place. */
export function withFile(folder: Folder, file: FolderFile): Folder {
  return { ...folder, files: new Map(folder.files).set(file.name, file) };
}

/** What somebody else did on disk since the files were read. */
export interface DiskChanges {
  readonly changed: readonly FolderFile[];
  readonly gone: readonly string[];
  readonly now: Folder;
}

/** Looks at the disk again: files whose time and text differ, files that came, files that have gone. */
export function diskChanges(before: Folder, now: Folder): DiskChanges {
  const changed = [...now.files.values()].filter((file) => {
    const known = before.files.get(file.name);
    return known === undefined || (known.modified !== file.modified && known.text !== file.text);
  });
  const gone = [...before.files.keys()].filter((name) => !now.files.has(name));
  return { changed, gone, now };
}
