// What is known of the name under the pointer.

import { intrinsicTypes } from "../check/index.ts";
import { chunkAt, citation, readReference } from "../notebook/index.ts";
import { intrinsics } from "../run/index.ts";
import { normalName, parseStatement, tokens } from "../syntax/index.ts";
import { callText, formulaSteps, mathsText, type TraceCall, type TraceView } from "../trace/index.ts";
import type { Hover } from "./api.ts";
import { headText } from "./complete.ts";
import { keysOf } from "./engine-state.ts";
import type { Exported } from "./exported.ts";
import type { Reporter } from "./reporter.ts";
import type { SessionState } from "./session.ts";
import { showValue } from "./show.ts";
import { traceName } from "./trace-name.ts";

/** How deep calls are opened under the pointer: from a stress area down to the pitch. */
const OPEN = 6;
const MOST_LINES = 40;

export function hoverAt(state: SessionState, reporter: Reporter, file: string, offset: number): Hover | undefined {
  const notebook = state.files.notebooks.get(file);
  const found = notebook === undefined ? undefined : chunkAt(notebook.notebook, offset);
  if (notebook === undefined || found === undefined) return undefined;
  const at = offset - found.from;
  const token = tokens(found.chunk.text).find(
    (each) => each.from <= at && at < each.to && (each.kind === "name" || each.kind === "type" || each.kind === "field"),
  );
  if (token === undefined) return undefined;
  const text = found.chunk.text.slice(token.from, token.to);
  const name = normalName(text);
  const place = { from: found.from + token.from, to: found.from + token.to };
  const keys = keysOf(state.engine, file, name);
  state.update();
  for (const key of keys) {
    const exported = state.engine.types.value(key) as Exported | undefined;
    if (exported === undefined || exported.entry.entry === "faulty") continue;
    const statement = state.engine.byKey.get(key);
    const worth = state.engine.values.worth(key);
    const context = reporter.context(notebook);
    const { columns } = statement?.tree ?? {};
    const value =
      exported.entry.entry === "value" && worth?.ok === true
        ? showValue(worth.value, exported.entry.type, statement?.checked?.shownIn, context.show)
        : undefined;
    const working =
      exported.entry.entry === "formula"
        ? (workingHere(state, reporter, file, found.chunk.text, name) ??
          formulaSteps(exported.entry.core, (worth, type, unit) => showValue(worth, type, unit, context.show)).map(stepLine))
        : [];
    return {
      ...place,
      head: headText(text, exported.entry),
      ...(value === undefined ? {} : { value }),
      ...(columns?.note === undefined ? {} : { note: columns.note }),
      ...(columns?.reference === undefined ? {} : { citation: citation(readReference(columns.reference), context.references) }),
      ...(working.length === 0 ? {} : { working: working.slice(0, MOST_LINES) }),
    };
  }
  const intrinsic = Object.hasOwn(intrinsicTypes, name) ? intrinsics[name] : undefined;
  return intrinsic === undefined ? undefined : { ...place, head: intrinsic.head, note: intrinsic.purpose };
}

const stepLine = ({ kind, name, maths, note }: ReturnType<typeof formulaSteps>[number]): string => {
  const start = kind === "require" || kind === "valid" ? `${kind} ` : `${name?.name ?? "result"} = `;
  return `${start}${mathsText(maths)}${note === undefined || note === "" ? "" : `  | ${note}`}`;
};

/** The call of a formula in the definition at hand, with the numbers that it got there; undefined where the line is none or has no value. */
function workingHere(
  state: SessionState,
  reporter: Reporter,
  file: string,
  statement: string,
  formula: string,
): readonly string[] | undefined {
  const { tree } = parseStatement(statement);
  if (tree.kind !== "definition") return undefined;
  const call = callOf(traceName(state, reporter, file, tree.name.text, OPEN)?.view, formula);
  return call === undefined ? undefined : callText(call);
}

function callOf(view: TraceView | undefined, formula: string): TraceCall | undefined {
  const waiting = [...(view?.calls ?? [])];
  for (let call = waiting.shift(); call !== undefined; call = waiting.shift()) {
    if (call.formula === formula) return call;
    waiting.push(...call.steps.flatMap((step) => step.calls));
  }
  return undefined;
}
