// A call of a formula, walked: parameters, steps, requirements, limits of validity, result.

import { broken } from "../base/index.ts";
import type { Core, CoreFormula, CoreStep } from "../check/index.ts";
import { faults } from "../diagnostics/index.ts";
import { preparedFormula } from "./formula.ts";
import { instanceOf } from "./instance.ts";
import { addMark, joinMark, type Mark, type Marked, needMarks, outsideMark, provenanceMark, readProvenance, unmarked } from "./marks.ts";
import { type Op, type Place, show, type Walk } from "./place.ts";
import { type CallRecording, startRecording } from "./recording.ts";
import { atCall, RunFault } from "./run-fault.ts";
import { spend } from "./state.ts";

export function walkCall(core: Op<"call">, place: Place, walk: Walk): Marked {
  const callee = walk(core.formula, place);
  const prepared = preparedFormula(callee.value);
  const formula = prepared.core;
  const given = core.arguments.map((argument) => (argument === undefined ? undefined : walk(argument, place)));
  const { state } = place;
  state.depth += 1;
  if (place.context.limits.depth < state.depth) {
    throw new RunFault(faults.tooDeep(core.range, { limit: String(place.context.limits.depth) }));
  }
  spend(state, 1);
  const outer = place.recording;
  const recording = outer === undefined || outer.open <= 0 || outer.calls.has(core) ? undefined : startRecording(outer.open - 1);
  const instance = instanceOf(core.dimensions, place.instance);
  const inside: Place = {
    needs: prepared.needs.map((value, i) => ({ value, marks: needMarks(callee.marks, i) })),
    slots: new Array<Marked>(formula.slots),
    state,
    context: place.context,
    ...(instance === undefined ? {} : { instance }),
    ...(recording === undefined ? {} : { recording }),
  };
  const progress: { step: CoreStep | undefined } = { step: undefined };
  try {
    fillParameters(formula, given, inside, walk);
    const steps: CallRecording["steps"] = [];
    if (recording !== undefined) {
      const args = formula.parameters.map((_, i) => ({ marked: inside.slots[i] as Marked, byDefault: given[i] === undefined }));
      outer?.calls.set(core, { formula, ...(instance === undefined ? {} : { instance }), arguments: args, steps, inside: recording });
    }
    const result = walkSteps(formula, inside, walk, progress, steps);
    state.depth -= 1;
    return result;
  } catch (problem) {
    if (problem instanceof RunFault) throw atCall(problem, core.range, formula, progress.step?.name);
    throw problem;
  }
}

function fillParameters(formula: CoreFormula, given: readonly (Marked | undefined)[], inside: Place, walk: Walk): void {
  // All arguments first: a default may read any parameter.
  formula.parameters.forEach((_, i) => {
    const argument = given[i];
    if (argument !== undefined) inside.slots[i] = argument;
  });
  formula.parameters.forEach((parameter, i) => {
    if (given[i] !== undefined) return;
    inside.slots[i] = walk(parameter.default ?? broken(`${formula.name} is called without ${parameter.name}`), inside);
  });
}

function walkSteps(
  formula: CoreFormula,
  inside: Place,
  walk: Walk,
  progress: { step: CoreStep | undefined },
  done: CallRecording["steps"],
): Marked {
  let outside: Mark = unmarked;
  let result: Marked | undefined;
  for (const step of formula.steps) {
    progress.step = step;
    const value = walk(step.value, inside);
    const marked = step.kind === "step" ? withSource(value, step, formula) : value;
    done.push({ step, marked });
    if (step.kind === "step" && step.slot !== undefined) inside.slots[step.slot] = marked;
    if (step.kind === "require" && marked.value !== true) throw new RunFault(requirementBroken(formula, step, inside, walk), true);
    if (step.kind === "valid" && marked.value !== true) outside = joinMark(outside, limitMark(formula, step));
    if (step.kind === "result") result = marked;
  }
  const whole = result ?? broken(`formula ${formula.name} has no result`);
  return outside === unmarked ? whole : { value: whole.value, marks: addMark(whole.marks, outside) };
}

/** A literal with a reference of its own is an input of the formula; the reference of a computed step cites its method. */
function withSource(marked: Marked, step: CoreStep, formula: CoreFormula): Marked {
  if (step.reference === undefined || !isLiteral(step.value)) return marked;
  const provenance = readProvenance(step.reference, `${formula.name}.${step.name ?? ""}`);
  return provenance.level === "unsourced" ? marked : { value: marked.value, marks: addMark(marked.marks, provenanceMark(provenance)) };
}

function isLiteral(core: Core): boolean {
  switch (core.op) {
    case "constant":
      return true;
    case "negate":
      return isLiteral(core.of);
    case "list":
      return core.items.every(isLiteral);
    case "record":
      return core.fields.every(isLiteral);
    case "scatter":
      return isLiteral(core.nominal);
    default:
      return false;
  }
}

const conditionText = (step: CoreStep): string => step.text ?? step.note ?? step.name ?? step.kind;

const limitMark = (formula: CoreFormula, step: CoreStep): Mark =>
  outsideMark({ formula: formula.name, limit: conditionText(step), ...(step.note === undefined ? {} : { note: step.note }) });

function requirementBroken(formula: CoreFormula, step: CoreStep, inside: Place, walk: Walk): ReturnType<typeof faults.requirementBroken> {
  const values = namesIn(step.value)
    .map((leaf) => `${leaf.name} = ${show(inside, leaf, walk(leaf, inside).value)}`)
    .join(", ");
  const words = [step.note, values === "" ? undefined : `here ${values}`].filter((part) => part !== undefined).join("; ");
  const reason = words === "" ? undefined : `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
  return faults.requirementBroken(step.value.range, { formula: formula.name, condition: conditionText(step), reason });
}

/** The names that a condition reads, each once, those that hold a value. */
function namesIn(core: Core): readonly (Op<"local"> | Op<"global">)[] {
  const found = new Map<string, Op<"local"> | Op<"global">>();
  const look = (part: Core): void => {
    if ((part.op === "local" || part.op === "global") && !found.has(part.name)) found.set(part.name, part);
    else if (part.op === "compare") part.operands.forEach(look);
    else if (part.op === "negate" || part.op === "not" || part.op === "field") look(part.of);
    else if ("left" in part) {
      look(part.left);
      look(part.right);
    } else if (part.op === "native") part.arguments.forEach(look);
  };
  look(core);
  return [...found.values()];
}
