// `jointwright evaluate`: one expression, its value in full digits and its unit.

import type { Evaluated } from "../session/index.ts";
import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { Opener, STANDARD_INPUT } from "./folder.ts";
import { paintErr } from "./paint.ts";
import { describeFault, placed } from "./report.ts";

/** All digits, with the unit set off as in the shown text (`45°` has no space, `9 N·m` has one). */
function fullText({ shown }: Evaluated): string {
  if (shown.number === "" || shown.full === "") return shown.text;
  return shown.text.startsWith(shown.number) ? shown.full + shown.text.slice(shown.number.length) : `${shown.full} ${shown.unit}`.trim();
}

export const evaluate: Command = {
  name: "evaluate",
  words: "EXPR",
  least: 1,
  most: 1,
  purpose: "Prints the value of one expression in full digits, with its unit.",
  options: [
    { name: "as", value: "UNIT", help: "show it in this unit" },
    { name: "in", value: "NOTEBOOK", help: "with the names of this notebook; - for standard input" },
    JSON_OPTION,
  ],
  more: "EXPR is in the language of the notebook; - reads it from standard input.\nExit code: 0 a value, 2 a fault.",
  run({ words, switches, values }, world) {
    const notebook = values.get("in");
    const given = words[0] ?? "";
    if (given === STANDARD_INPUT && notebook === STANDARD_INPUT) throw new UsageFault("Only one of the two can come from standard input.");
    const expression = given === STANDARD_INPUT ? world.readStandardInput().trim() : given;
    const opened = notebook === undefined ? undefined : new Opener(world).open(notebook);
    const session = opened?.session ?? world.createSession();
    const unit = values.get("as");
    const { result, diagnostics } = session.evaluate(expression, {
      ...(opened === undefined ? {} : { file: opened.file }),
      ...(unit === undefined ? {} : { as: unit }),
    });
    const source = { path: "expression", text: expression };
    const textOf = (file: string): string | undefined => (session.files().includes(file) ? session.text(file) : undefined);
    for (const diagnostic of diagnostics) world.err(`${describeFault(diagnostic, source, textOf, paintErr(world))}\n`);
    const faults = diagnostics.map((diagnostic) => placed(diagnostic, source));
    const failed = result === undefined || diagnostics.some(({ severity }) => severity === "fault");
    if (switches.has("json")) {
      const { shown, ...rest } = result ?? { shown: undefined };
      const value = shown === undefined ? {} : { text: shown.text, number: shown.full, ...rest };
      world.out(`${JSON.stringify({ expression, ...(failed ? {} : value), faults }, null, 2)}\n`);
    } else if (!failed) {
      world.out(`${fullText(result)}\n`);
      const paint = paintErr(world);
      for (const limit of result.outside) world.err(`${paint("doubt", "outside validity")}: ${limit}\n`);
    }
    return failed ? 2 : 0;
  },
};
