// Where the number of an input stands in the text, so that another can be put there.

import type { LineOutput, Session } from "../session/index.ts";

export interface InputPlace {
  readonly name: string;
  /** Offsets of the number, without its unit. */
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly unit: string;
  /** As the notebook bounds it; absent where it does not. */
  readonly low?: number;
  readonly high?: number;
}

const NUMBER = /=\s*(-?(?:\d[\d_]*\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)/;

/** Undefined for what is no input of one number. */
export function inputPlace(session: Session, file: string, output: LineOutput): InputPlace | undefined {
  const { control, name, value } = output;
  if (output.input !== true || name === undefined || value === undefined || value.number === "") return undefined;
  if (control !== undefined)
    return { name, from: control.from, to: control.to, value: control.value, unit: control.unit, low: control.low, high: control.high };
  const found = NUMBER.exec(session.text(file).slice(output.from, output.to));
  const digits = found?.[1];
  if (found === null || digits === undefined) return undefined;
  const from = output.from + found.index + found[0].length - digits.length;
  return { name, from, to: from + digits.length, value: Number(digits.replaceAll("_", "")), unit: value.unit };
}
