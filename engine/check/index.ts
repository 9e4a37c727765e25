// The door of engine/check: types, the typed program, the checking of one statement.

export { checkExpression } from "./check-expression.ts";
export { nativeType } from "./check-formula.ts";
export { checkStatement } from "./check-statement.ts";
export type { Core, CoreFormula, CoreStep, CoreUnit } from "./core.ts";
export { exposedSymbols, typeOfUnit } from "./infer-number.ts";
export { isInput } from "./input.ts";
export { intrinsicTypes } from "./intrinsic-types.ts";
export { type LedgerPlaces, ledgerFields, type ModeState, modeStates } from "./ledger.ts";
export { say, shortName, typeText } from "./say.ts";
export type { Checked, CheckedWithin, Entry, FieldType, Found, Scope } from "./scope.ts";
export type { FormulaType, ParameterType, Type } from "./types.ts";
