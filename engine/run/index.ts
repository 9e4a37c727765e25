// The door of engine/run: values, natives, the evaluators, marks.

export { defaultLimits, type Limits, type Outcome, type RunContext } from "./context.ts";
export { equalNumbers, equalValues, holds, relativeTolerance, sameValue } from "./equality.ts";
export { figureAxis } from "./figure-functions.ts";
export { prepareFormula } from "./formula.ts";
export { type Intrinsic, intrinsics } from "./intrinsics.ts";
export {
  inputMarks,
  joinMark,
  type Mark,
  type Marked,
  type Marks,
  markFormula,
  type OutsideLimit,
  ownMark,
  type Provenance,
  type ProvenanceLevel,
  provenanceLevels,
  provenanceMark,
  readProvenance,
  sameMarks,
  unmarked,
  wholeMark,
} from "./marks.ts";
export { type Given, type Native, type Natives, Refusal } from "./native.ts";
export { formulaNeedsValues, needsValues } from "./needs-values.ts";
export { type CallRecording, type Recording, startRecording } from "./recording.ts";
export { prepareScalar, type ScalarChain, type ScalarProgram } from "./scalar.ts";
export { markUnit, prepareUnit, type WalkOutcome, walkUnit } from "./unit.ts";
export type { FigureValue, FormulaValue, RecordValue, TableValue, Value } from "./value.ts";
