// engine/syntax: how operators group, what belongs to a literal, and where a scatter stands.

import { expect, test } from "vitest";
import { grouped } from "./read.ts";

// Loosest to tightest, one row per neighbourhood of the table in engine/syntax/operators.ts.
test.each([
  ["a or b and c", "(a or (b and c))"],
  ["a and not b", "(a and (not b))"],
  ["not a == b", "(not (a == b))"],
  ["not a and b", "((not a) and b)"],
  ["a < b <= c", "(a < b <= c)"],
  ["a == b and c != d", "((a == b) and (c != d))"],
  ["a + 1 .. b * 2 step c", "((a + 1) .. (b * 2) step c)"],
  ["a - b - c", "((a - b) - c)"],
  ["a / b * c", "((a / b) * c)"],
  ["a + b * c", "(a + (b * c))"],
  ["-a * b", "((- a) * b)"],
  ["a * -b", "(a * (- b))"],
  ["-x^2", "(- (x ^ 2))"],
  ["-2 m^2", "(- 2<m^2>)"],
  ["x^2^3", "(x ^ (2 ^ 3))"],
  ["2^-3", "(2 ^ (- 3))"],
  ["2^-x^2", "(2 ^ (- (x ^ 2)))"],
  ["-x²", "(- (x ^ 2))"],
  ["x²^3", "((x ^ 2) ^ 3)"],
  ["r⁻¹", "(r ^ (- 1))"],
  ["a - -b", "(a - (- b))"],
  ["xs[1] + t.D * f(x)", "(xs[1] + (t.D * f(x)))"],
  ["a + b where .F > 3 and .G", "((a + b) where ((.F > 3) and .G))"],
  ["t where .a where .b", "((t where .a) where .b)"],
  ["if a then b else c + d", "(if a b (c + d))"],
  ["1 + if a then b else c + d", "(1 + (if a b (c + d)))"],
  ["(a + b) * c", "((a + b) * c)"],
])("%s is %s", (text, tree) => {
  expect(grouped(text)).toBe(tree);
});

// A literal with its unit is one value, tighter than any operator.
test.each([
  ["2 m / 3 s", "(2<m> / 3<s>)"],
  ["3 m / 4 m", "(3<m> / 4<m>)"],
  ["10 k / 10 k", "(10<k> / 10<k>)"],
  ["12 N / d", "(12<N> / d)"],
  ["12 N /d", "(12<N> / d)"],
  ["12 N/d", "12<N/d>"],
  ["2 N/A", "2<N/A>"],
  ["9 N·m", "9<N·m>"],
  ["9 N · m", "(9<N> * m)"],
  ["9 N*m", "9<N*m>"],
  ["9 N * m", "(9<N> * m)"],
  ["9 N m", "9<N m>"],
  ["12mm", "12<mm>"],
  ["3 m^2", "3<m^2>"],
  ["3 m ^ 2", "(3<m> ^ 2)"],
  ["3 m^n", "(3<m> ^ n)"],
  ["12 mm²", "12<mm²>"],
  ["5 m^(1/2)", "5<m^(1/2)>"],
  ["23e-6 K^-1", "23e-6<K^-1>"],
  ["5 W/(m K)", "5<W/(m K)>"],
  ["12 N/(d + 1)", "(12<N> / (d + 1))"],
  ["10% + 20%", "(10<%> + 20<%>)"],
  ["0.5 in", "0.5<in>"],
  ["5 lbf in", "5<lbf in>"],
  ["278.15 K abs", "278.15<K><abs>"],
  ["6 mm .. 20 mm step 1 mm", "(6<mm> .. 20<mm> step 1<mm>)"],
  ["1_000 N", "1000<N>"],
  ["1.2e−6", "1.2e-6"],
  ["5 degrees C", "5<degrees C>"],
  ["5 for", undefined],
])("%s reads as %s", (text, tree) => {
  if (tree === undefined) expect(() => grouped(text)).toThrow("does not fit");
  else expect(grouped(text)).toBe(tree);
});

test.each([
  ["8 mm ± 0.1 mm", "(8<mm> limits)"],
  ["a + 8 mm ± 0.1 mm", "((a + 8<mm>) limits)"],
  ["8 mm +0.2/-0 mm", "(8<mm> unequal)"],
  ["8 mm + 0.2 / -0 mm", "(8<mm> + (0.2 / (- 0<mm>)))"],
  ["8 mm ± 5 % of 8 mm", "(8<mm> share)"],
  ["17 MPa ~ 2 MPa of 4", "(17<MPa> deviation)"],
  ["[8 mm ± 0.1 mm, 9 mm]", "[(8<mm> limits), 9<mm>]"],
])("%s is a scatter: %s", (text, tree) => {
  expect(grouped(text)).toBe(tree);
});
