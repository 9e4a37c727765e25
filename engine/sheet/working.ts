// One statement of the working as the sheet shows it: reference, equation in symbols and with numbers, output, note, marks.

import { readReference } from "../notebook/index.ts";
import type { LineOutput } from "../session/index.ts";
import { type Check, type Expression, type Formula, parseExpression } from "../syntax/index.ts";
import { type Maths, symbolOf, type TraceCall, type TraceStep, type TraceView } from "../trace/index.ts";
import type { Book, BookLine } from "./book.ts";
import type { Equation } from "./equation.ts";
import { expressionMaths } from "./expression-maths.ts";
import { cell, emphasis, nameText, state, text, valueCell, valueText } from "./inlines.ts";
import type { Cell, Inline, WorkingBlock } from "./model.ts";
import { putIn } from "./put-in.ts";
import { isRecordList, isRecordText, recordName } from "./shown-value.ts";
import { row, sign, symbol, type Typeset, typeset, typesetText, words } from "./typeset.ts";

/** How deep calls of formulas are opened below a line, and how many steps at most. */
const DEPTH = 2;
const STEPS = 40;
/** A text that stands in the output column or in a line of arguments; a longer one is told elsewhere. */
const LONGEST_OUTPUT = 40;
const LONGEST_LIST = 70;

/** `told` holds the broken limits that a line before has told in full. */
export function workingOf(line: BookLine, book: Book, told: Set<string>): readonly WorkingBlock[] {
  const { output, tree } = line;
  switch (tree.kind) {
    case "definition": {
      const view = book.session.trace(book.file, output.id, DEPTH)?.view;
      return [{ ...base(output, told), equation: definitionEquation(tree.name.name, tree.value, view) }, ...opened(view, book)];
    }
    case "check": {
      const view = book.session.trace(book.file, output.id, DEPTH)?.view;
      return [{ ...base(output, told), equation: checkEquation(tree, output, view) }, ...opened(view, book)];
    }
    case "formula":
      return formulaWorking(tree, base(output, told), book);
    case "example": {
      const tolerance = tree.tolerance === undefined ? [] : [sign("±"), typeset(expressionMaths(tree.tolerance))];
      const equation = { left: typeset(expressionMaths(tree.actual)), sides: [row(typeset(expressionMaths(tree.expected)), ...tolerance)] };
      return [
        {
          ...base(output, told),
          equation: { sides: [row(words("example"), { kind: "room", width: 0.5 }, equation.left, sign("="), ...equation.sides)] },
        },
      ];
    }
    case "recordDeclaration":
    case "family":
    case "use":
    case "broken":
      return [
        {
          ...base(output, told),
          equation: {
            sides: [
              words(
                line.text
                  .split("\n")
                  .map((part) => part.trim())
                  .join(" "),
              ),
            ],
          },
        },
      ];
    case "remark":
      return [];
  }
}

/** Everything but the equation. */
function base(output: LineOutput, told: Set<string>): Omit<WorkingBlock, "equation"> {
  return { kind: "working", depth: 0, reference: referenceCell(output), output: outputCell(output), below: below(output, told) };
}

function referenceCell(output: LineOutput): Cell {
  const weakest = output.marks?.provenance;
  const citation = cell(output.citation);
  if (weakest === undefined) return citation;
  const own = weakest.from === output.name;
  if (weakest.level === "assumed" && own) {
    const rest = output.citation.replace(/^assumed[\s,:]*/, "");
    return [state("assumed"), ...(rest === "" ? [] : [text(` ${rest}`)])];
  }
  if (weakest.level === "unsourced" && own && output.citation === "") return [text("◇ no reference")];
  const weak = !own && ["assumed", "memory", "unsourced"].includes(weakest.level) && output.kind === "check";
  if (!weak) return citation;
  const rests: Inline = emphasis(`rests on ${nameText(weakest.from)} (${weakest.level === "unsourced" ? "no reference" : weakest.level})`);
  return citation.length === 0 ? [rests] : [...citation, { kind: "break" }, rests];
}

export function outputCell(output: LineOutput): Cell {
  const fault = output.diagnostics.find(({ severity }) => severity === "fault");
  if (fault !== undefined) return [state("fault")];
  if (output.waitsFor !== undefined && output.waitsFor.length > 0) return [state("waits")];
  if (output.check !== undefined) {
    const { state: found, utilisationText } = output.check;
    return [state(found), ...(utilisationText === undefined ? [] : [{ kind: "break" } as const, text(`utilisation ${utilisationText}`)])];
  }
  if (output.example !== undefined) return [state(output.example.state)];
  if (output.value === undefined) return [];
  const { text: shown, number } = output.value;
  // What a record holds and what a long text says stands below the line.
  if (isRecordText(shown) || (number === "" && shown.length > LONGEST_LIST)) return cell(output.type ?? "");
  return valueCell(shown);
}

function below(output: LineOutput, told: Set<string>): readonly Cell[] {
  const note = output.check !== undefined || output.note === "" ? [] : [[emphasis(output.note)]];
  const title = output.check === undefined || output.note === "" ? [] : [[text(output.note)]];
  const outside = outsideCells(output, told);
  const faults = output.diagnostics
    .filter(({ severity }) => severity === "fault")
    .map(({ message }): Cell => [state("fault"), text(`: ${message}`)]);
  const waits =
    output.waitsFor === undefined || output.waitsFor.length === 0 ? [] : [[state("waits"), text(` for ${output.waitsFor.join(", ")}`)]];
  return [...title, ...note, ...longText(output), ...outside, ...faults, ...waits];
}

function longText({ value }: LineOutput): readonly Cell[] {
  if (
    value === undefined ||
    value.number !== "" ||
    value.text.length <= LONGEST_LIST ||
    isRecordText(value.text) ||
    isRecordList(value.text)
  )
    return [];
  return [cell(valueText(value.text))];
}

/** Each broken limit once in full, where it is first met; after that by the formula's name. */
function outsideCells({ marks }: LineOutput, told: Set<string>): readonly Cell[] {
  const limits = marks?.outside ?? [];
  const known = limits.filter(({ formula, limit }) => told.has(`${formula}|${limit}`));
  const cells = limits
    .filter((limit) => !known.includes(limit))
    .map(({ formula, limit, note }): Cell => {
      told.add(`${formula}|${limit}`);
      const why = note === undefined || note === "" ? "" : ` (${note})`;
      return [state("outside"), text(`: ${nameText(formula)}, ${limitText(limit)}${why}`)];
    });
  if (known.length === 0) return cells;
  return [...cells, [state("outside"), text(` as above: ${[...new Set(known.map(({ formula }) => nameText(formula)))].join(", ")}`)]];
}

const limitText = (limit: string): string => typesetText(typeset(expressionMaths(parseExpression(limit).expression))).trim();

function definitionEquation(name: string, value: Expression, view: TraceView | undefined): Equation {
  const left = symbol(symbolOf(name));
  if (view === undefined) return { left, sides: [typeset(expressionMaths(value))] };
  return { left, sides: sidesOf(view) };
}

function sidesOf({ symbols, numbers }: { readonly symbols: Maths; readonly numbers?: Maths }): readonly Typeset[] {
  const put = putIn(symbols, numbers);
  return put === undefined ? [typeset(symbols)] : [typeset(symbols), typeset(put)];
}

/** `1.5 × F ≤ R` in symbols, then with numbers; a condition as it stands. */
function checkEquation(tree: Check, output: LineOutput, view: TraceView | undefined): Equation {
  const { check } = output;
  if (view === undefined || check === undefined || view.symbols.kind !== "list" || check.demand === undefined) {
    const factor: readonly Typeset[] =
      tree.factor === undefined ? [] : [{ kind: "room", width: 0.6 }, words("factor "), typeset(expressionMaths(tree.factor))];
    const written = row(
      typeset(view !== undefined && view.symbols.kind !== "list" ? view.symbols : expressionMaths(tree.condition)),
      ...factor,
    );
    const numbers = view === undefined ? undefined : putIn(view.symbols, view.numbers);
    return numbers === undefined || numbers.kind === "list" ? { sides: [written] } : { sides: [written, typeset(numbers)], apart: true };
  }
  const strict = tree.condition.kind === "compare" && !tree.condition.operators.some((operator) => operator.includes("="));
  const side = (maths: Maths): Typeset => {
    const [demand, capacity, factor] = maths.kind === "list" ? maths.items : [];
    if (demand === undefined || capacity === undefined) return typeset(maths);
    const needs: Maths = check.factor === 1 || factor === undefined ? demand : { kind: "product", factors: [factor, demand] };
    return typeset({ kind: "compare", operands: [needs, capacity], operators: [strict ? "<" : "<="] });
  };
  const numbers = putIn(view.symbols, view.numbers);
  return { sides: [side(view.symbols), ...(numbers === undefined ? [] : [side(numbers)])], apart: true };
}

/** A declared formula: what it is, then its steps in symbols. */
function formulaWorking(tree: Formula, head: Omit<WorkingBlock, "equation">, book: Book): readonly WorkingBlock[] {
  const call: Maths = { kind: "call", name: symbolOf(tree.name.name), arguments: tree.parameters.map(({ name }) => symbolOf(name.name)) };
  const [only] = tree.steps;
  if (tree.steps.length === 1 && only?.kind === "result")
    return [{ ...head, equation: { left: typeset(call), sides: [typeset(expressionMaths(only.value))] } }];
  const steps = tree.steps.map((step): WorkingBlock => {
    const value = typeset(expressionMaths(step.value));
    const named = step.kind === "step" || step.kind === "result";
    const note = step.columns?.note;
    return {
      kind: "working",
      depth: 1,
      reference: cell(cited(step.columns?.reference, book)),
      equation: named
        ? { left: step.kind === "result" ? typeset(call) : symbol(symbolOf(step.name?.name ?? "")), sides: [value] }
        : { sides: [row(words(step.kind === "require" ? "requires " : "valid for "), value)] },
      output: [],
      below: note === undefined || note === "" ? [] : [[emphasis(note)]],
    };
  });
  return [{ ...head, equation: { sides: [row(words("formula "), typeset(call))] } }, ...steps];
}

/** The formulas that a line calls, opened: with the arguments put in, each step with its numbers. */
function opened(view: TraceView | undefined, book: Book): readonly WorkingBlock[] {
  if (view === undefined) return [];
  const all = view.calls.flatMap((call) => callWorking(call, 1, book));
  if (all.length <= STEPS) return all;
  const rest: WorkingBlock = {
    kind: "working",
    depth: 1,
    reference: [],
    equation: { sides: [] },
    output: [],
    below: [[emphasis(`${all.length - STEPS} further steps inside these formulas are not printed; a trace of the source shows them.`)]],
  };
  return [...all.slice(0, STEPS), rest];
}

/** Without steps where what comes out is no number: a look-up, a record. */
function callWorking(call: TraceCall, depth: number, book: Book): readonly WorkingBlock[] {
  const last = call.steps[call.steps.length - 1];
  if (last !== undefined && last.result.number === "" && last.holds === undefined)
    return [callHead(call, depth, book, shortResult(last.result.text))];
  const steps = call.steps.flatMap((step) => stepWorking(step, call, depth, book));
  const [only] = steps;
  // A formula of one line needs no head of its own.
  if (steps.length === 1 && only !== undefined) return [only];
  return [callHead(call, depth, book, ""), ...steps.map((step) => (step.depth === depth ? { ...step, depth: depth + 1 } : step))];
}

/** A record by its name alone; a long text not at all. */
const shortResult = (shown: string): string => (isRecordText(shown) || shown.length <= LONGEST_LIST ? recordName(shown) : "");

function callHead(call: TraceCall, depth: number, book: Book, result: string): WorkingBlock {
  const put = call.arguments
    .filter(({ shown }) => shown.text.length <= LONGEST_OUTPUT)
    .map(({ name, shown }) => `${nameText(name.name)} = ${valueText(shown.text)}`);
  const note = [call.note ?? "", put.length === 0 ? "" : `with ${put.join(", ")}`].filter((part) => part !== "").join("; ");
  return {
    kind: "working",
    depth,
    reference: cell(cited(call.reference, book)),
    equation: { sides: [typeset(call.symbols)] },
    output: valueCell(result),
    below: note === "" ? [] : [[emphasis(note)]],
  };
}

function stepWorking(step: TraceStep, call: TraceCall, depth: number, book: Book): readonly WorkingBlock[] {
  const inner = step.calls.flatMap((each) => callWorking(each, depth + 1, book));
  if (step.kind === "require") return inner;
  const single = call.steps.length === 1;
  const note = step.note ?? (single ? (call.note ?? "") : "");
  const shared = {
    kind: "working" as const,
    depth,
    reference: cell(cited(step.reference ?? (single ? call.reference : undefined), book)),
    below: note === "" ? [] : [[emphasis(note)]],
  };
  if (step.kind === "valid") {
    const sides = sidesOf(step);
    const words = step.holds === true ? [text("within validity")] : [state("outside")];
    return [...inner, { ...shared, equation: { sides: sides.slice(-1) }, output: words }];
  }
  const left = step.kind === "result" ? typeset(call.symbols) : symbol(step.name ?? symbolOf("result"));
  return [...inner, { ...shared, equation: { left, sides: sidesOf(step) }, output: valueCell(shortResult(step.result.text)) }];
}

function cited(reference: string | undefined, book: Book): string {
  if (reference === undefined) return "";
  return book.cite(readReference(reference));
}
