// Lists: literals, comprehensions, accumulation, indexing, ranges by count.

import { faults } from "../diagnostics/index.ts";
import type { Accumulate, Comprehension, Expression, IndexUse, ListLiteral, RangeLiteral } from "../syntax/index.ts";
import { dimensionless } from "../units/index.ts";
import { unify } from "./agree.ts";
import { clash } from "./clash.ts";
import { bind, type Context, faulty, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { inferScatter } from "./infer-spread.ts";
import { rangeType } from "./range-type.ts";
import { say } from "./say.ts";
import { inferTruth } from "./truth.ts";
import type { Type } from "./types.ts";

export function inferList(expression: ListLiteral, context: Context, expected: Type | undefined): Core {
  const wanted = expected?.type === "list" ? expected.of : undefined;
  if (expression.items.length === 0) {
    if (wanted === undefined) return faulty(context, expression.range, faults.emptyList(expression.range, {}));
    return node(context, { op: "list", items: [], range: expression.range, type: { type: "list", of: wanted } });
  }
  const items = expression.items.map((item) =>
    item.kind === "scatter" ? inferScatter(item, context, wanted, true) : context.infer(item, context, wanted),
  );
  let of: Type = wanted?.type === "family" ? wanted : { type: "unknown" };
  for (const item of items) {
    if (of.type === "family") continue;
    const agreement = unify(context, of, item.type);
    if ("clash" in agreement) {
      report(context, clash(context, item.range, of, item.type, agreement.clash, "cannot stand in one list", {}));
      return faulty(context, expression.range);
    }
    of = agreement.type;
  }
  return node(context, { op: "list", items, range: expression.range, type: { type: "list", of } });
}

/** The source of a `for`: its element type, or a fault. */
function elements(expression: Expression, context: Context): { readonly source: Core; readonly of: Type } {
  const source = context.infer(expression, context);
  if (source.type.type === "list") return { source, of: source.type.of };
  if (source.type.type !== "unknown") {
    const advice =
      source.type.type === "quantity" && source.op === "local" ? "Give the parameter a list type, for example List Force." : undefined;
    report(context, faults.wrongType(expression.range, { place: "for ... in", wanted: "a list", given: say(source.type), advice }));
  }
  return { source, of: { type: "unknown" } };
}

export function inferComprehension(expression: Comprehension, context: Context, expected: Type | undefined): Core {
  const { source, of } = elements(expression.source, context);
  const inner = bind(context, expression.variable.name, of);
  const condition = expression.condition === undefined ? undefined : inferTruth(expression.condition, inner.context, "where");
  const body = inner.context.infer(expression.element, inner.context, expected?.type === "list" ? expected.of : undefined);
  const made = {
    op: "comprehension",
    source,
    slot: inner.slot,
    body,
    range: expression.range,
    type: { type: "list", of: body.type },
  } as const;
  return node(context, condition === undefined ? made : { ...made, condition });
}

export function inferAccumulate(expression: Accumulate, context: Context): Core {
  const start = context.infer(expression.start, context);
  const { source, of } = elements(expression.source, context);
  const state = bind(context, expression.state.name, start.type);
  const item = bind(state.context, expression.variable.name, of);
  const body = item.context.infer(expression.body, item.context);
  const agreement = unify(context, start.type, body.type);
  if ("clash" in agreement)
    return faulty(
      context,
      expression.body.range,
      clash(context, expression.body.range, start.type, body.type, agreement.clash, "cannot take turns", {}),
    );
  return node(context, {
    op: "accumulate",
    start,
    state: state.slot,
    source,
    slot: item.slot,
    body,
    range: expression.range,
    type: agreement.type,
  });
}

export function inferIndex(expression: IndexUse, context: Context): Core {
  const of = context.infer(expression.of, context);
  const index = context.infer(expression.index, context);
  if (of.type.type === "unknown" || index.type.type === "unknown") return faulty(context, expression.range);
  if (of.type.type !== "list")
    return faulty(
      context,
      expression.of.range,
      faults.wrongType(expression.of.range, { place: "The index in brackets", wanted: "a list", given: say(of.type) }),
    );
  if (index.type.type !== "quantity" || !context.solver.unify(index.type.dimension, dimensionless)) {
    return faulty(
      context,
      expression.index.range,
      faults.wrongType(expression.index.range, { place: "An index", wanted: "a whole number", given: say(index.type) }),
    );
  }
  return node(context, { op: "index", of, index, range: expression.range, type: of.type.of });
}

export function inferRange(expression: RangeLiteral, context: Context): Core {
  const from = context.infer(expression.from, context);
  const to = context.infer(expression.to, context);
  if (expression.step === undefined)
    return faulty(context, expression.range, faults.rangeWantsStep(expression.range, { text: "lo .. hi" }));
  const step = context.infer(expression.step, context);
  const type = rangeType([from, to, step], expression.range, context);
  return type === undefined
    ? faulty(context, expression.range)
    : node(context, { op: "range", from, to, step, range: expression.range, type: { type: "list", of: type } });
}
