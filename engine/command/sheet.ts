// `jointwright sheet`: the typeset calculation as one file, to read or to print.

import { utf8 } from "../base/index.ts";
import { makeSheet, sheetHtml } from "../sheet/index.ts";
import { UsageFault } from "./arguments.ts";
import type { Command } from "./command.ts";
import { Opener } from "./folder.ts";
import { choice, PAPER, PAPER_OPTION, stem, UNITS, UNITS_OPTION, write } from "./output-file.ts";

export const sheet: Command = {
  name: "sheet",
  words: "NOTEBOOK",
  least: 1,
  most: 1,
  purpose: "Writes the typeset calculation as one HTML or PDF file.",
  options: [
    { name: "out", value: "FILE", help: "NAME.html or NAME.pdf; the notebook's name with .html without it" },
    PAPER_OPTION,
    UNITS_OPTION,
  ],
  more: "The paper is that of a PDF; HTML prints to whichever the browser has.\nExit code: 0 written, 2 it cannot be made or written.",
  async run({ words, values }, world) {
    const { PackageRefused, sheetPdf } = await import("../package/index.ts");
    const [path = ""] = words;
    const out = values.get("out") ?? `${stem(path)}.html`;
    if (!/\.(html|pdf)$/i.test(out)) throw new UsageFault(`--out ends in .html or .pdf, and ${out} does not.`);
    const paper = choice(values, "paper", PAPER);
    const units = choice(values, "units", UNITS);
    const { session, file } = new Opener(world).open(path);
    if (units !== "notebook") session.tools.setSystem(units);
    const made = makeSheet(session, world.library, file, { version: world.version, units });
    try {
      const bytes = /\.pdf$/i.test(out)
        ? await sheetPdf(made, { paper, fonts: world.printFonts, attachments: [{ name: file, bytes: utf8(session.text(file)) }] })
        : utf8(sheetHtml(made, world.webFonts()));
      write(out, bytes, world);
    } catch (fault) {
      if (!(fault instanceof PackageRefused)) throw fault;
      world.err(`${fault.problems.map((problem) => `cannot be set: ${problem}`).join("\n")}\n`);
      return 2;
    }
    world.out(`written: ${out}\n`);
    return 0;
  },
};
