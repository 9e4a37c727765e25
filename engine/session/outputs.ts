// What the pad shows beside each statement, made from the graphs when it is asked for.

import { typeText } from "../check/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { citation, type Reference, readReference, unknownKeys } from "../notebook/index.ts";
import { type Marks, wholeMark } from "../run/index.ts";
import { fromSI, typographic, type Unit } from "../units/index.ts";
import { examplePasses, judge } from "./check-outcome.ts";
import type { EngineState } from "./engine-state.ts";
import { gridOf } from "./grid.ts";
import { type ShowOptions, showValue } from "./show.ts";
import { showFigure } from "./show-figure.ts";
import type { LineOutput, Placed, ShownMarks } from "./snapshot.ts";
import { namePlace, type Statement } from "./statement.ts";
import type { Worth } from "./values.ts";

export interface OutputContext {
  readonly engine: EngineState;
  readonly show: ShowOptions;
  readonly references: ReadonlyMap<string, Reference>;
  /** Where a statement stands, for related places. */
  readonly place: (key: string) => { readonly file: string; readonly from: number } | undefined;
}

const kinds: Readonly<Record<Statement["tree"]["kind"], LineOutput["kind"]>> = {
  definition: "definition",
  check: "check",
  formula: "formula",
  recordDeclaration: "record",
  family: "family",
  example: "example",
  use: "use",
  remark: "remark",
  broken: "broken",
};

/** Faults and notices of a statement: of its text, of checking, of evaluating, of its reference column. */
export function diagnosticsOf(
  statement: Statement,
  worth: Worth | undefined,
  references: ReadonlyMap<string, Reference>,
): readonly Diagnostic[] {
  const out: Diagnostic[] = [...statement.syntax, ...statement.own, ...(statement.checked?.diagnostics ?? [])];
  if (worth !== undefined && !worth.ok && worth.fault !== undefined) out.push(worth.fault);
  const { columns } = statement.tree;
  if (columns?.reference !== undefined && columns.referenceRange !== undefined) {
    const { from } = columns.referenceRange;
    for (const diagnostic of unknownKeys(readReference(columns.reference), references)) {
      const changes = (mend: Diagnostic["mends"][number]): Diagnostic["mends"][number] => ({
        ...mend,
        changes: mend.changes.map((change) => ({ ...change, from: change.from + from, to: change.to + from })),
      });
      out.push({
        ...diagnostic,
        range: { from: diagnostic.range.from + from, to: diagnostic.range.to + from },
        mends: diagnostic.mends.map(changes),
      });
    }
  }
  return out;
}

/** A value without a kind that is used as two kinds: a notice where it is defined, since neither use is wrong by itself. */
function kindsOf(statement: Statement, engine: EngineState): readonly Diagnostic[] {
  const kinds = [...new Set(engine.kindUses.get(statement.key)?.values() ?? [])].sort();
  if (kinds.length < 2) return [];
  return [faults.usedAsTwoKinds(namePlace(statement.tree), { name: statement.name ?? "this", kinds: kinds.join(" and as ") })];
}

export function place(diagnostic: Diagnostic, offset: number, context: OutputContext, file: string): Placed {
  return {
    code: diagnostic.code,
    severity: diagnostic.severity,
    from: diagnostic.range.from + offset,
    to: diagnostic.range.to + offset,
    message: diagnostic.message,
    ...(diagnostic.hint === undefined ? {} : { hint: diagnostic.hint }),
    mends: diagnostic.mends.map((mend) => ({
      label: mend.label,
      changes: mend.changes.map((change) => ({ ...change, from: change.from + offset, to: change.to + offset })),
    })),
    related: diagnostic.related.flatMap((related) => {
      const at = related.statement === undefined ? { file, from: offset } : context.place(related.statement);
      return at === undefined
        ? []
        : [{ message: related.message, file: at.file, from: at.from + related.range.from, to: at.from + related.range.to }];
    }),
  };
}

export function shownMarks(marks: Marks): ShownMarks | undefined {
  const mark = wholeMark(marks);
  if (mark.provenance === undefined && mark.outside.length === 0 && !mark.nominalOnly) return undefined;
  return {
    ...(mark.provenance === undefined ? {} : { provenance: mark.provenance }),
    outside: mark.outside,
    nominalOnly: mark.nominalOnly,
  };
}

/** The names a value waits for, as this file writes them. */
const ownName = (key: string, file: string): string =>
  key.startsWith(`${file}#`) ? key.slice(file.length + 1) : key.replace(/^.*\/?([^/]*)#/, "$1 ");

export function lineOutput(statement: Statement, from: number, context: OutputContext): LineOutput {
  const { engine } = context;
  const { tree, checked } = statement;
  const worth = engine.values.worth(statement.key);
  const diagnostics = [...diagnosticsOf(statement, worth, context.references), ...kindsOf(statement, engine)];
  const faulty = diagnostics.some((diagnostic) => diagnostic.severity === "fault");
  const reference = statement.csv?.reference?.text ?? tree.columns?.reference;
  const base = {
    id: statement.id,
    kind: statement.csv === undefined ? kinds[tree.kind] : ("csv" as const),
    from,
    to: from + statement.text.length,
    ...(statement.name === undefined ? {} : { name: statement.name }),
    citation: reference === undefined ? "" : citation(readReference(reference), context.references),
    note: statement.csv?.note?.text ?? tree.columns?.note ?? "",
    diagnostics: diagnostics.map((diagnostic) => place(diagnostic, from, context, statement.file)),
    ...(checked?.input === true && statement.csv === undefined ? { input: true as const } : {}),
    ...(checked === undefined || faulty || checked.type.type === "unknown" ? {} : { type: typeText(checked.type) }),
  };
  const waits =
    worth !== undefined && !worth.ok && worth.waits.length > 0 ? { waitsFor: worth.waits.map((key) => ownName(key, statement.file)) } : {};
  const title = base.note === "" ? statement.text.slice(tree.working.from, tree.working.to).replace(/^(check|example)\s+/, "") : base.note;
  if (tree.kind === "check") {
    if (faulty || worth?.ok !== true || checked === undefined) return { ...base, ...waits, check: { state: "open", title } };
    const marks = engine.values.marks(statement.key);
    return { ...base, check: judge(checked, worth.value, wholeMark(marks), title, context.show), ...withMarks(marks) };
  }
  if (tree.kind === "example") {
    if (faulty || worth?.ok !== true) return { ...base, ...waits, example: { state: "open" } };
    const [actual] = worth.value as readonly [never];
    return {
      ...base,
      example: {
        state: examplePasses(worth.value) ? "passes" : "fails",
        shown: showValue(actual, checked?.type ?? { type: "unknown" }, undefined, context.show).text,
      },
    };
  }
  const valued =
    tree.kind === "definition" || statement.csv !== undefined || (tree.kind === "use" && statement.checked?.program === "value");
  if (!valued || faulty || checked === undefined) return { ...base, ...waits };
  if (worth?.ok !== true) return { ...base, ...waits };
  const value = showValue(worth.value, checked.type, checked.shownIn, context.show);
  const marks = engine.values.marks(statement.key);
  const grid = gridOf(worth.value, checked.type, marks, context.show, shownMarks);
  const figure = checked.type.type === "figure" ? showFigure(worth.value, context.show) : undefined;
  const shown = { ...(grid === undefined ? {} : { grid }), ...(figure === undefined ? {} : { figure }) };
  return { ...base, value, ...withMarks(marks), ...shown, ...control(statement, worth.value, from) };
}

function withMarks(marks: Marks): { readonly marks?: ShownMarks } {
  const shown = shownMarks(marks);
  return shown === undefined ? {} : { marks: shown };
}

/** A control for an input with bounds, in the unit its number is written in. */
function control(statement: Statement, value: unknown, offset: number): { readonly control?: NonNullable<LineOutput["control"]> } {
  const { tree, checked } = statement;
  if (tree.kind !== "definition" || checked?.within === undefined || typeof value !== "number") return {};
  const nominal = tree.value.kind === "scatter" ? tree.value.nominal : tree.value;
  const literal = nominal.kind === "unary" ? nominal.of : nominal;
  if (literal.kind !== "number") return {};
  const body = checked.unit?.body;
  const constant = body?.op === "scatter" ? body.nominal : body;
  const unit: Unit | undefined =
    constant?.op === "constant" ? constant.unit : constant?.op === "negate" && constant.of.op === "constant" ? constant.of.unit : undefined;
  const inUnit = (si: number): number => (unit === undefined ? si : fromSI(si, unit));
  const to = literal.unit === undefined ? literal.range.to : literal.unit.range.from;
  const digits = statement.text.slice(nominal.range.from, to).trimEnd();
  return {
    control: {
      value: inUnit(value),
      low: inUnit(checked.within.from),
      high: inUnit(checked.within.to),
      unit: unit === undefined ? "" : typographic(unit),
      from: offset + nominal.range.from,
      to: offset + nominal.range.from + digits.length,
    },
  };
}
