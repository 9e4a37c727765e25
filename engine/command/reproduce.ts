// `jointwright reproduce`: which input, had it been otherwise, would have given the load and the mode that were seen.

import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { Opener } from "./folder.ts";

export const reproduceCommand: Command = {
  name: "reproduce",
  words: "NOTEBOOK RESULT NUMBER",
  least: 3,
  most: 3,
  purpose: "Ranks the inputs by how well each, varied alone, gives the load and failure mode that were seen.",
  options: [{ name: "mode", value: "MODE", help: "the mode that was seen, by its title in the ledger or its check" }, JSON_OPTION],
  more: "NUMBER is in the unit in which the notebook shows RESULT. An input moves within its bounds, or half up and down where it has none.\nIt points to what should be looked at; it proves nothing.\nExit code: 0 one input reproduces it, 1 none does, 2 there is no such result.",
  async run({ words, switches, values }, world) {
    const { reproduce, REPRODUCES } = await import("../life/index.ts");
    const [path = "", result = "", written = ""] = words;
    const value = Number(written.replace("−", "-"));
    if (written.trim() === "" || !Number.isFinite(value)) throw new UsageFault(`"${written}" is no number.`);
    const { session, file } = new Opener(world).open(path);
    const mode = values.get("mode");
    const found = reproduce(session, file, { result, value, ...(mode === undefined ? {} : { mode }) });
    if (found === undefined) throw new UsageFault(`${result} is no result with one number.`);
    const code = found.some(({ miss, sameMode }) => miss <= REPRODUCES && sameMode) ? 0 : 1;
    if (switches.has("json")) {
      world.out(`${JSON.stringify({ result, seen: value, candidates: found, exit: code }, null, 2)}\n`);
      return code;
    }
    const rows = found.map(({ name, unit, written: was, needed, change, gives, governs, sameMode }) => {
      const percent = change === undefined ? "" : ` (${change < 0 ? "−" : "+"}${Math.abs(change * 100).toPrecision(3)} %)`;
      const fits = governs === "" ? "" : `, governs ${governs}${sameMode ? "" : ": another mode than was seen"}`;
      return `  ${name}: ${was} -> ${Number(needed.toPrecision(5))} ${unit}${percent} gives ${Number(gives.toPrecision(5))}${fits}`;
    });
    world.out(`${rows.length === 0 ? `no input moves ${result}` : rows.join("\n")}\n`);
    return code;
  },
};
