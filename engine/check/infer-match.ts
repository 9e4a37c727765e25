// Match: every member of a family, or none and some, each once.

import { faults } from "../diagnostics/index.ts";
import type { MatchArm, MatchUse } from "../syntax/index.ts";
import { joinBranches } from "./branches.ts";
import { bind, type Context, faulty, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { dottedName } from "./infer-name.ts";
import { say, shortName } from "./say.ts";
import type { Type } from "./types.ts";

export function inferMatch(expression: MatchUse, context: Context, expected: Type | undefined): Core {
  const of = context.infer(expression.of, context);
  if (of.type.type === "maybe") return matchMaybe(expression, of, of.type.of, context, expected);
  if (of.type.type === "family") return matchFamily(expression, of, of.type.name, context, expected);
  if (of.type.type === "unknown") return faulty(context, expression.range);
  return faulty(
    context,
    expression.of.range,
    faults.wrongType(expression.of.range, {
      place: "match",
      wanted: "a member of a family, or a value that may be none",
      given: say(of.type),
    }),
  );
}

function armBody(arm: MatchArm, type: Type, context: Context, expected: Type | undefined): { readonly slot: number; readonly body: Core } {
  const inner = bind(context, arm.variable?.name ?? " ", type);
  return { slot: inner.slot, body: inner.context.infer(arm.body, inner.context, expected) };
}

function matchMaybe(expression: MatchUse, of: Core, inside: Type, context: Context, expected: Type | undefined): Core {
  const none = expression.arms.find((arm) => arm.member.kind === "none");
  const some = expression.arms.find((arm) => arm.member.kind === "some");
  for (const arm of expression.arms) {
    if (arm === none || arm === some) continue;
    const name = arm.member.kind === "record" ? (dottedName(arm.member.type, context) ?? "this") : arm.member.kind;
    report(context, faults.armUnknown(arm.range, { name, members: "none and some" }));
  }
  if (none === undefined || some === undefined) {
    const missing = [none === undefined ? "none" : "", some === undefined ? "some" : ""].filter((word) => word !== "").join(" and ");
    return faulty(context, expression.range, faults.armMissing(expression.range, { missing }));
  }
  const noneBody = context.infer(none.body, context, expected);
  const { slot, body } = armBody(some, inside, context, expected);
  const type = joinBranches([noneBody, body], context, expected);
  return node(context, { op: "matchMaybe", of, none: noneBody, slot, some: body, range: expression.range, type });
}

function matchFamily(expression: MatchUse, of: Core, family: string, context: Context, expected: Type | undefined): Core {
  const entry = context.scope.byFullName(family);
  const members = entry?.entry === "family" ? entry.members : [];
  const arms: { readonly record: string; readonly slot: number; readonly body: Core }[] = [];
  for (const arm of expression.arms) {
    const name = arm.member.kind === "record" ? dottedName(arm.member.type, context) : arm.member.kind;
    const found = name === undefined ? undefined : context.scope.find(name);
    const full = found?.entry.entry === "record" ? found.entry.name : undefined;
    if (full === undefined || !members.includes(full) || arms.some((other) => other.record === full)) {
      report(context, faults.armUnknown(arm.range, { name: name ?? "this", members: members.map(shortName).join(", ") }));
      continue;
    }
    const variables = found?.entry.entry === "record" ? found.entry.variables : [];
    const type: Type = { type: "record", name: full, arguments: variables.map(() => context.solver.fresh()) };
    arms.push({ record: full, ...armBody(arm, type, context, expected) });
  }
  const missing = members.filter((member) => !arms.some((arm) => arm.record === member));
  if (missing.length > 0)
    return faulty(context, expression.range, faults.armMissing(expression.range, { missing: missing.map(shortName).join(", ") }));
  const type = joinBranches(
    arms.map((arm) => arm.body),
    context,
    expected,
  );
  return node(context, { op: "match", of, arms, range: expression.range, type });
}
