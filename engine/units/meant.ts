// Spellings that people bring from elsewhere, and what to write for them here. None of them is read as a unit.

import type { UnitProblem } from "./model.ts";

export interface Meant {
  readonly problem: UnitProblem["problem"];
  readonly more: Partial<UnitProblem>;
}

const poundAdvice = "lb is a mass and lbf a force: write the one you mean";
const tonAdvice = "a ton may be t (1000 kg) or a force, tonf (2000 lbf): write the one you mean";
const kiloAdvice = "kg is a mass and kgf a force: write the one you mean";

/** Words that name a mass and a force alike; no mend can choose. */
const massOrForce: Readonly<Record<string, { readonly nearest: string; readonly advice: string }>> = {
  pound: { nearest: "lbf", advice: poundAdvice },
  pounds: { nearest: "lbf", advice: poundAdvice },
  lbs: { nearest: "lbf", advice: poundAdvice },
  Lbs: { nearest: "lbf", advice: poundAdvice },
  "#": { nearest: "lbf", advice: poundAdvice },
  ton: { nearest: "tonf", advice: tonAdvice },
  tons: { nearest: "tonf", advice: tonAdvice },
  kilo: { nearest: "kgf", advice: kiloAdvice },
  kilos: { nearest: "kgf", advice: kiloAdvice },
};

/** Symbols with two or more meanings in use; each reading has a symbol of its own. */
const ambiguous: Readonly<Record<string, string>> = {
  pt: "pt is a point of type, in two sizes, and a pint: write mm or pint",
  cal: "there are several calories: write J",
  kcal: "there are several calories: write kJ",
  Cal: "there are several calories: write kJ",
  R: "R may be rankine or roentgen: write degR",
  G: "G may be gauss or standard gravity: write T, or multiply by g_n",
  ga: "a sheet gauge is no unit: write the thickness in mm or in",
  x: "units are multiplied by a space or ·",
  cwt: "a hundredweight differs by country: write kg or lb",
};

/** One reading: the right text for it. */
const rewritten: Readonly<Record<string, string>> = {
  Nm: "N·m",
  Nmm: "N·mm",
  Ncm: "N·cm",
  cNm: "cN·m",
  mNm: "mN·m",
  kNm: "kN·m",
  daNm: "daN·m",
  NM: "N·m",
  ftlb: "ft·lbf",
  ftlbs: "ft·lbf",
  ftlbf: "ft·lbf",
  lbft: "lbf·ft",
  lbfft: "lbf·ft",
  inlb: "in·lbf",
  inlbs: "in·lbf",
  inlbf: "in·lbf",
  lbin: "lbf·in",
  inoz: "in·ozf",
  ozin: "ozf·in",
  kgcm: "kgf·cm",
  kgfcm: "kgf·cm",
  kgm: "kgf·m",
  "ft-lb": "ft·lbf",
  "ft-lbs": "ft·lbf",
  "ft-lbf": "ft·lbf",
  "lb-ft": "lbf·ft",
  "lbf-ft": "lbf·ft",
  "in-lb": "in·lbf",
  "in-lbs": "in·lbf",
  "in-lbf": "in·lbf",
  "lb-in": "lbf·in",
  "lbf-in": "lbf·in",
  "oz-in": "ozf·in",
  "in-oz": "in·ozf",
  "kg-cm": "kgf·cm",
  "kgf-cm": "kgf·cm",
  "kg-f": "kgf",
  Kgf: "kgf",
  KGF: "kgf",
  kp: "kgf",
  kgF: "kgf",
  lbF: "lbf",
  LBF: "lbf",
  Lbf: "lbf",
  lbm: "lb",
  LB: "lb",
  KG: "kg",
  Kg: "kg",
  kgs: "kg",
  KN: "kN",
  Kn: "kN",
  kn: "kN",
  MPA: "MPa",
  Mpa: "MPa",
  mpa: "MPa",
  GPA: "GPa",
  Gpa: "GPa",
  gpa: "GPa",
  KPa: "kPa",
  Kpa: "kPa",
  PSI: "psi",
  Psi: "psi",
  KSI: "ksi",
  Ksi: "ksi",
  psf: "lbf/ft^2",
  pcf: "lb/ft^3",
  pli: "lbf/in",
  plf: "lbf/ft",
  MM: "mm",
  Mm: "mm",
  CM: "cm",
  IN: "in",
  FT: "ft",
  cc: "cm^3",
  ccm: "cm^3",
  sqin: "in^2",
  sqft: "ft^2",
  sqmm: "mm^2",
  cuin: "in^3",
  cuft: "ft^3",
  sec: "s",
  secs: "s",
  Sec: "s",
  hr: "h",
  hrs: "h",
  mins: "min",
  yr: "year",
  yrs: "year",
  a: "year",
  RPM: "rpm",
  Rpm: "rpm",
  mph: "mi/h",
  kmh: "km/h",
  kph: "km/h",
  fps: "ft/s",
  ipm: "in/min",
  Celsius: "degC",
  celsius: "degC",
  centigrade: "degC",
  Fahrenheit: "degF",
  fahrenheit: "degF",
  Kelvin: "K",
  degK: "K",
  "°K": "K",
  "°R": "degR",
  rankine: "degR",
  "''": "in",
  '"': "in",
  pct: "%",
  HP: "hp",
  HZ: "Hz",
  hz: "Hz",
  cps: "Hz",
  Ohm: "Ω",
};

/** What was meant by a spelling that is no unit here, or undefined when it says nothing to us. */
export function meant(symbol: string): Meant | undefined {
  const both = own(massOrForce, symbol);
  if (both !== undefined) return { problem: "force as mass", more: both };
  const advice = own(ambiguous, symbol);
  if (advice !== undefined) return { problem: "unknown", more: { advice } };
  const mend = own(rewritten, symbol);
  return mend === undefined ? undefined : { problem: "unknown", more: { nearest: mend, mend } };
}

function own<V>(record: Readonly<Record<string, V>>, key: string): V | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
