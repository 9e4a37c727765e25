// `jointwright trace`: the working of one value, symbols, numbers put in, result, and what feeds it.

import { traceText } from "../trace/index.ts";
import { UsageFault, unknownWord } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { type Opened, Opener } from "./folder.ts";
import { paintErr } from "./paint.ts";
import { describeFault } from "./report.ts";
import type { World } from "./world.ts";

/** More levels than a library nests; the work is bounded by the evaluation itself. */
const ALL_LEVELS = 100;

/** Says why a name has no working: its line is at fault, it waits, or there is no such name. */
function sayWhyNot({ session, file, path }: Opened, name: string, world: World): void {
  const outputs = session.outputs(file);
  const output = outputs.find((one) => one.name === name);
  if (output === undefined) {
    const known = outputs.flatMap((one) => (one.name === undefined ? [] : [one.name]));
    throw new UsageFault(unknownWord("name", name, known));
  }
  const source = { path, text: session.text(file) };
  const textOf = (other: string): string | undefined => (session.files().includes(other) ? session.text(other) : undefined);
  for (const diagnostic of output.diagnostics) world.err(`${describeFault(diagnostic, source, textOf, paintErr(world))}\n`);
  const waits = output.waitsFor ?? [];
  if (waits.length > 0) world.err(`${name} waits for ${waits.join(", ")}.\n`);
  else if (output.diagnostics.length === 0) world.err(`${name} is a ${output.kind}; only a value has a working.\n`);
}

export const trace: Command = {
  name: "trace",
  words: "NOTEBOOK NAME",
  least: 2,
  most: 2,
  purpose: "Shows the working of a value: symbols, the numbers put in, the result, and what feeds it.",
  options: [{ name: "open", help: "open every call of a formula into its steps" }, JSON_OPTION],
  more: "Exit code: 0 a value, 2 a fault, or no such name.",
  run({ words, switches }, world) {
    const [path = "", name = ""] = words;
    const opened = new Opener(world).open(path);
    const trace = opened.session.trace(opened.file, name, switches.has("open") ? ALL_LEVELS : 0);
    if (trace === undefined) {
      sayWhyNot(opened, name, world);
      return 2;
    }
    const { view, usedBy } = trace;
    const feedsInto = usedBy.length === 0 ? [] : [`used by: ${usedBy.join(", ")}`];
    world.out(switches.has("json") ? `${JSON.stringify(trace, null, 2)}\n` : `${[...traceText(view), ...feedsInto].join("\n")}\n`);
    return view.fault === undefined ? 0 : 2;
  },
};
