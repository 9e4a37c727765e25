// What the output column says of a statement: words and shapes, so that no state is told by colour alone.

import type { LineOutput } from "../../engine/session/index.ts";
import { plainMessage } from "./message-pieces.ts";

export type Tone = "plain" | "holds" | "fails" | "open" | "fault" | "notice";

/** One row of the output column. `number` and `unit` stand apart so that units can be soft. */
export interface OutputWords {
  readonly tone: Tone;
  /** ● holds, ▲ fails, ◇ open or doubtful, ✕ fault. Empty for a plain value. */
  readonly shape: string;
  /** Capitals in the column are made by the style sheet. */
  readonly word: string;
  readonly number: string;
  readonly unit: string;
  /** Share of the bar that is filled, 0 to 1; `over` when the utilisation is above 1. */
  readonly bar?: { readonly filled: number; readonly over: boolean };
  /** The whole of it as one sentence, for hover and for screen readers. */
  readonly sentence: string;
}

const words = (
  tone: Tone,
  shape: string,
  word: string,
  sentence: string,
  rest: Partial<Pick<OutputWords, "number" | "unit" | "bar">> = {},
): OutputWords => ({ tone, shape, word, number: "", unit: "", sentence, ...rest });

/** Longest text of a record or list that the narrow column tells, and that a sentence does. */
const COLUMN = 24;
const SENTENCE = 160;

/** A record is told by its name where its fields are too many; what hovers, the trace and the chooser have all of it. */
export function brief(text: string, most = COLUMN): string {
  if (text.length <= most) return text;
  const record = /^([\p{L}_][\p{L}\p{M}\p{N}_]*) \{/u.exec(text)?.[1];
  return record !== undefined && most === COLUMN ? record : `${text.slice(0, most - 1).trimEnd()}…`;
}

/** Undefined where the column stays empty. */
export function outputWords(output: LineOutput): OutputWords | undefined {
  const fault = output.diagnostics.find((entry) => entry.severity === "fault");
  const name = output.name ?? (output.note === "" ? output.kind : output.note);
  if (fault !== undefined) return words("fault", "✕", fault.code.replaceAll("-", " "), `${name}: fault. ${plainMessage(fault.message)}`);
  if (output.waitsFor !== undefined && output.waitsFor.length > 0) {
    const what = output.waitsFor.join(", ");
    return words("open", "◇", `waits for ${what}`, `${name} waits for ${what}`);
  }
  if (output.check !== undefined) return checkWords(output, output.check);
  if (output.example !== undefined) {
    const { state, shown } = output.example;
    const tail = shown === undefined ? "" : `: ${shown}`;
    if (state === "passes") return words("holds", "●", "passes", `example passes${tail}`);
    if (state === "fails") return words("fails", "▲", "fails", `example fails${tail}`);
    return words("open", "◇", "not evaluated", "example is not evaluated");
  }
  if (output.value === undefined) return undefined;
  const { number, unit, text } = output.value;
  const shown = number === "" ? { number: brief(text), unit: "" } : { number, unit };
  const outside = output.marks?.outside[0];
  if (outside !== undefined) {
    const why = `outside validity: ${outside.formula}, ${outside.limit}`;
    return words("open", "◆", "outside", `${name} = ${text}, ${why}`, shown);
  }
  return words("plain", "", "", output.name === undefined ? text : `${output.name} = ${brief(text, SENTENCE)}`, shown);
}

function checkWords(output: LineOutput, check: NonNullable<LineOutput["check"]>): OutputWords {
  const used = check.utilisationText ?? (check.utilisation === undefined ? "" : check.utilisation.toFixed(2));
  const bar =
    check.utilisation === undefined ? {} : { bar: { filled: Math.max(0, Math.min(1, check.utilisation)), over: check.utilisation > 1 } };
  const margin = check.marginText === undefined ? "" : `, margin of safety ${check.marginText}`;
  const factor = check.factor === undefined || check.factor === 1 ? "" : `, factor ${check.factor}`;
  const tail = used === "" ? "" : `, utilisation ${used}${margin}${factor}`;
  const outside = output.marks?.outside[0];
  const doubt = outside === undefined ? "" : `; outside validity: ${outside.formula}, ${outside.limit}`;
  const title = check.title === "" ? "check" : check.title;
  const rest = { number: used, ...bar };
  if (check.state === "holds") {
    if (outside !== undefined) return words("open", "◆", "outside", `${title}: holds${tail}${doubt}`, rest);
    return words("holds", "●", "holds", `${title}: holds${tail}`, rest);
  }
  if (check.state === "nominal") return words("open", "◇", "nominal", `${title}: holds (nominal only)${tail}${doubt}`, rest);
  if (check.state === "fails") return words("fails", "▲", "fails", `${title}: fails${tail}${doubt}`, rest);
  if (check.modes !== undefined) return words("open", "◇", "open", `${title}: open${tail}; ${check.modes.open.join(", ")}`, rest);
  return words("open", "◇", "not evaluated", `${title}: not evaluated`);
}

/** What the reference column says: the citation, or the doubt that the value carries where nothing is cited. */
export function referenceWords(
  output: LineOutput,
): { readonly text: string; readonly doubtful: boolean; readonly sentence: string } | undefined {
  const provenance = output.marks?.provenance;
  const doubtful = provenance !== undefined && (provenance.level === "assumed" || provenance.level === "memory");
  if (output.citation !== "") {
    const own = doubtful && provenance.from === output.name;
    return {
      text: own ? `◇ ${output.citation}` : output.citation,
      doubtful: own,
      sentence: `${output.name ?? output.kind}: ${output.citation}`,
    };
  }
  if (!doubtful) return undefined;
  const sentence = `${output.name ?? output.kind} depends on ${provenance.from}, which is ${provenance.level}`;
  return { text: `◇ ${provenance.level}`, doubtful: true, sentence };
}

const TIP = 300;

/** What comes up beside a row on hover and focus: all digits, where it comes from, what it rests on. One line each. */
export function outputTip(output: LineOutput): readonly string[] {
  const { value, check, marks, control } = output;
  const lines: string[] = [];
  if (value !== undefined && value.full !== "" && value.full !== value.number && value.full !== value.text)
    lines.push(brief(value.unit === "" ? value.full : `${value.full} ${value.unit}`, TIP));
  if (control !== undefined) lines.push(`from ${control.low} to ${control.high}${control.unit === "" ? "" : ` ${control.unit}`}`);
  if (check?.demand !== undefined && check.capacity !== undefined) {
    lines.push(`${check.demand.text} against ${check.capacity.text}`);
    if (check.factor !== undefined && check.factor !== 1) lines.push(`factor ${check.factor}`);
    if (check.marginText !== undefined) lines.push(`margin of safety ${check.marginText}`);
  }
  for (const limit of marks?.outside ?? []) lines.push(`◆ outside validity of ${limit.formula}: ${limit.limit}`);
  const source = marks?.provenance;
  if (source !== undefined) {
    const how =
      source.level === "unsourced" ? "has no source" : source.level === "published" ? "is published" : `is ${PROVENANCE[source.level]}`;
    lines.push(
      source.from === output.name ? `its source: ${source.text === "" ? "none" : source.text}` : `rests on ${source.from}, which ${how}`,
    );
  }
  if (marks?.nominalOnly === true) lines.push("nominal only: scatter is not evaluated");
  return lines;
}

const PROVENANCE: Readonly<Record<"test" | "supplier" | "given" | "practice" | "memory" | "assumed", string>> = {
  test: "an own test",
  supplier: "from a supplier",
  given: "given",
  practice: "common practice",
  memory: "from memory",
  assumed: "assumed",
};
