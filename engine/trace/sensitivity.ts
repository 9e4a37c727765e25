// How much a result moves with each input: run again with the input a little lower and a little higher.

import type { Outcome } from "../run/index.ts";

export interface SensitivityInput {
  readonly name: string;
  /** SI; kelvin for a temperature point. */
  readonly value: number;
  readonly point: boolean;
}

export interface Sensitivity {
  readonly name: string;
  /** What the input was moved by, each way: 1 % of a quantity, 1 K of a temperature point. */
  readonly by: "1 %" | "1 K";
  /** Relative change of the result for that move up (0.02 is 2 %); undefined where it cannot be told. */
  readonly change: number | undefined;
  /** Why not: the input is zero, the result is zero or no number, or a fault lies within reach of the move. */
  readonly unknown?: "input is zero" | "result is zero" | "fault nearby";
}

/**
 * `evaluate` runs everything between the input and the result with engine/run, the one input replaced.
 * Central differences; largest change first, those that cannot be told last.
 */
export function sensitivities(
  result: number,
  inputs: readonly SensitivityInput[],
  evaluate: (name: string, value: number) => Outcome,
): readonly Sensitivity[] {
  const size = ({ change }: Sensitivity): number => (change === undefined ? -1 : Math.abs(change));
  return inputs.map((input) => sensitivity(result, input, evaluate)).sort((a, b) => size(b) - size(a));
}

function sensitivity(result: number, input: SensitivityInput, evaluate: (name: string, value: number) => Outcome): Sensitivity {
  const { name, value, point } = input;
  const by = point ? "1 K" : "1 %";
  const unknown = (reason: NonNullable<Sensitivity["unknown"]>): Sensitivity => ({ name, by, change: undefined, unknown: reason });
  const move = point ? 1 : value * 0.01;
  if (move === 0) return unknown("input is zero");
  if (result === 0) return unknown("result is zero");
  const [low, high] = [evaluate(name, value - move), evaluate(name, value + move)];
  if (!low.ok || !high.ok || typeof low.value !== "number" || typeof high.value !== "number") return unknown("fault nearby");
  return { name, by, change: (high.value - low.value) / 2 / result };
}
