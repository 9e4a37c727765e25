// The public library: everything a program needs to read, evaluate, check and trace notebooks, in Node or in a page.

export type { Diagnostic, Severity } from "./diagnostics/index.ts";
export { entries as faultCatalogue } from "./diagnostics/index.ts";
export type { Scene } from "./figure/index.ts";
export { sceneSvg } from "./figure/index.ts";
export type { Limits, Native, Natives, Value } from "./run/index.ts";
export { defaultLimits, Refusal } from "./run/index.ts";
export type {
  CheckOutcome,
  Completion,
  Evaluated,
  Hover,
  Library,
  LineOutput,
  Placed,
  Session,
  Shown,
  Snapshot,
  TitleBlock,
  Trace,
} from "./session/index.ts";
export { createSession } from "./session/index.ts";
export type { TraceView } from "./trace/index.ts";
export { traceText } from "./trace/index.ts";
