// Moves a program from one statement into another: other numbers for what it needs and for its slots, one place for its faults.

import type { Range } from "../base/index.ts";
import type { Core } from "./core.ts";

const slotFields = new Set(["slot", "state"]);

/** A copy of `program` whose needs go through `needOf`, whose slots start at `base` and whose nodes all stand at `at`. */
export function transplant(program: Core, needOf: (index: number) => number, base: number, at: Range): Core {
  const move = (value: unknown, key: string): unknown => {
    if (typeof value === "number") return slotFields.has(key) ? value + base : value;
    if (Array.isArray(value)) return key === "slots" ? (value as number[]).map((slot) => slot + base) : value.map((item) => move(item, ""));
    if (typeof value !== "object" || value === null || key === "type" || key === "unit" || (key === "value" && !("op" in value)))
      return value;
    if (!("op" in value)) return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, move(item, name)]));
    const core = value as Core;
    const copy: Record<string, unknown> = {};
    for (const [name, item] of Object.entries(core))
      copy[name] = name === "range" ? at : name === "value" && core.op === "constant" ? item : move(item, name);
    if (core.op === "global") copy.index = needOf(core.index);
    return copy;
  };
  return move(program, "") as Core;
}
