// Formulas as they are set on paper: rows, fractions, roots, scripts. MathML and the PDF's own layout both begin here.

import type { Maths, MathsSymbol } from "../trace/index.ts";

/** How the letters of a piece stand. */
export type Letters =
  /** One letter: slanted, as quantities are. */
  "slanted" | "upright";

export type Typeset =
  | { readonly kind: "row"; readonly items: readonly Typeset[] }
  | { readonly kind: "letters"; readonly text: string; readonly letters: Letters }
  | { readonly kind: "number"; readonly text: string }
  /** A unit or words, upright. */
  | { readonly kind: "words"; readonly text: string }
  /** `infix` has room on both sides, `prefix` and `tight` none, `comma` room behind. */
  | { readonly kind: "sign"; readonly text: string; readonly room: "infix" | "prefix" | "tight" | "comma" }
  | { readonly kind: "fraction"; readonly over: Typeset; readonly under: Typeset }
  | { readonly kind: "root"; readonly of: Typeset; readonly degree: 2 | 3 }
  | { readonly kind: "scripts"; readonly base: Typeset; readonly below?: Typeset; readonly above?: Typeset }
  /** Brackets as tall as what they hold. */
  | { readonly kind: "fenced"; readonly open: string; readonly close: string; readonly of: Typeset }
  /** One row a case, behind a brace. */
  | { readonly kind: "cases"; readonly rows: readonly { readonly value: Typeset; readonly condition: Typeset }[] }
  /** Room in quads. */
  | { readonly kind: "room"; readonly width: number };

type Fields = readonly { readonly name: string; readonly value: Maths }[];

/** How tightly a piece binds; what is looser than its place asks for gets brackets. */
const LOOSE = 0;
const SUM = 1;
const PRODUCT = 2;
const SIGNED = 3;
const ATOM = 4;

const LONGEST_NAME = 24;
/** Fields of a record that stand inside a formula. */
const FIELDS = 4;

const SIGNS: Readonly<Record<string, string>> = { "<=": "≤", ">=": "≥", "==": "=", "!=": "≠" };

export const typeset = (maths: Maths): Typeset => piece(maths);

export const row = (...items: readonly Typeset[]): Typeset => ({ kind: "row", items });
export const words = (text: string): Typeset => ({ kind: "words", text });
export const sign = (text: string, room: "infix" | "prefix" | "tight" | "comma" = "infix"): Typeset => ({ kind: "sign", text, room });
const fenced = (of: Typeset, open = "(", close = ")"): Typeset => ({ kind: "fenced", open, close, of });

/** A number with its unit: `15.54 N·m`, `45°`. */
export function quantity(text: string, unit: string): Typeset {
  const number: Typeset = { kind: "number", text };
  if (unit === "") return number;
  return /^[°′″]$/.test(unit) ? row(number, words(unit)) : row(number, { kind: "room", width: 0.22 }, words(unit));
}

/** `tau_max`: τ with the subscript max. One letter slants, more stand upright. */
export function symbol({ name, base, subscript }: MathsSymbol): Typeset {
  const one = [...base].length === 1;
  // Words can be broken over lines, letters with an index cannot.
  if (base.length > LONGEST_NAME || subscript.length > LONGEST_NAME) return words(plain(name));
  // What follows the first part of a long name is a word of it, no index: `stress_area` reads `stress area`.
  if (!one && subscript !== "" && !/^[\d,]+$/.test(subscript)) return words([base, ...subscript.split(",")].join(" "));
  const letters: Typeset = { kind: "letters", text: base, letters: one ? "slanted" : "upright" };
  return subscript === "" ? letters : { kind: "scripts", base: letters, below: index(subscript) };
}

function index(text: string): Typeset {
  const parts = text.split(",");
  const items = parts.map(
    (part): Typeset =>
      /^\d+$/.test(part)
        ? { kind: "number", text: part }
        : { kind: "letters", text: part, letters: [...part].length === 1 ? "slanted" : "upright" },
  );
  return items.length === 1 ? (items[0] as Typeset) : row(...joined(items, () => sign(",", "tight")));
}

const joined = (parts: readonly Typeset[], between: (place: number) => Typeset): readonly Typeset[] =>
  parts.flatMap((part, i) => (i === 0 ? [part] : [between(i), part]));

function tightness(maths: Maths): number {
  switch (maths.kind) {
    case "sum":
      return SUM;
    case "product":
      return PRODUCT;
    case "negative":
      return SIGNED;
    case "number":
      return /^[-−]/.test(maths.text) ? SUM : maths.unit === "" && !/[e×]/.test(maths.text) ? ATOM : SIGNED;
    case "symbol":
    case "text":
    case "fraction":
    case "root":
    case "bars":
    case "call":
    case "list":
    case "record":
    case "item":
    case "member":
    case "power":
    case "group":
      return ATOM;
    default:
      return LOOSE;
  }
}

const at = (maths: Maths, least: number): Typeset => (tightness(maths) < least ? fenced(piece(maths)) : piece(maths));
const named = (fields: Fields): readonly Typeset[] =>
  joined(
    fields.map(({ name, value }) => row(words(plain(name)), sign("="), piece(value))),
    () => sign(",", "comma"),
  );
const plain = (name: string): string => name.replaceAll("_", " ");
const listed = (parts: readonly Maths[]): readonly Typeset[] => joined(parts.map(piece), () => sign(",", "comma"));
const spaced = (...parts: readonly (Typeset | string)[]): Typeset =>
  row(
    ...joined(
      parts.map((part) => (typeof part === "string" ? words(part) : part)),
      () => ({ kind: "room", width: 0.3 }),
    ),
  );

/** `1.2e−8` is set as 1.2 × 10⁻⁸. */
export function numberPiece(text: string, unit: string): Typeset {
  const [, mantissa, exponent] = /^(.*?)e([-−+]?\d+)$/.exec(text) ?? [];
  if (mantissa === undefined || exponent === undefined) return quantity(text, unit);
  const power: Typeset = {
    kind: "scripts",
    base: { kind: "number", text: "10" },
    above: { kind: "number", text: exponent.replace("-", "−").replace("+", "") },
  };
  const number = row({ kind: "number", text: mantissa }, sign("×"), power);
  return unit === "" ? number : row(number, { kind: "room", width: 0.22 }, words(unit));
}

function piece(maths: Maths): Typeset {
  switch (maths.kind) {
    case "number":
      return numberPiece(maths.text, maths.unit);
    case "symbol":
      return symbol(maths);
    case "text":
      return words(maths.text);
    case "negative":
      return row(sign("−", "prefix"), at(maths.of, SIGNED));
    case "sum":
      return row(
        ...joined(
          maths.terms.map(({ of }, i) => at(of, i === 0 ? SUM : PRODUCT)),
          (i) => sign(maths.terms[i]?.minus === true ? "−" : "+"),
        ),
      );
    case "product":
      return product(maths.factors);
    case "fraction":
      return { kind: "fraction", over: piece(maths.over), under: piece(maths.under) };
    case "power":
      return { kind: "scripts", base: at(maths.base, ATOM), above: piece(maths.exponent) };
    case "root":
      return { kind: "root", of: piece(maths.of), degree: maths.degree };
    case "bars":
      return fenced(piece(maths.of), "|", "|");
    case "call":
      return row(functionName(maths.name), fenced(row(...listed(maths.arguments))));
    case "compare":
      return row(
        ...joined(
          maths.operands.map((operand) => at(operand, SUM)),
          (i) => sign(SIGNS[maths.operators[i - 1] ?? ""] ?? maths.operators[i - 1] ?? ""),
        ),
      );
    case "logic":
      return spaced(at(maths.operands[0], SUM), maths.operator, at(maths.operands[1], SUM));
    case "not":
      return spaced("not", at(maths.of, SUM));
    case "cases":
      return cases(maths);
    case "list":
      return fenced(row(...listed(maths.items)), "[", "]");
    case "range":
      return spaced(at(maths.from, SUM), "to", at(maths.to, SUM), "step", at(maths.step, SUM));
    case "member":
      return row(at(maths.of, ATOM), sign(".", "tight"), symbolText(maths.name));
    case "item":
      return { kind: "scripts", base: at(maths.of, ATOM), below: piece(maths.index) };
    case "record":
      // A record of many fields is told where it is made.
      return maths.fields.length > FIELDS
        ? words(`${plain(maths.name)} {…}`)
        : row(words(plain(maths.name)), fenced(row(...named(maths.fields)), "{", "}"));
    case "with":
      return spaced(at(maths.of, ATOM), "with", fenced(row(...named(maths.fields)), "{", "}"));
    case "each": {
      const where = maths.condition === undefined ? [] : ["where", piece(maths.condition)];
      return fenced(spaced(piece(maths.element), "for", piece(maths.variable), "in", piece(maths.source), ...where), "[", "]");
    }
    case "accumulate":
      return spaced(
        "accumulate",
        row(piece(maths.state), sign("="), piece(maths.start)),
        "for",
        piece(maths.variable),
        "in",
        row(piece(maths.source), sign(":", "comma"), piece(maths.body)),
      );
    case "where":
      return spaced(at(maths.of, ATOM), "where", piece(maths.condition));
    case "group":
      return spaced(
        "group",
        at(maths.of, ATOM),
        "by",
        words(maths.by.map(plain).join(", ")),
        fenced(row(...named(maths.fields)), "{", "}"),
      );
    case "match": {
      const [only, ...others] = maths.arms;
      // Of a computed choice only the arm that was taken is left.
      if (only !== undefined && others.length === 0)
        return row(piece(only.body), { kind: "room", width: 0.8 }, spaced("since", piece(maths.of), "is", plain(only.member)));
      return {
        kind: "cases",
        rows: maths.arms.map(({ member, body }) => ({
          value: piece(body),
          condition: spaced("if", piece(maths.of), "is", plain(member)),
        })),
      };
    }
    case "spread":
      return spread(maths);
  }
}

/** A name behind a point, as `d_min` in `t.d_min`. */
function symbolText(name: string): Typeset {
  const [base = "", ...rest] = name.split("_");
  return [...base].length === 1 ? symbol({ kind: "symbol", name, base, subscript: rest.join(",") }) : words(plain(name));
}

/** Functions of mathematics keep their name; others are read as words. */
const functionName = (name: MathsSymbol): Typeset => words(plain(name.name.slice(name.name.lastIndexOf("#") + 1)));

/** What a reader would join with a number in front of it. */
function holdsNumber(maths: Maths): boolean {
  if (maths.kind === "fraction") return holdsNumber(maths.over) || holdsNumber(maths.under);
  if (maths.kind === "product") return maths.factors.some(holdsNumber);
  return maths.kind === "number" || (maths.kind === "power" && holdsNumber(maths.base));
}

/** Letters stand side by side; a number behind anything needs its sign, or two would read as one. */
function product(factors: readonly Maths[]): Typeset {
  const numbers = factors.some((factor, i) => holdsNumber(factor) && (i > 0 || (factor.kind === "number" && factor.unit !== "")));
  const long = factors.some((factor) => factor.kind === "symbol" && [...factor.base].length > 1);
  return row(
    ...joined(
      factors.map((factor) => at(factor, PRODUCT)),
      () => (numbers ? sign("×") : long ? sign("·") : { kind: "room", width: 0.18 }),
    ),
  );
}

function cases(maths: Extract<Maths, { readonly kind: "cases" }>): Typeset {
  // Of a computed choice the branch that was taken, with why.
  if (maths.taken !== undefined) {
    const [value, why] = maths.taken === "met" ? [maths.met, "since"] : [maths.otherwise, "since not"];
    return row(piece(value), { kind: "room", width: 0.8 }, spaced(why, piece(maths.condition)));
  }
  const rows: { value: Typeset; condition: Typeset }[] = [];
  let rest: Maths = maths;
  while (rest.kind === "cases" && rest.taken === undefined) {
    rows.push({ value: piece(rest.met), condition: spaced("if", piece(rest.condition)) });
    rest = rest.otherwise;
  }
  rows.push({ value: piece(rest), condition: words("otherwise") });
  return { kind: "cases", rows };
}

function spread({ nominal, form, spread: parts }: Extract<Maths, { readonly kind: "spread" }>): Typeset {
  const [first, second] = parts.map((part) => at(part, SIGNED));
  const none = words("");
  const base = at(nominal, SUM);
  if (form === "unequal")
    return { kind: "scripts", base, above: row(sign("+", "prefix"), first ?? none), below: row(sign("−", "prefix"), second ?? none) };
  if (form === "share") return row(base, sign("±"), spaced(first ?? none, "of", second ?? none));
  return row(base, sign(form === "limits" ? "±" : "~"), first ?? none);
}

/** The formula as one line of plain text, for screen readers and searches. */
export function typesetText(set: Typeset): string {
  switch (set.kind) {
    case "row":
      return set.items.map(typesetText).join("");
    case "letters":
    case "number":
    case "words":
      return set.text;
    case "sign":
      return set.room === "infix" ? ` ${set.text} ` : set.room === "comma" ? `${set.text} ` : set.text;
    case "fraction":
      return `${grouped(set.over)} / ${grouped(set.under)}`;
    case "root":
      return `${set.degree === 3 ? "∛" : "√"}(${typesetText(set.of)})`;
    case "scripts":
      return `${typesetText(set.base)}${set.below === undefined ? "" : `_${grouped(set.below)}`}${set.above === undefined ? "" : `^${grouped(set.above)}`}`;
    case "fenced":
      return `${set.open}${typesetText(set.of)}${set.close}`;
    case "cases":
      return set.rows.map(({ value, condition }) => `${typesetText(value)} ${typesetText(condition)}`).join("; ");
    case "room":
      return " ";
  }
}

function grouped(set: Typeset): string {
  const text = typesetText(set).trim();
  return /[\s+−×/]/.test(text) ? `(${text})` : text;
}
