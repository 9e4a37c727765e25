// An equation's sides in rows that fit a width: symbols and numbers on one row where there is room, else one below the other.

import { row, sign, type Typeset, words } from "./typeset.ts";

/** `left = sides[0] = sides[1]`; without a left side the first side stands alone. Sides that are `apart` say the same but are not equal. */
export interface Equation {
  readonly left?: Typeset;
  readonly sides: readonly Typeset[];
  readonly apart?: boolean;
}

export interface EquationRow {
  /** In quads. */
  readonly indent: number;
  readonly of: Typeset;
}

/** Width of a set formula in quads of its size. */
export type Measure = (set: Typeset) => number;

const STEP = 1.6;

/** Rows none of which is wider than `width` quads, unless one sign or number alone is. */
export function equationRows({ left, sides, apart }: Equation, width: number, measure: Measure): readonly EquationRow[] {
  const [first, ...rest] = sides;
  if (first === undefined) return left === undefined ? [] : [{ indent: 0, of: left }];
  const between: readonly Typeset[] = apart === true ? [{ kind: "room", width: STEP }] : [sign("=")];
  const head = left === undefined ? first : row(left, sign("="), first);
  const whole = row(head, ...rest.flatMap((side) => [...between, side]));
  if (measure(whole) <= width) return [{ indent: 0, of: whole }];
  const rows: EquationRow[] = filled(head, 0, width, measure);
  for (const side of rest)
    rows.push(...(apart === true ? filled(side, 0, width, measure) : filled(row(sign("="), side), STEP, width, measure)));
  return rows;
}

/** One row where it fits, else broken before signs and behind commas, what goes on a step further in. */
function filled(set: Typeset, indent: number, width: number, measure: Measure): EquationRow[] {
  if (measure(set) <= width - indent) return [{ indent, of: set }];
  const rows: EquationRow[] = [];
  let line: Typeset[] = [];
  let at = indent;
  const end = (): void => {
    if (line.length > 0) rows.push({ indent: at, of: row(...line) });
    line = [];
    at = indent + STEP;
  };
  for (const unit of units(set, width - indent - STEP, measure)) {
    if (line.length > 0 && measure(row(...line, ...unit)) > width - at) end();
    line.push(...unit);
  }
  end();
  return rows;
}

/** Stretches that stay together: each begins where a row may. */
function units(set: Typeset, width: number, measure: Measure): readonly (readonly Typeset[])[] {
  const out: Typeset[][] = [[]];
  const last = (): Typeset[] => out[out.length - 1] as Typeset[];
  for (const atom of atoms(set, width, measure)) {
    if (last().length > 0 && atom.kind === "sign" && atom.room === "infix") out.push([]);
    last().push(atom);
    if ((atom.kind === "sign" && atom.room === "comma") || atom.kind === "room" || atom.kind === "words") out.push([]);
  }
  return out.filter((unit) => unit.length > 0);
}

/** A formula as a line of pieces; what is wider than the width is taken apart, fractions into a slanted line. */
function atoms(set: Typeset, width: number, measure: Measure): readonly Typeset[] {
  const down = (part: Typeset): readonly Typeset[] => atoms(part, width, measure);
  if (set.kind === "row") return set.items.flatMap(down);
  if (measure(set) <= (set.kind === "words" || set.kind === "fenced" ? width / 2 : width)) return [set];
  switch (set.kind) {
    case "fenced":
      return [sign(set.open, "prefix"), ...down(set.of), sign(set.close, "tight")];
    case "fraction":
      return [
        sign("(", "prefix"),
        ...down(set.over),
        sign(")", "tight"),
        sign("/"),
        sign("(", "prefix"),
        ...down(set.under),
        sign(")", "tight"),
      ];
    case "cases":
      return set.rows.flatMap(({ value, condition }, i) => [
        ...(i === 0 ? [] : [sign(";", "comma")]),
        ...down(value),
        { kind: "room", width: 0.4 } as const,
        ...down(condition),
      ]);
    case "root":
      return [sign(set.degree === 3 ? "∛(" : "√(", "prefix"), ...down(set.of), sign(")", "tight")];
    case "words":
      // A sign stands before them on their row.
      return wordsIn(set.text, width - STEP, measure);
    default:
      return [set];
  }
}

/** A text at its spaces; a word that is too long by itself in stretches. */
function wordsIn(text: string, width: number, measure: Measure): readonly Typeset[] {
  return text.split(/(?<=\s)/).flatMap((word) => {
    if (measure(words(word)) <= width) return [words(word)];
    const signs = [...word];
    const size = Math.max(1, Math.floor((signs.length * width) / measure(words(word))));
    return Array.from({ length: Math.ceil(signs.length / size) }, (_, i) => words(signs.slice(i * size, (i + 1) * size).join("")));
  });
}

const WIDE = /[MWmw@%—ΣΩΦ]/;
const NARROW = /[iljtfI1.,;:'|()[\]{} ]/;

const textWidth = (text: string): number =>
  [...text].reduce((sum, letter) => sum + (WIDE.test(letter) ? 0.9 : NARROW.test(letter) ? 0.38 : 0.62), 0);

/** About how wide a formula comes out where no font can be asked: a little too wide rather than too narrow. */
export function roughWidth(set: Typeset): number {
  switch (set.kind) {
    case "row":
      return set.items.reduce((sum, item) => sum + roughWidth(item), 0);
    case "letters":
    case "number":
    case "words":
      return textWidth(set.text);
    case "sign":
      return textWidth(set.text) + (set.room === "infix" ? 0.5 : set.room === "comma" ? 0.25 : 0);
    case "fraction":
      return Math.max(roughWidth(set.over), roughWidth(set.under)) + 0.3;
    case "root":
      return roughWidth(set.of) + 0.9;
    case "scripts":
      return (
        roughWidth(set.base) +
        0.75 * Math.max(set.below === undefined ? 0 : roughWidth(set.below), set.above === undefined ? 0 : roughWidth(set.above))
      );
    case "fenced":
      return roughWidth(set.of) + 0.9;
    case "cases":
      return Math.max(...set.rows.map(({ value, condition }) => roughWidth(value) + roughWidth(condition))) + 1.6;
    case "room":
      return set.width;
  }
}
