// A formula of the language as a value that can be called.

import { broken } from "../base/index.ts";
import type { CoreFormula } from "../check/index.ts";
import { compileChecked, compileOrStop } from "./compile.ts";
import type { RunContext } from "./context.ts";
import type { PreparedFormula, Run, Scope } from "./program.ts";
import { type Cells, suspect } from "./state.ts";
import type { FormulaValue, Value } from "./value.ts";

/**
 * Compiles a formula once; the function that comes back binds it to the values of what its body needs
 * (formulas and closed definitions). Each binding is a value of its own: bind again only when a need changed.
 */
export function prepareFormula(formula: CoreFormula, context: RunContext): (needs: readonly Value[]) => FormulaValue {
  const scope: Scope = { needs: formula.needs.length, context };
  const size = formula.needs.length + formula.slots;
  let compiled: Run | undefined;
  return (needs): PreparedFormula => {
    // Compiled when first bound: a library has many more formulas than a notebook uses.
    compiled ??= compileOrStop(() => compileBody(formula, scope));
    const bound = needs.length;
    return {
      shape: "formula",
      name: formula.name,
      core: formula,
      needs,
      base: bound,
      open: () => {
        const cells: Cells = new Array<Value>(size);
        for (let i = 0; i < bound; i += 1) cells[i] = needs[i] as Value;
        return cells;
      },
      run: compiled,
    };
  };
}

function compileBody(formula: CoreFormula, scope: Scope): Run {
  const before: Run[] = [];
  formula.parameters.forEach((parameter, i) => {
    if (parameter.default === undefined) return;
    const at = scope.needs + i;
    const run = compileChecked(parameter.default, scope);
    before.push((cells, state) => {
      if (cells[at] === undefined) cells[at] = run(cells, state);
      return null;
    });
  });
  let result: Run | undefined;
  for (const step of formula.steps) {
    const run = compileChecked(step.value, scope);
    if (step.kind === "result") {
      result = run;
    } else if (step.kind === "require") {
      before.push((cells, state) => {
        if (run(cells, state) !== true) throw suspect;
        return null;
      });
    } else if (step.kind === "step" && step.slot !== undefined) {
      const at = scope.needs + step.slot;
      before.push((cells, state) => {
        cells[at] = run(cells, state);
        return null;
      });
    } else {
      // `valid`: its truth is a mark, but a fault in it is a fault.
      before.push(run);
    }
  }
  const last = result ?? (() => broken(`formula ${formula.name} has no result`));
  if (before.length === 0) return last;
  if (before.length === 1) {
    const only = before[0] as Run;
    return (cells, state) => {
      only(cells, state);
      return last(cells, state);
    };
  }
  return (cells, state) => {
    for (let i = 0; i < before.length; i += 1) (before[i] as Run)(cells, state);
    return last(cells, state);
  };
}

/** The formula behind a value that the program calls. */
export function preparedFormula(value: Value): PreparedFormula {
  const formula = value as Partial<PreparedFormula> | null;
  if (typeof formula !== "object" || formula?.shape !== "formula" || formula.open === undefined)
    return broken("a call of what is no formula");
  return formula as PreparedFormula;
}
