// Unit problems as diagnostics of the catalogue.

import { type Range, range } from "../base/index.ts";
import { type Diagnostic, faults, type Mend } from "../diagnostics/index.ts";
import type { UnitProblem } from "./model.ts";
import type { PreferenceProblem } from "./preferences.ts";
import { describeDimension } from "./quantities.ts";

/** The fault for a unit text that was not read. `at` is the range of the whole unit text, which is `text`. */
export function unitFault(problem: UnitProblem, at: Range, text: string): Diagnostic {
  const place = range(at.from + problem.from, at.from + Math.max(problem.to, problem.from));
  const { symbol, nearest, mend, advice } = problem;
  const extras = { mends: mendsOf(problem, at, place) };
  const shownMend = mend ?? nearest;
  switch (problem.problem) {
    case "unknown":
      return advice !== undefined
        ? faults.unitAmbiguous(place, { symbol, advice }, extras)
        : faults.unitUnknown(place, { symbol, nearest: shownMend }, extras);
    case "force as mass":
      return faults.unitMassOrForce(place, { symbol, advice: advice ?? "" }, extras);
    case "prefix":
      return faults.unitPrefix(place, { symbol, advice: advice ?? "" }, extras);
    case "twice":
      return faults.unitTwice(place, { symbol, text: text.trim(), mend }, extras);
    case "syntax":
      return faults.unitForm(place, { text: text.trim(), advice: advice ?? "", mend }, extras);
    case "division":
      return faults.unitDivision(place, { text: text.trim(), mend }, extras);
    case "leading one":
      return faults.unitLeadingOne(place, { mend }, extras);
    case "point":
      return faults.unitPoint(place, { symbol, nearest: shownMend }, extras);
    case "exponent":
      return faults.unitPower(place, { symbol, mend }, extras);
  }
}

/** A word that may be a mass or a force is never mended by guess. */
function mendsOf(problem: UnitProblem, at: Range, place: Range): readonly Mend[] {
  if (problem.problem === "force as mass") return [];
  if (problem.mend !== undefined) return [{ label: problem.mend, changes: [{ from: at.from, to: at.to, insert: problem.mend }] }];
  if (problem.nearest === undefined) return [];
  return [{ label: problem.nearest, changes: [{ from: place.from, to: place.to, insert: problem.nearest }] }];
}

/** The fault for an entry of the front matter's `units` map; `at` is the range of the unit's text, or of the key. */
export function preferenceFault(problem: PreferenceProblem, at: Range): Diagnostic {
  switch (problem.reason) {
    case "quantity":
      return faults.preferenceQuantity(at, { key: problem.key, nearest: problem.nearest });
    case "unit":
      return unitFault(problem.problem, at, problem.text);
    case "dimension":
      return faults.preferenceDimension(at, {
        key: problem.key,
        text: problem.text,
        found: describeDimension(problem.unit.dimension, problem.unit.kind, problem.unit.point),
        wanted: problem.quantity.name,
      });
  }
}
