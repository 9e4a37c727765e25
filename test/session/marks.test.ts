// Marks that travel: the weakest provenance and the input that brought it, per field and branch; limits; scatter.

import { describe, expect, it } from "vitest";
import { library } from "../../stdlib/index.ts";
import { open } from "./helper.ts";

const provenance = (text: string, name: string): unknown => open(text).line(name).marks?.provenance;

describe("provenance", () => {
  it("of a result is the weakest that reached it, with the input that brought it", () => {
    expect(provenance("a = 1 N | | test own\nb = 2 N | | memory of a table\nc = a + b", "c")).toMatchObject({ level: "memory", from: "b" });
  });

  it("of what nobody wrote is unsourced", () => {
    expect(provenance("a = 1 N", "a")).toMatchObject({ level: "unsourced", from: "a" });
  });

  it("a computed line's reference is a citation of its method and makes it no stronger", () => {
    expect(provenance("a = 1 N | | assumed\nb = 2 * a | | @iso965", "b")).toMatchObject({ level: "assumed", from: "a" });
  });

  it("a bare number inside an expression carries none", () => {
    expect(provenance("k = 2 * pi", "k")).toBeUndefined();
  });

  it("goes by field: reading one field leaves the others behind", () => {
    const text = "record Pin { D: Length, L: Length }\np = Pin {\n  D = 4 mm | | test own\n  L = 9 mm | | assumed\n}\nd = p.D\nl = p.L";
    expect(provenance(text, "d")).toMatchObject({ level: "test", from: "p.D" });
    expect(provenance(text, "l")).toMatchObject({ level: "assumed", from: "p.L" });
  });

  it("goes by the branch taken and its condition", () => {
    const text = "a = 1 N | | test own\nb = 2 N | | assumed\nc = 3 N | | given\nx = if c > 2 N then a else b";
    expect(provenance(text, "x")).toMatchObject({ level: "given", from: "c" });
  });

  it("follows a definition through use, records and lists", () => {
    const opened = open('use "o.joint.md" as o\nx = 2 * o.F', { "o.joint.md": "F = 1 N | | supplier sheet" });
    expect(opened.line("x").marks?.provenance).toMatchObject({ level: "supplier" });
  });

  it("of a library value names its source", () => {
    const opened = open('A = stress_area(thread("M6")) as mm^2', {}, library);
    expect(opened.line("A").marks?.provenance?.level).toBe("published");
  });
});

describe("validity", () => {
  it("broken in a library formula marks what hangs on it and goes when it is mended", () => {
    const text = "formula f(a: Length) = {\n  valid a <= 5 mm | tried up to 5 mm\n  result = a\n}\nd = 7 mm\nx = f(d)\ny = 2 * x";
    const opened = open(text);
    expect(opened.line("y").marks?.outside).toEqual([{ formula: "f", limit: "a <= 5 mm", note: "tried up to 5 mm" }]);
    const at = opened.session.text("a.joint.md").indexOf("7 mm");
    opened.session.edit("a.joint.md", [{ from: at, to: at + 1, insert: "4" }]);
    expect(opened.line("y").marks?.outside).toEqual([]);
  });
});

describe("functions that give items of their arguments as they are", () => {
  const lists = `a = 1 N | | given x\nb = 2 N | | assumed\nc = 3 N | | memory\nxs = [a, b]\nys = [c]\n`;
  const level = (expression: string): string | undefined => open(`${lists}r = ${expression}`).line("r").marks?.provenance?.level;

  it("leave each item its own marks", () => {
    expect(level("join(xs, ys)[1]")).toBe("given");
    expect(level("join(xs, ys)[3]")).toBe("memory");
    expect(level("reverse(xs)[2]")).toBe("given");
    expect(level("first(xs)")).toBe("given");
    expect(level("last(xs)")).toBe("assumed");
    expect(level("single(ys)")).toBe("memory");
  });

  it("and the whole of them all", () => {
    expect(level("join(xs, ys)")).toBe("assumed");
    expect(level("sum(join(xs, ys))")).toBe("assumed");
  });

  it("what a list was chosen by stays with its items", () => {
    expect(level("first([x for x in ys where b > 1 N])")).toBe("assumed");
  });
});
