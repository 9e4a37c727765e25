// `jointwright mark`: puts a checker's mark on a result, or a second entry of an input, into the notebook as readable text.

import { applyChanges } from "../base/index.ts";
import { addEntry, addMark, type Method, methods } from "../signoff/index.ts";
import { UsageFault } from "./arguments.ts";
import type { Command } from "./command.ts";
import { Opener } from "./folder.ts";

export const mark: Command = {
  name: "mark",
  words: "NOTEBOOK RESULT",
  least: 2,
  most: 2,
  purpose: "Marks a result as checked, or enters an input a second time; the mark is a line of the notebook.",
  options: [
    { name: "by", value: "NAME", help: "who checked; not who made the calculation" },
    { name: "date", value: "DATE", help: "when, as 2026-03-04" },
    { name: "method", value: "METHOD", help: methods.join(", ") },
    { name: "note", value: "TEXT", help: "e.g. the number of the hand check" },
    { name: "entered", value: "VALUE", help: "the input as entered a second time, without sight of the first" },
  ],
  more: "Exit code: 0 the notebook has the mark; 2 it was refused.",
  run({ words, values }, world) {
    const [path = "", of = ""] = words;
    const { session, file } = new Opener(world).open(path);
    const by = needed(values, "by");
    const date = needed(values, "date");
    if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) throw new UsageFault(`"${date}" is no date: write it as 2026-03-04.`);
    const entered = values.get("entered");
    const method = entered === undefined ? needed(values, "method") : "inspected";
    if (!(methods as readonly string[]).includes(method)) throw new UsageFault(`"${method}" is no method: ${methods.join(", ")}.`);
    const added =
      entered === undefined
        ? addMark(session, file, { of, by, date, method: method as Method, note: values.get("note") ?? "" })
        : addEntry(session, file, { of, by, date, entered });
    if ("refused" in added) throw new UsageFault([added.refused.message, added.refused.hint ?? ""].join(" ").trim());
    world.writeFile(path, applyChanges(session.text(file), [added.change]));
    world.out(`${path}: ${of} ${entered === undefined ? `marked, ${method}` : "entered again"}, ${by} ${date}\n`);
    return 0;
  },
};

function needed(values: ReadonlyMap<string, string>, name: string): string {
  const value = values.get(name);
  if (value === undefined) throw new UsageFault(`--${name} is needed.`);
  return value;
}
