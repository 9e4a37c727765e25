// Reads catalogue/*.md and writes the typed functions (faults.generated.ts), the explanations (entries.generated.ts)
// and the user page (FAULTS.md). Run by `npm run catalogue`; a test fails when the generated files are stale.

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

interface Entry {
  code: string;
  area: string;
  severity: string;
  message: string;
  hint?: string;
  text: string;
  wrong: string;
  right: string;
  /** Where a case cannot be shown by a notebook alone (a full store, a changed file): how it comes about. */
  shown?: string;
}

const here = fileURLToPath(new URL(".", import.meta.url));
const slotsOf = (template: string): string[] => [...new Set([...template.matchAll(/\{(\w+)\}/g)].map((m) => m[1] as string))];
const camel = (code: string): string => code.replace(/-(\w)/g, (_, c: string) => c.toUpperCase());
const quote = (text: string): string => JSON.stringify(text);

/** Parses one catalogue file: `## code`, `severity:`, `message:`, `hint:` lines, plain words, `### Wrong`, `### Right`. */
export function parseCatalogue(area: string, source: string): Entry[] {
  return source
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const code = (part.split("\n", 1)[0] as string).trim();
      const field = (name: string): string | undefined => new RegExp(`^${name}: (.*)$`, "m").exec(part)?.[1]?.trim();
      const section = (title: string): string => (part.split(new RegExp(`^### ${title}$`, "m"))[1]?.split(/^### /m)[0] ?? "").trim();
      const body = part.slice(code.length).split(/^### /m)[0] as string;
      const text = body.replace(/^(severity|message|hint|shown): .*$/gm, "").trim();
      const severity = field("severity") ?? "fault";
      const message = field("message");
      if (message === undefined) throw new Error(`${area}: ${code} has no message`);
      const hint = field("hint");
      const shown = field("shown");
      return {
        code,
        area,
        severity,
        message,
        text,
        wrong: section("Wrong"),
        right: section("Right"),
        ...(hint ? { hint } : {}),
        ...(shown ? { shown } : {}),
      };
    });
}

export function readCatalogue(): Entry[] {
  const folder = `${here}catalogue/`;
  const entries = readdirSync(folder)
    .filter((name) => name.endsWith(".md"))
    .sort()
    .flatMap((name) => parseCatalogue(name.replace(/\.md$/, ""), readFileSync(folder + name, "utf8")));
  const seen = new Set<string>();
  for (const { code } of entries) {
    if (seen.has(code)) throw new Error(`catalogue: ${code} stands twice`);
    seen.add(code);
  }
  return entries;
}

/** The three generated texts by file name. */
export function generate(entries: readonly Entry[]): Record<string, string> {
  const functions = entries.map((e) => {
    const needed = slotsOf(e.message);
    const optional = slotsOf(e.hint ?? "").filter((s) => !needed.includes(s));
    const fields = [...needed.map((s) => `readonly ${s}: string`), ...optional.map((s) => `readonly ${s}?: string | undefined`)].join("; ");
    const type = fields === "" ? "Readonly<Record<string, never>>" : `{ ${fields} }`;
    const args = [e.code, e.severity, e.message].map(quote).join(", ");
    return `  /** ${e.message} */\n  ${camel(e.code)}: (range: Range, slots: ${type}, extras: Extras = {}): Diagnostic =>\n    diagnostic(${args}, ${e.hint ? quote(e.hint) : "undefined"}, range, slots, extras),`;
  });
  const head = "// Made by `npm run catalogue` from catalogue/*.md. Do not edit.\n\n";
  const page = entries.map((e) => {
    const samples = [
      e.wrong ? `Wrong\n\n${e.wrong}\n` : "",
      e.right ? `Right\n\n${e.right}\n` : "",
      e.shown ? `When: ${e.shown}\n` : "",
    ].filter((s) => s !== "");
    return `## ${e.code}\n\n*${e.severity}*: ${e.message}${e.hint ? ` ${e.hint}` : ""}\n\n${e.text}\n\n${samples.join("\n")}`;
  });
  return {
    "faults.generated.ts": `${head}import type { Range } from "../base/index.ts";\nimport { type Diagnostic, diagnostic, type Extras } from "./diagnostic.ts";\n\nexport const faults = {\n${functions.join("\n")}\n};\n`,
    "entries.generated.ts": `${head}import type { CatalogueEntry } from "./entry.ts";\n\nexport const entries: readonly CatalogueEntry[] = ${JSON.stringify(entries, null, 2)};\n`,
    "FAULTS.md": `# Faults and notices\n\nMade from the catalogue by \`npm run catalogue\`. Words in braces are filled in at the place.\n\n${page.join("\n")}`,
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of Object.entries(generate(readCatalogue()))) writeFileSync(here + name, text);
}
