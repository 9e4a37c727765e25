// A fault on its way up through the walk, and how it is reported where formulas lie between it and the reader.

import type { Range } from "../base/index.ts";
import type { CoreFormula } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";

/** Thrown by the walk. No Error: a stack is of no use and dear. */
export class RunFault {
  readonly diagnostic: Diagnostic;
  /** Whether the message already names the formula it arose in. */
  readonly inFormula: boolean;

  constructor(diagnostic: Diagnostic, inFormula = false) {
    this.diagnostic = diagnostic;
    this.inFormula = inFormula;
  }
}

/**
 * A fault inside a formula as its caller sees it: at the call, with the formula and step that it arose in named once
 * (the innermost), and the place inside kept. Mends are dropped: they count in another text.
 */
export function atCall(fault: RunFault, call: Range, formula: CoreFormula, step: string | undefined): RunFault {
  const inner = fault.diagnostic;
  const here = { message: faults.hereInFormula(call, { formula: formula.name }).message, range: inner.range, statement: formula.name };
  const slots = { formula: formula.name, message: inner.message };
  const message = fault.inFormula
    ? inner.message
    : (step === undefined ? faults.inFormula(call, slots) : faults.inFormulaStep(call, { ...slots, step })).message;
  return new RunFault({ ...inner, range: call, message, mends: [], related: [...inner.related, here] }, true);
}
