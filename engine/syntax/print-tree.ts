// A tree as text, with no text to go by: the fewest brackets, one line where the language allows it. `layout.ts` sets the spaces.

import { assertNever } from "../base/index.ts";
import { escapeBars } from "./columns.ts";
import { binaryLevel, level } from "./operators.ts";
import { quoteText } from "./text-literal.ts";
import type {
  Argument,
  Columns,
  Expression,
  FieldDeclaration,
  FieldValue,
  MatchArm,
  NumberLiteral,
  Parameter,
  Scatter,
  StatementTree,
  Step,
  TableHead,
  TypeExpression,
  UnitText,
} from "./tree.ts";

/** Below every level: a study takes commas and a scatter ends a value, so both stand alone or in brackets. */
const ALONE = -1;

function levelOf(node: Expression): number {
  switch (node.kind) {
    case "scatter":
    case "study":
      return ALONE;
    case "if":
    case "accumulate":
    case "solve":
      return level.prefix;
    case "with":
    case "where":
      return level.loose;
    case "compare":
      return level.compare;
    case "range":
      return level.range;
    case "unary":
      return node.operator === "not" ? level.not : level.sign;
    case "binary":
      return binaryLevel[node.operator];
    default:
      return level.primary;
  }
}

const print = (node: Expression, least: number): string => (levelOf(node) < least ? `(${bare(node)})` : bare(node));

/** A whole expression where commas or item ends follow. */
const full = (node: Expression): string => print(node, level.prefix);

/** As `full`; a scatter may stand there too. */
const value = (node: Expression): string => (node.kind === "scatter" ? bare(node) : full(node));

/** What `.`, `[ ]` and `( )` follow: a number would take them for its own. */
const base = (node: Expression): string => (node.kind === "number" ? `(${bare(node)})` : print(node, level.postfix));

/** The base of a power: `2 m^2` is a square metre, so a literal with a unit is bracketed. */
const powerBase = (node: Expression): string =>
  node.kind === "number" && (node.unit !== undefined || node.absolute) ? `(${bare(node)})` : print(node, level.postfix);

const as = (unit: UnitText | undefined): string => (unit === undefined ? "" : ` as ${unit.text}`);
const number = (node: NumberLiteral): string =>
  `${node.digits}${node.unit === undefined ? "" : ` ${node.unit.text}`}${node.absolute ? " abs" : ""}`;

export function printColumns(columns: Columns | undefined): string {
  if (columns === undefined) return "";
  const note = columns.note === undefined ? "" : ` ${escapeBars(columns.note)}`;
  return ` |${note}${columns.reference === undefined ? "" : ` | ${escapeBars(columns.reference)}`}`;
}

function bare(node: Expression): string {
  switch (node.kind) {
    case "number":
      return number(node);
    case "text":
      return quoteText(node.value);
    case "truth":
      return String(node.value);
    case "none":
      return "none";
    case "name":
      return node.text;
    case "member":
      return `${base(node.of)}.${node.field.text}`;
    case "column":
      return `.${node.field.text}`;
    case "unary":
      return node.operator === "not" ? `not ${print(node.of, level.not)}` : `${node.operator}${print(node.of, level.sign)}`;
    case "binary": {
      const own = binaryLevel[node.operator];
      if (node.operator === "^") return `${powerBase(node.left)}^${print(node.right, level.sign)}`;
      return `${print(node.left, own)} ${node.operator} ${print(node.right, own + 1)}`;
    }
    case "compare":
      return node.operands.map((operand, i) => (i === 0 ? "" : ` ${node.operators[i - 1]} `) + print(operand, level.compare + 1)).join("");
    case "if":
      return `if ${print(node.condition, level.loose)} then ${print(node.then, level.loose)} else ${full(node.otherwise)}`;
    case "call":
      return `${bare(node.callee)}(${node.arguments.map(argument).join(", ")})`;
    case "list":
      return `[${node.items.map(value).join(", ")}]`;
    case "comprehension": {
      const where = node.condition === undefined ? "" : ` where ${print(node.condition, level.or)}`;
      return `[${full(node.element)} for ${node.variable.text} in ${print(node.source, level.or)}${where}]`;
    }
    case "accumulate":
      return `accumulate ${node.state.text} = ${print(node.start, level.loose)} for ${node.variable.text} in ${print(node.source, level.or)}: ${full(node.body)}`;
    case "index":
      return `${base(node.of)}[${full(node.index)}]`;
    case "range": {
      const step = node.step === undefined ? "" : ` step ${print(node.step, level.range + 1)}`;
      return `${print(node.from, level.range + 1)} .. ${print(node.to, level.range + 1)}${step}`;
    }
    case "record":
      return `${bare(node.type)} ${fields(node.fields)}`;
    case "with":
      return `${print(node.of, level.loose)} with ${fields(node.fields)}`;
    case "table":
      return table(node.heads, node.rows);
    case "where":
      return `${print(node.of, level.loose)} where ${print(node.condition, level.or)}`;
    case "group":
      return `group ${print(node.of, level.loose)} by ${node.by.map((field) => `.${field.text}`).join(", ")} ${fields(node.fields)}`;
    case "match":
      return `match (${print(node.of, ALONE + 1)}) { ${node.arms.map(arm).join(", ")} }`;
    case "scatter":
      return `${full(node.nominal)} ${spread(node.spread)}`;
    case "study": {
      const axes = node.axes.map((axis) => `${axis.variable.text} in ${print(axis.values, level.or)}`);
      return `study ${node.subjects.map((subject) => print(subject, level.loose)).join(", ")} over ${axes.join(", ")}`;
    }
    case "solve": {
      const type = node.type === undefined ? "" : `: ${printType(node.type)}`;
      const bounds = `${print(node.from, level.range + 1)} .. ${print(node.to, level.range + 1)}`;
      return `solve ${node.variable.text}${type} in ${bounds} where ${print(node.condition, level.or)}`;
    }
    case "hole":
      return "";
    default:
      return assertNever(node);
  }
}

function spread(node: Scatter["spread"]): string {
  switch (node.kind) {
    case "limits":
      return `± ${print(node.by, level.or)}`;
    case "unequal":
      return `+${withoutUnit(node.plus)}/-${bare(node.minus)}`;
    case "share":
      return `± ${number(node.share)} of ${print(node.of, level.or)}`;
    case "deviation":
      return `~ ${print(node.by, level.or)}${node.count === undefined ? "" : ` of ${number(node.count)}`}`;
  }
}

/** Both limits share the unit that the second one shows. */
const withoutUnit = (node: Expression): string => (node.kind === "number" ? node.digits : bare(node));

const argument = (node: Argument): string => `${node.name === undefined ? "" : `${node.name.text} = `}${full(node.value)}${as(node.unit)}`;

/** `{ a, b }`, or one item a line when one of them has columns. */
function braces<T extends { readonly columns?: Columns }>(items: readonly T[], text: (item: T) => string, lines = false): string {
  if (items.length === 0) return "{}";
  if (!lines && items.every((item) => item.columns === undefined)) return `{ ${items.map(text).join(", ")} }`;
  return `{\n${items.map((item) => `  ${text(item)}${printColumns(item.columns)}\n`).join("")}}`;
}

const fields = (items: readonly FieldValue[]): string =>
  braces(items, (field) => `${field.name.text} = ${value(field.value)}${as(field.unit)}`);

function arm(node: MatchArm): string {
  const member = node.member.kind === "record" ? bare(node.member.type) : node.member.kind;
  return `${member}${node.variable === undefined ? "" : ` ${node.variable.text}`}: ${full(node.body)}`;
}

const head = (node: TableHead): string => `${node.name.text}${node.unit === undefined ? "" : ` [${node.unit.text}]`}`;

function table(heads: readonly TableHead[], rows: readonly (readonly Expression[])[]): string {
  // A row of one empty cell would vanish as a blank line, so its `none` is written out.
  const cell = (node: Expression, alone: boolean): string => (node.kind === "none" && !alone ? "" : bare(node));
  const lines = rows.map((row) => row.map((node) => cell(node, row.length === 1)).join(" | "));
  return `table {\n${[heads.map(head).join(" | "), ...lines].map((line) => `  ${line}\n`).join("")}}`;
}

export function printType(type: TypeExpression): string {
  switch (type.kind) {
    case "named":
      return bare(type.name);
    case "unit":
      return `[${type.unit.text}]`;
    case "list":
      return `List ${printType(type.of)}`;
    case "maybe":
      return `Maybe ${printType(type.of)}`;
    case "columns":
      return type.heads.length === 0 ? "Table {}" : `Table { ${type.heads.map(head).join(", ")} }`;
    case "choices":
      return type.values.map((text) => quoteText(text.value)).join(" or ");
    case "hole":
      return "";
  }
}

const ofType = (type: TypeExpression | undefined): string => (type === undefined ? "" : `: ${printType(type)}`);

const parameter = (node: Parameter): string =>
  `${node.name.text}${ofType(node.type)}${node.default === undefined ? "" : ` = ${full(node.default)}`}`;

function step(node: Step): string {
  if (node.kind === "require" || node.kind === "valid") return `${node.kind} ${full(node.value)}`;
  return `${node.name?.text ?? "result"}${ofType(node.type)} = ${full(node.value)}${as(node.unit)}`;
}

const field = (node: FieldDeclaration): string =>
  `${node.name.text}${ofType(node.type)}${node.default === undefined ? "" : ` = ${value(node.default)}`}`;

/** An expression as text, in as few brackets as its tree needs. */
export const printExpression = (node: Expression): string => print(node, ALONE);

/** The working of a statement; of a broken one or a remark there is none. */
export function printWorking(tree: StatementTree): string {
  switch (tree.kind) {
    case "definition": {
      const bounds = tree.within;
      const within = bounds === undefined ? "" : ` within ${print(bounds.from, level.range + 1)} .. ${print(bounds.to, level.range + 1)}`;
      return `${tree.name.text}${ofType(tree.type)} = ${print(tree.value, ALONE)}${as(tree.unit)}${within}`;
    }
    case "check":
      return `check ${full(tree.condition)}${tree.factor === undefined ? "" : ` factor ${full(tree.factor)}`}`;
    case "formula": {
      const first = `formula ${tree.name.text}(${tree.parameters.map(parameter).join(", ")})${ofType(tree.type)} = `;
      const only = tree.steps[0];
      if (tree.braced || only === undefined) return first + braces(tree.steps, step, true);
      return first + print(only.value, ALONE) + as(only.unit);
    }
    case "recordDeclaration":
      return `record ${tree.name.text} ${braces(tree.fields, field)}`;
    case "family":
      return `family ${tree.name.text} = ${tree.members.map(bare).join(" or ")}`;
    case "example": {
      const tolerance = tree.tolerance === undefined ? "" : ` ± ${print(tree.tolerance, level.or)}`;
      return `example ${print(tree.actual, level.compare + 1)} == ${print(tree.expected, level.compare + 1)}${tolerance}`;
    }
    case "use":
      return `use ${quoteText(tree.file.value)} as ${tree.prefix.text}`;
    case "remark":
    case "broken":
      return "";
    default:
      return assertNever(tree);
  }
}
