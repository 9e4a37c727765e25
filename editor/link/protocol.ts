// The messages between the page and its worker: plain data, each ask with a version or an id that its answer repeats.

import type { TextChange } from "../../engine/base/index.ts";
import type { Completion, Hover, SessionTools, Snapshot, Trace } from "../../engine/session/index.ts";

/** What the page may ask about the text it last sent. Offsets are in that text. */
export type Question =
  | { readonly about: "complete"; readonly offset: number }
  | { readonly about: "hover"; readonly offset: number }
  | { readonly about: "trace"; readonly name: string; readonly open: number }
  | { readonly about: "tidy" }
  /** One of the session's tools by its name; those whose first argument is the file get the file that is open. */
  | { readonly about: "tool"; readonly tool: keyof SessionTools; readonly args: readonly unknown[] };

export interface Answers {
  readonly complete: { readonly from: number; readonly to: number; readonly options: readonly Completion[] };
  readonly hover: Hover | undefined;
  readonly trace: Trace | undefined;
  readonly tidy: string;
  readonly tool: unknown;
}

/** A file of the same folder as the open notebook; without a text it has gone. */
export interface Beside {
  readonly file: string;
  readonly text?: string;
}

export type Ask =
  /** A file's whole text and those of its folder; everything known before is forgotten. */
  | { readonly kind: "open"; readonly version: number; readonly file: string; readonly text: string; readonly beside: readonly Beside[] }
  /** Other files came, changed or went; the answer is a snapshot of the open one. */
  | { readonly kind: "beside"; readonly version: number; readonly file: string; readonly beside: readonly Beside[] }
  /** Changes counted in the text of the version before. */
  | { readonly kind: "edit"; readonly version: number; readonly file: string; readonly changes: readonly TextChange[] }
  | { readonly kind: "question"; readonly id: number; readonly file: string; readonly question: Question };

export type Reply =
  /** The worker has its library and may be asked. */
  | { readonly kind: "ready"; readonly library: string }
  | { readonly kind: "snapshot"; readonly version: number; readonly snapshot: Snapshot }
  | { readonly kind: "answer"; readonly id: number; readonly answer: Answers[keyof Answers] }
  /** A fault of our own, never of the notebook. */
  | { readonly kind: "broken"; readonly id?: number; readonly version?: number; readonly observed: string };

/** The end of the worker that the page holds; `Worker` fits. */
export interface WorkerPort {
  postMessage(message: Ask): void;
  terminate(): void;
  onmessage: ((event: { readonly data: Reply }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
}
