// How a statement is shown: signs, subscripts, columns; the text itself is never changed.

import { describe, expect, test } from "vitest";
import { proseStyle, statementStyle } from "../../editor/index.ts";
import { readNotebook } from "../../engine/notebook/index.ts";

/** The statement as it looks where the caret is not: signs put in, columns out; `[...]` is lowered. */
function look(text: string): string {
  const { signs, columns, marks } = statementStyle({ text });
  const edits = [
    ...signs.map(({ from, to, shown }) => ({ from, to, insert: shown })),
    ...columns.map(({ from, to }) => ({ from, to, insert: "" })),
    ...marks
      .filter(({ className }) => className === "jw-sub")
      .flatMap(({ from, to }) => [
        { from, to: from, insert: "[" },
        { from: to, to, insert: "]" },
      ]),
  ].sort((a, b) => a.from - b.from || a.to - b.to);
  let out = "";
  let at = 0;
  for (const { from, to, insert } of edits) {
    if (from < at) continue;
    out += text.slice(at, from) + insert;
    at = to;
  }
  return out + text.slice(at);
}

const classes = (text: string): readonly string[] =>
  statementStyle({ text }).marks.map(({ from, to, className }) => `${className.replace("jw-t-", "")} ${text.slice(from, to)}`);

describe("a statement", () => {
  test("a symbol's subscript is lowered, its sign is the trade's", () => {
    expect(look("F_t = k_dyn * W")).toBe("F[t] = k[dyn] × W");
    expect(look("tau_max = 3 MPa")).toBe("τ[max] = 3 MPa");
    expect(look("x = alpha - 1")).toBe("x = α − 1");
  });
  test("words that are no symbols and calls stay as they are", () => {
    expect(look("a = wall_count")).toBe("a = wall_count");
    expect(look("A_s = internal_shear_area(t, L_e)")).toBe("A[s] = internal_shear_area(t, L[e])");
  });
  test("units", () => {
    expect(look("A = 3 mm^2 / 2 as mm^2")).toBe("A = 3 mm² / 2 as mm²");
    expect(look("M = 2 N*m")).toBe("M = 2 N·m");
    expect(look("I = 2 mm^12")).toBe("I = 2 mm^12");
  });
  test("roots and powers", () => {
    expect(look("r = s / sqrt(2)")).toBe("r = s / √2");
    expect(look("r = sqrt(a + b)")).toBe("r = √(a + b)");
    expect(look("A = pi / 4 * d^2")).toBe("A = π / 4 × d²");
    expect(look("n = d^(1/2)")).toBe("n = d1/2");
    expect(look("n = d^-1 + e^k")).toBe("n = d−1 + ek");
    expect(classes("n = d^(1/2) + e^k").filter((mark) => mark.startsWith("jw-sup"))).toEqual(["jw-sup 1/2", "jw-sup k"]);
  });
  test("a subscript of several words is parted by commas", () => {
    expect(look("F_t_max = 2 N")).toBe("F[t,max] = 2 N");
  });
  test("comparisons", () => {
    expect(look("check a <= b")).toBe("check a ≤ b");
    expect(look("check a >= b")).toBe("check a ≥ b");
  });
  test("columns begin at the blanks before the first bar, and hold the note", () => {
    const text = "W = 42 N   | the load \\| worst | @log7 2";
    expect(look(text)).toBe("W = 42 N");
    expect(statementStyle({ text }).columns).toEqual([{ from: 8, to: text.length, note: "the load | worst" }]);
  });
  test("each line of a formula has its own columns", () => {
    const text = "formula f(a) = {\n  b = a * 2 | twice\n  result = b | that | @x\n} | all of it";
    expect(statementStyle({ text }).columns.map(({ note }) => note)).toEqual(["twice", "that", "all of it"]);
  });
  test("a table's cells are no columns", () => {
    const text = "t = table {\n  a | F [N]\n  1 | 2\n}";
    expect(statementStyle({ text }).columns).toEqual([]);
  });
  test("numbers, units, words and comments are told apart by the engine's lexer", () => {
    expect(classes("h = 40 mm within 20 mm .. 60 mm # here")).toEqual([
      "number 40",
      "unit mm",
      "keyword within",
      "number 20",
      "unit mm",
      "number 60",
      "unit mm",
      "comment # here",
    ]);
  });
  test("blanks that only align are shown as one", () => {
    expect(look("W     = 42 N")).toBe("W = 42 N");
    expect(look("M = a  as N*m")).toBe("M = a as N·m");
  });
});

describe("prose", () => {
  const style = (text: string) => {
    const part = readNotebook(text).parts[0];
    if (part?.kind !== "prose") throw new Error("no prose");
    return proseStyle(part);
  };
  test("heading marks are hidden with the blank after them", () => {
    expect(style("## Loads\n")).toMatchObject({
      lines: [{ at: 0, className: "jw-heading jw-heading-2" }],
      hidden: [{ from: 0, to: 3, shown: "" }],
    });
  });
  test("a link hides its address, bare brackets hide nothing", () => {
    expect(style("see [the log](log.md) here\n").hidden.map(({ from, to }) => [from, to])).not.toEqual([]);
    expect(style("a [note] here\n").hidden).toEqual([]);
  });
  test("list marks become bullets, numbers stay", () => {
    expect(style("- one\n- two\n").hidden.map(({ shown }) => shown)).toEqual(["•", "•"]);
    expect(style("1. one\n").hidden).toEqual([]);
  });
});
