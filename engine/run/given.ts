// What a native or one of the language's own functions is told of its arguments beside their values.

import type { Core } from "../check/index.ts";
import type { Given } from "./native.ts";

/** Types are those of the program: a figure inside a polymorphic formula is refused by engine/check, so they are whole. */
export function givenOf(core: Extract<Core, { readonly op: "native" }>): readonly Given[] | undefined {
  if (core.type.type !== "figure") return undefined;
  return core.arguments.map((argument) => {
    const name = nameOf(argument);
    return name === undefined ? { type: argument.type } : { type: argument.type, name };
  });
}

function nameOf(core: Core): string | undefined {
  if (core.op === "global" || core.op === "local" || core.op === "field") return core.name;
  // A column's head holds its unit apart; its name is all before.
  return core.op === "column" ? core.name : undefined;
}
