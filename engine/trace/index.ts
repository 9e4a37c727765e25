// The door of engine/trace: the working of a value, its text, and how it moves with what goes in.

export { type FormulaStep, formulaSteps } from "./formula-maths.ts";
export type { Maths, MathsSymbol } from "./maths.ts";
export { symbolOf } from "./maths.ts";
export { callText, mathsText, traceText } from "./plain-text.ts";
export { partsOf, type Show, type TraceShown } from "./read-core.ts";
export { type Sensitivity, type SensitivityInput, sensitivities } from "./sensitivity.ts";
export { type TraceCall, type TraceFeed, type TraceOptions, type TraceStep, type TraceView, traceUnit } from "./trace.ts";
