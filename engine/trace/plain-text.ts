// Maths and traces as lines of plain text, for the command line and for screen readers.

import { assertNever } from "../base/index.ts";
import type { Maths } from "./maths.ts";
import type { TraceCall, TraceStep, TraceView } from "./trace.ts";

/** How tightly a piece holds together; a piece stands bare where at least as much is asked for. */
const loose = 0;
const sum = 1;
const product = 2;
const sign = 3;
const power = 4;
const atom = 5;

interface Piece {
  readonly text: string;
  readonly tight: number;
}

export const mathsText = (maths: Maths): string => piece(maths).text;

function at(maths: Maths, least: number): string {
  const { text, tight } = piece(maths);
  return tight < least ? `(${text})` : text;
}

const superscripts: Readonly<Record<string, string>> = { "2": "²", "3": "³" };
const plain = (maths: Maths): boolean =>
  (maths.kind === "number" && maths.unit === "" && !/^[-−]/.test(maths.text)) || maths.kind === "symbol";
const named = (fields: readonly { readonly name: string; readonly value: Maths }[]): string =>
  fields.map(({ name, value }) => `${name} = ${mathsText(value)}`).join(", ");

function piece(maths: Maths): Piece {
  switch (maths.kind) {
    case "number":
      // A number with its unit is one thing to a product but not to a power.
      return {
        text: maths.unit === "" ? maths.text : `${maths.text} ${maths.unit}`,
        tight: /^[-−]/.test(maths.text) ? sign : maths.unit === "" ? atom : sign,
      };
    case "symbol":
      return { text: maths.name, tight: atom };
    case "text":
      return { text: maths.text, tight: atom };
    case "negative":
      return { text: `−${at(maths.of, sign)}`, tight: sign };
    case "sum":
      return {
        text: maths.terms.map(({ minus, of }, i) => `${i === 0 ? "" : minus ? " − " : " + "}${at(of, i === 0 ? sum : product)}`).join(""),
        tight: sum,
      };
    case "product":
      return { text: maths.factors.map((factor, i) => at(factor, i === 0 ? product : sign)).join(" · "), tight: product };
    case "fraction":
      return { text: `${at(maths.over, product)} / ${at(maths.under, sign)}`, tight: product };
    case "power": {
      const raised = maths.exponent.kind === "number" && maths.exponent.unit === "" ? superscripts[maths.exponent.text] : undefined;
      return {
        text: raised === undefined ? `${at(maths.base, atom)}^${at(maths.exponent, atom)}` : `${at(maths.base, atom)}${raised}`,
        tight: power,
      };
    }
    case "root": {
      const mark = maths.degree === 2 ? "√" : "∛";
      return { text: plain(maths.of) ? `${mark}${mathsText(maths.of)}` : `${mark}(${mathsText(maths.of)})`, tight: atom };
    }
    case "bars":
      return { text: `|${mathsText(maths.of)}|`, tight: atom };
    case "call":
      return { text: `${maths.name.name}(${maths.arguments.map(mathsText).join(", ")})`, tight: atom };
    case "compare":
      return {
        text: maths.operands.map((operand, i) => `${i === 0 ? "" : ` ${maths.operators[i - 1]} `}${at(operand, sum)}`).join(""),
        tight: loose,
      };
    case "logic":
      return { text: maths.operands.map((operand) => at(operand, sum)).join(` ${maths.operator} `), tight: loose };
    case "not":
      return { text: `not ${at(maths.of, sum)}`, tight: loose };
    case "cases":
      return { text: `if ${mathsText(maths.condition)} then ${mathsText(maths.met)} else ${mathsText(maths.otherwise)}`, tight: loose };
    case "list":
      return { text: `[${maths.items.map(mathsText).join(", ")}]`, tight: atom };
    case "range":
      return { text: `${at(maths.from, sum)} .. ${at(maths.to, sum)} step ${at(maths.step, sum)}`, tight: loose };
    case "member":
      return { text: `${at(maths.of, atom)}.${maths.name}`, tight: atom };
    case "item":
      return { text: `${at(maths.of, atom)}[${mathsText(maths.index)}]`, tight: atom };
    case "record":
      return { text: `${maths.name} { ${named(maths.fields)} }`, tight: atom };
    case "with":
      return { text: `${at(maths.of, atom)} with { ${named(maths.fields)} }`, tight: loose };
    case "each": {
      const where = maths.condition === undefined ? "" : ` where ${mathsText(maths.condition)}`;
      return { text: `[${mathsText(maths.element)} for ${mathsText(maths.variable)} in ${mathsText(maths.source)}${where}]`, tight: atom };
    }
    case "accumulate": {
      const head = `accumulate ${mathsText(maths.state)} = ${mathsText(maths.start)} for ${mathsText(maths.variable)} in ${mathsText(maths.source)}`;
      return { text: `${head}: ${mathsText(maths.body)}`, tight: loose };
    }
    case "where":
      return { text: `${at(maths.of, atom)} where ${mathsText(maths.condition)}`, tight: loose };
    case "group":
      return {
        text: `group ${at(maths.of, atom)} by ${maths.by.map((name) => `.${name}`).join(", ")} { ${named(maths.fields)} }`,
        tight: atom,
      };
    case "match":
      return {
        text: `match (${mathsText(maths.of)}) { ${maths.arms.map(({ member, body }) => `${member}: ${mathsText(body)}`).join(", ")} }`,
        tight: atom,
      };
    case "spread":
      return { text: `${at(maths.nominal, sum)} ${spreadText(maths)}`, tight: loose };
    default:
      return assertNever(maths);
  }
}

function spreadText({ form, spread }: Extract<Maths, { readonly kind: "spread" }>): string {
  const [first, second] = spread.map((part) => at(part, sign));
  if (form === "unequal") return `+${first}/-${second}`;
  if (form === "share") return `± ${first} of ${second}`;
  return `${form === "limits" ? "±" : "~"} ${first}`;
}

/** `F_t = M / (√2 · s)`, `= 15.54 N·m / (√2 · 60 mm)`, `= 183.1 N`, what feeds it, and each opened call indented below. */
export function traceText(view: TraceView): readonly string[] {
  const lines = working(view.name?.name, view.symbols, view.numbers, view.result?.text);
  const out = [...lines];
  if (view.fault !== undefined) out.push(`fault: ${view.fault.message}`);
  if (view.note !== undefined) out.push(`note: ${view.note}`);
  if (view.reference !== undefined) out.push(`reference: ${view.reference}`);
  for (const { formula, limit, note } of view.outside) out.push(`outside: ${formula}, ${limit}${note === undefined ? "" : ` (${note})`}`);
  for (const feed of view.feeds) {
    const { provenance } = feed;
    const source = provenance === undefined ? "" : `  | ${provenance.text === "" ? provenance.level : provenance.text}`;
    const by = provenance === undefined || provenance.from === feed.name ? "" : ` (${provenance.from})`;
    out.push(`from ${feed.name} = ${feed.shown.text}${source}${by}`);
  }
  for (const call of view.calls) out.push(...callText(call).map((line) => `  ${line}`));
  return out;
}

function working(name: string | undefined, symbols: Maths, numbers: Maths | undefined, result: string | undefined): readonly string[] {
  const left = name === undefined ? "" : `${name} `;
  const first = mathsText(symbols);
  const further = [...(numbers === undefined ? [] : [mathsText(numbers)]), ...(result === undefined ? [] : [result])];
  const indent = " ".repeat(left.length);
  const head = name === undefined ? first : `${left}= ${first}`;
  return [head, ...further.filter((line, i) => line !== (i === 0 ? first : further[i - 1])).map((line) => `${indent}= ${line}`)];
}

/** One call of a formula with its steps, and the calls opened in them indented below. */
export function callText(call: TraceCall): readonly string[] {
  const out = [`${mathsText(call.symbols)}${side(call)}`];
  for (const { name, shown, byDefault } of call.arguments) out.push(`  ${name.name} = ${shown.text}${byDefault ? "  (default)" : ""}`);
  for (const step of call.steps) out.push(...stepText(step).map((line) => `  ${line}`));
  return out;
}

function stepText(step: TraceStep): readonly string[] {
  const name = step.name?.name ?? step.kind;
  const lines =
    step.holds === undefined
      ? working(name, step.symbols, step.numbers, step.result.text)
      : [`${step.kind} ${mathsText(step.numbers ?? step.symbols)}: ${step.holds ? "holds" : "broken"}`];
  const [head = "", ...rest] = lines;
  return [`${head}${side(step)}`, ...rest, ...step.calls.flatMap((call) => callText(call).map((line) => `  ${line}`))];
}

const side = ({ note, reference }: { readonly note?: string; readonly reference?: string }): string =>
  [note ?? "", reference ?? ""].every((text) => text === "")
    ? ""
    : `  | ${[note ?? "", ...(reference === undefined ? [] : [reference])].join(" | ")}`;
