// `npm run fuzz -- COUNT [SEED [FIRST]]`: made and changed texts through the engine; prints what fails, cut down, and ends with 1.
// A child does the work, so that one that hangs is seen and named.

import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { library } from "../../stdlib/index.ts";
import { readSources } from "./fuzz-sources.ts";
import { type Failure, makeTrial, runTrial, type Trial } from "./fuzz-trial.ts";

/** A trial that the child does not end within this many milliseconds hangs. */
const HANGS = 60_000;
const EVERY = 1000;
const MOST_SHOWN = 40;

type Message = { readonly done: number } | { readonly at: number; readonly trial: Trial; readonly failure: Failure };

function work(count: number, seed: number, first: number): void {
  const sources = readSources();
  const tell = (message: Message): void => {
    process.send?.(message);
  };
  let at = first;
  // One batch a turn of the loop, else nothing told leaves the process.
  const batch = (): void => {
    for (let i = 0; i < 10 && at < count; i += 1, at += 1) {
      const trial = makeTrial(sources, seed, at);
      const failure = runTrial(trial, library);
      if (failure !== undefined) tell({ at, trial: smaller(trial, failure), failure });
    }
    tell({ done: at });
    if (at < count) setImmediate(batch);
    else process.disconnect?.();
  };
  batch();
}

/** Drops edits, then lines, while the trial still fails in the same way. */
function smaller(trial: Trial, failure: Failure): Trial {
  const started = performance.now();
  const fails = (one: Trial): boolean => performance.now() - started < 20_000 && runTrial(one, library)?.kind === failure.kind;
  let best = trial;
  for (let i = best.edits.length - 1; i >= 0; i -= 1) {
    const one = { ...best, edits: best.edits.filter((_, at) => at !== i) };
    if (fails(one)) best = one;
  }
  for (let size = Math.ceil(best.text.split("\n").length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let from = 0; from < best.text.split("\n").length; ) {
      const lines = best.text.split("\n");
      const one = { ...best, text: [...lines.slice(0, from), ...lines.slice(from + size)].join("\n") };
      if (one.text !== best.text && fails(one)) best = one;
      else from += size;
    }
  }
  return best;
}

function show(at: number, trial: Trial, failure: Failure): void {
  console.log(`\n== text ${at}: ${failure.kind}: ${failure.what}`);
  console.log(`${trial.text}\n-- as a string, with its edits`);
  console.log(JSON.stringify(trial));
}

function start(count: number, seed: number, first: number): void {
  const failures = new Map<string, number>();
  let [done, lastHeard, reported] = [first, performance.now(), first];
  let child: ChildProcess = launch(first);

  function launch(from: number): ChildProcess {
    const made = fork(fileURLToPath(import.meta.url), ["work", String(count), String(seed), String(from)]);
    made.on("message", (message: Message) => {
      lastHeard = performance.now();
      if ("done" in message) done = message.done;
      else note(message.at, message.trial, message.failure);
      if (done - reported >= EVERY) {
        reported = done;
        console.error(`${done} of ${count}, ${total()} failed`);
      }
    });
    made.on("exit", (code, signal) => {
      if (made !== child) return;
      if (done >= count && code === 0) finish();
      else lost(`the process ended with ${signal ?? code}`);
    });
    return made;
  }

  const total = (): number => [...failures.values()].reduce((sum, each) => sum + each, 0);

  function note(at: number, trial: Trial, failure: Failure): void {
    const known = (failures.get(failure.kind) ?? 0) + 1;
    failures.set(failure.kind, known);
    if (known <= MOST_SHOWN) show(at, trial, failure);
  }

  /** The batch that was under way is named, then the next one begins. */
  function lost(what: string): void {
    note(done, makeTrial(readSources(), seed, done), { kind: "slow", what: `one of the texts ${done} to ${done + 9}: ${what}` });
    done += 10;
    lastHeard = performance.now();
    if (done >= count) finish();
    else child = launch(done);
  }

  function finish(): void {
    clearInterval(watch);
    for (const [kind, many] of failures) console.log(`${kind}: ${many}`);
    console.log(`${count - first} texts with seed ${seed}, ${total()} failed`);
    if (total() > 0) process.exitCode = 1;
  }

  const watch = setInterval(() => {
    if (performance.now() - lastHeard < HANGS) return;
    const hung = child;
    child = undefined as unknown as ChildProcess;
    hung.kill("SIGKILL");
    lost(`no end within ${HANGS / 1000} s`);
  }, 1000);
}

const [mode, ...numbers] = process.argv[2] === "work" ? process.argv.slice(2) : ["start", ...process.argv.slice(2)];
const [count = 100_000, seed = 1, first = 0] = numbers.map(Number);
if (mode === "work") work(count, seed, first);
else start(count, seed, first);
