// Maths of the trace as MathML.

import type { ComponentChildren, JSX } from "preact";
import { type Maths, type MathsSymbol, mathsText, symbolOf } from "../../engine/trace/index.ts";
import { brief } from "../pad/output-words.ts";

type Node = JSX.Element;

/** A record put in for its name is told in short. */
const LONGEST = 120;

export function MathsView({ maths }: { readonly maths: Maths }): Node {
  // Words wrap as text does, which MathML does not do; of two branches the one that was taken is shown.
  if (maths.kind === "cases" && maths.taken !== undefined) {
    const condition = mathsText(maths.condition);
    return (
      <>
        <MathsView maths={maths.taken === "met" ? maths.met : maths.otherwise} />
        <span class="trace-words">
          {" "}
          {maths.taken === "met" ? "as" : "not"} {condition}
        </span>
      </>
    );
  }
  // A call of a formula with a long name wraps between its arguments.
  if (maths.kind === "call" && maths.name.name.length > 4) {
    return (
      <span class="trace-call-words">
        <span class="trace-words">{maths.name.name.slice(maths.name.name.lastIndexOf("#") + 1).replaceAll("_", " ")}</span>(
        {maths.arguments.map((argument, index) => (
          <span key={`${index} ${argument.kind}`}>
            {index > 0 && ", "}
            <MathsView maths={argument} />
          </span>
        ))}
        )
      </span>
    );
  }
  if (WORDS.has(maths.kind)) {
    const text = mathsText(maths);
    return (
      <span class="trace-words" title={text.length > LONGEST ? text : undefined}>
        {brief(text, LONGEST)}
      </span>
    );
  }
  return (
    <math display="inline" displaystyle>
      {piece(maths)}
    </math>
  );
}

/** A name as the trade sets it where it is a symbol; words stay words. */
export function NameView({ name }: { readonly name: string }): Node {
  const symbol = symbolOf(name);
  const short = [...symbol.base].length <= 2 && /^[\p{L}\p{M}\p{N}_]+$/u.test(name);
  return short ? <MathsView maths={symbol} /> : <span>{name}</span>;
}

/** How tightly a piece binds: what is looser than asked for gets brackets. */
const LOOSE = 0;
const SUM = 1;
const PRODUCT = 2;
const ATOM = 3;

function tightness(maths: Maths): number {
  if (maths.kind === "sum") return SUM;
  if (maths.kind === "product" || maths.kind === "negative") return PRODUCT;
  if (maths.kind === "number") return maths.unit === "" && !/^[-−]/.test(maths.text) ? ATOM : PRODUCT;
  const atoms: readonly Maths["kind"][] = [
    "symbol",
    "text",
    "fraction",
    "root",
    "bars",
    "call",
    "list",
    "record",
    "item",
    "member",
    "power",
    "group",
  ];
  return atoms.includes(maths.kind) ? ATOM : LOOSE;
}

const operator = (sign: string): Node => <mo>{sign}</mo>;
const row = (children: ComponentChildren): Node => <mrow>{children}</mrow>;
const brackets = (inner: Node): Node => row([operator("("), inner, operator(")")]);
const at = (maths: Maths, least: number): Node => (tightness(maths) < least ? brackets(piece(maths)) : piece(maths));
const words = (text: string): Node => <mtext>{text}</mtext>;

function joined(parts: readonly Node[], sign: (index: number) => Node): Node {
  return row(parts.flatMap((part, index) => (index === 0 ? [part] : [sign(index), part])));
}

function symbol({ base, subscript }: MathsSymbol): Node {
  const name = [...base].length > 1 ? <mtext>{base}</mtext> : <mi>{base}</mi>;
  return subscript === "" ? name : <msub>{[name, <mtext key="sub">{subscript}</mtext>]}</msub>;
}

/** Kinds that are more words than maths are shown as the engine writes them. */
function piece(maths: Maths): Node {
  switch (maths.kind) {
    case "number":
      return maths.unit === "" ? (
        <mn>{maths.text}</mn>
      ) : (
        row([<mn key="n">{maths.text}</mn>, <mspace key="s" width="0.2em" />, words(maths.unit)])
      );
    case "symbol":
      return symbol(maths);
    case "negative":
      return row([operator("−"), at(maths.of, PRODUCT)]);
    case "sum": {
      const parts = maths.terms.map(({ of }, index) => at(of, index === 0 ? SUM : PRODUCT));
      return joined(parts, (index) => operator(maths.terms[index]?.minus === true ? "−" : "+"));
    }
    case "product": {
      const numbers = maths.factors.some(({ kind }) => kind === "number");
      return joined(
        maths.factors.map((factor) => at(factor, PRODUCT)),
        () => operator(numbers ? "×" : "\u2062"),
      );
    }
    case "fraction":
      return <mfrac>{[piece(maths.over), piece(maths.under)]}</mfrac>;
    case "power":
      return <msup>{[at(maths.base, ATOM), piece(maths.exponent)]}</msup>;
    case "root":
      return maths.degree === 2 ? <msqrt>{piece(maths.of)}</msqrt> : <mroot>{[piece(maths.of), <mn key="degree">3</mn>]}</mroot>;
    case "bars":
      return row([operator("|"), piece(maths.of), operator("|")]);
    case "call": {
      const inside = joined(maths.arguments.map(piece), () => operator(","));
      return row([words(maths.name.name.replaceAll("_", " ")), brackets(inside)]);
    }
    case "compare":
      return joined(
        maths.operands.map((operand) => at(operand, SUM)),
        (index) => operator(COMPARISONS[maths.operators[index - 1] ?? ""] ?? maths.operators[index - 1] ?? ""),
      );
    case "list":
      return row([operator("["), joined(maths.items.map(piece), () => operator(",")), operator("]")]);
    case "item":
      return <msub>{[at(maths.of, ATOM), piece(maths.index)]}</msub>;
    case "member":
      return row([at(maths.of, ATOM), words(`.${maths.name}`)]);
    default:
      return words(mathsText(maths));
  }
}

const WORDS: ReadonlySet<Maths["kind"]> = new Set([
  ...(["text", "cases", "record", "with", "each", "accumulate", "where", "group", "match", "range", "logic", "not", "spread"] as const),
]);

const COMPARISONS: Readonly<Record<string, string>> = { "<=": "≤", ">=": "≥", "==": "=", "!=": "≠" };
