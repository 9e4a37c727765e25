// engine/notebook: live values and headings in prose.

import { describe, expect, it } from "vitest";
import { headings, liveValues, outline, readNotebook, sectionOf } from "../../engine/notebook/index.ts";

const inside = (text: string): string[] =>
  liveValues(text).map((value) => {
    expect(text.slice(value.from, value.to)).toBe(`{${value.inside}}`);
    return value.inside;
  });

describe("live values", () => {
  it("are name paths in braces, perhaps with a unit", () => {
    expect(inside('Moment {M}, {F_strip as kN}, { wrist.anchor.D as N/mm^2 }, {τ_max}, {t."Max force"}.')).toEqual([
      "M",
      "F_strip as kN",
      " wrist.anchor.D as N/mm^2 ",
      "τ_max",
      't."Max force"',
    ]);
  });

  it("are nothing else in braces", () => {
    expect(inside("{} {1} {a + b} {a as} {a b} {{a} {a.} {a\n} { as kN}")).toEqual(["a"]);
  });

  it("may be escaped", () => {
    expect(inside("\\{F} and \\\\{G}")).toEqual(["G"]);
  });

  it("stand in text, emphasis, headings, lists, quotes and table cells", () => {
    expect(inside("# Head {a}\n\n*{b}* **x {c}**\n\n- {d}\n\n> {e}\n\n| h |\n|---|\n| {f} |\n")).toEqual(["a", "b", "c", "d", "e", "f"]);
  });

  it("do not stand in code, HTML, links, images or addresses", () => {
    const text =
      "`{a}` ``{b}``\n\n    {c}\n\n<div>{d}</div>\n\n<!-- {e} -->\n\n[x {f}](y) ![{g}](z) <http://x/{h}> <b title='{i}'>{j}</b>\n\n- ```\n  {k}\n  ```\n\n[l]: {l}\n";
    expect(inside(text)).toEqual(["j"]);
  });

  it("do stand in plain brackets, which only look like a link", () => {
    expect(inside("see [{a}] and [b {c}][d]")).toEqual(["a"]);
  });

  it("are looked for in time that grows with the text", () => {
    expect(inside(`{a as ${" ".repeat(100_000)}`)).toEqual([]);
    expect(inside(`${"{a.".repeat(30_000)}`)).toEqual([]);
  });

  it("are not looked for in a paragraph of hostile length, which a notice says", () => {
    const text = `{a} ${"[x](".repeat(15_000)}`;
    expect(inside(text)).toEqual([]);
    expect(readNotebook(text).parts[0]?.diagnostics.map(({ code }) => code)).toEqual(["prose-too-long"]);
    expect(inside("{a}\n\n".repeat(15_000)).length).toBe(15_000);
  });

  it("are the same list for the same text", () => {
    expect(liveValues("x {a}")).toBe(liveValues(["x", "{a}"].join(" ")));
  });
});

describe("headings", () => {
  it("are of both forms, without their marks", () => {
    expect(headings("# One\n\nTwo\nlines\n===\n\nThree\n---\n\n### Four ##\n####\n")).toEqual([
      { level: 1, text: "One", from: 0, to: 5 },
      { level: 1, text: "Two lines", from: 7, to: 20 },
      { level: 2, text: "Three", from: 22, to: 31 },
      { level: 3, text: "Four", from: 33, to: 44 },
      { level: 4, text: "", from: 45, to: 49 },
    ]);
  });

  it("in code, lists and quotes are none of the outline", () => {
    expect(headings("    # a\n\n> # b\n\n- # c\n\n#d\n")).toEqual([]);
  });

  it("of a notebook are told with their place, and where one stands", () => {
    const text = "# A\n\n```calc\n# no heading\na = 1\n```\n\n## B\n\nText\n\n# C\n";
    const notebook = readNotebook(text);
    expect(outline(notebook).map(({ text, from }) => `${text} ${from}`)).toEqual([
      "A 0",
      `B ${text.indexOf("## B")}`,
      `C ${text.indexOf("# C")}`,
    ]);
    const path = (needle: string) => sectionOf(notebook, text.indexOf(needle)).map(({ text }) => text);
    expect([path("a = 1"), path("Text"), path("# C")]).toEqual([["A"], ["A", "B"], ["C"]]);
  });
});
