// Tolerance and scatter, studies and solutions: typed here, evaluated elsewhere.

import { faults } from "../diagnostics/index.ts";
import type { Expression, Scatter, Solve, Study } from "../syntax/index.ts";
import { dimensionOf } from "../units/index.ts";
import { fits, unify } from "./agree.ts";
import { clash } from "./clash.ts";
import { bind, type Context, faulty, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { rangeType } from "./range-type.ts";
import { readType } from "./read-type.ts";
import { say } from "./say.ts";
import { inferTruth } from "./truth.ts";
import type { Type } from "./types.ts";

/** An expression that may carry a spread at its end: of a definition, a field, a list item. */
export function inferSpread(expression: Expression, context: Context, expected?: Type): Core {
  return expression.kind === "scatter" ? inferScatter(expression, context, expected, true) : context.infer(expression, context, expected);
}

export function inferScatter(expression: Scatter, context: Context, expected: Type | undefined, allowed: boolean): Core {
  if (!allowed) report(context, faults.scatterMisplaced(expression.range, {}));
  const nominal = context.infer(expression.nominal, context, expected);
  const { spread } = expression;
  const parts = spread.kind === "unequal" ? [spread.plus, spread.minus] : spread.kind === "share" ? [spread.share, spread.of] : [spread.by];
  const cores = parts.map((part) => context.infer(part, context));
  if (nominal.type.type === "unknown") return nominal;
  if (nominal.type.type !== "quantity" && nominal.type.type !== "point") {
    return faulty(
      context,
      expression.range,
      faults.scatterDoesNotFit(expression.range, { given: say(nominal.type), wanted: "given to a quantity" }),
    );
  }
  const difference: Type =
    nominal.type.type === "point" ? { type: "quantity", dimension: dimensionOf("temperature"), kind: "any" } : nominal.type;
  cores.forEach((core, i) => {
    if (spread.kind === "share" && i === 0) return;
    if ("type" in unify(context, difference, core.type)) return;
    report(
      context,
      faults.scatterDoesNotFit(core.range, { given: say(nominal.type), wanted: `a ${say(difference)}, not ${say(core.type)}` }),
    );
  });
  const count = spread.kind === "deviation" && spread.count !== undefined ? Number(spread.count.digits) : undefined;
  const made = { op: "scatter", nominal, spread: cores, form: spread.kind, range: expression.range, type: nominal.type } as const;
  return node(context, count === undefined ? made : { ...made, count });
}

/** `allowed`: it is the right side of a definition. A study is a table: a column for each axis, then one for each subject. */
export function inferStudy(expression: Study, context: Context, allowed: boolean): Core {
  if (!allowed) return faulty(context, expression.range, faults.studyMisplaced(expression.range, { what: "A study" }));
  const columns: { readonly name: string; readonly type: Type }[] = [];
  const parts: Core[] = [];
  for (const axis of expression.axes) {
    const values = context.infer(axis.values, context);
    const input = varied(axis.variable.name, axis.variable, context);
    parts.push(values);
    if (input === undefined || values.type.type !== "list") continue;
    const agreement = fits(context, values.type.of, input);
    if ("clash" in agreement)
      report(
        context,
        clash(
          context,
          axis.values.range,
          input,
          values.type.of,
          agreement.clash,
          "do not fit: the values are of another kind than the input",
          {},
        ),
      );
    columns.push({ name: axis.variable.name, type: input });
  }
  for (const subject of expression.subjects) {
    const core = context.infer(subject, context);
    parts.push(core);
    columns.push({ name: subject.kind === "name" ? subject.name : `subject_${columns.length}`, type: core.type });
  }
  return node(context, { op: "study", parts, range: expression.range, type: { type: "table", columns } });
}

/** The type of an input that a study or a solution varies. */
function varied(name: string, at: { readonly range: Scatter["range"]; readonly text: string }, context: Context): Type | undefined {
  const found = context.scope.find(name);
  if (found?.entry.entry === "faulty") return undefined;
  if (found?.entry.entry === "value" && found.entry.input) return found.entry.type;
  report(context, faults.studyWantsInput(at.range, { name: at.text }));
  return undefined;
}

export function inferSolve(expression: Solve, context: Context, allowed: boolean): Core {
  const inFormula = context.closed !== "open";
  if (!allowed && !inFormula) return faulty(context, expression.range, faults.studyMisplaced(expression.range, { what: "A solution" }));
  const from = context.infer(expression.from, context);
  const to = context.infer(expression.to, context);
  const bounds = rangeType([from, to], expression.range, context);
  if (inFormula) {
    const wanted = expression.type === undefined ? bounds : readType(expression.type, context);
    const inner = bind(context, expression.variable.name, wanted ?? { type: "unknown" });
    const condition = inferTruth(expression.condition, inner.context, "where");
    return node(context, { op: "solve", parts: [from, to, condition], range: expression.range, type: wanted ?? { type: "unknown" } });
  }
  const input = varied(expression.variable.name, expression.variable, context);
  const condition = inferTruth(expression.condition, context, "where");
  if (input !== undefined && bounds !== undefined) {
    const agreement = fits(context, bounds, input);
    if ("clash" in agreement)
      report(
        context,
        clash(context, expression.range, input, bounds, agreement.clash, "do not fit: the bounds are of another kind than the input", {}),
      );
  }
  return node(context, { op: "solve", parts: [from, to, condition], range: expression.range, type: input ?? { type: "unknown" } });
}
