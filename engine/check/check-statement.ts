// One statement checked: what it declares, its program, its faults.

import { faults } from "../diagnostics/index.ts";
import type {
  Check,
  Comparison,
  Definition,
  Example,
  Expression,
  FamilyDeclaration,
  RecordDeclaration,
  StatementTree,
} from "../syntax/index.ts";
import type { Unit } from "../units/index.ts";
import { dimensionless, dimensionOf } from "../units/index.ts";
import { fits, unify } from "./agree.ts";
import { checkFormula } from "./check-formula.ts";
import { declaredDiffers, result, shownUnit, unitOf, widened } from "./checked.ts";
import { clash } from "./clash.ts";
import { type Context, constant, createContext, faulty, node, report } from "./context.ts";
import type { Core } from "./core.ts";
import { variablesOf } from "./dimensions.ts";
import { infer } from "./infer.ts";
import { dottedName, whatItIs } from "./infer-name.ts";
import { plainNumber, readUnit } from "./infer-number.ts";
import { inferSolve, inferSpread, inferStudy } from "./infer-spread.ts";
import { isInput, literalUnit } from "./input.ts";
import { ledgerPlaces } from "./ledger.ts";
import { reportMisfit } from "./misfit.ts";
import { readType } from "./read-type.ts";
import { say } from "./say.ts";
import type { Checked, CheckedWithin, Entry, FieldType, Scope } from "./scope.ts";
import type { Type } from "./types.ts";

/** Checks a statement whose text had no syntax fault. Total: a wrong statement gives diagnostics and a faulty entry. */
export function checkStatement(tree: StatementTree, scope: Scope): Checked {
  switch (tree.kind) {
    case "definition":
      return checkDefinition(tree, scope);
    case "check":
      return checkCheck(tree, scope);
    case "formula":
      return checkFormula(tree, scope);
    case "recordDeclaration":
      return checkRecord(tree, scope);
    case "family":
      return checkFamily(tree, scope);
    case "example":
      return checkExample(tree, scope);
    default:
      return result(createContext(scope, "open", infer), { program: "none" });
  }
}

function checkDefinition(tree: Definition, scope: Scope): Checked {
  const context = createContext(scope, "open", infer);
  const { name } = tree.name;
  if (scope.ambiguous(name)) report(context, faults.nameOrUnit(tree.name.range, { name: tree.name.text }));
  const wanted = tree.type === undefined ? undefined : readType(tree.type, context);
  const body =
    tree.value.kind === "study"
      ? inferStudy(tree.value, context, true)
      : tree.value.kind === "solve"
        ? inferSolve(tree.value, context, true)
        : inferSpread(tree.value, context, wanted);
  let type = context.solver.resolveType(body.type);
  if (wanted !== undefined && type.type !== "unknown") {
    const agreement = fits(context, type, wanted);
    if ("clash" in agreement) declaredDiffers(tree.name.text, body, wanted, context, agreement.clash);
    else type = context.solver.resolveType(agreement.type);
  }
  const shown = tree.unit === undefined ? undefined : shownUnit(tree.unit, type, context);
  const input = isInput(tree.value);
  const bounds = checkWithin(tree, type, body, input, context);
  const ownUnit = shown ?? (input ? literalUnit(body) : unitOfCall(body, context));
  const closed = scope.library || (!input && !context.shared.open);
  const entry: Entry = { entry: "value", name: scope.fullName(name), type, closed, input };
  return result(context, {
    program: "value",
    declares: name,
    entry,
    unit: unitOf(context, body),
    type,
    input,
    ...(ownUnit === undefined ? {} : { shownIn: ownUnit }),
    ...(bounds === undefined ? {} : { within: bounds }),
  });
}

function unitOfCall(body: Core, context: Context): Unit | undefined {
  if (body.op !== "call" || body.formula.op !== "global") return undefined;
  const entry = context.scope.byFullName([...context.shared.needs.keys()][body.formula.index] ?? "");
  return entry?.entry === "formula" ? entry.unit : undefined;
}

function checkWithin(tree: Definition, type: Type, body: Core, input: boolean, context: Context): CheckedWithin | undefined {
  if (tree.within === undefined) return undefined;
  if (!input) {
    report(context, faults.withinWantsInput(tree.within.range, { name: tree.name.text }));
    return undefined;
  }
  const [from, to] = [infer(tree.within.from, context), infer(tree.within.to, context)];
  for (const bound of [from, to]) {
    if (bound.type.type === "unknown" || type.type === "unknown") return undefined;
    const agreement = unify(context, type, bound.type);
    if ("type" in agreement) continue;
    report(context, clash(context, bound.range, type, bound.type, agreement.clash, "do not fit: a bound is of the kind of its input", {}));
    return undefined;
  }
  const [low, high, value] = [constantOf(from), constantOf(to), constantOf(body)];
  if (low === undefined || high === undefined) return undefined;
  if (high < low) report(context, faults.boundsTurned(tree.within.range, { low: textOf(tree.within.from), high: textOf(tree.within.to) }));
  else if (value !== undefined && !(low <= value && value <= high)) {
    report(
      context,
      faults.outsideWithin(tree.value.range, {
        name: tree.name.text,
        value: textOf(tree.value),
        low: textOf(tree.within.from),
        high: textOf(tree.within.to),
      }),
    );
  }
  return { from: low, to: high };
}

/** The number of a literal, with its sign and without its spread. */
function constantOf(core: Core): number | undefined {
  if (core.op === "constant") return typeof core.value === "number" ? core.value : undefined;
  if (core.op === "negate") {
    const of = constantOf(core.of);
    return of === undefined ? undefined : -of;
  }
  return core.op === "scatter" ? constantOf(core.nominal) : undefined;
}

function textOf(expression: Expression): string {
  if (expression.kind === "number") return `${expression.digits}${expression.unit === undefined ? "" : ` ${expression.unit.text}`}`;
  if (expression.kind === "unary") return `−${textOf(expression.of)}`;
  return expression.kind === "scatter" ? textOf(expression.nominal) : "the value";
}

function checkCheck(tree: Check, scope: Scope): Checked {
  const context = createContext(scope, "open", infer);
  const { condition } = tree;
  if (
    condition.kind === "compare" &&
    condition.operators.length === 1 &&
    condition.operators[0] !== "==" &&
    condition.operators[0] !== "!="
  ) {
    const compared = comparison(tree, condition, context);
    if (compared !== undefined) return compared;
  }
  const body = infer(condition, context);
  const type = context.solver.resolveType(body.type);
  const ledger = ledgerPlaces(type, scope);
  if (tree.factor !== undefined) {
    infer(tree.factor, context);
    const other = ledger === undefined ? "this is a condition" : "each mode of a ledger has a factor of its own";
    report(
      context,
      faults.factorMisplaced(tree.factor.range, { why: condition.kind === "compare" ? "this has more or other sides" : other }),
    );
  }
  if (ledger !== undefined) return result(context, { program: "ledger", unit: unitOf(context, body), type, ledger });
  wantTruth(body, condition, context);
  return result(context, { program: "condition", unit: unitOf(context, body), type: { type: "truth" } });
}

function wantTruth(body: Core, condition: Expression, context: Context): void {
  const { type } = body;
  if (type.type === "truth" || type.type === "unknown") return;
  const list = type.type === "list" && type.of.type === "truth";
  const advice = list ? "Write all(...) to want every one." : type.type === "quantity" ? "Compare it: demand <= capacity." : undefined;
  const mends = list
    ? [
        {
          label: "Want every one: all(...)",
          changes: [
            { from: condition.range.from, to: condition.range.from, insert: "all(" },
            { from: condition.range.to, to: condition.range.to, insert: ")" },
          ],
        },
      ]
    : [];
  report(context, faults.checkWantsTruth(condition.range, { given: say(context.solver.resolveType(type)), advice }, { mends }));
}

/** `demand <= capacity`, turned so that the demand stands first; undefined when it is a list and must be wrapped. */
function comparison(tree: Check, condition: Comparison, context: Context): Checked | undefined {
  const operator = condition.operators[0] ?? "<=";
  const turned = operator === ">=" || operator === ">";
  const whole = infer(condition, context);
  if (whole.op !== "compare") {
    if (tree.factor !== undefined) infer(tree.factor, context);
    wantTruth(whole, condition, context);
    return result(context, { program: "condition", unit: unitOf(context, whole), type: { type: "truth" } });
  }
  const [left, right] = whole.operands as readonly [Core, Core];
  const [demand, capacity] = turned ? [right, left] : [left, right];
  const ratio = demand.type.type === "quantity";
  let factor: Core = constant(condition.range, plainNumber, 1);
  if (tree.factor !== undefined) {
    factor = infer(tree.factor, context);
    const fit =
      factor.type.type === "quantity"
        ? unify(context, factor.type, { type: "quantity", dimension: dimensionless, kind: "number" })
        : undefined;
    if (factor.type.type !== "unknown" && (fit === undefined || "clash" in fit)) {
      report(context, faults.wrongType(tree.factor.range, { place: "A factor", wanted: "a plain number", given: say(factor.type) }));
    }
    if (!ratio) report(context, faults.factorMisplaced(tree.factor.range, { why: "temperature points have no multiple" }));
  }
  const body = node(context, {
    op: "list",
    items: [demand, capacity, factor],
    range: condition.range,
    type: { type: "list", of: { type: "unknown" } },
  });
  return result(context, {
    program: "comparison",
    unit: unitOf(context, body),
    type: demand.type,
    ratio,
    strict: operator === "<" || operator === ">",
  });
}

function checkExample(tree: Example, scope: Scope): Checked {
  const context = createContext(scope, "example", infer);
  const actual = infer(tree.actual, context);
  const expected = infer(tree.expected, context, actual.type);
  const agreement = unify(context, actual.type, expected.type);
  if ("clash" in agreement)
    report(context, clash(context, tree.expected.range, actual.type, expected.type, agreement.clash, "cannot be compared", {}));
  const items = [actual, expected];
  if (tree.tolerance !== undefined) {
    const tolerance = infer(tree.tolerance, context);
    const wanted: Type = actual.type.type === "point" ? typeOfDifference : actual.type.type === "list" ? actual.type.of : actual.type;
    const fit = unify(context, wanted, tolerance.type);
    if ("clash" in fit)
      report(
        context,
        clash(context, tree.tolerance.range, wanted, tolerance.type, fit.clash, "do not fit: a tolerance is of the kind of the value", {}),
      );
    items.push(tolerance);
  }
  const body = node(context, { op: "list", items, range: tree.working, type: { type: "list", of: { type: "unknown" } } });
  return result(context, { program: "example", unit: unitOf(context, body), type: actual.type });
}

const typeOfDifference: Type = { type: "quantity", dimension: dimensionOf("temperature"), kind: "any" };

function checkRecord(tree: RecordDeclaration, scope: Scope): Checked {
  const context = createContext(scope, "formula", infer);
  const fields: FieldType[] = [];
  for (const field of tree.fields) {
    const { name } = field.name;
    if (fields.some((other) => other.name === name)) report(context, faults.fieldTwice(field.name.range, { name: field.name.text }));
    const wanted = field.type === undefined ? undefined : readType(field.type, context);
    const program = field.default === undefined ? undefined : inferSpread(field.default, context, wanted);
    if (wanted !== undefined && program !== undefined && program.type.type !== "unknown") {
      const agreement = fits(context, program.type, wanted);
      if ("clash" in agreement) reportMisfit(program, wanted, context, `The field ${field.name.text}`, agreement.clash);
    }
    const open: Type = { type: "quantity", dimension: context.solver.fresh(), kind: "any" };
    const type = wanted ?? (program === undefined ? open : widened(program.type));
    const unit =
      field.type?.kind === "unit" ? readUnit(field.type.unit, context, true) : program === undefined ? undefined : literalUnit(program);
    fields.push({ name, type, ...(unit === undefined ? {} : { unit }), ...(program === undefined ? {} : { default: program }) });
  }
  const resolved = fields.map((field) => ({ ...field, type: context.solver.resolveType(field.type) }));
  const entry: Entry = {
    entry: "record",
    name: scope.fullName(tree.name.name),
    variables: variablesOf(resolved.map((field) => field.type)),
    fields: resolved,
    needs: [...context.shared.needs.keys()],
    slots: context.shared.slots,
  };
  return result(context, { program: "none", declares: tree.name.name, entry });
}

function checkFamily(tree: FamilyDeclaration, scope: Scope): Checked {
  const context = createContext(scope, "open", infer);
  const members: string[] = [];
  for (const member of tree.members) {
    const name = dottedName(member, context);
    const found = name === undefined ? undefined : scope.find(name);
    if (found?.entry.entry === "record") members.push(found.entry.name);
    else if (found?.entry.entry !== "faulty") {
      const what =
        found === undefined
          ? faults.unknownName(member.range, { name: name ?? "this" })
          : faults.notAMember(member.range, { name: `${name ?? "this"} (${whatItIs(found.entry)})`, family: tree.name.text });
      report(context, what);
    } else faulty(context, member.range);
  }
  return result(context, {
    program: "none",
    declares: tree.name.name,
    entry: { entry: "family", name: scope.fullName(tree.name.name), members },
  });
}
