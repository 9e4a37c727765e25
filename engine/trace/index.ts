// The door of engine/trace: the working of a value, its text, and how it moves with what goes in.

export type { Maths, MathsSymbol } from "./maths.ts";
export { symbolOf } from "./maths.ts";
export { mathsText, traceText } from "./plain-text.ts";
export type { Show, TraceShown } from "./read-core.ts";
export { type Sensitivity, type SensitivityInput, sensitivities } from "./sensitivity.ts";
export { type TraceCall, type TraceFeed, type TraceOptions, type TraceStep, type TraceView, traceUnit } from "./trace.ts";
