// File names of `use` lines, relative to the file they stand in.

/** Resolves `target` against the folder of `file`; `.` and `..` are worked out, a leading `..` beyond the root is kept. */
export function resolvePath(file: string, target: string): string {
  const out = target.startsWith("/") ? [] : file.split("/").slice(0, -1);
  for (const piece of target.split("/")) {
    if (piece === "" || piece === ".") continue;
    if (piece === ".." && out.length > 0 && out.at(-1) !== "..") out.pop();
    else out.push(piece);
  }
  return out.join("/");
}

export const isCsv = (file: string): boolean => file.toLowerCase().endsWith(".csv");
