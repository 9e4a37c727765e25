// Which mark stands between the cells of a csv text.

export type Separator = ";" | "\t" | "|" | ",";

/** In the order that breaks a tie: a comma is the likeliest to stand inside a cell. */
const CANDIDATES: readonly Separator[] = [";", "\t", "|", ","];
const SAMPLE_LINES = 20;

/**
 * The candidate that the head line holds and that most of the first lines hold as often as the head. Counting the head
 * first keeps decimal commas out of it. A head without any is one column.
 */
export function detectSeparator(text: string): Separator {
  const lines = text
    .split(/\r\n|\n|\r/, SAMPLE_LINES + 10)
    .filter((line) => line.trim() !== "")
    .slice(0, SAMPLE_LINES);
  const head = lines[0] ?? "";
  let best: Separator = ",";
  let bestScore = 0;
  for (const candidate of CANDIDATES) {
    const wanted = countOutsideQuotes(head, candidate);
    if (wanted === 0) continue;
    const score = lines.filter((line) => countOutsideQuotes(line, candidate) === wanted).length;
    if (score <= bestScore) continue;
    best = candidate;
    bestScore = score;
  }
  return best;
}

function countOutsideQuotes(line: string, mark: string): number {
  let count = 0;
  let quoted = false;
  for (const character of line) {
    if (character === '"') quoted = !quoted;
    else if (character === mark && !quoted) count += 1;
  }
  return count;
}
