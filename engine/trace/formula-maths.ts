// A formula as it stands in the library: its steps as maths with names, nothing put in.

import type { CoreFormula, CoreStep } from "../check/index.ts";
import { type Maths, type MathsSymbol, symbolOf } from "./maths.ts";
import { readCore, type Show } from "./read-core.ts";

export interface FormulaStep {
  readonly kind: CoreStep["kind"];
  readonly name?: MathsSymbol;
  readonly maths: Maths;
  readonly note?: string;
  readonly reference?: string;
}

/** `show` is asked for the constants that the formula holds. */
export function formulaSteps(formula: CoreFormula, show: Show): readonly FormulaStep[] {
  return formula.steps.map((step) => ({
    kind: step.kind,
    ...(step.name === undefined ? {} : { name: symbolOf(step.name) }),
    maths: readCore(step.value, { show, typeOf: (type) => type, unitOf: () => undefined, bound: new Map() }),
    ...(step.note === undefined ? {} : { note: step.note }),
    ...(step.reference === undefined ? {} : { reference: step.reference }),
  }));
}
