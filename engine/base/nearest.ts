// Near misses: the known word that was most likely meant.

/** Damerau-Levenshtein distance (optimal string alignment), cut off above `limit`. */
function distance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((last[j] as number) + 1, (row[j - 1] as number) + 1, (last[j - 1] as number) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, (before[j - 2] as number) + 1);
      row.push(cost);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}

/** The candidate nearest to `word`, or undefined when none is near enough to be worth offering. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  let best: string | undefined;
  // One letter of one or two is a different word, unless only the case differs.
  let bestCost = word.length < 3 ? 0.75 : Math.max(1, Math.floor(word.length / 3)) + 0.5;
  for (const candidate of candidates) {
    if (candidate === word) continue;
    const folded = candidate.toLowerCase() === word.toLowerCase();
    const cost = folded ? 0.5 : distance(word, candidate, Math.ceil(bestCost));
    if (cost < bestCost) {
      best = candidate;
      bestCost = cost;
    }
  }
  return best;
}
