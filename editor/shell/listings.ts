// What the panels list of a notebook: faults, checks, headings, each with its present place.

import { headings } from "../../engine/notebook/index.ts";
import type { LineOutput } from "../../engine/session/index.ts";
import { notebookField } from "../pad/notebook-field.ts";
import { allOutputs, outputsWithMessages } from "../pad/outputs-field.ts";
import type { Pad } from "../pad/pad.ts";

/** One fault or notice as the list shows it. */
export interface ListedMessage {
  readonly severity: "fault" | "notice";
  readonly code: string;
  readonly text: string;
  readonly mend?: string;
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

export interface ListedCheck {
  readonly output: LineOutput;
  readonly line: number;
  readonly from: number;
}

export interface ListedHeading {
  readonly level: number;
  readonly text: string;
  readonly from: number;
  /** What stands between this heading and the next of any level. */
  readonly faults: number;
  readonly failing: number;
  readonly checks: number;
}

export function listMessages(pad: Pad): readonly ListedMessage[] {
  const { state } = pad.view;
  return outputsWithMessages(state)
    .flatMap(({ output, from, to }) =>
      output.diagnostics.map((entry) => {
        const at = Math.max(from, Math.min(to, from + entry.from - output.from));
        const end = Math.max(at, Math.min(to, from + entry.to - output.from));
        const text = entry.hint === undefined ? entry.message : `${entry.message} ${entry.hint}`;
        const mend = entry.mends[0]?.label;
        const place = { severity: entry.severity, code: entry.code, text, line: state.doc.lineAt(at).number, from: at, to: end };
        return mend === undefined ? place : { ...place, mend };
      }),
    )
    .sort((a, b) => Number(a.severity === "notice") - Number(b.severity === "notice") || a.from - b.from);
}

/** The governing check first: highest utilisation, those that are not evaluated before those that hold. */
export function listChecks(pad: Pad): readonly ListedCheck[] {
  const { state } = pad.view;
  const rank = ({ output }: ListedCheck): number => {
    const check = output.check;
    if (check?.state === "fails") return 1e12 + (check.utilisation ?? 1e6);
    if (check === undefined || check.state === "open") return 1e9;
    return check.utilisation ?? 0;
  };
  return allOutputs(state)
    .filter(({ output }) => output.check !== undefined)
    .map(({ output, from }) => ({ output, from, line: state.doc.lineAt(from).number }))
    .sort((a, b) => rank(b) - rank(a) || a.from - b.from);
}

export function listHeadings(pad: Pad): readonly ListedHeading[] {
  const { state } = pad.view;
  const notebook = state.field(notebookField);
  const found = notebook.parts.flatMap((part, index) => {
    if (part.kind !== "prose") return [];
    const start = notebook.starts[index] as number;
    return headings(part.text).map(({ level, text, from }) => ({ level, text, from: start + from }));
  });
  const outputs = allOutputs(state);
  return found.map((heading, index) => {
    const end = found[index + 1]?.from ?? state.doc.length + 1;
    const inside = outputs.filter(({ from }) => heading.from <= from && from < end);
    const checks = inside.filter(({ output }) => output.check !== undefined);
    return {
      ...heading,
      faults: inside.filter(({ output }) => output.diagnostics.some(({ severity }) => severity === "fault")).length,
      failing: checks.filter(({ output }) => output.check?.state === "fails").length,
      checks: checks.length,
    };
  });
}
