// `jointwright tidy`: lines up the columns of notebooks; the meaning stays.

import { UsageFault } from "./arguments.ts";
import type { Command } from "./command.ts";
import { Opener, STANDARD_INPUT } from "./folder.ts";

export const tidy: Command = {
  name: "tidy",
  words: "NOTEBOOK...",
  least: 1,
  most: Number.POSITIVE_INFINITY,
  purpose: "Lines up the columns of notebooks in place; their meaning stays.",
  options: [{ name: "check", help: "change nothing, only say which are not tidy" }],
  more: "- reads standard input and prints the tidied text.\nExit code: 0 done, or all tidy; 1 with --check when one is not; 2 a file cannot be read or written.",
  run({ words, switches }, world) {
    const opener = new Opener(world);
    const onlyCheck = switches.has("check");
    let code = 0;
    for (const word of words) {
      const { session, file, path } = opener.open(word);
      const before = session.text(file);
      const after = session.tidy(file);
      if (onlyCheck) {
        if (before === after) continue;
        world.out(`not tidy: ${path}\n`);
        code = 1;
      } else if (word === STANDARD_INPUT) world.out(after);
      else if (before !== after) {
        try {
          world.writeFile(word, after);
        } catch (fault) {
          throw new UsageFault(`Cannot write ${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
        }
        world.out(`tidied: ${path}\n`);
      }
    }
    return code;
  },
};
