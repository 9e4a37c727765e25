// Ranges by count: 6 mm .. 20 mm step 1 mm.

export type RangeCount = number | "zero step" | "wrong way" | "does not fit";

/** How many steps lead from one bound to the other; a step may miss the bound by rounding alone. */
export function stepsBetween(from: number, to: number, step: number): RangeCount {
  if (step === 0) return "zero step";
  const exact = (to - from) / step;
  const count = Math.round(exact);
  if (count < 0) return "wrong way";
  if (Math.abs(exact - count) <= 1e-9 * Math.max(1, count)) return count + 0;
  return exact < 0 ? "wrong way" : "does not fit";
}

/** `count` steps, so `count` + 1 items; the last one is the bound itself. */
export function rangeItems(from: number, to: number, step: number, count: number): readonly number[] {
  const items: number[] = [];
  for (let i = 0; i < count; i += 1) items.push(from + i * step);
  items.push(to);
  return items;
}

/** The step of the same sign nearest to the wanted one that fits. */
export const fittingStep = (from: number, to: number, step: number): number => (to - from) / Math.max(1, Math.round((to - from) / step));
