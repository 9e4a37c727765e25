// `jointwright examples`: runs the worked examples of the library and says which numbers no example holds.

import type { ExampleResult, Perturbation } from "../session/index.ts";
import { libraryFormulas, perturb, runExamples } from "../session/index.ts";
import { UsageFault, unknownWord } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import type { World } from "./world.ts";

interface Row {
  readonly module: string;
  readonly formulas: number;
  readonly examples: number;
  readonly passed: number;
  readonly read: number;
  readonly memory: number;
  readonly computed: number;
  /** Formulas that no example of the library calls. */
  readonly without: readonly string[];
}

const HEAD = ["module", "formulas", "examples", "passed", "read", "memory", "computed", "formulas with none"] as const;

function tableOf(rows: readonly Row[]): string {
  const cells = rows.map((row) => [
    row.module,
    ...[row.formulas, row.examples, row.passed, row.read, row.memory, row.computed].map(String),
    row.without.length === 0 ? "none" : row.without.join(", "),
  ]);
  const widths = HEAD.map((head, i) => Math.max(head.length, ...cells.map((row) => (row[i] ?? "").length)));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, i) => (i === 0 || i === HEAD.length - 1 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  return `${[line(HEAD), ...cells.map(line)].join("\n")}\n`;
}

function rowOf(module: string, formulas: readonly string[], own: readonly ExampleResult[], called: ReadonlySet<string>): Row {
  const known = (how: ExampleResult["known"]): number => own.filter((each) => each.known === how).length;
  return {
    module,
    formulas: formulas.length,
    examples: own.length,
    passed: own.filter((each) => each.passes).length,
    read: known("read"),
    memory: known("memory"),
    computed: known("computed"),
    without: formulas.filter((name) => !called.has(name)),
  };
}

const WHAT = {
  constant: "constants of formulas",
  bound: "bounds of conditions (exempt: they say which branch serves)",
  cell: "cells of data tables",
} as const;

function sayPerturbed(perturbed: readonly Perturbation[], world: World): void {
  for (const kind of ["constant", "bound", "cell"] as const) {
    const all = perturbed.filter((each) => each.kind === kind);
    const missed = all.filter((each) => !each.noticed);
    if (all.length === 0) continue;
    const what = WHAT[kind];
    world.out(`${what}: ${all.length - missed.length} of ${all.length} noticed when made 1 % larger\n`);
    for (const { file, line, number, text } of missed) world.out(`  not noticed: ${number} in ${file}:${line}  ${text}\n`);
  }
}

export const examples: Command = {
  name: "examples",
  words: "[MODULE]",
  least: 0,
  most: 1,
  purpose: "Runs every worked example of the library, or of one module, and counts them by how their answers are known.",
  options: [
    { name: "perturb", help: "make each constant and each cell of a table 1 % larger in turn; print those that no example notices" },
    JSON_OPTION,
  ],
  more: "Read: in a publication. Memory: remembered. Computed: worked out independently.\nExit code: 0 all pass and every formula has one, else 1; 2 for a module that there is not.",
  run({ words, switches }, world) {
    const { library } = world;
    const names = library.modules.map((each) => each.name);
    const module = words[0] === undefined ? undefined : names.find((name) => name === words[0] || name === `${words[0]}.joint.md`);
    if (words[0] !== undefined && module === undefined)
      throw new UsageFault(
        unknownWord(
          "module",
          words[0],
          names.map((name) => name.replace(".joint.md", "")),
        ),
      );
    const results = runExamples(library, module);
    const called = new Set((module === undefined ? results : runExamples(library)).flatMap((each) => each.formulas));
    const rows = [...libraryFormulas(library)]
      .filter(([name]) => module === undefined || name === module)
      .map(([name, formulas]) =>
        rowOf(
          name,
          formulas,
          results.filter((each) => each.module === name),
          called,
        ),
      );
    const failed = results.filter((each) => !each.passes);
    const progress = (done: number, of: number): void => {
      if (world.errIsTerminal && done % 20 === 0) world.err(`\r${done} of ${of}`);
    };
    const perturbed = switches.has("perturb") ? perturb(library, module, progress) : undefined;
    if (perturbed !== undefined && world.errIsTerminal) world.err("\r");
    if (switches.has("json"))
      world.out(`${JSON.stringify({ modules: rows, failed, ...(perturbed === undefined ? {} : { perturbed }) }, null, 2)}\n`);
    else {
      world.out(tableOf(rows));
      for (const each of failed) world.out(`fails: ${each.text}  gives ${each.shown === "" ? each.faults.join(" ") : each.shown}\n`);
      if (perturbed !== undefined) sayPerturbed(perturbed, world);
    }
    return failed.length === 0 && rows.every((row) => row.without.length === 0) ? 0 : 1;
  },
};
