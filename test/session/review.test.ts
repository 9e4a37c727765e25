// The review list: what a checker would ask, one case for each kind and one for each reason to be silent.

import { describe, expect, test } from "vitest";
import { library } from "../../stdlib/index.ts";
import { FILE, open } from "./helper.ts";

const review = (text: string, withLibrary = false): readonly string[] =>
  open(text, {}, withLibrary ? library : undefined)
    .session.tools.review(FILE)
    .map(({ kind, name }) => `${name}: ${kind}`);

const clean = "F = 2 N | load | given\nA = 3 mm^2 | area | given";

describe("review", () => {
  test("a line with note, source and unit is asked nothing", () => {
    expect(review(`${clean}\np = F / A as MPa | pressure\ncheck p <= 4 MPa factor 2 | holds`)).toEqual([]);
  });
  test("an input without a source, or without a note", () => {
    expect(review("F = 2 N | load\nG = 2 * F as N | twice")).toEqual(["F: no reference"]);
    expect(review("F = 2 N | | given\nG = 2 * F as N | twice")).toEqual(["F: no note"]);
  });
  test("an input that nothing reads; a result that nothing reads is what one wanted", () => {
    expect(review(clean)).toEqual(["F: unused", "A: unused"]);
    expect(review("formula f(a) = 2 * a | twice | practice")).toEqual(["f: unused"]);
  });
  test("a live value in prose and another notebook are readers", () => {
    expect(review("A load of {F}.\n\n```calc\nF = 2 N | load | given\n```\n")).toEqual([]);
    const { session } = open("F = 2 N | load | given", { "b.joint.md": `use "${FILE}" as a\nG = a.F` });
    expect(session.tools.review(FILE)).toEqual([]);
  });
  test("a number inside a formula or a computed line has no name; small counts and powers do", () => {
    expect(review(`${clean}\np = 0.82 * F / A as MPa | pressure`)).toEqual(["p: bare number"]);
    expect(review(`${clean}\np = 2 * F / A^1.5 as N/mm^3 | strange`)).toEqual([]);
    expect(review("formula f(a) = 0.577 * a | shear\nx = f(2) | that")).toEqual(["f: bare number"]);
    expect(review("formula f(a) = 0.577 * a | shear | @x\nx = f(2) | that")).toEqual([]);
  });
  test("a computed quantity whose unit nobody named", () => {
    expect(review(`${clean}\np = F / A | pressure`)).toEqual(["p: unit not shown"]);
    expect(review(`---\nunits: { stress: MPa }\n---\n\n\`\`\`calc\n${clean}\np = F / A | pressure\n\`\`\`\n`)).toEqual([]);
    expect(review(`${clean}\np: Stress = F / A | pressure`)).toEqual([]);
  });
  test("a check that compares two amounts without a factor", () => {
    expect(review(`${clean}\ncheck F / A <= 4 MPa | holds`)).toEqual(["holds: check without factor"]);
    expect(review(`${clean}\ncheck 1.5 * F / A <= 4 MPa | holds`)).toEqual([]);
    expect(review(`${clean}\ncheck F > 1 N and A > 1 mm^2 | both`)).toEqual([]);
  });
  test("what lies outside the validity of a formula", () => {
    const text = "formula f(a) = {\n  valid a <= 3 | thin\n  result = a\n} | f | practice\nx = f(4) | that";
    expect(review(text)).toEqual(["x: outside validity"]);
  });
  test("a call that says what it is needs no note", () => {
    expect(review('t = thread("M5")\nA = stress_area(t) as mm^2 | that', true)).toEqual([]);
  });
  test("items stand in the order of the text, at the name", () => {
    const { session } = open("\nF = 2 N\nG = 3 N");
    const items = session.tools.review(FILE);
    const text = session.text(FILE);
    expect(items.map(({ from, to }) => text.slice(from, to))).toEqual(["F", "F", "F", "G", "G", "G"]);
  });
});
