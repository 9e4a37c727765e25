// Number literals: digits and a unit make an SI number once, from exact factors.

import { faults } from "../diagnostics/index.ts";
import type { NumberLiteral, UnitText } from "../syntax/index.ts";
import { asPoint, dimensionless, literal, parseUnit, type Unit, unitFault } from "../units/index.ts";
import { type Context, constant, faulty, report } from "./context.ts";
import type { Core } from "./core.ts";
import type { Type } from "./types.ts";

export const plainNumber: Type = { type: "quantity", dimension: dimensionless, kind: "number" };

/** A unit as written, or a reported fault at its place. */
export function readUnit(unit: UnitText, context: Context, leadingOne: boolean): Unit | undefined {
  const read = parseUnit(unit.text, { leadingOne });
  if ("unit" in read) return read.unit;
  report(context, unitFault(read.problem, unit.range, unit.text));
  return undefined;
}

export const typeOfUnit = (unit: Unit): Type =>
  unit.point ? { type: "point" } : { type: "quantity", dimension: unit.dimension, kind: unit.kind };

/** `sign` is "-" when a minus stands directly before a temperature point, to which it belongs. */
export function inferNumber(expression: NumberLiteral, context: Context, sign: "" | "-" = ""): Core {
  const digits = sign + expression.digits;
  if (expression.unit === undefined) return constant(expression.range, plainNumber, literal(digits, undefined));
  const written = readUnit(expression.unit, context, false);
  if (written === undefined) return faulty(context, expression.range);
  refuseAmbiguous(expression, context);
  const unit = expression.absolute ? asPoint(written) : written;
  if (unit === undefined) return faulty(context, expression.range, faults.absNotTemperature(expression.range, { unit: written.text }));
  return constant(expression.range, typeOfUnit(unit), literal(digits, unit), unit);
}

/** The symbols of a literal that could also be read as a product or quotient with a name: `3 d`, `2 N/A`. */
export function exposedSymbols(unitText: string): readonly string[] {
  const symbol = /(?:^|\/\s*)([\p{L}_][\p{L}\p{N}_]*)$/u.exec(unitText)?.[1];
  return symbol !== undefined && "unit" in parseUnit(symbol) ? [symbol] : [];
}

function refuseAmbiguous(expression: NumberLiteral, context: Context): void {
  const text = expression.unit?.text ?? "";
  for (const symbol of exposedSymbols(text)) {
    if (!context.scope.ambiguous(symbol)) continue;
    const divided = text.includes("/");
    const spelled = divided
      ? `${expression.digits} ${text.slice(0, text.lastIndexOf("/"))} / ${symbol}`
      : `${expression.digits} * ${symbol}`;
    report(
      context,
      faults.unitOrName(
        expression.range,
        { text: `${expression.digits} ${text}`, name: symbol, product: spelled },
        { mends: [{ label: `Write ${spelled}`, changes: [{ ...expression.range, insert: spelled }] }] },
      ),
    );
  }
}
