// Opening a long notebook, keystrokes in it, and what it holds in memory.

import { createSession, type Session } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { bigNotebook } from "./big-notebook.ts";
import { bench, median, milliseconds } from "./harness.ts";

const FILE = "a.joint.md";

function opened(count: number): { readonly session: Session; readonly text: string; readonly time: number } {
  const text = bigNotebook(count);
  const session = createSession(library);
  const begin = performance.now();
  session.put(FILE, text);
  session.snapshot(FILE);
  return { session, text, time: performance.now() - begin };
}

function placeOf(session: Session, words: string): number {
  const at = session.text(FILE).indexOf(words);
  if (at < 0) throw new Error(`the long notebook lacks "${words}"`);
  return at;
}

/** Types another digit into `W_n = 42 N`, a hundred times; milliseconds a key, sorted. */
function keystrokes(session: Session, block: number, keys = 100): readonly number[] {
  const at = placeOf(session, `W_${block} = 42 N`) + `W_${block} = 4`.length;
  const times: number[] = [];
  for (let i = 0; i < keys; i += 1) {
    const begin = performance.now();
    session.edit(FILE, [{ from: at, to: at + 1, insert: String(i % 10) }]);
    session.snapshot(FILE);
    times.push(performance.now() - begin);
  }
  session.edit(FILE, [{ from: at, to: at + 1, insert: "2" }]);
  session.snapshot(FILE);
  return times.sort((a, b) => a - b);
}

/** Types into prose, a hundred times; milliseconds a key. */
function proseKeys(session: Session): readonly number[] {
  const at = placeOf(session, "The insert of joint 10 carries");
  const times: number[] = [];
  for (let i = 0; i < 100; i += 1) {
    const begin = performance.now();
    session.edit(FILE, [{ from: at, to: at + 1, insert: String.fromCharCode(65 + (i % 26)) }]);
    session.snapshot(FILE);
    times.push(performance.now() - begin);
  }
  session.edit(FILE, [{ from: at, to: at + 1, insert: "T" }]);
  session.snapshot(FILE);
  return times;
}

let kept: Session | undefined;
const long = (): Session => {
  kept ??= opened(10_000).session;
  return kept;
};

bench("opening 10,000 statements", "ms", () => opened(10_000).time, 3);
bench("keystroke in 10,000 statements, middle, median of 100", "ms", () => median(keystrokes(long(), 500)), 3);
bench("keystroke in 10,000 statements, middle, 95th percentile", "ms", () => keystrokes(long(), 500)[94] ?? Number.NaN, 3);
bench("keystroke in 10,000 statements, top, median of 100", "ms", () => median(keystrokes(long(), 0)), 3);
bench("keystroke in 10,000 statements, end, median of 100", "ms", () => median(keystrokes(long(), 999)), 3);
bench(
  "opening 10,000 statements against a keystroke in them",
  "times the time",
  () => {
    const { session, time } = opened(10_000);
    return time / median(keystrokes(session, 500));
  },
  3,
);
bench("keystroke in prose of 10,000 statements, median of 100", "ms", () => median(proseKeys(long())), 3);

let short: Session | undefined;
bench("keystroke in 300 statements, median of 100", "ms", () => {
  short ??= opened(300).session;
  return median(keystrokes(short, 15));
});

bench(
  "memory with 10,000 statements open",
  "MB",
  () => {
    const collect = (globalThis as { gc?: () => void }).gc;
    if (collect === undefined) throw new Error("run the bench through npm run bench, which lets memory be collected");
    collect();
    const before = process.memoryUsage().heapUsed;
    const { session } = opened(10_000);
    collect();
    const used = process.memoryUsage().heapUsed - before;
    session.text(FILE);
    return used / 1e6;
  },
  3,
);

bench("tidying 10,000 statements", "ms", () => milliseconds(() => long().tidy(FILE)), 3);
bench("a session over the library and its first value", "ms", () =>
  milliseconds(() => createSession({ ...library }).evaluate('stress_area(thread("M6"))', {})),
);
