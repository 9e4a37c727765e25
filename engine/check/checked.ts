// What every kind of statement needs at its end: the result put together, declared types and shown units held against the value.

import { faults } from "../diagnostics/index.ts";
import type { Definition } from "../syntax/index.ts";
import { clashAdvice, temperature, type Unit } from "../units/index.ts";
import { unify } from "./agree.ts";
import { sentence } from "./clash.ts";
import { type Context, finish, report } from "./context.ts";
import type { Core, CoreUnit } from "./core.ts";
import { readUnit, typeOfUnit } from "./infer-number.ts";
import { reportMisfit } from "./misfit.ts";
import { say } from "./say.ts";
import type { Checked } from "./scope.ts";
import type { Type } from "./types.ts";

/** Puts together what checking gave; a fault makes the entry faulty and takes the program away. */
export function result(
  context: Context,
  made: Partial<Omit<Checked, "diagnostics">> & { readonly program: Checked["program"]; readonly declares?: string },
): Checked {
  finish(context);
  const { diagnostics } = context.shared;
  const { declares, ...rest } = made;
  const base: Checked = {
    type: { type: "unknown" },
    input: false,
    ratio: false,
    strict: false,
    kindUses: context.shared.kindUses,
    ...rest,
    diagnostics,
  };
  if (!diagnostics.some((diagnostic) => diagnostic.severity === "fault")) return base;
  const { unit: _unit, entry: _entry, ...without } = base;
  return declares === undefined ? without : { ...without, entry: { entry: "faulty", name: context.scope.fullName(declares) } };
}

export function unitOf(context: Context, body: Core): CoreUnit {
  return { needs: [...context.shared.needs.keys()], slots: context.shared.slots, body };
}

export function declaredDiffers(name: string, body: Core, wanted: Type, context: Context, kind: "dimension" | "kind" | "type"): void {
  const given = context.solver.resolveType(body.type);
  const aim = context.solver.resolveType(wanted);
  if (given.type === "quantity" && aim.type === "quantity")
    report(context, faults.declaredResultDiffers(body.range, { name, wanted: say(aim), given: say(given) }));
  else reportMisfit({ ...body, type: given } as Core, aim, context, `The type of ${name}`, kind);
}

const isTemperature = (type: Type): boolean => type.type === "point" || (type.type === "quantity" && type.dimension === temperature);

/** The unit after `as`, checked against the value's type (of its items, for a list). */
export function shownUnit(written: NonNullable<Definition["unit"]>, type: Type, context: Context): Unit | undefined {
  const unit = readUnit(written, context, true);
  if (unit === undefined) return undefined;
  const inner = type.type === "list" || type.type === "maybe" ? type.of : type;
  if (inner.type === "unknown") return unit;
  const aim = typeOfUnit(unit);
  const agreement = unify(context, inner, aim);
  if ("type" in agreement) return unit;
  const given = context.solver.resolveType(inner);
  if (isTemperature(given) && isTemperature(aim)) {
    const [is, wants] = aim.type === "point" ? ["difference", "point"] : ["point", "difference"];
    const advice = `Show a point in degC, degF or K abs, a difference in K, degC_diff or degF_diff.`;
    report(context, faults.pointAndDifference(written.range, { given: "The value", is, wants, place: `the unit ${unit.text}`, advice }));
    return undefined;
  }
  const turns = agreement.clash === "kind" ? "Divide by 1 rev (or 1 rad) to leave the angle." : undefined;
  const clash = given.type === "quantity" && aim.type === "quantity" ? clashAdvice(given.dimension, aim.dimension) : undefined;
  report(
    context,
    faults.unitDoesNotFit(written.range, { given: say(given), unit: unit.text, wanted: say(aim), advice: turns ?? sentence(clash) }),
  );
  return undefined;
}

/** The type a default gives its field or parameter: a text literal does not narrow it to that text. */
export const widened = (type: Type): Type => (type.type === "text" ? { type: "text" } : type);
