// The working of a value: symbols, numbers put in, result, and the inside of the formulas it calls.
// Every value shown was recorded while engine/run computed it; nothing is computed here.

import type { Core, CoreStep, CoreUnit, Type } from "../check/index.ts";
import type { Diagnostic } from "../diagnostics/index.ts";
import {
  type CallRecording,
  type Marked,
  type Provenance,
  type Recording,
  type RunContext,
  startRecording,
  type Value,
  walkUnit,
  wholeMark,
} from "../run/index.ts";
import type { Unit } from "../units/index.ts";
import { type Maths, type MathsSymbol, symbolOf } from "./maths.ts";
import { partsOf, type Reader, readCore, type Show, type TraceShown } from "./read-core.ts";

export interface TraceOptions {
  /** Of a definition; a check has none. */
  readonly name?: string;
  /** The unit the result is shown in. */
  readonly unit?: Unit;
  /** How many levels of calls are opened. */
  readonly open: number;
  readonly show: Show;
  /** The unit that a name of the notebook is shown in, where it has one of its own. */
  readonly unitOf?: (name: string) => Unit | undefined;
  readonly note?: string;
  readonly reference?: string;
  /** A reference column as it is shown, with the short names of works for their keys. */
  readonly cite?: (reference: string) => string;
}

/** Plain data, so that a worker can send it. */
export interface TraceView {
  readonly name?: MathsSymbol;
  readonly symbols: Maths;
  /** Absent where nothing is put in: an input, a line that only names another. */
  readonly numbers?: Maths;
  /** Absent where there is a fault. */
  readonly result?: TraceShown;
  readonly fault?: Diagnostic;
  readonly note?: string;
  readonly reference?: string;
  /** What reached the result: its weakest provenance and the limits it lies outside. */
  readonly provenance?: Provenance;
  readonly outside: readonly { readonly formula: string; readonly limit: string; readonly note?: string }[];
  readonly nominalOnly: boolean;
  /** The names it reads, in the order of their first use. */
  readonly feeds: readonly TraceFeed[];
  /** Calls of formulas that were opened, in the order they ran. */
  readonly calls: readonly TraceCall[];
}

export interface TraceFeed {
  readonly name: string;
  readonly symbol: MathsSymbol;
  readonly shown: TraceShown;
  readonly provenance?: Provenance;
}

export interface TraceCall {
  readonly formula: string;
  readonly symbols: Maths;
  readonly note?: string;
  readonly reference?: string;
  /** The reference as it is shown. */
  readonly citation?: string;
  readonly arguments: readonly { readonly name: MathsSymbol; readonly shown: TraceShown; readonly byDefault: boolean }[];
  /** As far as the call came. */
  readonly steps: readonly TraceStep[];
}

export interface TraceStep {
  readonly kind: CoreStep["kind"];
  readonly name?: MathsSymbol;
  readonly symbols: Maths;
  readonly numbers?: Maths;
  readonly result: TraceShown;
  /** Of `require` and `valid`. */
  readonly holds?: boolean;
  readonly note?: string;
  readonly reference?: string;
  readonly citation?: string;
  readonly calls: readonly TraceCall[];
}

/** Runs the unit by the walk and reads what it recorded. `needs` are those of `unit.needs`, in their order. */
export function traceUnit(unit: CoreUnit, needs: readonly Marked[], context: RunContext, options: TraceOptions): TraceView {
  const recording = startRecording(options.open);
  const outcome = walkUnit(unit, needs, context, recording);
  const unitOf = (leaf: Core): Unit | undefined => (leaf.op === "global" ? options.unitOf?.(leaf.name) : undefined);
  const reader: Reader = { show: options.show, typeOf: (type) => type, unitOf, bound: new Map() };
  const symbols = readCore(unit.body, reader);
  const mark = outcome.ok ? wholeMark(outcome.marked.marks) : undefined;
  return {
    ...(options.name === undefined ? {} : { name: symbolOf(options.name) }),
    symbols,
    ...numbersOf(unit.body, symbols, reader, recording),
    ...(outcome.ok ? { result: options.show(outcome.marked.value, unit.body.type, options.unit) } : { fault: outcome.fault }),
    ...columns(options),
    ...(mark?.provenance === undefined ? {} : { provenance: mark.provenance }),
    outside: mark?.outside ?? [],
    nominalOnly: mark?.nominalOnly ?? false,
    feeds: feedsOf(unit, needs, options),
    calls: callsIn(unit.body, recording, reader, options.cite),
  };
}

type Cite = TraceOptions["cite"];

const columns = (
  from: { readonly note?: string; readonly reference?: string },
  cite?: Cite,
): { readonly note?: string; readonly reference?: string; readonly citation?: string } => ({
  ...(from.note === undefined ? {} : { note: from.note }),
  ...(from.reference === undefined ? {} : { reference: from.reference }),
  ...(from.reference === undefined || cite === undefined ? {} : { citation: cite(from.reference) }),
});

/** The line with numbers put in, where it says more than the symbols and the result do. */
function numbersOf(body: Core, symbols: Maths, reader: Reader, recording: Recording): { readonly numbers?: Maths } {
  const numbers = readCore(body, { ...reader, values: recording.values });
  const alone = numbers.kind === "number" || numbers.kind === "text";
  return alone || JSON.stringify(numbers) === JSON.stringify(symbols) ? {} : { numbers };
}

const isFormula = (value: Value): boolean => typeof value === "object" && value !== null && "shape" in value && value.shape === "formula";

function feedsOf(unit: CoreUnit, needs: readonly Marked[], options: TraceOptions): readonly TraceFeed[] {
  const feeds = new Map<number, TraceFeed>();
  const look = (core: Core): void => {
    if (core.op === "global" && !feeds.has(core.index)) {
      const marked = needs[core.index];
      if (marked === undefined || isFormula(marked.value)) return;
      const provenance = wholeMark(marked.marks).provenance;
      const shown = options.show(marked.value, core.type, options.unitOf?.(core.name));
      feeds.set(core.index, { name: core.name, symbol: symbolOf(core.name), shown, ...(provenance === undefined ? {} : { provenance }) });
    }
    partsOf(core).forEach(look);
  };
  look(unit.body);
  return [...feeds.values()];
}

/** The opened calls below a node; those of its arguments come before it, as they ran. */
function callsIn(core: Core, recording: Recording, reader: Reader, cite: Cite): readonly TraceCall[] {
  const below = partsOf(core).flatMap((part) => callsIn(part, recording, reader, cite));
  const call = core.op === "call" ? recording.calls.get(core) : undefined;
  return call === undefined || core.op !== "call" ? below : [...below, readCall(core, call, reader, cite)];
}

function readCall(core: Extract<Core, { readonly op: "call" }>, call: CallRecording, outer: Reader, cite: Cite): TraceCall {
  const { formula, inside } = call;
  const typeOf = (type: Type): Type => (call.instance === undefined ? outer.typeOf(type) : call.instance(type));
  const units = new Map<number, Unit>();
  formula.parameters.forEach((parameter, i) => {
    const argument = core.arguments[i];
    // Shown as the formula asks, else as the caller wrote it.
    const unit =
      parameter.unit ?? (argument === undefined ? undefined : argument.op === "constant" ? argument.unit : outer.unitOf(argument));
    if (unit !== undefined) units.set(i, unit);
  });
  for (const step of formula.steps) if (step.slot !== undefined && step.unit !== undefined) units.set(step.slot, step.unit);
  const unitOf = (leaf: Core): Unit | undefined => (leaf.op === "local" ? units.get(leaf.slot) : undefined);
  const reader: Reader = { show: outer.show, typeOf, unitOf, bound: new Map() };
  return {
    formula: formula.name,
    symbols: readCore(core, outer),
    ...columns(formula, cite),
    arguments: call.arguments.map(({ marked, byDefault }, i) => {
      const parameter = formula.parameters[i] as (typeof formula.parameters)[number];
      return { name: symbolOf(parameter.name), shown: reader.show(marked.value, typeOf(parameter.type), units.get(i)), byDefault };
    }),
    steps: call.steps.map(({ step, marked }) => readStep(step, marked, inside, reader, cite)),
  };
}

function readStep(step: CoreStep, marked: Marked, inside: Recording, reader: Reader, cite: Cite): TraceStep {
  const symbols = readCore(step.value, reader);
  return {
    kind: step.kind,
    ...(step.name === undefined ? {} : { name: symbolOf(step.name) }),
    symbols,
    ...numbersOf(step.value, symbols, reader, inside),
    result: reader.show(marked.value, reader.typeOf(step.value.type), step.unit),
    ...(step.kind === "require" || step.kind === "valid" ? { holds: marked.value === true } : {}),
    ...columns(step, cite),
    calls: callsIn(step.value, inside, reader, cite),
  };
}
