// Whether two trees say the same, wherever they stand in their texts.

const PLACES: ReadonlySet<string> = new Set(["range", "working", "operatorRange", "noteRange", "referenceRange"]);

/** Structural equality without ranges. A name spelled in another way (`τ` for `tau`) is another tree. */
export function sameTree(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a)) {
    return Array.isArray(b) && a.length === b.length && a.every((item, i) => sameTree(item, b[i]));
  }
  const left = a as Readonly<Record<string, unknown>>;
  const right = b as Readonly<Record<string, unknown>>;
  const keys = Object.keys(left).filter((key) => !PLACES.has(key));
  const others = Object.keys(right).filter((key) => !PLACES.has(key));
  return keys.length === others.length && keys.every((key) => sameTree(left[key], right[key]));
}
