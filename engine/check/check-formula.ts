// Formulas: parameters, steps, result, and the scheme over the dimensions left open; natives' heads by the same rules.

import { faults } from "../diagnostics/index.ts";
import { type Formula, type Parameter, printExpression } from "../syntax/index.ts";
import type { Unit } from "../units/index.ts";
import { fits } from "./agree.ts";
import { declaredDiffers, result, shownUnit, widened } from "./checked.ts";
import { bind, type Context, createContext, report } from "./context.ts";
import type { Core, CoreFormula, CoreStep } from "./core.ts";
import { variablesOf } from "./dimensions.ts";
import { infer } from "./infer.ts";
import { readUnit } from "./infer-number.ts";
import { literalUnit } from "./input.ts";
import { reportMisfit } from "./misfit.ts";
import { readType } from "./read-type.ts";
import type { Checked, Entry, Scope } from "./scope.ts";
import { inferTruth } from "./truth.ts";
import type { FormulaType, ParameterType, Type } from "./types.ts";

interface Made {
  readonly name: string;
  readonly type: Type;
  readonly unit?: Unit;
  readonly default?: Core;
}

function makeParameter(parameter: Parameter, context: Context): Made {
  const wanted = parameter.type === undefined ? undefined : readType(parameter.type, context);
  const program = parameter.default === undefined ? undefined : infer(parameter.default, context, wanted);
  if (wanted !== undefined && program !== undefined && program.type.type !== "unknown") {
    const agreement = fits(context, program.type, wanted);
    if ("clash" in agreement) reportMisfit(program, wanted, context, `The parameter ${parameter.name.text}`, agreement.clash);
  }
  const open: Type = { type: "quantity", dimension: context.solver.fresh(), kind: "any" };
  const type = wanted ?? (program === undefined ? open : widened(program.type));
  const unit =
    parameter.type?.kind === "unit"
      ? readUnit(parameter.type.unit, context, true)
      : program === undefined
        ? undefined
        : literalUnit(program);
  return {
    name: parameter.name.name,
    type,
    ...(unit === undefined ? {} : { unit }),
    ...(program === undefined ? {} : { default: program }),
  };
}

export function checkFormula(tree: Formula, scope: Scope): Checked {
  let context = createContext(scope, "formula", infer);
  const taken = new Map<string, string>();
  const made: Made[] = [];
  // Defaults see no other parameter, so all of them are checked before any is bound; slots go to parameters first.
  const outer = context;
  for (const parameter of tree.parameters) {
    const bound = bind(context, parameter.name.name, { type: "unknown" });
    context = bound.context;
  }
  for (const parameter of tree.parameters) {
    if (taken.has(parameter.name.name))
      report(context, faults.stepTwice(parameter.name.range, { name: parameter.name.text, what: "a parameter" }));
    taken.set(parameter.name.name, "a parameter");
    made.push(makeParameter(parameter, outer));
  }
  const locals = new Map(made.map((parameter, slot) => [parameter.name, { slot, type: parameter.type }]));
  context = { ...context, locals };
  const wanted = tree.type === undefined ? undefined : readType(tree.type, context);
  const steps: CoreStep[] = [];
  let shown: Unit | undefined = tree.type?.kind === "unit" ? readUnit(tree.type.unit, context, true) : undefined;
  let body: Core | undefined;
  for (const step of tree.steps) {
    const columns = {
      ...(step.columns?.note === undefined ? {} : { note: step.columns.note }),
      ...(step.columns?.reference === undefined ? {} : { reference: step.columns.reference }),
    };
    if (step.kind === "require" || step.kind === "valid") {
      steps.push({ kind: step.kind, value: inferTruth(step.value, context, step.kind), text: printExpression(step.value), ...columns });
      continue;
    }
    const stepType = step.type === undefined ? undefined : readType(step.type, context);
    const value = infer(step.value, context, step.kind === "result" ? wanted : stepType);
    if (stepType !== undefined && value.type.type !== "unknown") {
      const agreement = fits(context, value.type, stepType);
      if ("clash" in agreement) declaredDiffers(step.name?.text ?? "result", value, stepType, context, agreement.clash);
    }
    const unit = step.unit === undefined ? undefined : shownUnit(step.unit, context.solver.resolveType(value.type), context);
    const common = { value, ...columns, ...(unit === undefined ? {} : { unit }) };
    if (step.kind === "result") {
      body ??= value;
      shown ??= unit;
      steps.push({ kind: "result", ...common });
      continue;
    }
    const name = step.name?.name ?? "";
    const before = taken.get(name);
    if (before !== undefined)
      report(context, faults.stepTwice(step.name?.range ?? step.range, { name: step.name?.text ?? name, what: before }));
    taken.set(name, "a step");
    const bound = bind(context, name, stepType ?? value.type);
    context = bound.context;
    steps.push({ kind: "step", name: step.name?.text ?? name, slot: bound.slot, ...common });
  }
  if (body === undefined) {
    report(context, faults.noResult(tree.name.range, { name: tree.name.text }));
    return result(context, { program: "formula", declares: tree.name.name });
  }
  let type = context.solver.resolveType(body.type);
  if (wanted !== undefined && type.type !== "unknown") {
    const agreement = fits(context, type, wanted);
    if ("clash" in agreement) declaredDiffers(tree.name.text, body, wanted, context, agreement.clash);
    else type = context.solver.resolveType(wanted.type === "quantity" ? agreement.type : wanted);
  }
  return finished(tree, scope, context, made, steps, type, shown);
}

function finished(
  tree: Formula,
  scope: Scope,
  context: Context,
  made: readonly Made[],
  steps: readonly CoreStep[],
  type: Type,
  shown: Unit | undefined,
): Checked {
  const parameters = made.map((parameter) => ({ ...parameter, type: context.solver.resolveType(parameter.type) }));
  const scheme = schemeOf(
    parameters.map((parameter) => ({ name: parameter.name, type: parameter.type, optional: parameter.default !== undefined })),
    type,
  );
  const name = scope.fullName(tree.name.name);
  const core: CoreFormula = {
    name: tree.name.text,
    needs: [...context.shared.needs.keys()],
    parameters,
    steps,
    result: type,
    slots: context.shared.slots,
    ...(tree.columns?.note === undefined ? {} : { note: tree.columns.note }),
    ...(tree.columns?.reference === undefined ? {} : { reference: tree.columns.reference }),
  };
  const entry: Entry = { entry: "formula", name, type: scheme, core, ...(shown === undefined ? {} : { unit: shown }) };
  return result(context, { program: "formula", declares: tree.name.name, entry, type, ...(shown === undefined ? {} : { shownIn: shown }) });
}

const schemeOf = (parameters: readonly ParameterType[], type: Type): FormulaType => ({
  variables: variablesOf([...parameters.map((parameter) => parameter.type), type]),
  parameters,
  result: type,
});

/** The type of a native from its head, in the scope that knows its records. Throws on a head that is wrong: the build's fault. */
export function nativeType(
  head: { readonly parameters: readonly Parameter[]; readonly type?: Formula["type"] },
  scope: Scope,
): FormulaType {
  const context = createContext(scope, "formula", infer);
  const parameters = head.parameters.map((parameter): ParameterType => {
    const made = makeParameter(parameter, context);
    return { name: made.name, type: context.solver.resolveType(made.type), optional: made.default !== undefined };
  });
  const type: Type = head.type === undefined ? { type: "unknown" } : readType(head.type, context);
  return schemeOf(parameters, context.solver.resolveType(type));
}
