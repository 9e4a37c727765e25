// A result put into one text in full digits, so that a mark can say what it was made for and whether that moved since.

import type { LineOutput, Session } from "../session/index.ts";

/** Name of a definition, title of a check; undefined for lines that are no result. */
export function resultName(output: LineOutput): string | undefined {
  if (output.check !== undefined) return output.check.title;
  return output.kind === "definition" && output.value !== undefined ? output.name : undefined;
}

/** e.g. `1360.2 N`, `holds 0.85`, `M5`: all digits, for a check its state and utilisation. */
export function resultText(output: LineOutput): string {
  const { check, value } = output;
  if (check !== undefined) return check.utilisation === undefined ? check.state : `${check.state} ${check.utilisation}`;
  if (value === undefined) return "";
  return value.unit === "" ? value.full : `${value.full} ${value.unit}`;
}

/** Equal apart from the last digits; the same quantity in another unit is the same value. */
export function sameResult(marked: string, now: string, session: Session): boolean {
  if (marked === now) return true;
  const [one, two] = [measured(marked, session), measured(now, session)];
  if (one === undefined || two === undefined || one.word !== two.word || one.dimension !== two.dimension) return false;
  return Math.abs(one.value - two.value) <= 1e-12 * Math.max(Math.abs(one.value), Math.abs(two.value));
}

interface Measured {
  readonly word: string;
  readonly value: number;
  readonly dimension: string;
}

function measured(text: string, session: Session): Measured | undefined {
  const [, word = "", rest = ""] = /^(holds|fails|open|nominal)?\s*(.*)$/.exec(text) ?? [];
  if (!/^[−-]?[\d.]/.test(rest)) return undefined;
  const { result } = session.evaluate(rest, {});
  return result?.si === undefined ? undefined : { word, value: result.si, dimension: result.dimension ?? "" };
}
