// Which unit a value is shown in: what the notebook prefers, else what follows from it, else SI.

import { nearest } from "../base/index.ts";
import { type Dimension, dimensionless, divide, exponentOf, power } from "./dimension.ts";
import { factorOne, factorZero } from "./exact.ts";
import { kindsAgree, kindsOf } from "./kinds.ts";
import type { Kind, Rational, Unit, UnitProblem } from "./model.ts";
import { exponentLimit, parseUnit } from "./parse.ts";
import { forcesIn, known, type Quantity, quantityNames, quantityOf } from "./quantities.ts";
import { rationalText } from "./rational.ts";
import { asPoint, unitOne } from "./unit.ts";

/** The units that a notebook, or the metric or inch view, prefers. Made by `preferences`; never changed. */
export interface Preferences {
  readonly units: readonly { readonly quantity: Quantity; readonly unit: Unit }[];
}

/** An entry of the `units` map that could not be taken. */
export type PreferenceProblem = { readonly key: string; readonly text: string } & (
  | { readonly reason: "quantity"; readonly nearest?: string }
  | { readonly reason: "unit"; readonly problem: UnitProblem }
  | { readonly reason: "dimension"; readonly unit: Unit; readonly quantity: Quantity }
);

const folded = (name: string): string => name.toLowerCase().replace(/[\s_-]/g, "");

const quantitiesByKey = new Map<string, Quantity>();
for (const quantity of quantityNames.values()) quantitiesByKey.set(folded(quantity.name), quantity);
for (const [word, name] of [
  ["moment", "Torque"],
  ["speed", "Velocity"],
  ["expansion", "LinearExpansionCoefficient"],
  ["viscosity", "DynamicViscosity"],
  ["current", "ElectricCurrent"],
] as const) {
  const quantity = quantityNames.get(name);
  if (quantity !== undefined) quantitiesByKey.set(word, quantity);
}

/** The words that a `units` map may hold, for completion and near misses. */
export const preferenceKeys = (): readonly string[] =>
  [...quantityNames.keys()].map((name) => name.replace(/(?<=[a-z])[A-Z]/g, (capital) => `_${capital}`).toLowerCase());

/** Reads the front matter's `units` map. Where two quantities share a dimension stress goes before pressure, else the first named counts. */
export function preferences(map: Readonly<Record<string, string>>): {
  readonly preferences: Preferences;
  readonly problems: readonly PreferenceProblem[];
} {
  const units: { readonly quantity: Quantity; readonly unit: Unit }[] = [];
  const problems: PreferenceProblem[] = [];
  for (const [key, text] of Object.entries(map)) {
    const quantity = quantitiesByKey.get(folded(key));
    if (quantity === undefined) {
      const near = nearest(key, preferenceKeys());
      problems.push({ key, text, reason: "quantity", ...(near === undefined ? {} : { nearest: near }) });
      continue;
    }
    const read = parseUnit(text, { leadingOne: true });
    if ("problem" in read) {
      problems.push({ key, text, reason: "unit", problem: read.problem });
      continue;
    }
    const unit = quantity.point ? asPoint(read.unit) : read.unit;
    if (
      unit === undefined ||
      unit.point !== quantity.point ||
      unit.dimension !== quantity.dimension ||
      !kindsAgree(unit.kind, quantity.kind)
    ) {
      problems.push({ key, text, reason: "dimension", unit: read.unit, quantity });
      continue;
    }
    if (quantity.name === "Stress") units.unshift({ quantity, unit });
    else units.push({ quantity, unit });
  }
  return { preferences: { units }, problems };
}

const set = (map: Readonly<Record<string, string>>): Preferences => preferences(map).preferences;

/** No preference at all: SI. */
export const siSet: Preferences = set({});

/** The metric view of this trade. */
export const metricSet: Preferences = set({
  length: "mm",
  force: "N",
  stress: "MPa",
  torque: "N·m",
  mass: "kg",
  time: "s",
  temperature: "degC",
  angle: "deg",
  energy: "J",
  power: "W",
  stiffness: "N/mm",
  rotational_speed: "rpm",
  frequency: "Hz",
  density: "g/cm^3",
  fracture_toughness: "MPa·m^(1/2)",
  acceleration: "m/s^2",
});

/** The inch view of this trade. */
export const inchSet: Preferences = set({
  length: "in",
  force: "lbf",
  stress: "psi",
  torque: "in·lbf",
  mass: "lb",
  time: "s",
  temperature: "degF",
  angle: "deg",
  energy: "ft·lbf",
  power: "hp",
  stiffness: "lbf/in",
  rotational_speed: "rpm",
  frequency: "Hz",
  density: "lb/in^3",
  fracture_toughness: "ksi·in^(1/2)",
  acceleration: "ft/s^2",
  linear_expansion_coefficient: "degF_diff^-1",
  torsional_stiffness: "in·lbf/rad",
});

const chosen = new WeakMap<Preferences, Map<string, Unit>>();

/**
 * The unit in which a value of this dimension and kind is shown. A product of force and length that is no energy is a moment:
 * the torque preference, else N·m. Only units of the preferences, or SI; never a fractional power of a derived unit.
 */
export function chooseUnit(dimension: Dimension, kind: Kind, preferred: Preferences, point: boolean): Unit {
  const key = `${dimension.key}|${kind}|${point}`;
  let cache = chosen.get(preferred);
  if (cache === undefined) {
    cache = new Map();
    chosen.set(preferred, cache);
  }
  let unit = cache.get(key);
  if (unit === undefined) {
    unit = choose(dimension, kind, preferred, point);
    cache.set(key, unit);
  }
  return unit;
}

function choose(dimension: Dimension, kind: Kind, preferred: Preferences, point: boolean): Unit {
  if (point) return preferred.units.find(({ quantity }) => quantity.point)?.unit ?? known("degC");
  const rateOfNoKind = dimension === perTime && kind === "any";
  const plain: Kind = kind === "any" ? (kindsOf(dimension)[0] ?? "any") : kind;
  const stated = preferred.units.find(({ quantity }) => !quantity.point && quantity.dimension === dimension && quantity.kind === plain);
  if (stated !== undefined && !rateOfNoKind) return stated.unit;
  if (dimension === dimensionless) return plain === "angle" ? known("rad") : unitOne;
  if (dimension === temperatureDifference) return differenceOf(preferred);
  if (plain === "torque") return moment(preferred);
  if (rateOfNoKind) return known("s^-1");
  const named = quantityOf(dimension, kind);
  if (named !== undefined && named.kind !== "any") return named.unit;
  if (named?.name === "FractureToughness") return known(`${symbolFor("Stress", preferred) ?? "Pa"}·m^(1/2)`);
  return composed(dimension, preferred, named !== undefined) ?? named?.unit ?? unitOne;
}

const perTime = known("s^-1").dimension;
const temperatureDifference = known("K").dimension;

/** Differences follow the scale of the points. */
function differenceOf(preferred: Preferences): Unit {
  const scale = preferred.units.find(({ quantity }) => quantity.point)?.unit.text;
  if (scale === "°F") return known("degF_diff");
  return scale === "degR abs" ? known("degR") : known("K");
}

/** N·m unless the forces are inch units: then force times length. */
function moment(preferred: Preferences): Unit {
  const force = statedUnit("Force", preferred)?.text ?? "N";
  if (!/lbf|kip|ozf|tonf|pdl/.test(force)) return known("N·m");
  const length = statedUnit("Length", preferred)?.text;
  return known(`${force}·${length === "ft" || length === "in" ? length : "in"}`);
}

const statedUnit = (name: string, preferred: Preferences): Unit | undefined =>
  preferred.units.find(({ quantity }) => quantity.name === name)?.unit;

/** A unit of one symbol can be raised to a power; what is stated otherwise is not used in compositions. */
const symbolFor = (name: string, preferred: Preferences): string | undefined => {
  const text = statedUnit(name, preferred)?.text;
  return text !== undefined && /^[^·/^ ]+$/.test(text) ? text : undefined;
};

/** Well-known names of what compositions come to. */
const shorter: Readonly<Record<string, string>> = {
  "N/mm^2": "MPa",
  "N/m^2": "Pa",
  "lbf/in^2": "psi",
  "kN/mm^2": "GPa",
  "kip/in^2": "ksi",
};

const siSymbols: Readonly<Record<string, string>> = {
  mass: "kg",
  length: "m",
  time: "s",
  temperature: "K",
  current: "A",
  amount: "mol",
  luminosity: "cd",
};

/**
 * Force, mass, length and time units put together. A dimension with a name (density, power) is only composed of force, length
 * and time, all of them stated but time: other compositions (kg/mm³) are not what the trade writes.
 */
function composed(dimension: Dimension, preferred: Preferences, named: boolean): Unit | undefined {
  const mostForces = forcesIn(dimension);
  const forces = mostForces?.d === 1 ? mostForces : undefined;
  const rest = forces === undefined ? dimension : divide(dimension, power(forceDimension, forces));
  const parts: (readonly [symbol: string, exponent: Rational])[] = [];
  let missing = false;
  const put = (symbol: string | undefined, si: string, exponent: Rational): void => {
    if (exponent.n === 0) return;
    if (symbol === undefined) missing = true;
    parts.push([symbol ?? si, exponent]);
  };
  if (forces !== undefined) put(symbolFor("Force", preferred), "N", forces);
  put(symbolFor("Mass", preferred), "kg", exponentOf(rest, "mass"));
  put(symbolFor("Length", preferred), "m", exponentOf(rest, "length"));
  put(symbolFor("Time", preferred) ?? "s", "s", exponentOf(rest, "time"));
  const others = rest.exponents.filter(([base]) => !["mass", "length", "time"].includes(base));
  for (const [base, exponent] of others) {
    // A variable of inference has no unit; what is known of the dimension is shown.
    if (!base.startsWith("?")) parts.push([siSymbols[base] ?? base, exponent]);
  }
  const withForceAndTime = forces !== undefined && exponentOf(rest, "time").n !== 0;
  if (named && (missing || others.length > 0 || exponentOf(rest, "mass").n !== 0 || withForceAndTime)) return undefined;
  if (parts.length === 0) return undefined;
  if (parts.some(([, { n, d }]) => Math.abs(n) > exponentLimit || d > exponentLimit)) return powersOfSI(dimension);
  return known(shortened(joinParts(parts)));
}

/** What no unit text may say is still to be shown: in SI, where the factor is one however large the powers are. */
function powersOfSI(dimension: Dimension): Unit {
  const parts = dimension.exponents.filter(([base]) => !base.startsWith("?"));
  const text = joinParts(parts.map(([base, exponent]) => [siSymbols[base] ?? base, exponent]));
  return { text, dimension, kind: "any", factor: factorOne, offset: factorZero, point: false, ucum: "" };
}

const forceDimension = known("N").dimension;
const shortened = (text: string): string => (Object.hasOwn(shorter, text) ? (shorter[text] as string) : text);

function joinParts(parts: readonly (readonly [symbol: string, exponent: Rational])[]): string {
  const raise = (symbol: string, e: Rational): string => {
    const size = e.d === 1 ? `${e.n}` : `(${rationalText(e)})`;
    return size === "1" ? symbol : `${symbol}^${size}`;
  };
  const above = parts.filter(([, e]) => e.n > 0);
  const below = parts.filter(([, e]) => e.n < 0);
  if (above.length === 0) return below.map(([symbol, e]) => raise(symbol, e)).join("·");
  const top = above.map(([symbol, e]) => raise(symbol, e)).join("·");
  const bottom = below.map(([symbol, e]) => raise(symbol, { n: -e.n, d: e.d })).join("·");
  return below.length === 0 ? top : `${top}/${below.length === 1 ? bottom : `(${bottom})`}`;
}

/** A unit to name in a message about this dimension and kind: N, mm², N·m. */
export const sampleUnit = (dimension: Dimension, kind: Kind, point = false): Unit => chooseUnit(dimension, kind, metricSet, point);

/** Units to offer for a value, the usual first; all of one dimension and of kinds that agree. */
export function unitChoices(dimension: Dimension, kind: Kind, point = false): readonly Unit[] {
  const out = new Set<Unit>();
  for (const quantity of quantityNames.values()) {
    if (quantity.dimension !== dimension || quantity.point !== point || kindsAgree(quantity.kind, kind) === undefined) continue;
    for (const unit of quantity.choices) out.add(unit);
  }
  if (dimension === perTime && kind === "any") out.add(known("s^-1"));
  if (out.size === 0) for (const preferred of [metricSet, inchSet, siSet]) out.add(chooseUnit(dimension, kind, preferred, point));
  return [...out];
}
