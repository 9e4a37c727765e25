// Finds import circles among files, one for each group of files that import each other.

/** Each circle as its files in the order of import, the first named again at the end. */
export function circles(graph: ReadonlyMap<string, readonly string[]>): readonly (readonly string[])[] {
  const done = new Set<string>();
  const found: string[][] = [];
  const walk = (file: string, path: readonly string[]): void => {
    const at = path.indexOf(file);
    if (at !== -1) {
      found.push([...path.slice(at), file]);
      return;
    }
    if (done.has(file)) return;
    for (const next of graph.get(file) ?? []) walk(next, [...path, file]);
    done.add(file);
  };
  for (const file of graph.keys()) walk(file, []);
  return found;
}
