// The command line as a whole: finds the command, reads its arguments, turns misuse into words and exit code 2.

import { readArguments, UsageFault, unknownWord } from "./arguments.ts";
import { branch } from "./branch.ts";
import { check } from "./check.ts";
import { type Command, helpFor, helpForAll } from "./command.ts";
import { compare } from "./compare.ts";
import { evaluate } from "./evaluate.ts";
import { examples } from "./examples.ts";
import { faults } from "./faults.ts";
import { impact } from "./impact.ts";
import { mark } from "./mark.ts";
import { packageCommand } from "./package.ts";
import { reproduceCommand } from "./reproduce.ts";
import { sheet } from "./sheet.ts";
import { status } from "./status.ts";
import { tidy } from "./tidy.ts";
import { trace } from "./trace.ts";
import { verify } from "./verify.ts";
import type { World } from "./world.ts";

export const commands: readonly Command[] = [
  evaluate,
  check,
  trace,
  sheet,
  packageCommand,
  verify,
  compare,
  status,
  mark,
  impact,
  branch,
  reproduceCommand,
  tidy,
  examples,
  faults,
];

/** Runs the program with its arguments and gives the exit code: 0, 1 (see each command), 2 for faults and misuse. */
export function runCommand(args: readonly string[], world: World): number | Promise<number> {
  const [first, ...rest] = args;
  if (first === "--version" && rest.length === 0) {
    world.out(`jointwright ${world.version}\n`);
    return 0;
  }
  if (first === "--help" || first === "-h" || first === "help") {
    const named = commands.find(({ name }) => name === rest[0]);
    world.out(named === undefined ? helpForAll(commands) : helpFor(named));
    return 0;
  }
  const command = commands.find(({ name }) => name === first);
  if (command === undefined) {
    const names = [...commands.map(({ name }) => name), "--help", "--version"];
    world.err(first === undefined ? helpForAll(commands) : `${unknownWord("command", first, names)}\nSee jointwright --help.\n`);
    return 2;
  }
  const beforeDashes = rest.includes("--") ? rest.slice(0, rest.indexOf("--")) : rest;
  if (beforeDashes.includes("--help") || beforeDashes.includes("-h")) {
    world.out(helpFor(command));
    return 0;
  }
  try {
    const given = readArguments(rest, command.options);
    if (given.words.length < command.least) throw new UsageFault(`${command.name} needs ${command.words}.`);
    if (given.words.length > command.most) {
      throw new UsageFault(
        `${command.name} takes ${command.words} alone; "${given.words[command.most]}" is one too many. Is a quote missing?`,
      );
    }
    const code = command.run(given, world);
    return typeof code === "number" ? code : code.catch((fault: unknown) => misused(command, fault, world));
  } catch (fault) {
    return misused(command, fault, world);
  }
}

function misused(command: Command, fault: unknown, world: World): number {
  if (!(fault instanceof UsageFault)) throw fault;
  world.err(`${fault.message}\nSee jointwright ${command.name} --help.\n`);
  return 2;
}
