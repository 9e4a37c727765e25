// One expression evaluated for the command line, in the scope of a file or of the library alone.

import { faults } from "../diagnostics/index.ts";
import { citation, readReference } from "../notebook/index.ts";
import { wholeMark } from "../run/index.ts";
import { parseExpression } from "../syntax/index.ts";
import { describeDimension, dimensionKeyText, fromSI, siSet, typographic } from "../units/index.ts";
import type { Evaluated, Session } from "./api.ts";
import type { EngineState } from "./engine-state.ts";
import { answer, expressionKeys, ownUnit } from "./live.ts";
import { diagnosticsOf, type OutputContext, place } from "./outputs.ts";
import { type Reporter, recordEntry } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue, unitFor } from "./show.ts";
import type { LineOutput } from "./snapshot.ts";

const DIGITS = 6;

type Options = { readonly file?: string; readonly as?: string };

/** A mistake of ours on the way is a fault of the expression. */
export function evaluateExpression(
  state: SessionState,
  reporter: Reporter,
  expression: string,
  options: Options,
): ReturnType<Session["evaluate"]> {
  try {
    return evaluateText(state, reporter, expression, options);
  } catch (problem) {
    const observed = problem instanceof Error ? problem.message : String(problem);
    const diagnostic = faults.internal({ from: 0, to: expression.length }, { observed });
    return { diagnostics: [place(diagnostic, 0, outside(state.engine), options.file ?? "")] };
  }
}

/** How values are shown and places told where no notebook is asked. */
const outside = (engine: EngineState): OutputContext => ({
  engine,
  show: { preferences: siSet, digits: DIGITS, record: (name: string) => recordEntry(engine, name) },
  references: engine.library.sources,
  place: () => undefined,
});

function evaluateText(state: SessionState, reporter: Reporter, expression: string, options: Options): ReturnType<Session["evaluate"]> {
  const { engine, files } = state;
  // A file of its own that nobody has, so that only the library is in scope.
  const file = options.file ?? " ";
  const parsed = parseExpression(expression);
  const notebook = files.notebooks.get(file);
  const context = notebook === undefined ? outside(engine) : reporter.context(notebook);
  if (parsed.diagnostics.length > 0) return { diagnostics: parsed.diagnostics.map((diagnostic) => place(diagnostic, 0, context, file)) };
  expressionKeys(engine, file, parsed.expression);
  state.update();
  const unit = options.as === undefined ? undefined : { text: options.as, range: { from: 0, to: options.as.length } };
  const result = answer(engine, file, parsed.expression, unit);
  const diagnostics = result.diagnostics.map((diagnostic) => place(diagnostic, 0, context, file));
  if (result.value === undefined) return { diagnostics: [...diagnostics, ...whyNot(state, result, file)] };
  const unitShown = result.checked.shownIn ?? ownUnit(engine, file, parsed.expression);
  const { value } = result;
  const checked = unitShown === undefined ? result.checked : { ...result.checked, shownIn: unitShown };
  const shown = showValue(value, checked.type, unitShown, context.show);
  const mark = wholeMark(result.marks);
  const evaluated: Evaluated = {
    shown,
    value,
    outside: mark.outside.map((limit) => `${limit.formula}: ${limit.limit}${limit.note === undefined ? "" : ` (${limit.note})`}`),
    references: referencesOf(state, result),
    ...(mark.provenance === undefined
      ? {}
      : { provenance: `${mark.provenance.level}${mark.provenance.from === "" ? "" : ` (${mark.provenance.from})`}` }),
    ...(typeof value === "number" ? numbers(value, checked, context.show.preferences) : {}),
  };
  return { result: evaluated, diagnostics };
}

function numbers(
  value: number,
  checked: ReturnType<typeof answer>["checked"],
  preferences: Parameters<typeof unitFor>[2],
): Partial<Evaluated> {
  const unit = unitFor(checked.type, checked.shownIn, preferences);
  const { type } = checked;
  const dimension =
    type.type === "quantity"
      ? { dimension: dimensionKeyText(type.dimension), kind: type.kind, quantity: describeDimension(type.dimension, type.kind) }
      : type.type === "point"
        ? { dimension: "temperature", kind: "temperature point" }
        : {};
  return { si: value, inUnit: fromSI(value, unit), unit: typographic(unit), ucum: unit.ucum, ...dimension };
}

/** Names that the expression waits for, each with the faults of its own statement. */
function whyNot(state: SessionState, result: ReturnType<typeof answer>, file: string): LineOutput["diagnostics"] {
  const context = outside(state.engine);
  return result.waits.flatMap((key) => {
    const statement = state.engine.byKey.get(key);
    const waits = faults.waitsFor({ from: 0, to: 0 }, { name: statement?.name ?? key });
    const own = statement === undefined ? [] : diagnosticsOf(statement, state.engine.values.worth(key), state.engine.library.sources);
    return [waits, ...own.filter((each) => each.severity === "fault")].map((diagnostic) => place(diagnostic, 0, context, file));
  });
}

/** Citations of the formulas that the expression calls directly. */
function referencesOf(state: SessionState, result: ReturnType<typeof answer>): readonly string[] {
  const out = new Set<string>();
  for (const key of result.checked.unit?.needs ?? []) {
    const reference = state.engine.byKey.get(key)?.tree.columns?.reference;
    if (reference !== undefined) out.add(citation(readReference(reference), state.engine.library.sources));
  }
  return [...out];
}
