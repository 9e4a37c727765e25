// Calls: of the language's own functions, of natives, of formulas with their dimensions made fresh.

import { nearest } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import type { Call } from "../syntax/index.ts";
import { withinExponentLimit } from "../units/index.ts";
import { fits } from "./agree.ts";
import { type Context, faulty, globalNode, need, node, openNode, report, useAs } from "./context.ts";
import type { Core, CoreFormula } from "./core.ts";
import { instantiate } from "./dimensions.ts";
import { dottedName, unknownName, whatItIs } from "./infer-name.ts";
import { readUnit } from "./infer-number.ts";
import { type IntrinsicType, intrinsicTypes } from "./intrinsic-types.ts";
import { resultKind } from "./kinds.ts";
import { mapOver } from "./map-over.ts";
import { reportMisfit } from "./misfit.ts";
import { say } from "./say.ts";
import type { FormulaType, Type } from "./types.ts";

export function inferCall(expression: Call, context: Context): Core {
  const name = dottedName(expression.callee, context);
  const found = name === undefined || context.locals.has(name) ? undefined : context.scope.find(name);
  if (found !== undefined && name !== undefined) {
    const { entry } = found;
    if (entry.entry === "formula")
      return callFormula(
        expression,
        context,
        name,
        entry.type,
        entry.core,
        globalNode(context, found, name, expression.callee.range, { type: "unknown" }),
      );
    if (entry.entry === "native") return callNative(expression, context, entry.name, entry.type);
    if (entry.entry === "faulty") {
      need(context, found.key);
      for (const argument of expression.arguments) context.infer(argument.value, context);
      return faulty(context, expression.range);
    }
    return notAFormula(expression, context, name, whatItIs(entry));
  }
  if (name !== undefined && context.locals.has(name)) return notAFormula(expression, context, name, "a value");
  const intrinsic = name !== undefined && Object.hasOwn(intrinsicTypes, name) ? intrinsicTypes[name] : undefined;
  if (intrinsic !== undefined && name !== undefined) return callIntrinsic(expression, context, name, intrinsic);
  for (const argument of expression.arguments) context.infer(argument.value, context);
  if (expression.callee.kind === "member" && name === undefined) {
    return faulty(
      context,
      expression.callee.range,
      faults.notAFormula(expression.callee.range, { name: expression.callee.field.text, what: "a field" }),
    );
  }
  return unknownName(expression.callee, {
    ...context,
    scope: { ...context.scope, names: () => [...context.scope.names(), ...Object.keys(intrinsicTypes)] },
  });
}

function notAFormula(expression: Call, context: Context, name: string, what: string): Core {
  const mend = {
    label: `Multiply: ${name} * (...)`,
    changes: [{ from: expression.callee.range.to, to: expression.callee.range.to, insert: " * " }],
  };
  return faulty(
    context,
    expression.callee.range,
    faults.notAFormula(expression.callee.range, { name, what }, { mends: what === "a value" ? [mend] : [] }),
  );
}

interface Placed {
  /** By parameter; undefined where nothing is given. */
  readonly cores: readonly (Core | undefined)[];
}

/** Puts the arguments in the order of the parameters; undefined when one does not belong (reported). */
function place(
  expression: Call,
  context: Context,
  name: string,
  parameters: readonly string[],
  most: number,
  wanted: readonly Type[],
): Placed | undefined {
  const cores: (Core | undefined)[] = [];
  let right = true;
  expression.arguments.forEach((argument, position) => {
    const named = argument.name;
    const index = named === undefined ? position : parameters.indexOf(named.name);
    const core = context.infer(argument.value, context, wanted[index]);
    if (argument.unit !== undefined) readUnit(argument.unit, context, true);
    if (named !== undefined && index < 0) {
      const near = nearest(named.name, parameters);
      const mends = near === undefined ? [] : [{ label: `Write ${near}`, changes: [{ ...named.range, insert: near }] }];
      report(context, faults.unknownArgument(named.range, { formula: name, name: named.text, nearest: near }, { mends }));
      right = false;
    } else if (named === undefined && position >= most) {
      if (right)
        report(
          context,
          faults.tooManyArguments(argument.range, {
            formula: name,
            most: most === 1 ? "1 argument" : `${most} arguments`,
            count: String(expression.arguments.length),
          }),
        );
      right = false;
    } else if (cores[index] !== undefined) {
      report(context, faults.argumentTwice(argument.range, { formula: name, name: parameters[index] ?? "" }));
      right = false;
    } else cores[index] = core;
  });
  return right ? { cores: Array.from({ length: Math.max(parameters.length, cores.length) }, (_, i) => cores[i]) } : undefined;
}

function callIntrinsic(expression: Call, context: Context, name: string, intrinsic: IntrinsicType): Core {
  const placed = place(expression, context, name, intrinsic.parameters, intrinsic.most, []);
  if (placed === undefined) return faulty(context, expression.range);
  const given = placed.cores.filter((core): core is Core => core !== undefined);
  if (given.length < intrinsic.least || placed.cores.slice(0, given.length).includes(undefined)) {
    const missing = intrinsic.parameters.slice(0, intrinsic.least).filter((_, i) => placed.cores[i] === undefined);
    return faulty(context, expression.range, faults.missingArgument(expression.range, { formula: name, missing: missing.join(", ") }));
  }
  if (given.some((core) => core.type.type === "unknown")) return faulty(context, expression.range);
  const stays = given.map((_, i) => intrinsic.lists(i, given));
  return mapOver(
    context,
    given,
    expression.range,
    (values) => {
      if (values.some((value) => value.type.type === "unknown")) return faulty(context, expression.range);
      const result = intrinsic.type(values, { name, context });
      if ("code" in result) return faulty(context, expression.range, result);
      if (result.type === "quantity" && !withinExponentLimit(result.dimension))
        return faulty(context, expression.range, faults.exponentTooLarge(expression.range, { base: say(values[0]?.type ?? result) }));
      const made = { op: "native", native: name, name, arguments: values, range: expression.range, type: result } as const;
      return result.type === "figure" ? openNode(context, made) : node(context, made);
    },
    stays,
  );
}

/** The arguments of a formula or native checked against its parameters; `make` builds the call on scalars. */
function callTyped(
  expression: Call,
  context: Context,
  name: string,
  type: FormulaType,
  make: (values: readonly (Core | undefined)[], instance: ReturnType<typeof instantiate>) => Core,
): Core {
  const instance = instantiate(type, context.solver);
  const { parameters } = instance;
  const names = type.parameters.map((parameter) => parameter.name);
  const placed = place(expression, context, name, names, names.length, parameters);
  if (placed === undefined) return faulty(context, expression.range);
  const missing = type.parameters
    .filter((parameter, i) => !parameter.optional && placed.cores[i] === undefined)
    .map((parameter) => parameter.name);
  if (missing.length > 0)
    return faulty(context, expression.range, faults.missingArgument(expression.range, { formula: name, missing: missing.join(", ") }));
  const indexes = placed.cores.flatMap((core, i) => (core === undefined ? [] : [i]));
  const given = indexes.map((i) => placed.cores[i] as Core);
  if (given.some((core) => core.type.type === "unknown")) return faulty(context, expression.range);
  const stays = indexes.map((i) => parameters[i]?.type === "list" || parameters[i]?.type === "maybe");
  return mapOver(
    context,
    given,
    expression.range,
    (values) => {
      const ordered: (Core | undefined)[] = names.map(() => undefined);
      for (const [at, i] of indexes.entries()) {
        const value = values[at];
        const wanted = parameters[i];
        if (value === undefined || wanted === undefined || value.type.type === "unknown") return faulty(context, expression.range);
        const agreement = fits(context, value.type, wanted);
        if ("clash" in agreement) {
          misfit(value, wanted, context, name, names[i] ?? "", agreement.clash);
          return faulty(context, expression.range);
        }
        useAs(context, value, wanted);
        ordered[i] = value;
      }
      return make(ordered, instance);
    },
    stays,
  );
}

function misfit(
  value: Core,
  wanted: Type,
  context: Context,
  formula: string,
  parameter: string,
  kind: "dimension" | "kind" | "type",
): void {
  const [given, aim] = [context.solver.resolveType(value.type), context.solver.resolveType(wanted)];
  if (given.type === "quantity" && aim.type === "quantity") {
    const bare = given.dimension.exponents.length === 0;
    const advice = bare ? "A bare number has no unit: write the unit it is meant in." : undefined;
    report(context, faults.wrongArgument(value.range, { parameter, formula, wanted: say(aim), given: say(given), advice }));
    return;
  }
  reportMisfit(value, wanted, context, `${parameter} of ${formula}`, kind);
}

function callNative(expression: Call, context: Context, native: string, type: FormulaType): Core {
  return callTyped(expression, context, native, type, (values, { result }) => {
    const given = values.flatMap((value) => (value === undefined ? [] : [value]));
    return node(context, {
      op: "native",
      native,
      name: native,
      arguments: given,
      range: expression.range,
      type: context.solver.resolveType(result),
    });
  });
}

function callFormula(expression: Call, context: Context, name: string, type: FormulaType, core: CoreFormula, formula: Core): Core {
  return callTyped(expression, context, name, type, (values, { parameters, result, meanings }) => {
    const resolved = context.solver.resolveType(result);
    const kinds = parameters.map((parameter, i) => context.solver.resolveType(values[i]?.type ?? parameter));
    const kind = resultKind(core, kinds, context);
    if (kind !== undefined && "clash" in kind) {
      return faulty(
        context,
        expression.range,
        faults.kindsDiffer(expression.range, { left: say(kind.clash[0]), right: say(kind.clash[1]), verb: `meet inside ${name}` }),
      );
    }
    const out: Type = resolved.type === "quantity" && kind !== undefined ? { ...resolved, kind: kind.kind } : resolved;
    if (out.type === "quantity" && !withinExponentLimit(out.dimension)) {
      const base = values.find((value) => value !== undefined)?.type ?? out;
      return faulty(context, expression.range, faults.exponentTooLarge(expression.range, { base: say(base) }));
    }
    const made = { op: "call", formula, name, arguments: values, range: expression.range, type: out } as const;
    if (meanings.length === 0) return node(context, made);
    return openNode(context, { ...made, dimensions: meanings.map((meaning, i) => [type.variables[i] ?? "", meaning] as const) });
  });
}
