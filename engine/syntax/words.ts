// The words of the language: reserved ones, soft ones that are free as names elsewhere, and words only some places know.

/** Never a name of the notebook, but free as the name of a field (`from = "loaded face"`, `x.from`). */
export const reservedWords: readonly string[] = [
  "formula",
  "record",
  "family",
  "example",
  "check",
  "use",
  "table",
  "match",
  "if",
  "then",
  "else",
  "and",
  "or",
  "not",
  "where",
  "for",
  "in",
  "with",
  "as",
  "within",
  "from",
  "none",
  "true",
  "false",
];

/** Words of the language in their place, free as names elsewhere; never a unit. */
export const softWords: readonly string[] = [
  "step",
  "over",
  "by",
  "factor",
  "result",
  "study",
  "solve",
  "group",
  "accumulate",
  "of",
  "abs",
];

const reserved = new Set(reservedWords);
const soft = new Set(softWords);

export const isReserved = (word: string): boolean => reserved.has(word);

/**
 * `in` right after a number is always the inch: the keyword only ever follows a name (`for p in`, `over L in`, `solve y in`),
 * so no text could mean both.
 */
export const isNeverUnit = (word: string): boolean => word !== "in" && (reserved.has(word) || soft.has(word));
