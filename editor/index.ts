// The door of the editor, for its tests: what can be tried without a browser.

export { type AtHand, type Autosave, createAutosave, type KeepState } from "./files/autosave.ts";
export { fileName, type Saved, saveToDisk } from "./files/disk.ts";
export { diskChanges, type Folder, type FolderFile, folderLimits, readDirectory, readSources, type Source } from "./files/folder.ts";
export type { Keep, KeepOutcome, Kept, KeptFolder } from "./files/keep.ts";
export { type Project, projectFromKeep, projectOf } from "./files/project.ts";
export { hostSession } from "./link/host.ts";
export { createLink, type EngineLink, type LinkState, textChanges } from "./link/link.ts";
export type { Ask, Reply, WorkerPort } from "./link/protocol.ts";
export { changedLines } from "./pad/changed-lines.ts";
export { stepOf } from "./pad/input-control.ts";
export { notebookField } from "./pad/notebook-field.ts";
export { type OutputWords, outputWords, referenceWords } from "./pad/output-words.ts";
export { nowAt, outputsField, outputsIn, receiveSnapshot } from "./pad/outputs-field.ts";
export { proseStyle } from "./pad/prose.ts";
export { statementStyle } from "./pad/statement-style.ts";
