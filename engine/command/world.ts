// What a command may touch. The root gives the real thing, a test its own.

import type { CatalogueEntry } from "../diagnostics/index.ts";
import type { PrintFonts } from "../package/index.ts";
import type { Library, Session } from "../session/index.ts";
import type { WebFont } from "../sheet/index.ts";

export interface World {
  readonly version: string;
  /** The name that stands for a folder's parts joined, and the last part of a path, in the system's own manner. */
  join(folder: string, name: string): string;
  folderOf(path: string): string;
  nameOf(path: string): string;
  /** Throws with the system's words when the file cannot be read or written. */
  readFile(path: string): string;
  writeFile(path: string, text: string): void;
  /** Names of the plain files in a folder, sorted. */
  listFolder(path: string): readonly string[];
  readStandardInput(): string;
  /** Results. */
  out(text: string): void;
  /** Faults and progress. */
  err(text: string): void;
  /** Files that are no text. */
  readBytes(path: string): Uint8Array;
  writeBytes(path: string, bytes: Uint8Array): void;
  /** The product's fonts, for what is printed. */
  webFonts(): readonly WebFont[];
  readonly printFonts: PrintFonts;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  /** False when the surroundings ask for none. */
  readonly colour: boolean;
  createSession(): Session;
  /** The standard library, for commands about the library itself. */
  readonly library: Library;
  readonly catalogue: readonly CatalogueEntry[];
}
