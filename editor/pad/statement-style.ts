// How one statement's text is shown: classes from the engine's own lexer, signs as the trade writes them, lowered subscripts,
// and where each line's columns begin. Read once a statement object; an edit elsewhere costs nothing.

import type { Chunk } from "../../engine/notebook/index.ts";
import { greekSign, type Token, tokens } from "../../engine/syntax/index.ts";

export interface StatementStyle {
  readonly marks: readonly { readonly from: number; readonly to: number; readonly className: string }[];
  /** Signs that stand in place of typed ones: `×` for `*`, `τ` for `tau`. */
  readonly signs: readonly { readonly from: number; readonly to: number; readonly shown: string }[];
  /** From the blanks before a line's first bar to its line end; the note is what is shown there. */
  readonly columns: readonly { readonly from: number; readonly to: number; readonly note: string }[];
}

const CLASSES: Partial<Readonly<Record<Token["kind"], string>>> = {
  number: "jw-t-number",
  unit: "jw-t-unit",
  keyword: "jw-t-keyword",
  text: "jw-t-text",
  comment: "jw-t-comment",
  unknown: "jw-t-wrong",
};

const OPERATORS: Readonly<Record<string, string>> = { "*": "×", "<=": "≤", ">=": "≥", "!=": "≠", "-": "−" };
const POWERS: Readonly<Record<string, string>> = { "2": "²", "3": "³" };

const known = new WeakMap<Chunk, StatementStyle>();

/** Offsets from the statement's start. */
export function statementStyle(chunk: Chunk): StatementStyle {
  const before = known.get(chunk);
  if (before !== undefined) return before;
  const style = read(chunk.text);
  known.set(chunk, style);
  return style;
}

function read(text: string): StatementStyle {
  const marks: StatementStyle["marks"][number][] = [];
  const signs: StatementStyle["signs"][number][] = [];
  const columns: StatementStyle["columns"][number][] = [];
  const list = tokens(text);
  hideAlignment(text, list, signs);
  setRoots(text, list, signs);
  setPowers(text, list, signs, marks);
  for (let index = 0; index < list.length; index += 1) {
    const token = list[index] as Token;
    const { kind, from, to } = token;
    if (kind === "bar") {
      if (beginsColumns(text, list, index)) index = readColumns(text, list, index, columns, marks);
      continue;
    }
    const className = CLASSES[kind];
    if (className !== undefined) marks.push({ from, to, className });
    const written = text.slice(from, to);
    if (kind === "operator") {
      const shown = OPERATORS[written];
      if (shown !== undefined) signs.push({ from, to, shown });
    } else if (kind === "unit") readUnit(written, from, signs);
    else if ((kind === "name" || kind === "field") && text[to] !== "(") readName(written, from, marks, signs);
  }
  return { marks, signs, columns };
}

/**
 * Blanks that align `=` or `as` in the text are shown as one: names stand narrower than they are typed, so the signs would not
 * meet anyway. Rows of tables keep theirs.
 */
function hideAlignment(text: string, list: readonly Token[], signs: StatementStyle["signs"][number][]): void {
  for (let index = 1; index < list.length; index += 1) {
    const before = list[index - 1] as Token;
    const token = list[index] as Token;
    const gap = token.from - before.to;
    const written = text.slice(token.from, token.to);
    const aligns = written === "=" || (token.kind === "keyword" && written === "as");
    if (gap < 2 || !aligns || text.slice(before.to, token.from).includes("\n")) continue;
    signs.push({ from: before.to + 1, to: token.from, shown: "" });
  }
}

const ROOTS: Readonly<Record<string, string>> = { sqrt: "√", cbrt: "∛" };

/** `sqrt(2)` is shown as √2, `sqrt(a + b)` as √(a + b). */
function setRoots(text: string, list: readonly Token[], signs: StatementStyle["signs"][number][]): void {
  list.forEach((token, index) => {
    const root = ROOTS[text.slice(token.from, token.to)];
    const open = list[index + 1];
    if (root === undefined || open === undefined || open.from !== token.to || text[open.from] !== "(") return;
    const [inner, close] = [list[index + 2], list[index + 3]];
    const alone =
      inner !== undefined && close !== undefined && (inner.kind === "number" || inner.kind === "name") && text[close.from] === ")";
    signs.push({ from: token.from, to: alone ? open.to : token.to, shown: root });
    if (alone) signs.push({ from: close.from, to: close.to, shown: "" });
  });
}

/** `d^2` is shown with a raised 2, as are `d^n`, `d^-1` and `d^(1/2)`. */
function setPowers(
  text: string,
  list: readonly Token[],
  signs: StatementStyle["signs"][number][],
  marks: StatementStyle["marks"][number][],
): void {
  list.forEach((token, index) => {
    if (token.kind !== "operator" || text.slice(token.from, token.to) !== "^") return;
    const first = list[index + 1];
    if (first === undefined || first.from !== token.to) return;
    const signed = text.slice(first.from, first.to) === "-" ? list[index + 2] : undefined;
    const last = signed ?? first;
    if (last.kind === "number" || last.kind === "name") {
      const two = POWERS[text.slice(first.from, last.to)];
      if (two !== undefined) {
        signs.push({ from: token.from, to: last.to, shown: two });
        return;
      }
      signs.push({ from: token.from, to: token.to, shown: "" });
      marks.push({ from: first.from, to: last.to, className: "jw-sup" });
      return;
    }
    if (text[first.from] !== "(") return;
    const close = list.findIndex((other, at) => at > index && text[other.from] === ")");
    const inside = list.slice(index + 2, close);
    if (close === -1 || inside.length > 3 || inside.some((other) => text[other.from] === "(")) return;
    const end = list[close] as Token;
    signs.push({ from: token.from, to: first.to, shown: "" }, { from: end.from, to: end.to, shown: "" });
    marks.push({ from: first.to, to: end.from, className: "jw-sup" });
  });
}

/** A bar before a note or a reference; those between the cells of a table are not. */
function beginsColumns(text: string, list: readonly Token[], index: number): boolean {
  const end = text.indexOf("\n", (list[index] as Token).from);
  let next = index;
  while (list[next]?.kind === "bar") next += 1;
  const after = list[next];
  return after !== undefined && (end === -1 || after.from < end) && (after.kind === "note" || after.kind === "reference");
}

/** From a line's first bar to its end: the note is shown, the reference stands in its own column. Gives the last index used. */
function readColumns(
  text: string,
  list: readonly Token[],
  index: number,
  columns: StatementStyle["columns"][number][],
  marks: StatementStyle["marks"][number][],
): number {
  const bar = list[index] as Token;
  const end = text.indexOf("\n", bar.from);
  const to = end === -1 ? text.length : end;
  let from = bar.from;
  while (0 < from && (text[from - 1] === " " || text[from - 1] === "\t")) from -= 1;
  let last = index;
  let note = "";
  while (last + 1 < list.length && (list[last + 1] as Token).from < to) {
    last += 1;
    const token = list[last] as Token;
    if (token.kind === "note") note = text.slice(token.from, token.to).trim().replaceAll("\\|", "|");
  }
  columns.push({ from, to, note });
  marks.push({ from: bar.from, to, className: "jw-t-columns" });
  return last;
}

function readUnit(written: string, from: number, signs: StatementStyle["signs"][number][]): void {
  for (let at = 0; at < written.length; at += 1) {
    const sign = written[at] as string;
    if (sign === "*") signs.push({ from: from + at, to: from + at + 1, shown: "·" });
    const power = sign === "^" && !/\d/.test(written[at + 2] ?? "") ? POWERS[written[at + 1] ?? ""] : undefined;
    if (power !== undefined) signs.push({ from: from + at, to: from + at + 2, shown: power });
  }
}

/** `F_t`: the part after the first underscore is lowered where what stands before is a symbol, a letter or two or a Greek one. */
function readName(written: string, from: number, marks: StatementStyle["marks"][number][], signs: StatementStyle["signs"][number][]): void {
  const cut = written.indexOf("_");
  const head = cut === -1 ? written : written.slice(0, cut);
  const sign = greekSign(head) ?? head;
  if (sign !== head) signs.push({ from, to: from + head.length, shown: sign });
  const symbol = [...sign].length <= 2;
  if (cut < 1 || cut === written.length - 1 || !symbol) return;
  signs.push({ from: from + cut, to: from + cut + 1, shown: "" });
  for (let at = written.indexOf("_", cut + 1); at !== -1; at = written.indexOf("_", at + 1))
    signs.push({ from: from + at, to: from + at + 1, shown: "," });
  marks.push({ from: from + cut + 1, to: from + written.length, className: "jw-sub" });
}
