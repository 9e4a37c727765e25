// Element by element: an operation on scalars also takes lists of them, and says so in the program.

import type { Range } from "../base/index.ts";
import { type Context, newSlot, node } from "./context.ts";
import type { Core } from "./core.ts";

/**
 * Builds `make` on the sources, or, where some are lists, a map over them whose body is `make` on their elements.
 * `stays[i]`: source i is wanted as a list and is not taken apart.
 */
export function mapOver(
  context: Context,
  sources: readonly Core[],
  at: Range,
  make: (values: readonly Core[]) => Core,
  stays: readonly boolean[] = [],
): Core {
  const lists = sources.map((source, i) => source.type.type === "list" && stays[i] !== true);
  if (!lists.includes(true)) return make(sources);
  const slots = sources.map(() => newSlot(context));
  const elements = sources.map((source, i): Core => {
    if (source.op === "constant" && !lists[i]) return source;
    const type = lists[i] && source.type.type === "list" ? source.type.of : source.type;
    return node(context, { op: "local", slot: slots[i] ?? 0, name: nameOf(source), range: source.range, type });
  });
  const body = mapOver(context, elements, at, make, stays);
  return node(context, { op: "map", sources, lists, slots, body, range: at, type: { type: "list", of: body.type } });
}

const nameOf = (core: Core): string => (core.op === "global" || core.op === "local" || core.op === "field" ? core.name : "item");
