// Where a walk stands: what it can reach, and how values read there.

import type { Core, Type } from "../check/index.ts";
import { faults } from "../diagnostics/index.ts";
import type { RunContext } from "./context.ts";
import { type Mark, type Marked, wholeMark } from "./marks.ts";
import type { Recording } from "./recording.ts";
import { RunFault } from "./run-fault.ts";
import type { State } from "./state.ts";
import type { Value } from "./value.ts";

export interface Place {
  readonly needs: readonly Marked[];
  readonly slots: Marked[];
  readonly state: State;
  readonly context: RunContext;
  /** Inside a polymorphic formula: its types as this call has them. */
  readonly instance?: (type: Type) => Type;
  readonly recording?: Recording;
}

export type Op<Name extends Core["op"]> = Extract<Core, { readonly op: Name }>;

/** The walk itself, handed to the files that walk one kind of node. */
export type Walk = (core: Core, place: Place) => Marked;

export const show = (place: Place, core: Core, value: Value): string => {
  const type = place.instance === undefined ? core.type : place.instance(core.type);
  return place.context.describe(value, type, core.op === "constant" ? core.unit : undefined);
};

export interface WalkedNumber {
  readonly number: number;
  readonly mark: Mark;
}

export const numberOf = ({ value, marks }: Marked): WalkedNumber => ({ number: value as number, mark: wholeMark(marks) });

export function checkLength(value: Value, core: Core, place: Place): void {
  const limit = place.context.limits.listLength;
  if (!Array.isArray(value) || value.length <= limit) return;
  throw new RunFault(faults.listTooLong(core.range, { count: String(value.length), limit: String(limit) }));
}
