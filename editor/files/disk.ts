// Open and save on the user's own disk: the File System Access interface where the browser has it, upload and download elsewhere.

/** A file as read from disk. */
export interface DiskFile {
  readonly name: string;
  readonly text: string;
  readonly modified: number;
  readonly handle?: FileSystemFileHandle;
}

export type Saved =
  | { readonly how: "written"; readonly name: string; readonly handle: FileSystemFileHandle; readonly modified: number }
  /** A copy went to the download folder. */
  | { readonly how: "downloaded"; readonly name: string }
  /** Somebody else wrote the file since it was last read; nothing was written. */
  | { readonly how: "changed"; readonly text: string; readonly modified: number }
  /** The file is no longer there; nothing was written. */
  | { readonly how: "gone" };

/** What the file held when the page last read or wrote it. */
export interface LastSeen {
  readonly modified: number;
  /** The characters that are to be written may be what already stands there. */
  readonly evenIf?: "changed" | "gone";
}

interface Pickers {
  showOpenFilePicker?(options: object): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}

type Permitted = FileSystemFileHandle & { requestPermission?(options: { mode: "readwrite" }): Promise<PermissionState> };

const TYPES = [{ description: "Jointwright notebook", accept: { "text/markdown": [".md"] } }];
export const ENDING = ".joint.md";

/** A file name from a title, e.g. "wrist-bracket.joint.md". */
export function fileName(title: string): string {
  const stem = title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase()
    .slice(0, 60);
  return `${stem === "" ? "untitled" : stem}${ENDING}`;
}

export const gaveUp = (fault: unknown): boolean => fault instanceof DOMException && fault.name === "AbortError";

/** Undefined when the user gave up. Throws what the disk says. */
export async function openFromDisk(): Promise<DiskFile | undefined> {
  const { showOpenFilePicker } = window as Pickers;
  if (showOpenFilePicker === undefined) return upload();
  try {
    const [handle] = await showOpenFilePicker.call(window, { types: TYPES, excludeAcceptAllOption: false });
    if (handle === undefined) return undefined;
    const file = await handle.getFile();
    return { name: file.name, text: await file.text(), modified: file.lastModified, handle };
  } catch (fault) {
    if (gaveUp(fault)) return undefined;
    throw fault;
  }
}

function upload(): Promise<DiskFile | undefined> {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".md,text/markdown";
  return new Promise((resolve, reject) => {
    input.addEventListener("cancel", () => resolve(undefined));
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (file === undefined) return resolve(undefined);
      file.text().then((text) => resolve({ name: file.name, text, modified: file.lastModified }), reject);
    });
    input.click();
  });
}

/**
 * Writes to the handle when there is one and the user allows it, else as `saveAs`. A file that somebody else wrote or removed
 * since `seen` is left alone unless `evenIf` says that the user was asked.
 */
export async function saveToDisk(
  name: string,
  text: string,
  handle: FileSystemFileHandle | undefined,
  seen?: LastSeen,
): Promise<Saved | undefined> {
  if (handle === undefined) return saveAs(name, text);
  const allowed = await (handle as Permitted).requestPermission?.({ mode: "readwrite" });
  if (allowed !== undefined && allowed !== "granted") return saveAs(name, text);
  const there = await fileOf(handle);
  if (there === undefined && seen?.evenIf !== "gone") return { how: "gone" };
  if (there !== undefined && seen !== undefined && seen.evenIf !== "changed" && there.lastModified !== seen.modified) {
    const other = await there.text();
    if (other !== text) return { how: "changed", text: other, modified: there.lastModified };
  }
  try {
    return await written(handle, text);
  } catch (fault) {
    // A browser may not make a file anew where one was removed: the user gives it a place.
    if (isGone(fault)) return saveAs(name, text);
    throw fault;
  }
}

const isGone = (fault: unknown): boolean => fault instanceof DOMException && fault.name === "NotFoundError";

/** Undefined when the file is no longer there. */
async function fileOf(handle: FileSystemFileHandle): Promise<File | undefined> {
  try {
    return await handle.getFile();
  } catch (fault) {
    if (isGone(fault)) return undefined;
    throw fault;
  }
}

/** Asks for a place. Undefined when the user gave up. */
export async function saveAs(name: string, text: string): Promise<Saved | undefined> {
  const { showSaveFilePicker } = window as Pickers;
  if (showSaveFilePicker === undefined) return download(name, text);
  try {
    const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: TYPES });
    return await written(handle, text);
  } catch (fault) {
    if (gaveUp(fault)) return undefined;
    throw fault;
  }
}

async function written(handle: FileSystemFileHandle, text: string): Promise<Saved> {
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
  return { how: "written", name: handle.name, handle, modified: (await handle.getFile()).lastModified };
}

function download(name: string, text: string): Saved {
  const address = URL.createObjectURL(new Blob([text], { type: "text/markdown" }));
  const anchor = document.createElement("a");
  anchor.href = address;
  anchor.download = name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return { name, how: "downloaded" };
}
