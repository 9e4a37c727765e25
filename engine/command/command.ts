// What a command is, and its help page.

import type { Arguments, Option } from "./arguments.ts";
import type { World } from "./world.ts";

export interface Command {
  readonly name: string;
  /** The words it takes, as its help shows them. */
  readonly words: string;
  /** How many words: at least, and at most. */
  readonly least: number;
  readonly most: number;
  /** One line. */
  readonly purpose: string;
  readonly options: readonly Option[];
  /** What its exit codes mean, and what else is worth saying. */
  readonly more: string;
  /** Gives the exit code; at once where nothing has to be waited for. */
  run(given: Arguments, world: World): number | Promise<number>;
}

export const JSON_OPTION: Option = { name: "json", help: "print JSON, for other programs" };

const PROGRAM = "jointwright";

const column = (rows: readonly (readonly [string, string])[]): string => {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join("\n");
};

export function helpFor(command: Command): string {
  const options = [...command.options, { name: "help", help: "say this" } satisfies Option];
  const rows = options.map(({ name, value, help }): [string, string] => [`--${name}${value === undefined ? "" : ` ${value}`}`, help]);
  return `Usage: ${PROGRAM} ${command.name} ${command.words} [OPTIONS]\n\n${command.purpose}\n\n${column(rows)}\n\n${command.more}\n`;
}

export function helpForAll(commands: readonly Command[]): string {
  const rows = commands.map(({ name, words, purpose }): [string, string] => [`${name} ${words}`, purpose]);
  return `Usage: ${PROGRAM} COMMAND ...

Calculations of threaded joints in printed and fibre-reinforced plastic parts.

${column(rows)}

  ${PROGRAM} COMMAND --help   says more of one
  ${PROGRAM} --version        says the version

A notebook is a file NAME.joint.md; - reads it from standard input. What it uses is looked for in its folder.
Results go to standard output, faults to standard error.
`;
}
