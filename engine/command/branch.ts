// `jointwright branch`: a notebook from a released package for a failure in the field, with what was found put in.

import { sha256 } from "../base/index.ts";
import { UsageFault } from "./arguments.ts";
import type { Command } from "./command.ts";
import { readBytes } from "./output-file.ts";

export const branch: Command = {
  name: "branch",
  words: "PACKAGE NOTEBOOK [NAME=NUMBER...]",
  least: 2,
  most: Number.POSITIVE_INFINITY,
  purpose: "Writes a notebook from a package for a failure in the field, with inputs as they were found.",
  options: [],
  more: "Numbers are in the unit that the notebook writes for that input. The package stays as it is; the new notebook is in preparation, without number and signatures.\nExit code: 0 written, 1 written but a name is no input of one number, 2 it cannot be read or written.",
  async run({ words }, world) {
    const { branchOf } = await import("../life/index.ts");
    const { readPackage } = await import("../package/index.ts");
    const [path = "", out = "", ...pairs] = words;
    const bytes = readBytes(path, world);
    const opened = (() => {
      try {
        return readPackage(bytes);
      } catch (fault) {
        throw new UsageFault(`${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    })();
    const { manifest, sources, results } = opened;
    const number = [results?.title.number, results?.title.revision].filter((part) => part !== undefined && part !== "").join(" ");
    const { text, unknown } = branchOf(world.library, sources, manifest.notebook, pairs.map(found), {
      number: number === "" ? manifest.notebook : number,
      digest: sha256(bytes),
    });
    try {
      world.writeFile(out, text);
    } catch (fault) {
      throw new UsageFault(`Cannot write ${out}: ${fault instanceof Error ? fault.message : String(fault)}`);
    }
    world.out(`written: ${out}, from ${manifest.notebook} with ${pairs.length - unknown.length} inputs as found\n`);
    const others = sources.filter(({ name }) => name !== manifest.notebook).map(({ name }) => name);
    if (others.length > 0) world.out(`it uses ${others.join(", ")} of the package\n`);
    for (const name of unknown) world.err(`${name} is no input of one number; nothing was put in\n`);
    return unknown.length === 0 ? 0 : 1;
  },
};

function found(pair: string): { readonly name: string; readonly value: number } {
  const [name = "", written = ""] = pair.split("=", 2);
  const value = Number(written.trim());
  if (name.trim() === "" || written.trim() === "" || !Number.isFinite(value)) throw new UsageFault(`"${pair}" is no NAME=NUMBER.`);
  return { name: name.trim(), value };
}
