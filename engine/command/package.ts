// `jointwright package`: a notebook as a calc package, everything computed anew.

import type { Command } from "./command.ts";
import { Opener } from "./folder.ts";
import { choice, PAPER, PAPER_OPTION, stem, UNITS, UNITS_OPTION, write } from "./output-file.ts";

export const packageCommand: Command = {
  name: "package",
  words: "NOTEBOOK",
  least: 1,
  most: 1,
  purpose: "Makes the calc package: sheet as PDF and HTML, results for machines, sources, digests.",
  options: [{ name: "out", value: "FILE", help: "the notebook's name with .zip without it" }, PAPER_OPTION, UNITS_OPTION],
  more: "The same notebook and library give the same bytes.\nExit code: 0 made, 1 made but a check fails, is open, or a line has a fault; 2 it cannot be made.",
  async run({ words, values }, world) {
    // Loaded here, so that no other command waits for the writers.
    const { makePackage, PackageRefused } = await import("../package/index.ts");
    const [path = ""] = words;
    const out = values.get("out") ?? `${stem(path)}.zip`;
    const paper = choice(values, "paper", PAPER);
    const units = choice(values, "units", UNITS);
    const { session, file } = new Opener(world).open(path);
    try {
      const { bytes, manifest, results } = await makePackage(session, world.library, file, {
        version: world.version,
        paper,
        units,
        webFonts: world.webFonts(),
        printFonts: world.printFonts,
      });
      write(out, bytes, world);
      world.out(`made: ${out}\n`);
      for (const each of manifest.files) world.out(`  ${each.sha256.slice(0, 12)}  ${each.name}, ${each.bytes} bytes\n`);
      const doubtful = [
        ...results.checks
          .filter(({ state }) => state !== "holds" && state !== "nominal" && state !== "ruled out")
          .map(({ title, state }) => `${state}: ${title}`),
        ...results.faults.map(({ line, message }) => `fault in line ${line}: ${message}`),
      ];
      for (const words of doubtful) world.err(`${words}\n`);
      return doubtful.length === 0 ? 0 : 1;
    } catch (fault) {
      if (!(fault instanceof PackageRefused)) throw fault;
      world.err(`${fault.problems.map((problem) => `not made: ${problem}`).join("\n")}\n`);
      return 2;
    }
  },
};
