// Prints faults and notices for a reader at a terminal: place, words, the line with a mark under it, the mend.

import { lineAndColumn } from "../base/index.ts";
import type { LineOutput } from "../session/index.ts";
import type { Paint } from "./paint.ts";

type Diagnostic = LineOutput["diagnostics"][number];

/** A text that faults are placed in, under the name that its user knows. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

export interface PlacedFault {
  readonly code: string;
  readonly severity: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly message: string;
  readonly hint?: string;
  readonly mends: readonly string[];
}

/** A fault as JSON shows it. */
export function placed(diagnostic: Diagnostic, source: Source): PlacedFault {
  const { code, severity, message, hint, mends } = diagnostic;
  const { line, column } = lineAndColumn(source.text, diagnostic.from);
  return {
    code,
    severity,
    file: source.path,
    line,
    column,
    message,
    ...(hint === undefined ? {} : { hint }),
    mends: mends.map(({ label }) => label),
  };
}

/** The line with a mark under the wrong piece; a piece that goes on in the next line is marked to the line's end. */
function excerpt(diagnostic: Diagnostic, { text }: Source, line: number, column: number, paint: Paint): readonly string[] {
  const start = diagnostic.from - column + 1;
  const end = text.indexOf("\n", start);
  const content = text.slice(start, end === -1 ? text.length : end).trimEnd();
  if (content === "") return [];
  const number = `${line}`;
  // Tabs stay in the margin of the mark, so that it stands below its piece whatever their width.
  const margin = content.slice(0, column - 1).replace(/[^\t]/g, " ");
  const width = Math.max(1, Math.min(diagnostic.to - diagnostic.from, content.length - column + 1));
  return [
    `  ${paint("faint", `${number} |`)} ${content}`,
    `  ${paint("faint", `${" ".repeat(number.length)} |`)} ${margin}${paint(diagnostic.severity === "fault" ? "bad" : "doubt", "^".repeat(width))}`,
  ];
}

/** `related` places are looked up by file name; a file that is not known shows without line. */
export function describeFault(diagnostic: Diagnostic, source: Source, others: (file: string) => string | undefined, paint: Paint): string {
  const { line, column } = lineAndColumn(source.text, diagnostic.from);
  const word = diagnostic.severity === "fault" ? paint("bad", "fault") : paint("doubt", "notice");
  const related = diagnostic.related.map(({ message, file, from }) => {
    const text = others(file);
    const place = text === undefined ? undefined : lineAndColumn(text, from);
    return `  see ${file}${place === undefined ? "" : `:${place.line}:${place.column}`}: ${message}`;
  });
  return [
    `${paint("strong", `${source.path}:${line}:${column}:`)} ${word} ${diagnostic.code}`,
    `  ${diagnostic.message}`,
    ...excerpt(diagnostic, source, line, column, paint),
    ...(diagnostic.hint === undefined ? [] : [`  hint: ${diagnostic.hint}`]),
    ...diagnostic.mends.map(({ label }) => `  mend: ${label}`),
    ...related,
  ].join("\n");
}
