// The headings of a whole notebook.

import type { Notebook } from "./part.ts";
import { type Heading, headings } from "./prose.ts";

/** All headings, places counted in the notebook's text. */
export function outline(notebook: Notebook): readonly Heading[] {
  return notebook.parts.flatMap((part, i) => {
    if (part.kind !== "prose") return [];
    const by = notebook.starts[i] as number;
    return headings(part.text).map((heading) => ({ ...heading, from: heading.from + by, to: heading.to + by }));
  });
}

/** The headings that an offset stands under, outermost first: each deeper than the one before. */
export function sectionOf(notebook: Notebook, offset: number): readonly Heading[] {
  const path: Heading[] = [];
  for (const heading of outline(notebook)) {
    if (offset < heading.from) break;
    while ((path[path.length - 1]?.level ?? 0) >= heading.level) path.pop();
    path.push(heading);
  }
  return path;
}
