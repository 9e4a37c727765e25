// One way in for every case: an expression or a notebook through the session, as a user would put it.

import { createSession, type Evaluated, type LineOutput, type Session, type Snapshot } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const shared = createSession(library);

export interface Answer {
  /** As shown, number and unit. */
  readonly text: string;
  readonly unit: string;
  /** All digits, in the shown unit. */
  readonly number: number;
  readonly si: number;
  readonly value: unknown;
}

/** The value of an expression; fails with the faults when there is none. */
export function evaluate(expression: string, as?: string): Answer {
  const { result, diagnostics } = shared.evaluate(expression, as === undefined ? {} : { as });
  const faults = diagnostics.filter((one) => one.severity === "fault");
  if (result === undefined || faults.length > 0)
    throw new Error(`${expression} has no value: ${faults.map((one) => `${one.code}: ${one.message}`).join("; ")}`);
  return answer(result);
}

/** Codes of the faults of an expression that must have no value. */
export function faultsOf(expression: string, as?: string): readonly string[] {
  const { result, diagnostics } = shared.evaluate(expression, as === undefined ? {} : { as });
  if (result !== undefined) throw new Error(`${expression} has the value ${result.shown.text}`);
  return codes(diagnostics);
}

/** Message and hint of the first fault, as one text. */
export function wordsOf(expression: string, as?: string): string {
  const { diagnostics } = shared.evaluate(expression, as === undefined ? {} : { as });
  const first = diagnostics.find((one) => one.severity === "fault");
  return first === undefined ? "" : `${first.message} ${first.hint ?? ""}`;
}

export interface Notebook {
  readonly session: Session;
  readonly file: string;
  outputs(): readonly LineOutput[];
  output(name: string): LineOutput;
  /** Output of the statement whose text holds `part`. */
  line(part: string): LineOutput;
  faults(name: string): readonly string[];
  /** Every fault of the file, in order. */
  allFaults(): readonly string[];
  number(name: string): number;
  text(name: string): string;
  /** Replaces the one place where `found` stands; gives what changed. */
  edit(found: string, by: string): Snapshot;
  snapshot(): Snapshot;
}

export function notebook(text: string, others: Readonly<Record<string, string>> = {}): Notebook {
  const file = "case.joint.md";
  const session = createSession(library);
  for (const [name, other] of Object.entries(others)) session.put(name, other);
  session.put(file, text);
  session.snapshot(file);
  const outputs = (): readonly LineOutput[] => session.outputs(file);
  const only = (found: readonly LineOutput[], what: string): LineOutput => {
    const [first] = found;
    if (first === undefined)
      throw new Error(
        `no output of ${what}; there are ${outputs()
          .map((one) => one.name ?? one.id)
          .join(", ")}`,
      );
    return first;
  };
  const output = (name: string): LineOutput =>
    only(
      outputs().filter((one) => one.name === name),
      name,
    );
  return {
    session,
    file,
    outputs,
    output,
    line: (part) =>
      only(
        outputs().filter((one) => session.text(file).slice(one.from, one.to).includes(part)),
        part,
      ),
    faults: (name) => codes(output(name).diagnostics),
    allFaults: () => outputs().flatMap((one) => codes(one.diagnostics)),
    number: (name) => numberOf(output(name).value?.full, name),
    text: (name) => output(name).value?.text ?? "",
    edit(found, by) {
      const from = session.text(file).indexOf(found);
      if (from < 0 || session.text(file).indexOf(found, from + 1) >= 0) throw new Error(`"${found}" must stand once in the notebook`);
      session.edit(file, [{ from, to: from + found.length, insert: by }]);
      return session.snapshot(file);
    },
    snapshot: () => session.snapshot(file),
  };
}

/** Lines as one calc fence. */
export const calc = (...lines: readonly string[]): string => ["```calc", ...lines, "```", ""].join("\n");

/** Lines as a csv fence of that name. */
export const csv = (name: string, ...lines: readonly string[]): string => [`\`\`\`csv ${name}`, ...lines, "```", ""].join("\n");

export const codes = (diagnostics: LineOutput["diagnostics"]): readonly string[] =>
  diagnostics.filter((one) => one.severity === "fault").map((one) => one.code);

function answer(result: Evaluated): Answer {
  const { text, unit, full } = result.shown;
  return { text, unit, number: full === "" ? Number.NaN : numberOf(full, text), si: result.si ?? Number.NaN, value: result.value };
}

function numberOf(full: string | undefined, what: string): number {
  if (full === undefined || full === "") throw new Error(`${what} has no number`);
  return Number(full.replace("−", "-"));
}
