// `jointwright faults`: explains one fault of the catalogue, or lists them all.

import type { CatalogueEntry } from "../diagnostics/index.ts";
import { UsageFault, unknownWord } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { type Paint, paintOut } from "./paint.ts";

const indented = (text: string): string => text.replace(/^(?=.)/gm, "  ");

function explain(entry: CatalogueEntry, paint: Paint): string {
  const { code, severity, message, hint, text, wrong, right, shown } = entry;
  return [
    `${paint("strong", code)} (${severity})`,
    indented(message),
    ...(hint === undefined ? [] : [indented(hint)]),
    ...(text === "" ? [] : ["", text]),
    ...(wrong === "" ? [] : ["", "Wrong", indented(wrong)]),
    ...(right === "" ? [] : ["", "Right", indented(right)]),
    ...(shown === undefined ? [] : ["", `When: ${shown}`]),
    "",
  ].join("\n");
}

export const faults: Command = {
  name: "faults",
  words: "[CODE]",
  least: 0,
  most: 1,
  purpose: "Explains a fault by its code; without one lists all codes.",
  options: [JSON_OPTION],
  more: "Words in braces are filled in where the fault arises.\nExit code: 0, or 2 when there is no such code.",
  run({ words, switches }, world) {
    const code = words[0];
    if (code === undefined) {
      const width = Math.max(...world.catalogue.map((entry) => entry.code.length));
      if (switches.has("json")) world.out(`${JSON.stringify(world.catalogue, null, 2)}\n`);
      else world.out(`${world.catalogue.map((entry) => `${entry.code.padEnd(width)}  ${entry.message}`).join("\n")}\n`);
      return 0;
    }
    const entry = world.catalogue.find((one) => one.code === code);
    if (entry === undefined) {
      const known = world.catalogue.map((one) => one.code);
      throw new UsageFault(unknownWord("fault code", code, known));
    }
    world.out(switches.has("json") ? `${JSON.stringify(entry, null, 2)}\n` : explain(entry, paintOut(world)));
    return 0;
  },
};
