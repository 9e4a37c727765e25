// `jointwright check`: recomputes notebooks and says what holds, fails, waits or is at fault.

import type { LineOutput } from "../session/index.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { type Opened, Opener } from "./folder.ts";
import { type Paint, paintErr, paintOut, type Style } from "./paint.ts";
import { describeFault, type PlacedFault, placed } from "./report.ts";
import type { World } from "./world.ts";

type Check = NonNullable<LineOutput["check"]>;

interface Findings {
  readonly opened: Opened;
  readonly title: string;
  readonly checks: readonly (Check & { readonly waitsFor: readonly string[] })[];
  readonly examples: readonly { readonly title: string; readonly state: string; readonly shown?: string }[];
  readonly waiting: readonly { readonly name: string; readonly waitsFor: readonly string[] }[];
  readonly outputs: readonly LineOutput[];
}

const STATES: Readonly<Record<Check["state"], readonly [string, Style]>> = {
  holds: ["HOLDS", "good"],
  nominal: ["HOLDS (nominal only)", "doubt"],
  fails: ["FAILS", "bad"],
  open: ["NOT EVALUATED", "doubt"],
};

function findingsOf(opened: Opened): Findings {
  const { session, file } = opened;
  const { title } = session.snapshot(file);
  const outputs = session.outputs(file);
  const text = session.text(file);
  return {
    opened,
    title: [title.number, title.revision, title.title].filter((part) => part !== "").join(" "),
    checks: outputs.flatMap(({ check, waitsFor }) => (check === undefined ? [] : [{ ...check, waitsFor: waitsFor ?? [] }])),
    examples: outputs.flatMap(({ example, from, to }) =>
      example === undefined ? [] : [{ ...example, title: (text.slice(from, to).split("|", 1)[0] ?? "").trim() }],
    ),
    waiting: outputs.flatMap(({ name, check, waitsFor }) =>
      check === undefined && waitsFor !== undefined && waitsFor.length > 0 ? [{ name: name ?? "a line", waitsFor }] : [],
    ),
    outputs,
  };
}

const faultsOf = ({ outputs, opened }: Findings): readonly PlacedFault[] =>
  outputs.flatMap(({ diagnostics }) =>
    diagnostics.map((one) => placed(one, { path: opened.path, text: opened.session.text(opened.file) })),
  );

/** 2 before 1: a fault may have kept a check from failing. A check or example that is not evaluated does not pass. */
function exitCode(all: readonly Findings[]): number {
  if (all.some((one) => faultsOf(one).some(({ severity }) => severity === "fault"))) return 2;
  const fails = all.some(
    ({ checks, examples }) =>
      checks.some(({ state }) => state === "fails" || state === "open") || examples.some(({ state }) => state !== "passes"),
  );
  return fails ? 1 : 0;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function modesText({ counts, failing, open }: NonNullable<Check["modes"]>): string {
  const named = (names: readonly string[]): string => (names.length === 0 ? "" : ` (${names.join(", ")})`);
  return `modes: ${counts.holds} hold, ${counts.fails} fail${named(failing)}, ${counts.open} open${named(open)}, ${counts["ruled out"]} ruled out`;
}

function checkLine(check: Findings["checks"][number], width: number, paint: Paint): string {
  const [known, style] = STATES[check.state];
  const word = check.state === "open" && check.modes !== undefined ? "OPEN" : known;
  const numbers = [
    check.utilisationText === undefined ? "" : `utilisation ${check.utilisationText}`,
    check.marginText === undefined ? "" : `margin ${check.marginText}`,
    check.factor === undefined ? "" : `factor ${check.factor}`,
    check.modes === undefined ? "" : modesText(check.modes),
    check.waitsFor.length === 0 ? "" : `waits for ${check.waitsFor.join(", ")}`,
  ].filter((part) => part !== "");
  const line = numbers.length === 0 ? check.title : `${check.title.padEnd(width)}  ${numbers.join("  ")}`;
  return `  ${paint(style, word)}  ${line}`;
}

function describe(findings: Findings, paint: Paint): string {
  const { checks, examples, waiting, opened, title } = findings;
  const width = Math.max(0, ...checks.map((check) => check.title.length));
  const failing = examples.filter(({ state }) => state !== "passes");
  const faults = faultsOf(findings);
  const faultCount = faults.filter(({ severity }) => severity === "fault").length;
  const holding = checks.filter(({ state }) => state === "holds" || state === "nominal").length;
  const notices = faults.length - faultCount;
  return [
    paint("strong", title === "" ? opened.path : `${opened.path}: ${title}`),
    ...checks.map((check) => checkLine(check, width, paint)),
    ...failing.map(
      ({ title: example, state, shown }) =>
        `  ${paint("bad", state === "fails" ? "EXAMPLE FAILS" : "EXAMPLE NOT EVALUATED")}  ${example}${shown === undefined ? "" : `  gives ${shown}`}`,
    ),
    ...waiting.map(({ name, waitsFor }) => `  ${paint("doubt", "waits")}  ${name} for ${waitsFor.join(", ")}`),
    `  ${holding} of ${counted(checks.length, "check")} ${holding === 1 ? "holds" : "hold"}, ${examples.length - failing.length} of ${counted(examples.length, "example")} ${examples.length - failing.length === 1 ? "passes" : "pass"}, ${counted(faultCount, "fault")}, ${counted(notices, "notice")}`,
  ].join("\n");
}

function asJson(findings: Findings): object {
  const { opened, title, checks, examples, waiting } = findings;
  const shown = checks.map(({ state, title: name, utilisation, margin, factor, demand, capacity, modes, waitsFor }) => ({
    state,
    title: name,
    utilisation,
    margin,
    factor,
    demand: demand?.text,
    capacity: capacity?.text,
    modes,
    waitsFor,
  }));
  return { notebook: opened.path, title, checks: shown, examples, waiting, faults: faultsOf(findings) };
}

/** On a terminal a run over many notebooks says how far it is; the line goes away when it is done. */
function progress(world: World, at: number, of: number, path: string): void {
  if (world.errIsTerminal && of > 1) world.err(`\r\u001b[K${at < of ? `${at + 1} of ${of}: ${path}` : ""}`);
}

export const check: Command = {
  name: "check",
  words: "NOTEBOOK...",
  least: 1,
  most: Number.POSITIVE_INFINITY,
  purpose: "Recomputes notebooks; lists checks, faults, waiting values and examples that fail.",
  options: [JSON_OPTION],
  more: "Exit code: 0 all checks hold and all examples pass, 1 one fails or is not evaluated, 2 there are faults.",
  run({ words, switches }, world) {
    const opener = new Opener(world);
    const all = words.map((path, at) => {
      progress(world, at, words.length, path);
      return findingsOf(opener.open(path));
    });
    progress(world, words.length, words.length, "");
    const paint = paintErr(world);
    for (const { opened, outputs } of all) {
      const { session, file, path } = opened;
      const source = { path, text: session.text(file) };
      const textOf = (other: string): string | undefined => (session.files().includes(other) ? session.text(other) : undefined);
      for (const { diagnostics } of outputs) {
        for (const diagnostic of diagnostics) world.err(`${describeFault(diagnostic, source, textOf, paint)}\n`);
      }
    }
    const code = exitCode(all);
    if (switches.has("json")) world.out(`${JSON.stringify({ notebooks: all.map(asJson), exit: code }, null, 2)}\n`);
    else world.out(`${all.map((findings) => describe(findings, paintOut(world))).join("\n\n")}\n`);
    return code;
  },
};
