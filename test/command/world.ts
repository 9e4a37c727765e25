// A world in memory for the command line's tests: files in a record, output collected.

import type { World } from "../../engine/command/index.ts";

export interface TestWorld extends World {
  readonly files: Map<string, string>;
  readonly binary: Map<string, Uint8Array>;
  output(): string;
  errors(): string;
}

export interface WorldOptions {
  readonly createSession: World["createSession"];
  readonly files?: Readonly<Record<string, string>>;
  readonly input?: string;
  readonly terminal?: boolean;
  readonly colour?: boolean;
  readonly catalogue?: World["catalogue"];
  readonly library?: World["library"];
  readonly printFonts?: World["printFonts"];
}

export function worldOf(options: WorldOptions): TestWorld {
  const files = new Map(Object.entries(options.files ?? {}));
  const binary = new Map<string, Uint8Array>();
  const folderOf = (path: string): string => (path.includes("/") ? path.slice(0, path.lastIndexOf("/")) : ".");
  const nameOf = (path: string): string => path.slice(path.lastIndexOf("/") + 1);
  let out = "";
  let err = "";
  return {
    files,
    binary,
    output: () => out,
    errors: () => err,
    version: "1.2.3",
    join: (folder, name) => (folder === "." ? name : `${folder}/${name}`),
    folderOf,
    nameOf,
    readFile: (path) => {
      const text = files.get(path);
      if (text === undefined) throw new Error("no such file or directory");
      return text;
    },
    writeFile: (path, text) => void files.set(path, text),
    readBytes: (path) => {
      const bytes = binary.get(path);
      if (bytes !== undefined) return bytes;
      const text = files.get(path);
      if (text === undefined) throw new Error("no such file or directory");
      return new TextEncoder().encode(text);
    },
    writeBytes: (path, bytes) => void binary.set(path, bytes),
    webFonts: () => [],
    printFonts: options.printFonts ?? (() => new Uint8Array()),
    listFolder: (path) =>
      [...files.keys()]
        .filter((file) => folderOf(file) === path)
        .map(nameOf)
        .sort(),
    readStandardInput: () => options.input ?? "",
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    outIsTerminal: options.terminal ?? false,
    errIsTerminal: options.terminal ?? false,
    colour: options.colour ?? true,
    createSession: options.createSession,
    library: options.library ?? { version: "0", modules: [], files: [], natives: {}, sources: "" },
    catalogue: options.catalogue ?? [],
  };
}
