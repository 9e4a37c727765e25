// What a fault or a notice is, before anyone shows it.

import type { Range, TextChange } from "../base/index.ts";

/** `fault`: nothing that depends on it is evaluated. `notice`: evaluation goes on, the reader should know. */
export type Severity = "fault" | "notice";

/** A change of the text that would put the fault right, offered as one key. */
export interface Mend {
  readonly label: string;
  readonly changes: readonly TextChange[];
}

/** Another place that has to do with it, e.g. the first definition of a name defined twice. */
export interface Related {
  readonly message: string;
  readonly range: Range;
  /** The name of the statement the range is relative to; absent: the same statement. */
  readonly statement?: string;
}

/**
 * A message at a place. `range` is relative to the text of the statement (or prose or csv part) that holds it;
 * the session turns it into a place in the file.
 */
export interface Diagnostic {
  readonly code: string;
  readonly severity: Severity;
  readonly range: Range;
  /** One plain sentence: what is wrong, with both sides. */
  readonly message: string;
  /** One plain sentence: what to do; absent when there is nothing to add. */
  readonly hint?: string;
  readonly mends: readonly Mend[];
  readonly related: readonly Related[];
}

/** What every generated function takes beside its slots. */
export interface Extras {
  readonly mends?: readonly Mend[];
  readonly related?: readonly Related[];
}

const SLOT = /\{(\w+)\}/g;

function fill(template: string, slots: Readonly<Record<string, string | undefined>>): string | undefined {
  let missing = false;
  const text = template.replace(SLOT, (_, name: string) => {
    const value = slots[name];
    if (value === undefined || value === "") missing = true;
    return value ?? "";
  });
  return missing ? undefined : text;
}

/** Makes a diagnostic from its catalogue entry; a hint whose slots are not all given is left out. */
export function diagnostic(
  code: string,
  severity: Severity,
  message: string,
  hint: string | undefined,
  range: Range,
  slots: Readonly<Record<string, string | undefined>>,
  extras: Extras,
): Diagnostic {
  const filled = hint === undefined ? undefined : fill(hint, slots);
  return {
    code,
    severity,
    range,
    message: message.replace(SLOT, (_, name: string) => slots[name] ?? ""),
    ...(filled === undefined ? {} : { hint: filled }),
    mends: extras.mends ?? [],
    related: extras.related ?? [],
  };
}
