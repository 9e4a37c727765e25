// `jointwright status`: who checked what, whether marks still stand, and what the next status would demand.

import { type Demand, type DemandKind, demandsOf, readSignoff, type Signoff, statuses } from "../signoff/index.ts";
import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { type Opened, Opener } from "./folder.ts";
import { type Paint, paintOut } from "./paint.ts";

const WORDS: Readonly<Record<DemandKind, string>> = {
  fault: "a fault",
  waiting: "waits for a value",
  "failing check": "a check fails",
  "open check": "a check is open",
  assumption: "an assumption that nobody confirmed; confirm it, or name it in accepted_assumptions",
  "title block": "the title block does not say",
  "same person": "stands in two roles",
  library: "the library must be pinned: library",
  "not checked": "a check that no checker has marked",
  "mark lapsed": "its value moved after it was marked",
  "entry differs": "was entered a second time with another value",
  successor: "the title block does not say what follows",
};

export const status: Command = {
  name: "status",
  words: "NOTEBOOK",
  least: 1,
  most: 1,
  purpose: "Shows marks, second entries and comments of the check, and what a status still demands.",
  options: [{ name: "for", value: "STATUS", help: `one of ${statuses.join(", ")}; without it the status in the title block` }, JSON_OPTION],
  more: "It claims no approval: persons sign, this only says what is missing.\nExit code: 0 nothing is missing for that status, 1 something is.",
  run({ words, switches, values }, world) {
    const opened = new Opener(world).open(words[0] ?? "");
    const { session, file } = opened;
    const wanted = values.get("for") ?? (session.snapshot(file).title.status || "in preparation");
    if (!(statuses as readonly string[]).includes(wanted)) throw new UsageFault(`"${wanted}" is no status: ${statuses.join(", ")}.`);
    const signoff = readSignoff(session, file);
    const demands = demandsOf(session, file, wanted, world.library.version);
    if (switches.has("json")) world.out(`${JSON.stringify({ notebook: opened.path, status: wanted, signoff, demands }, null, 2)}\n`);
    else world.out(`${describe(opened, wanted, signoff, demands, paintOut(world))}\n`);
    return demands.length === 0 ? 0 : 1;
  },
};

function describe({ path, session, file }: Opened, wanted: string, signoff: Signoff, demands: readonly Demand[], paint: Paint): string {
  const text = session.text(file);
  const lineOf = (from: number): string => (from === 0 ? "title block" : `line ${text.slice(0, from).split("\n").length}`);
  const { results, marks, entries, comments } = signoff;
  const marked = results.filter((result) => result.marked === "stands").length;
  return [
    paint("strong", path),
    `  creator ${signoff.creator || "not named"}, checker ${signoff.checker || "not named"}, approval person ${signoff.approver || "not named"}`,
    `  ${marked} of ${results.length} results carry a mark that stands`,
    ...marks.map(({ of, state, method, by, date, value, now }) => {
      const moved = state === "lapsed" ? `, made for ${value}, now ${now}` : "";
      return `  ${paint(state === "stands" ? "good" : "doubt", state)}  ${of}: ${method}, ${by} ${date}${moved}`;
    }),
    ...entries.map(({ of, entered, agrees, by }) => {
      const word = agrees === undefined ? "unknown" : agrees ? "agrees" : "differs";
      return `  ${paint(agrees === true ? "good" : "doubt", word)}  ${of} entered again as ${entered}, ${by}`;
    }),
    ...comments.map(({ of, by, text: words }) => `  comment${of === "" ? "" : ` on ${of}`}, ${by}: ${words}`),
    demands.length === 0 ? `  nothing is missing for "${wanted}"` : `  missing for "${wanted}":`,
    ...demands.map(({ kind, about, from }) => `    ${paint("bad", about)}: ${WORDS[kind]} (${lineOf(from)})`),
  ].join("\n");
}
