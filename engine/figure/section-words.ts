// What a section says in words: its caption, and its alternative text for those who do not see it.

import { chooseUnit, dimensionOf, fromSI, metricSet, quantityNames, showNumber, typographic } from "../units/index.ts";
import type { FigureOptions } from "./quantity-axis.ts";
import type { Plan } from "./section-plan.ts";

/** How lengths of a drawing are written: in the notebook's unit of length, in millimetres when it names none. */
export interface LengthWriter {
  readonly length: (metres: number) => string;
  /** For what is thinner than a caliper reads: layers, beads, plies. */
  readonly thin: (metres: number) => string;
  readonly lengthUnit: string;
}

/** How numbers of a section are written. */
export interface SectionWriter extends LengthWriter {
  readonly force: (newtons: number) => string;
}

const DIGITS = 4;
const FINEST = 1e-5;
const LENGTH = dimensionOf("length");
const FORCE = quantityNames.get("Force")?.dimension ?? LENGTH;

export function lengthWriter(options: FigureOptions | undefined): LengthWriter {
  const unit = chooseUnit(LENGTH, "any", setFor(options), false);
  // Hundredths of a millimetre or what comes near it: what a drawing of the shop tells, and a caliper reads.
  const places = Math.max(0, Math.round(-Math.log10(fromSI(FINEST, unit)) - 0.1));
  const rounded = (value: number): number => Number(value.toFixed(places));
  return {
    length: (metres) => showNumber(rounded(fromSI(metres, unit)), DIGITS + 2),
    thin: (metres) => showNumber(fromSI(metres, unit), DIGITS - 1),
    lengthUnit: typographic(unit),
  };
}

export function sectionWriter(options: FigureOptions | undefined): SectionWriter {
  const unit = chooseUnit(FORCE, "any", setFor(options), false);
  return {
    ...lengthWriter(options),
    force: (newtons) => `${showNumber(fromSI(newtons, unit), options?.digits ?? DIGITS)} ${typographic(unit)}`,
  };
}

/** Nobody draws in metres: a notebook without a unit of length gets millimetres. */
function setFor(options: FigureOptions | undefined): FigureOptions["preferences"] {
  const named = options?.preferences.units.some(({ quantity }) => quantity.name === "Length") === true;
  return named && options !== undefined ? options.preferences : metricSet;
}

export function sectionWords(plan: Plan, words: SectionWriter): { readonly alternative: string; readonly caption: string } {
  const { length, lengthUnit } = words;
  const { screw, plates, part, load, failure, fibre } = plan.view;
  const size = (metres: number): string => `${length(metres)} ${lengthUnit}`;
  const through = plates.length === 0 ? "" : ` through ${plates.map((plate) => `${plate.name}, ${size(plate.t)}`).join(", ")}`;
  const strands = fibre === undefined ? "" : ` Reinforced with ${fibre.name}.`;
  const pulled = load === undefined ? "" : ` Pulled with ${words.force(load)}.`;
  const fails = failure === undefined || failure.text === "" ? "" : ` Predicted failure surface: ${failure.text}.`;
  const red = [load === undefined ? "" : "load", failure === undefined ? "" : "failure surface"].filter((one) => one !== "").join(" and ");
  return {
    alternative: `Section through the screw axis: ${screw.designation} × ${length(screw.length)}${through} into ${part.name} with ${anchorWords(plan, size)}.${strands}${pulled}${fails}`,
    caption: `Section through the screw axis, to scale; dimensions in ${lengthUnit}${red === "" ? "" : `; ${red} in red`}.`,
  };
}

function anchorWords(plan: Plan, size: (metres: number) => string): string {
  const { anchor } = plan.view;
  switch (anchor.record) {
    case "DrawnInsert":
      return `${anchor.name} ⌀ ${size(anchor.D)}, ${size(anchor.L)} long, installed from the ${anchor.from}`;
    case "DrawnThread":
      return `a ${anchor.how} thread in a hole of ${size(anchor.hole)}, engaged for ${size(anchor.L)}`;
    case "DrawnWire":
      return `a wire insert, ${size(anchor.L)} long`;
    case "DrawnNut": {
      const where = {
        pocket: `in a pocket ${size(anchor.over)} below the loaded face`,
        flush: "flush in the far face",
        "far face": "on the far face",
      }[anchor.place];
      return `${anchor.name} ${where}${anchor.sleeve === undefined ? "" : ` and ${anchor.sleeve.name}`}`;
    }
  }
}
