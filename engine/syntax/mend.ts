// Changes that put a fault right, as the diagnostics carry them. A label is what the place then reads.

import type { Mend } from "../diagnostics/index.ts";

/** Puts `insert` in place of what stands from `from` to `to`. */
export const replaceMend = (from: number, to: number, insert: string, label = insert.trim()): Mend => ({
  label,
  changes: [{ from, to, insert }],
});

export const removeMend = (from: number, to: number, shown: string): Mend => ({
  label: `without ${shown}`,
  changes: [{ from, to, insert: "" }],
});
