// The door of the editor, for its tests: what can be tried without a browser.

export { type AtHand, type Autosave, createAutosave, type KeepState } from "./files/autosave.ts";
export { fileName } from "./files/disk.ts";
export type { Keep, KeepOutcome, Kept } from "./files/keep.ts";
export { hostSession } from "./link/host.ts";
export { createLink, type EngineLink, type LinkState, textChanges } from "./link/link.ts";
export type { Ask, Reply, WorkerPort } from "./link/protocol.ts";
export { stepOf } from "./pad/columns.ts";
export { notebookField } from "./pad/notebook-field.ts";
export { type OutputWords, outputWords, referenceWords } from "./pad/output-words.ts";
export { nowAt, outputsField, outputsIn, receiveSnapshot } from "./pad/outputs-field.ts";
export { proseStyle } from "./pad/prose.ts";
export { statementStyle } from "./pad/statement-style.ts";
