// `jointwright verify`: a package held against its manifest and against what its source gives.

import type { Verified } from "../package/index.ts";
import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { readBytes } from "./output-file.ts";
import { paintOut } from "./paint.ts";

export const verify: Command = {
  name: "verify",
  words: "PACKAGE",
  least: 1,
  most: 1,
  purpose: "Recomputes a package from its own source and says what differs: files, values, versions.",
  options: [JSON_OPTION],
  more: "Exit code: 0 all agrees, 1 something differs, 2 it is no package.",
  async run({ words, switches }, world) {
    const { verifyPackage } = await import("../package/index.ts");
    const [path = ""] = words;
    const bytes = readBytes(path, world);
    let verified: Verified;
    try {
      verified = await verifyPackage(bytes, world.library, {
        version: world.version,
        webFonts: world.webFonts(),
        printFonts: world.printFonts,
      });
    } catch (fault) {
      throw new UsageFault(`${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
    }
    const { findings, files, values, title } = verified;
    const code = findings.length === 0 ? 0 : 1;
    if (switches.has("json")) {
      world.out(`${JSON.stringify({ package: path, ...verified, exit: code }, null, 2)}\n`);
      return code;
    }
    const paint = paintOut(world);
    world.out(`${paint("strong", `${path}: ${title}`)}\n`);
    for (const { kind, name, words: said } of findings)
      world.out(`  ${paint(kind === "version" ? "doubt" : "bad", kind.toUpperCase())}  ${name}: ${said}\n`);
    const verdict = code === 0 ? paint("good", "AGREES") : paint("bad", "DIFFERS");
    world.out(
      `  ${verdict}  ${files} files with the digest of the manifest, ${values} values recomputed, ${findings.length} ${findings.length === 1 ? "difference" : "differences"}\n`,
    );
    return code;
  },
};
