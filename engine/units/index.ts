// The door of engine/units: dimensions, units, kinds, literals and the display of quantities.

export { clashAdvice, kindAdvice } from "./advice.ts";
export { currencyCodes, isCurrency } from "./currency.ts";
export {
  amount,
  current,
  dimensionFrom,
  dimensionKeyText,
  dimensionless,
  dimensionOf,
  divide,
  exponentBetween,
  exponentOf,
  length,
  luminosity,
  mass,
  multiply,
  power,
  smallExponent,
  temperature,
  time,
  withinExponentLimit,
} from "./dimension.ts";
export { preferenceFault, unitFault } from "./fault.ts";
export { kindOfPower, kindOfProduct, kindOfQuotient, kindsAgree, kindsOf } from "./kinds.ts";
export { fromSI, literal, toSI } from "./literal.ts";
export type { Dimension, ExactFactor, Kind, Rational, Unit, UnitProblem } from "./model.ts";
export { showMargin, showNumber, showUtilisation } from "./number-text.ts";
export { type ParsedUnit, parseUnit, type UnitPlace } from "./parse.ts";
export {
  chooseUnit,
  inchSet,
  metricSet,
  type PreferenceProblem,
  type Preferences,
  preferenceKeys,
  preferences,
  sampleUnit,
  siSet,
  unitChoices,
} from "./preferences.ts";
export { describeDimension, type Quantity, quantityNameOf, quantityNames, quantityOf } from "./quantities.ts";
export {
  addRational,
  divideRational,
  equalRational,
  multiplyRational,
  negateRational,
  rational,
  rationalFromDecimal,
  rationalText,
} from "./rational.ts";
export { readScale, type Scale, scaleText } from "./scale-text.ts";
export { fullNumber, type ShownQuantity, showQuantity } from "./show.ts";
export { type UnitSymbol, unitSymbols } from "./symbols.ts";
export { fitsSystem, preferencesIn, systemOf, type UnitSystem } from "./system.ts";
export { asPoint, typographic, unitOne } from "./unit.ts";
