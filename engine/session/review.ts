// What a reviewer would ask about a notebook before signing it; nothing here stops a calculation.

import type { Core, CoreFormula } from "../check/index.ts";
import { liveValues, placedChunks } from "../notebook/index.ts";
import { wholeMark } from "../run/index.ts";
import { expressionUsePlaces, normalName, parseLive, usePlaces, visit } from "../syntax/index.ts";
import { partsOf } from "../trace/index.ts";
import { type Dimension, dimensionless, preferences } from "../units/index.ts";
import type { Exported } from "./exported.ts";
import type { FileState } from "./file-state.ts";
import type { SessionState } from "./session.ts";
import { namePlace, type Statement } from "./statement.ts";
import type { ReviewItem, ReviewKind } from "./tools-api.ts";

interface At {
  readonly statement: Statement;
  readonly from: number;
}

/** In the order of the text; of one line in the order of the kinds. */
export function reviewOf(state: SessionState, file: string): readonly ReviewItem[] {
  const notebook = state.files.notebooks.get(file);
  if (notebook === undefined) return [];
  const used = namesInUse(state, notebook);
  const stated = preferences(Object.fromEntries([...notebook.front.units].map(([key, { text }]) => [key, text]))).preferences;
  const dimensions = new Set(stated.units.map(({ unit }) => unit.dimension));
  return statementsOf(notebook).flatMap((at) => itemsOf(state, at, used, dimensions));
}

function statementsOf(notebook: FileState): readonly At[] {
  const found: At[] = [];
  notebook.notebook.parts.forEach((part, index) => {
    const statement = part.kind === "csv" ? notebook.statements.get(part) : undefined;
    if (statement !== undefined) found.push({ statement, from: notebook.notebook.starts[index] ?? 0 });
  });
  for (const { chunk, from } of placedChunks(notebook.notebook)) {
    const statement = notebook.statements.get(chunk);
    if (statement !== undefined) found.push({ statement, from });
  }
  return found.sort((a, b) => a.from - b.from);
}

/** Names that other lines, live values or other notebooks read. An input whose use is a check alone is used. */
function namesInUse(state: SessionState, notebook: FileState): ReadonlySet<string> {
  const used = new Set<string>();
  for (const { chunk } of placedChunks(notebook.notebook)) {
    const statement = notebook.statements.get(chunk);
    if (statement !== undefined) for (const { name } of usePlaces(statement.tree)) if (name !== statement.name) used.add(name);
  }
  for (const part of notebook.notebook.parts) {
    if (part.kind !== "prose") continue;
    for (const live of liveValues(part.text)) {
      const path = parseLive(live.inside)?.path;
      if (path !== undefined) for (const { name } of expressionUsePlaces(path)) used.add(name);
    }
  }
  for (const other of state.files.notebooks.values()) {
    for (const [prefix] of other.byName) {
      if (state.engine.prefix(other.file, prefix) !== notebook.file) continue;
      for (const list of other.byName.values())
        for (const statement of list)
          for (const name of statement.uses) if (name.startsWith(`${prefix}.`)) used.add(name.slice(prefix.length + 1));
    }
  }
  return used;
}

function itemsOf(
  state: SessionState,
  { statement, from }: At,
  used: ReadonlySet<string>,
  stated: ReadonlySet<Dimension>,
): readonly ReviewItem[] {
  const { tree, checked, csv } = statement;
  if (tree.kind === "broken" || (tree.kind === "remark" && csv === undefined) || tree.kind === "use" || checked === undefined) return [];
  const at = csv?.name ?? namePlace(tree);
  const name = tree.kind === "definition" ? tree.name.text : (statement.name ?? tree.columns?.note ?? "check");
  const found: ReviewItem[] = [];
  const add = (kind: ReviewKind, text: string, place = at): void => {
    found.push({ kind, id: statement.id, name, text, from: from + place.from, to: from + place.to });
  };
  const reference = csv?.reference?.text ?? tree.columns?.reference ?? "";
  const note = csv?.note?.text ?? tree.columns?.note ?? "";
  const input = csv !== undefined || (tree.kind === "definition" && checked.input);
  const fieldsCited =
    tree.kind === "definition" &&
    tree.value.kind === "record" &&
    tree.value.fields.every((field) => field.columns?.reference !== undefined);
  if (input && reference === "" && !fieldsCited) add("no reference", "An input says where it comes from, or that it is assumed.");
  if (note === "" && (tree.kind === "definition" || tree.kind === "check" || csv !== undefined) && !speaksForItself(statement))
    add("no note", tree.kind === "check" ? "A note is the title of a check." : "A note says what the line is.");
  // A computed line that nothing reads is a result; people read it.
  const result = tree.kind === "definition" && !checked.input;
  if (statement.name !== undefined && !result && !used.has(normalName(statement.name))) add("unused", "Nothing reads this name.");
  const outside = wholeMark(state.engine.values.marks(statement.key)).outside[0];
  if (outside !== undefined) add("outside validity", `${outside.formula} holds only while ${outside.limit}.`);
  for (const place of bareNumbers(state, statement)) add("bare number", "A number inside a formula has no name and no source.", place);
  if (tree.kind === "definition" && !checked.input && unitUnseen(statement, stated))
    add("unit not shown", "The line computes a quantity, and neither it nor the title block says in which unit.");
  if (tree.kind === "check" && tree.factor === undefined && checked.program === "comparison" && checked.ratio && !factorInside(statement))
    add("check without factor", "The check compares without a factor of safety.");
  return found;
}

/** `t = thread("M5")`: the line says all that a note could. */
function speaksForItself({ tree }: Statement): boolean {
  return tree.kind === "definition" && tree.value.kind === "call" && tree.value.arguments.every(({ value }) => value.kind === "text");
}

/** The unit is told by an `as`, a type, a formula called alone that declares its own, or the notebook's `units`. */
function unitUnseen({ tree, checked }: Statement, stated: ReadonlySet<Dimension>): boolean {
  if (tree.kind !== "definition" || checked === undefined || checked.type.type !== "quantity") return false;
  if (checked.type.dimension === dimensionless || tree.unit !== undefined || tree.type !== undefined) return false;
  return checked.shownIn === undefined && !stated.has(checked.type.dimension) && tree.value.kind !== "name";
}

/** `1.5 * F <= G` carries its factor itself. */
function factorInside({ tree }: Statement): boolean {
  if (tree.kind !== "check") return true;
  let found = false;
  visit(tree.condition, (node) => {
    if (node.kind === "number" && node.unit === undefined && Number(node.digits) > 1) found = true;
    return !found;
  });
  return found;
}

/** Literals of formulas and computed lines that are more than a count: not 0, 1, 2, 3, 4, 8, 10, 16, 32, 64, 100, a half, nor powers. */
const PLAIN = new Set([0, 0.5, 1, 2, 3, 4, 6, 8, 10, 12, 16, 32, 64, 100, 180, 360, 1000]);

function bareNumbers(state: SessionState, statement: Statement): readonly { readonly from: number; readonly to: number }[] {
  const { tree, checked } = statement;
  if (tree.kind === "formula") {
    const entry = (state.engine.types.value(statement.key) as Exported | undefined)?.entry;
    if (entry?.entry !== "formula") return [];
    return stepsWithoutSource(entry.core).flatMap((core) => literals(core, false));
  }
  if (tree.kind !== "definition" || checked?.input !== false || checked.unit === undefined) return [];
  return literals(checked.unit.body, false);
}

const stepsWithoutSource = (formula: CoreFormula): readonly Core[] =>
  formula.reference !== undefined
    ? []
    : formula.steps
        .filter((step) => step.kind !== "valid" && step.kind !== "require" && step.reference === undefined)
        .map(({ value }) => value);

/** `named`: an argument of a call, which its parameter names. */
function literals(core: Core, named: boolean): readonly { readonly from: number; readonly to: number }[] {
  if (core.op === "constant") {
    const plain = typeof core.value !== "number" || !core.literal || (core.unit === undefined && PLAIN.has(Math.abs(core.value)));
    return named || plain ? [] : [core.range];
  }
  if (core.op === "power") return literals(core.left, false);
  const inside = core.op === "call" || core.op === "native" || core.op === "record" || core.op === "with";
  return partsOf(core).flatMap((part) => literals(part, inside));
}
