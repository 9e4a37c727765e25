// Reads the inputs of rows about joints: `k=v` among words, and the numbers of the set a row belongs to where it states none.

import { type Inputs, MissingInput, unitOf } from "./inputs.ts";

export type Entry = readonly [string, (inputs: Inputs) => string];

const LITERAL = /[-+−]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?/;

/** The literal after `KEY=` (so that `mu_G=mu_K=0.10` gives both), in `unit` unless the row writes another. */
export function after(inputs: Inputs, name: string, unit = ""): string {
  const escaped = name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const found = new RegExp(`(?:^|[\\s;,(=])${escaped}\\s*=\\s*(?:[A-Za-z_]+\\s*=\\s*)?(${LITERAL.source})\\s*([A-Za-z%][\\w/*]*)?`).exec(
    inputs.text,
  );
  if (found === null) throw new MissingInput(`no ${name} in "${inputs.text}"`);
  const own = unitOf(found[2] ?? "");
  return `${Number((found[1] ?? "").replace("−", "-"))} ${unit === "" ? "" : own === "" ? unit : own}`.trim();
}

/** The literal after `KEY=`; where the row does not state it, that of its set. */
export const or = (inputs: Inputs, name: string, unit: string, usual: string): string => {
  try {
    return after(inputs, name, unit);
  } catch (problem) {
    if (problem instanceof MissingInput) return usual;
    throw problem;
  }
};

/** The numbers of `(E,D,t) (E,D,t)` or of `y = 30 and 180 mm`, in the order they are written. */
export const numbersIn = (text: string): readonly string[] => text.match(/\d+(?:\.\d+)?/g) ?? [];
