// Evaluation of the formula set: the register program and the closures against hand-written TypeScript and mathjs's units.

import { all, create } from "mathjs";
import { type CoreUnit, checkStatement, type Entry, type Scope } from "../../engine/check/index.ts";
import { defaultLimits, prepareScalar, prepareUnit, type RunContext, type Value } from "../../engine/run/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { parseStatement } from "../../engine/syntax/index.ts";
import { byHand, chain, inputs, notebook } from "./formulas.ts";
import { bench } from "./harness.ts";

const context: RunContext = { natives: {}, limits: defaultLimits, describe: String };

/** The chain checked line by line. */
function checkedUnits(): readonly { readonly name: string; readonly unit: CoreUnit }[] {
  const entries = new Map<string, Entry>();
  const scope: Scope = {
    find: (name) => {
      const entry = entries.get(name);
      return entry === undefined ? undefined : { key: name, entry };
    },
    byFullName: (name) => entries.get(name),
    names: () => entries.keys(),
    namesBehind: () => [],
    ambiguous: () => false,
    fullName: (name) => name,
    library: false,
  };
  return notebook.split("\n").map((line) => {
    const { entry, unit } = checkStatement(parseStatement(line).tree, scope);
    if (entry === undefined || unit === undefined || entry.entry !== "value") throw new Error(`the bench's line is faulty: ${line}`);
    entries.set(entry.name, entry);
    return { name: entry.name, unit };
  });
}

const units = checkedUnits();
const inputNames = inputs.map(([name]) => name);
const program = prepareScalar({ units: units.slice(inputs.length), inputs: inputNames, given: new Map() }, context);
if (program === undefined) throw new Error("the chain is not scalar");
const closures = units.slice(inputs.length).map(({ name, unit }) => ({ name, needs: unit.needs, run: prepareUnit(unit, context) }));

const start = Float64Array.from(inputs.map(([, , si]) => si));
const out = new Float64Array(chain.length);

/** Times `count` runs on inputs that change from run to run, so that nothing can be kept; nanoseconds a run. */
function nanoseconds(count: number, run: (at: Float64Array) => void): number {
  const at = Float64Array.from(start);
  const begin = performance.now();
  for (let i = 0; i < count; i += 1) {
    at[2] = 400 + (i % 97);
    run(at);
  }
  return ((performance.now() - begin) / count) * 1e6;
}

function runClosures(at: Float64Array): void {
  const values = new Map<string, Value>(inputNames.map((name, i) => [name, at[i] as number]));
  for (const { name, needs, run } of closures) {
    const outcome = run(needs.map((need) => values.get(need) as Value));
    if (!outcome.ok) throw new Error(outcome.fault.message);
    values.set(name, outcome.value);
  }
}

const math = create(all ?? {});
const compiled = chain.map(([name, expression]) => ({ name, code: math.compile(expression) }));
const mathInputs: Record<string, unknown> = {};
for (const [name, text] of inputs) mathInputs[name] = math.evaluate(text);

function runMathjs(force: number): Record<string, unknown> {
  const scope: Record<string, unknown> = { ...mathInputs, F_x: math.unit(force, "N") };
  for (const { name, code } of compiled) scope[name] = code.evaluate(scope);
  return scope;
}

/** All three agree, or no figure is given. */
function agree(): void {
  const hand = new Float64Array(chain.length);
  byHand(start, hand);
  if (!program?.run(start, out)) throw new Error("the register program found a fault");
  const scope = runMathjs(400);
  chain.forEach(([name], i) => {
    const value = scope[name];
    const theirs = typeof value === "number" ? value : (value as { toSI: () => { toJSON: () => { value: number } } }).toSI().toJSON().value;
    for (const other of [out[i] as number, theirs]) {
      if (Math.abs(other - (hand[i] as number)) > 1e-12 * Math.abs(hand[i] as number))
        throw new Error(`${name}: ${hand[i]} by hand, ${other}`);
    }
  });
}
agree();

const hand = (): number => nanoseconds(200_000, (at) => byHand(at, out));
const registers = (): number => nanoseconds(200_000, (at) => program?.run(at, out));
const mathjsRun = (): number => {
  const begin = performance.now();
  for (let i = 0; i < 100; i += 1) runMathjs(400 + (i % 97));
  return ((performance.now() - begin) / 100) * 1e6;
};

bench("live evaluation, 30 formulas", "ns", registers);
bench("the same by hand in TypeScript", "ns", hand);
bench("live evaluation against hand-written TypeScript", "times the time", () => registers() / hand());
bench("live evaluation against mathjs units", "times as fast", () => mathjsRun() / registers());
bench("single statements one by one against hand-written TypeScript", "times the time", () => nanoseconds(20_000, runClosures) / hand());

const emptyLibrary = { version: "0", modules: [], files: [], natives: {}, sources: "" };
const fenced = `\`\`\`calc\n${notebook}\n\`\`\`\n`;

bench("cold evaluation, text to outputs, against mathjs parse and evaluate", "times as fast", () => {
  const ours = performance.now();
  for (let i = 0; i < 20; i += 1) {
    const session = createSession(emptyLibrary);
    session.put("a.joint.md", fenced);
    session.outputs("a.joint.md");
  }
  const middle = performance.now();
  for (let i = 0; i < 20; i += 1) {
    const scope: Record<string, unknown> = {};
    for (const [name, text] of inputs) scope[name] = math.evaluate(text);
    for (const [name, expression] of chain) {
      scope[name] = math.evaluate(expression, scope);
      String(scope[name]);
    }
  }
  return (performance.now() - middle) / (middle - ours);
});
