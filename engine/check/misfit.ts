// Says that a value does not fit a place whose type is known.

import { nearest } from "../base/index.ts";
import { faults } from "../diagnostics/index.ts";
import { dimensionOf } from "../units/index.ts";
import { clash } from "./clash.ts";
import { type Context, report } from "./context.ts";
import type { Core } from "./core.ts";
import { say, sayChoices } from "./say.ts";
import type { Type } from "./types.ts";

/** Says that a value does not fit a place of known type, in the words that suit both. */
export function reportMisfit(core: Core, wanted: Type, context: Context, place: string, kind: "dimension" | "kind" | "type"): void {
  const [given, aim] = [context.solver.resolveType(core.type), context.solver.resolveType(wanted)];
  if (aim.type === "text" && aim.choices !== undefined && given.type === "text" && given.choices !== undefined) {
    const word = given.choices.find((choice) => !aim.choices?.includes(choice)) ?? "";
    const near = nearest(word, aim.choices);
    const mends = near === undefined ? [] : [{ label: `Write "${near}"`, changes: [{ ...core.range, insert: `"${near}"` }] }];
    report(
      context,
      faults.notAChoice(
        core.range,
        { given: `"${word}"`, choices: sayChoices(aim.choices), nearest: near === undefined ? undefined : `"${near}"` },
        { mends },
      ),
    );
    return;
  }
  if ((given.type === "point") !== (aim.type === "point") && (given.type === "quantity" || aim.type === "quantity")) {
    const isPoint = given.type === "point";
    const temperatures = isPoint ? aim : given;
    if (temperatures.type === "quantity" && temperatures.dimension === dimensionOf("temperature")) {
      const advice = isPoint ? "Write it in K or degC_diff, or take the difference of two points." : "Write it in degC, degF or K abs.";
      report(
        context,
        faults.pointAndDifference(core.range, {
          given: "This",
          is: isPoint ? "point" : "difference",
          place,
          wants: isPoint ? "difference" : "point",
          advice,
        }),
      );
      return;
    }
  }
  if (kind === "type") report(context, faults.wrongType(core.range, { place, wanted: say(aim), given: say(given) }));
  else report(context, clash(context, core.range, aim, given, kind, `do not fit: ${place} wants the first`, {}));
}
