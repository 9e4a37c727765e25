// Quantities by their ISO 80000 names: dimension, kind, and the units in which they are usually told.

import { broken } from "../base/index.ts";
import { isCurrency } from "./currency.ts";
import { type Dimension, divide, exponentOf, power } from "./dimension.ts";
import { kindsOf } from "./kinds.ts";
import type { Kind, Rational, Unit } from "./model.ts";
import { parseUnit } from "./parse.ts";
import { addRational, multiplyRational, rational, rationalText } from "./rational.ts";

/** A quantity that may be named as a type. `point`: a point on the temperature scale. */
export interface Quantity {
  readonly name: string;
  readonly dimension: Dimension;
  readonly kind: Kind;
  readonly point: boolean;
  /** The coherent SI unit. */
  readonly unit: Unit;
  /** Units that a chooser offers, the usual first. */
  readonly choices: readonly Unit[];
}

/** name, SI unit, units offered, kind where the dimension has several. For equal dimensions the first is the name in messages. */
const rows: readonly (readonly [name: string, unit: string, choices: string, kind?: Kind])[] = [
  ["Number", "1", "1, %, ppm", "number"],
  ["Angle", "rad", "°, rad, mrad, arcmin, rev", "angle"],
  ["Length", "m", "mm, µm, cm, m, in, mil, ft"],
  ["Area", "m^2", "mm^2, cm^2, m^2, in^2, ft^2"],
  ["Volume", "m^3", "mm^3, cm^3, mL, L, m^3, in^3, ft^3, gal"],
  ["SectionModulus", "m^3", "mm^3, cm^3, in^3"],
  ["SecondMomentOfArea", "m^4", "mm^4, cm^4, m^4, in^4"],
  ["Mass", "kg", "g, kg, mg, t, lb, oz"],
  ["Time", "s", "s, ms, min, h, d, week, year"],
  ["Frequency", "Hz", "Hz, kHz, MHz", "frequency"],
  ["RotationalSpeed", "rad/s", "rpm, rev/s, rad/s, °/s", "rotational speed"],
  ["AngularAcceleration", "rad/s^2", "rad/s^2, °/s^2"],
  ["Velocity", "m/s", "mm/s, m/s, mm/min, m/min, km/h, in/s, ft/s, in/min"],
  ["Acceleration", "m/s^2", "m/s^2, mm/s^2, ft/s^2, in/s^2"],
  ["Force", "N", "N, kN, MN, kgf, lbf, ozf, kip"],
  ["Torque", "N·m", "N·m, N·mm, cN·m, N·cm, kN·m, kgf·cm, in·lbf, ft·lbf, ozf·in", "torque"],
  ["MomentOfForce", "N·m", "N·m, N·mm, cN·m, N·cm, kN·m, kgf·cm, in·lbf, ft·lbf, ozf·in", "torque"],
  ["Energy", "J", "J, mJ, kJ, Wh, kWh, ft·lbf, in·lbf, Btu", "energy"],
  ["Power", "W", "W, mW, kW, hp"],
  ["Pressure", "Pa", "MPa, kPa, Pa, GPa, N/mm^2, bar, psi, ksi"],
  ["Stress", "Pa", "MPa, GPa, kPa, Pa, N/mm^2, psi, ksi, Msi"],
  ["Strain", "1", "1, %, ppm", "number"],
  ["Stiffness", "N/m", "N/mm, kN/mm, N/m, N/µm, lbf/in"],
  ["Compliance", "m/N", "mm/N, µm/N, m/N, in/lbf"],
  ["TorsionalStiffness", "N·m/rad", "N·m/rad, N·m/°, in·lbf/°"],
  ["FractureToughness", "Pa·m^(1/2)", "MPa·m^(1/2), ksi·in^(1/2)"],
  ["Density", "kg/m^3", "g/cm^3, kg/m^3, lb/in^3, lb/ft^3"],
  ["LinearDensity", "kg/m", "g/m, kg/m, lb/ft"],
  ["SurfaceDensity", "kg/m^2", "g/m^2, kg/m^2, lb/ft^2"],
  ["MassMomentOfInertia", "kg·m^2", "kg·m^2, g·mm^2, kg·mm^2, lb·in^2"],
  ["Momentum", "N·s", "N·s, kg·m/s, lbf·s"],
  ["TemperatureDifference", "K", "K, degC_diff, degF_diff"],
  ["LinearExpansionCoefficient", "K^-1", "K^-1, µm/(m·K), ppm/K, degF_diff^-1"],
  ["ThermalExpansion", "K^-1", "K^-1, µm/(m·K), ppm/K, degF_diff^-1"],
  ["HeatCapacity", "J/K", "J/K, kJ/K"],
  ["SpecificHeatCapacity", "J/(kg·K)", "J/(kg·K), J/(g·K), kJ/(kg·K)"],
  ["ThermalConductivity", "W/(m·K)", "W/(m·K)"],
  ["HeatTransferCoefficient", "W/(m^2·K)", "W/(m^2·K)"],
  ["ThermalResistance", "K/W", "K/W"],
  ["DynamicViscosity", "Pa·s", "mPa·s, Pa·s, cP"],
  ["KinematicViscosity", "m^2/s", "mm^2/s, m^2/s, cSt"],
  ["VolumeFlowRate", "m^3/s", "mm^3/s, L/min, m^3/s, in^3/s"],
  ["MassFlowRate", "kg/s", "g/s, kg/s, kg/h, lb/h"],
  ["ElectricCurrent", "A", "A, mA"],
  ["ElectricCharge", "C", "C, mC"],
  ["Voltage", "V", "V, mV, kV"],
  ["Resistance", "Ω", "Ω, kΩ, MΩ"],
  ["Conductance", "S", "S, mS"],
  ["Capacitance", "F", "µF, nF, pF, F"],
  ["Inductance", "H", "mH, µH, H"],
  ["MagneticFlux", "Wb", "Wb, mWb"],
  ["MagneticFluxDensity", "T", "T, mT"],
  ["AmountOfSubstance", "mol", "mol, mmol"],
  ["MolarMass", "kg/mol", "g/mol, kg/mol"],
  ["LuminousIntensity", "cd", "cd"],
];

/** A unit of this room's own tables. */
export function known(text: string): Unit {
  const result = parseUnit(text, { leadingOne: true });
  return "unit" in result ? result.unit : broken(`no unit ${text}: ${result.problem.problem}`);
}

function quantity([name, unit, choices, kind]: (typeof rows)[number]): Quantity {
  const si = known(unit);
  return { name, dimension: si.dimension, kind: kind ?? "any", point: false, unit: si, choices: choices.split(", ").map(known) };
}

const temperaturePoint: Quantity = {
  name: "Temperature",
  dimension: known("K").dimension,
  kind: "any",
  point: true,
  unit: known("K abs"),
  choices: ["degC", "K abs", "degF", "degR abs"].map(known),
};

/** Every quantity that may be written as a type, by its name. Money is no single dimension and is not here. */
export const quantityNames: ReadonlyMap<string, Quantity> = new Map(
  [...rows.map(quantity), temperaturePoint].map((each) => [each.name, each] as const),
);

const byDimension = new Map<Dimension, Quantity[]>();
for (const each of quantityNames.values()) {
  if (!each.point) byDimension.set(each.dimension, [...(byDimension.get(each.dimension) ?? []), each]);
}

/** The first quantity of a dimension that has this kind. A product of force and length counts as a torque, a ratio as a number. */
export function quantityOf(dimension: Dimension, kind: Kind, point = false): Quantity | undefined {
  if (point) return dimension === temperaturePoint.dimension ? temperaturePoint : undefined;
  const all = byDimension.get(dimension);
  if (all === undefined) return undefined;
  const plain = kind === "any" ? kindsOf(dimension)[0] : kind;
  return all.find((each) => each.kind === plain) ?? all.find((each) => each.kind === "any");
}

/** The name of a dimension as a type, of its first kind where it has several; undefined when it has none. */
export const quantityNameOf = (dimension: Dimension): string | undefined => quantityOf(dimension, "any")?.name;

const baseNames: Readonly<Record<string, string>> = {
  length: "Length",
  mass: "Mass",
  time: "Time",
  temperature: "TemperatureDifference",
  current: "ElectricCurrent",
  amount: "AmountOfSubstance",
  luminosity: "LuminousIntensity",
};

/**
 * A dimension in words for messages: "Force", "Length^2 · Time^-3", "EUR · Mass^-1". Variables of inference are called a, b, ...
 * in the order of their bases. A rate without a kind is "Time^-1": it is neither a frequency nor a rotational speed yet.
 */
export function describeDimension(dimension: Dimension, kind: Kind, point = false): string {
  const named = dimension === perTime && kind === "any" ? undefined : quantityOf(dimension, kind, point);
  if (named !== undefined) return named.name;
  return factorsOf(dimension)
    .map(([name, exponent]) =>
      exponent.n === 1 && exponent.d === 1 ? name : `${name}^${exponent.d === 1 ? exponent.n : `(${rationalText(exponent)})`}`,
    )
    .join(" · ");
}

const perTime = known("s^-1").dimension;
const force = known("N").dimension;

/** Bases by name; mass that comes with its two powers of time is told as force, as this trade does. */
function factorsOf(dimension: Dimension): (readonly [name: string, exponent: Rational])[] {
  const out: (readonly [string, Rational])[] = [];
  const forces = forcesIn(dimension);
  if (forces !== undefined) out.push(["Force", forces]);
  const rest = forces === undefined ? dimension : divide(dimension, power(force, forces));
  let variables = 0;
  for (const base of ["mass", "length", "time"]) {
    const exponent = exponentOf(rest, base);
    if (exponent.n !== 0) out.push([baseNames[base] as string, exponent]);
  }
  for (const [base, exponent] of rest.exponents) {
    if (base === "mass" || base === "length" || base === "time") continue;
    const variable = base.startsWith("?");
    const name = variable ? String.fromCharCode(97 + (variables % 26)) : isCurrency(base) ? base : (baseNames[base] ?? base);
    if (variable) variables += 1;
    out.push([name, exponent]);
  }
  return out;
}

/** The power of force that a dimension holds: that of mass, when time has at least twice as many of the other sign. */
export function forcesIn(dimension: Dimension): Rational | undefined {
  const mass = exponentOf(dimension, "mass");
  if (mass.n === 0) return undefined;
  const time = exponentOf(dimension, "time");
  const spare = addRational(time, multiplyRational(mass, rational(2)));
  if (spare.n === 0 || Math.sign(spare.n) === -Math.sign(mass.n)) return time.n === 0 ? undefined : mass;
  return undefined;
}
