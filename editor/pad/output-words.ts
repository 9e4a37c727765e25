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
  const shown = number === "" ? { number: text, unit: "" } : { number, unit };
  const outside = output.marks?.outside[0];
  if (outside !== undefined) {
    const why = `outside validity: ${outside.formula}, ${outside.limit}`;
    return words("open", "◆", "outside", `${name} = ${text}, ${why}`, shown);
  }
  return words("plain", "", "", output.name === undefined ? text : `${output.name} = ${text}`, shown);
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
