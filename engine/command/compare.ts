// `jointwright compare`: two packages or notebooks side by side, by their values.

import type { Difference, Side } from "../package/index.ts";
import { sourceFiles } from "../sheet/index.ts";
import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { Opener } from "./folder.ts";
import { readBytes } from "./output-file.ts";
import { paintOut } from "./paint.ts";
import type { World } from "./world.ts";

const PACKAGE = /\.zip$/i;

export const compare: Command = {
  name: "compare",
  words: "BEFORE AFTER",
  least: 2,
  most: 2,
  purpose: "Shows which inputs, results, checks, modes and texts differ between two packages or notebooks.",
  options: [JSON_OPTION],
  more: "A name that ends in .zip is a package, with the results it states; any other is a notebook, computed now.\nExit code: 0 nothing differs, 1 something does, 2 one cannot be read.",
  async run({ words, switches }, world) {
    const { compareResults } = await import("../package/index.ts");
    const [before = "", after = ""] = words;
    const differences = compareResults(await sideOf(before, world), await sideOf(after, world));
    const code = differences.length === 0 ? 0 : 1;
    if (switches.has("json")) world.out(`${JSON.stringify({ before, after, differences, exit: code }, null, 2)}\n`);
    else world.out(described(differences, world));
    return code;
  },
};

async function sideOf(path: string, world: World): Promise<Side> {
  const { readPackage, readResults } = await import("../package/index.ts");
  if (PACKAGE.test(path)) {
    const opened = (() => {
      try {
        return readPackage(readBytes(path, world));
      } catch (fault) {
        if (fault instanceof UsageFault) throw fault;
        throw new UsageFault(`${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    })();
    if (opened.results === undefined) throw new UsageFault(`${path}: its results.json cannot be read.`);
    return { results: opened.results, sources: opened.sources };
  }
  const { session, file } = new Opener(world).open(path);
  const results = readResults(session, world.library, file, world.version);
  return { results, sources: sourceFiles(session, file).map((name) => ({ name, text: session.text(name) })) };
}

const HEADS: Readonly<Record<Difference["kind"], string>> = {
  title: "Title block",
  library: "Library",
  program: "Program",
  input: "Inputs",
  result: "Results",
  check: "Checks",
  mode: "Failure modes",
  fault: "Faults",
  text: "Text",
  source: "Data files",
};

function described(differences: readonly Difference[], world: World): string {
  if (differences.length === 0) return "Nothing differs.\n";
  const paint = paintOut(world);
  const kinds = [...new Set(differences.map(({ kind }) => kind))];
  return kinds
    .map((kind) => {
      const rows = differences.filter((each) => each.kind === kind).map((each) => row(each));
      return `${paint("strong", HEADS[kind])}\n${rows.join("\n")}\n`;
    })
    .join("\n");
}

function row({ name, before, after, change, kind }: Difference): string {
  const percent = change === undefined ? "" : `  (${change < 0 ? "−" : "+"}${(Math.abs(change) * 100).toPrecision(3)} %)`;
  const label = kind === "text" || kind === "fault" ? "" : `  ${name}${percent}\n`;
  const side = (mark: string, words: string): readonly string[] => (words === "" ? [] : [`    ${mark} ${words}`]);
  return label + [...side("-", before), ...side("+", after)].join("\n");
}
