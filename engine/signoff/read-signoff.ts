// What the notebook says of its own check: roles, marks with their state now, second entries, comments.

import { readFrontMatter } from "../notebook/index.ts";
import type { LineOutput, Session } from "../session/index.ts";
import { resultName, resultText, sameResult } from "./result-state.ts";
import { samePerson } from "./roles.ts";
import { commentsBlock, entriesBlock, marksBlock, rowsOf } from "./tables.ts";

/** How a checker satisfied himself of a result. */
export const methods = ["recomputed", "compared", "inspected", "hand check"] as const;

export type Method = (typeof methods)[number];

/** `lapsed`: the value moved since; `own`: made by who made the calculation; `unknown`: there is no such result any more. */
export type MarkState = "stands" | "lapsed" | "own" | "unknown";

export interface Mark {
  readonly of: string;
  /** The value it was made for, all digits. */
  readonly value: string;
  readonly method: string;
  readonly by: string;
  readonly date: string;
  readonly note: string;
  readonly state: MarkState;
  /** The value now; empty where there is none. */
  readonly now: string;
}

export interface Entry {
  readonly of: string;
  readonly entered: string;
  readonly by: string;
  readonly date: string;
  /** Undefined where there is no such input, or no value of it. */
  readonly agrees: boolean | undefined;
}

export interface Comment {
  readonly of: string;
  readonly by: string;
  readonly date: string;
  readonly text: string;
}

/** One result and whether a mark stands for it. */
export interface ResultState {
  readonly name: string;
  readonly kind: "value" | "check";
  readonly text: string;
  readonly marked: "stands" | "lapsed" | "none";
}

export interface Signoff {
  readonly creator: string;
  readonly checker: string;
  readonly approver: string;
  readonly marks: readonly Mark[];
  readonly entries: readonly Entry[];
  readonly comments: readonly Comment[];
  /** Results in the order of the text: what is computed and what is checked, inputs apart. */
  readonly results: readonly ResultState[];
}

/** Reads a notebook that the session holds. Never throws: an odd row is a mark of an unknown result. */
export function readSignoff(session: Session, file: string): Signoff {
  const text = session.text(file);
  const outputs = session.outputs(file);
  const { title } = readFrontMatter(text);
  const byName = new Map(outputs.flatMap((output) => namedOutput(output)));
  const marks = rowsOf(text, marksBlock).map(([of = "", value = "", method = "", by = "", date = "", note = ""]): Mark => {
    const output = byName.get(of);
    const now = output === undefined ? "" : resultText(output);
    const moved = output !== undefined && !sameResult(value, now, session);
    const state = output === undefined ? "unknown" : samePerson(by, title.creator) ? "own" : moved ? "lapsed" : "stands";
    return { of, value, method, by, date, note, state, now };
  });
  const entries = rowsOf(text, entriesBlock).map(([of = "", entered = "", by = "", date = ""]): Entry => {
    const output = byName.get(of);
    return { of, entered, by, date, agrees: output === undefined ? undefined : sameResult(entered, resultText(output), session) };
  });
  const comments = rowsOf(text, commentsBlock).map(([of = "", by = "", date = "", words = ""]): Comment => ({ of, by, date, text: words }));
  const results = outputs.flatMap((output): readonly ResultState[] => {
    const name = resultName(output);
    if (name === undefined || isInput(output)) return [];
    const own = marks.filter((mark) => mark.of === name);
    const marked = own.some(({ state }) => state === "stands") ? "stands" : own.some(({ state }) => state === "lapsed") ? "lapsed" : "none";
    return [{ name, kind: output.check === undefined ? "value" : "check", text: resultText(output), marked }];
  });
  return { creator: title.creator, checker: title.checker, approver: title.approval_person, marks, entries, comments, results };
}

function namedOutput(output: LineOutput): readonly (readonly [string, LineOutput])[] {
  const name = resultName(output);
  return name === undefined ? [] : [[name, output]];
}

/** What is entered and not computed; it is checked by entering it again. */
export const isInput = (output: LineOutput): boolean => output.input === true;
