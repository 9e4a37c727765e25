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
const anchor = (title: string): string =>
  title
    .toLowerCase()
    .replace(/[^\w -]/g, "")
    .replaceAll(" ", "-");

/** The title of each area on the user page, in the order of its chapters: from reading a notebook to evaluating it. */
const titles: Readonly<Record<string, string>> = {
  notebook: "The notebook: title block, fences and data",
  syntax: "How a statement is written",
  units: "How a unit is written",
  check: "Names, types and dimensions",
  run: "Values",
  session: "The notebook as a whole",
  signoff: "The check of a calculation",
};

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
  return {
    "faults.generated.ts": `${head}import type { Range } from "../base/index.ts";\nimport { type Diagnostic, diagnostic, type Extras } from "./diagnostic.ts";\n\nexport const faults = {\n${functions.join("\n")}\n};\n`,
    "entries.generated.ts": `${head}import type { CatalogueEntry } from "./entry.ts";\n\nexport const entries: readonly CatalogueEntry[] = ${JSON.stringify(entries, null, 2)};\n`,
    "FAULTS.md": faultsPage(entries),
  };
}

/** The user page: the areas with their codes, then each entry. */
function faultsPage(entries: readonly Entry[]): string {
  const untitled = entries.find((e) => titles[e.area] === undefined);
  if (untitled) throw new Error(`catalogue: the area ${untitled.area} has no title`);
  const areas = Object.entries(titles).map(([area, title]) => ({ title, entries: entries.filter((e) => e.area === area) }));
  const contents = areas.map((area) => `- [${area.title}](#${anchor(area.title)}): ${counted(area.entries)}`);
  const chapters = areas.flatMap((area) => [
    `## ${area.title}`,
    area.entries.map((e) => `[${e.code}](#${e.code})`).join(" · "),
    ...area.entries.flatMap(entryBlocks),
  ]);
  const intro = "Made from the catalogue by `npm run catalogue`. Words in braces are filled in at the place.";
  return `${["# Faults and notices", intro, contents.join("\n"), ...chapters].join("\n\n")}\n`;
}

/** The blocks of one entry, between which a blank line stands. */
function entryBlocks({ code, severity, message, hint, text, wrong, right, shown }: Entry): string[] {
  const words = (hint === undefined ? message : `${message} ${hint}`).replaceAll("\\", "\\\\");
  const samples = [...(wrong ? ["Wrong:", fenced(code, wrong)] : []), ...(right ? ["Right:", fenced(code, right)] : [])];
  return [`### ${code}`, `*${severity}*: ${words}`, text, ...(shown ? [`When: ${shown}.`] : []), ...samples].filter(
    (block) => block !== "",
  );
}

/** A sample as it is written: bare, its `---` lines would become rules and its headings those of the page. */
function fenced(code: string, sample: string): string {
  if (sample.includes("~~~~")) throw new Error(`catalogue: the sample of ${code} holds the fence that is put round it`);
  return `~~~~\n${sample}\n~~~~`;
}

function counted(entries: readonly Entry[]): string {
  const of = (severity: string): string => {
    const count = entries.filter((e) => e.severity === severity).length;
    return count === 0 ? "" : `${count} ${severity}${count === 1 ? "" : "s"}`;
  };
  return [of("fault"), of("notice")].filter((part) => part !== "").join(", ");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const [name, text] of Object.entries(generate(readCatalogue()))) writeFileSync(here + name, text);
}
