// engine/syntax: each refused form with its one fault, the place it marks, and the mend that makes it clean.

import { describe, expect, test } from "vitest";
import { entries } from "../../engine/diagnostics/index.ts";
import { chunks, codesOf, faultsOf, fences, mended } from "./read.ts";

/** Each refused form, its code, the marked place, and the text after its first mend, which must be clean. */
const refused: [text: string, code: string, place: string, after?: string][] = [
  ["x = 1,5", "comma-number", "1,5", "x = 1.5"],
  ["x = [1,5]", "comma-number", "1,5", "x = [1.5]"],
  ["x = f(1.5,2)", "comma-number", "1.5,2", "x = f(1.5, 2)"],
  ["x = 1,2,3", "comma-number", "1,2,3", "x = [1, 2, 3]"],
  ["x = 13,379.70", "comma-number", "13,379.70", "x = 13379.70"],
  ["x = 1,234,567", "comma-number", "1,234,567", "x = 1234567"],
  ["x = 1.234,56", "comma-number", "1.234,56", "x = 1234.56"],
  ["x = .5", "point-without-digit", ".5", "x = 0.5"],
  ["x = 5.", "point-without-digit", "5.", "x = 5.0"],
  ["x = 5. mm", "point-without-digit", "5.", "x = 5.0 mm"],
  ["x = 1/2 in", "fraction-with-unit", "1/2 in", "x = 0.5 in"],
  ["x = 1 1/2 in", "fraction-with-unit", "1 1/2 in", "x = 1.5 in"],
  ["x = 1/3 in", "fraction-with-unit", "1/3 in", "x = 1 / 3 * 1 in"],
  ["x = 1/2x", "fraction-with-unit", "1/2x", "x = 0.5 x"],
  ["x = 3 m^2.5", "unit-exponent", "^2.5", "x = 3 m^(5/2)"],
  ["x = 3 m^-0.5", "unit-exponent", "^-0.5", "x = 3 m^(-1/2)"],
  ["x = 5 N/mm^2/s", "unit-slashes", "N/mm^2/s", "x = 5 N/(mm^2 s)"],
  ["x = 5 N/(m K)/s", "unit-slashes", "N/(m K)/s", "x = 5 N/(m K s)"],
  ["x = 12  mm", "unit-gap", "12  mm", "x = 12 mm"],
  ["x = d L", "side-by-side", "d L", "x = d * L"],
  ["x = 2(3+4)", "side-by-side", "2(", "x = 2 * (3+4)"],
  ["x = (2)(3)", "side-by-side", ")(", "x = (2) * (3)"],
  ["x = (a) b", "side-by-side", ") b", "x = (a) * b"],
  ["x = 1 000 N", "side-by-side", "1 000", "x = 1000 N"],
  ['x = thread "M5"', "side-by-side", 'thread "M5"', 'x = thread("M5")'],
  ["x = 2 x 3", "times-letter", "x", "x = 2 * 3"],
  ["x = a x b", "times-letter", "x", "x = a * b"],
  ["x = 3 mm x 4 mm", "times-letter", "x", "x = 3 mm * 4 mm"],
  ["x = 10 % 3", "percent-only", "10 % 3", "x = mod(10, 3)"],
  ["x = a % b", "percent-only", "a % b", "x = mod(a, b)"],
  ["x = 8 mm +/- 0.1 mm", "foreign-sign", "+/-", "x = 8 mm ± 0.1 mm"],
  ["x = 2**3", "foreign-sign", "**", "x = 2^3"],
  ["x = a && b", "foreign-sign", "&&", "x = a and b"],
  ["x = !a", "foreign-sign", "!", "x = not a"],
  ["x = a <> b", "foreign-sign", "<>", "x = a != b"],
  ["x = a =< b", "foreign-sign", "=<", "x = a <= b"],
  ["x = 'abc'", "foreign-sign", "'abc'", 'x = "abc"'],
  ["x = “abc”", "foreign-sign", "“abc”", 'x = "abc"'],
  ["x = f(a; b)", "foreign-sign", ";", "x = f(a, b)"],
  ["x = a – b", "foreign-sign", "–", "x = a - b"],
  ["x = @log7", "unknown-sign", "@"],
  ['x = "abc', "open-text", '"abc', 'x = "abc"'],
  ['x = f("abc)', "open-text", '"abc', 'x = f("abc")'],
  ['x = "abc | note', "open-text", '"abc', 'x = "abc" | note'],
  ["x = (a + b", "bracket-open", "(", "x = (a + b)"],
  ["x = f(a, [b | note", "bracket-open", "[", "x = f(a, [b]) | note"],
  ["x = A { a = f(1 }", "bracket-open", "(", "x = A { a = f(1) }"],
  ["x = A {\n  a = f(1\n  b = 2\n}", "bracket-open", "(", "x = A {\n  a = f(1)\n  b = 2\n}"],
  ["x = A {\n  a = 1", "bracket-open", "{", "x = A {\n  a = 1\n}"],
  ["x = if (a > 3 then 1 else 2", "bracket-open", "(", "x = if (a > 3) then 1 else 2"],
  ["x = A { a = 1 | note }", "bracket-in-note", "{", "x = A { a = 1 } | note "],
  ["x = [1, 2)", "bracket-differs", ")", "x = [1, 2]"],
  ["x = a)", "bracket-closes-nothing", ")", "x = a"],
  ["x = a | n\n  + b", "columns-early", "| n", "x = a \n  + b | n"],
  ["x = match (m) {\n none: 1 | n\n}", "columns-misplaced", "|", "x = match (m) {\n none: 1 # n\n}"],
  ["x = 1 | a | b | c | d", "extra-bar", "|", "x = 1 | a | b \\| c \\| d"],
  ["x = a || b", "double-bar", "||", "x = a or b"],
  ["x == 3", "equality-for-definition", "==", "x = 3"],
  ["x = A { a == 3 }", "equality-for-definition", "==", "x = A { a = 3 }"],
  ["check a = b", "single-equals", "=", "check a == b"],
  ["example f(3) = 4", "single-equals", "=", "example f(3) == 4"],
  ["x = if a = b then 1 else 2", "single-equals", "=", "x = if a == b then 1 else 2"],
  ["x = (8 mm ± 0.1 mm) * 2", "scatter-misplaced", "±"],
  ["x = f(8 mm ~ 1 mm)", "scatter-misplaced", "~"],
  ["x = (a as mm) + b", "as-misplaced", "as"],
  ["x = a ± p of b", "share-literal", "p"],
  ["x = d +0.2/-0 mm", "limits-nominal", "d"],
  ["x = 8 mm +0.2 mm/-0 mm", "limits-unit", "+0.2 mm/-0", "x = 8 mm +0.2/-0 mm"],
  ["x = a step b", "step-alone", "step"],
  ["x = a within 3", "two-bounds", "3"],
  ["x = solve y in 3 where y > 2", "two-bounds", "3"],
  ["x = table {\n a | b\n 1\n}", "row-cells", "1"],
  ["x = table {\n a [1]\n d\n}", "lookup-is-table", "d", 'x = table {\n a [1]\n "d"\n}'],
  ["example f(3)", "example-form", "f(3)"],
  ["in = 3", "reserved-name", "in", "in_ = 3"],
  ["formula f(in: Length) = 3", "reserved-name", "in", "formula f(in_: Length) = 3"],
  ["x = where + 3", "reserved-name", "where", "x = where_ + 3"],
  ["a <= b", "not-a-statement", "a <= b", "check a <= b"],
  ["chek a <= b", "not-a-statement", "chek a <= b", "check a <= b"],
  ["f(x) = x^2", "not-a-statement", "f(x) = x^2", "formula f(x) = x^2"],
  ["3 + 4", "not-a-statement", "3 + 4"],
  ["  x = 3", "indented-start", "x", "x = 3"],
  ["x = a +", "value-missing", "+"],
  ["x = ", "value-missing", "="],
  ["x = f(, a)", "value-missing", "("],
  ["check a <= b factor", "value-missing", "factor"],
  ["x = if a then b", "ends-early", "b"],
  ['use "a.joint.md"', "ends-early", '"a.joint.md"'],
  ["x = a then b", "does-not-fit", "then"],
];

describe("refused forms", () => {
  test.each(refused.map(([text, code, place, after]) => ({ text, code, place, after })))("$text: $code", ({ text, code, place, after }) => {
    const found = faultsOf(text);
    expect(found.map((one) => one.code)).toEqual([code]);
    const fault = found[0];
    expect(fault === undefined ? undefined : text.slice(fault.range.from, fault.range.to)).toBe(place);
    if (after === undefined) return;
    expect(mended(text)[0]).toBe(after);
    for (const other of mended(text)) expect(codesOf(other), other).toEqual([]);
  });

  test("1,5 in a list offers both readings", () => {
    expect(mended("x = [1,5]")).toEqual(["x = [1.5]", "x = [1, 5]"]);
  });

  test("two mistaken numbers are two faults, and nothing is said of what follows from them", () => {
    expect(codesOf("x = 1,5 + .5")).toEqual(["comma-number", "point-without-digit"]);
    expect(codesOf("x = 1,5 + (")).toEqual(["comma-number"]);
  });
});

describe("the catalogue's samples", () => {
  const own = entries.filter((entry) => entry.area === "syntax" && entry.wrong !== "");

  test.each(own.map((entry) => [entry.code, entry] as const))("%s", (code, entry) => {
    const codes = (markdown: string): readonly string[] => fences(`${markdown}\n`).flatMap(chunks).flatMap(codesOf);
    expect(codes(entry.wrong)).toContain(code);
    expect(codes(entry.right)).toEqual([]);
  });
});
