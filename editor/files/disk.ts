// Open and save on the user's own disk: the File System Access interface where the browser has it, upload and download elsewhere.

/** A file as read from disk. */
export interface DiskFile {
  readonly name: string;
  readonly text: string;
  readonly handle?: FileSystemFileHandle;
}

export interface Saved {
  readonly name: string;
  readonly handle?: FileSystemFileHandle;
  /** `written`: the file itself; `downloaded`: a copy went to the download folder. */
  readonly how: "written" | "downloaded";
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

const gaveUp = (fault: unknown): boolean => fault instanceof DOMException && fault.name === "AbortError";

/** Undefined when the user gave up. Throws what the disk says. */
export async function openFromDisk(): Promise<DiskFile | undefined> {
  const { showOpenFilePicker } = window as Pickers;
  if (showOpenFilePicker === undefined) return upload();
  try {
    const [handle] = await showOpenFilePicker.call(window, { types: TYPES, excludeAcceptAllOption: false });
    if (handle === undefined) return undefined;
    const file = await handle.getFile();
    return { name: file.name, text: await file.text(), handle };
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
      file.text().then((text) => resolve({ name: file.name, text }), reject);
    });
    input.click();
  });
}

/** Writes to the handle when there is one and the user allows it, else as `saveAs`. */
export async function saveToDisk(name: string, text: string, handle: FileSystemFileHandle | undefined): Promise<Saved | undefined> {
  if (handle === undefined) return saveAs(name, text);
  const allowed = await (handle as Permitted).requestPermission?.({ mode: "readwrite" });
  if (allowed !== undefined && allowed !== "granted") return saveAs(name, text);
  await write(handle, text);
  return { name: handle.name, handle, how: "written" };
}

/** Asks for a place. Undefined when the user gave up. */
export async function saveAs(name: string, text: string): Promise<Saved | undefined> {
  const { showSaveFilePicker } = window as Pickers;
  if (showSaveFilePicker === undefined) return download(name, text);
  try {
    const handle = await showSaveFilePicker.call(window, { suggestedName: name, types: TYPES });
    await write(handle, text);
    return { name: handle.name, handle, how: "written" };
  } catch (fault) {
    if (gaveUp(fault)) return undefined;
    throw fault;
  }
}

async function write(handle: FileSystemFileHandle, text: string): Promise<void> {
  const stream = await handle.createWritable();
  await stream.write(text);
  await stream.close();
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
