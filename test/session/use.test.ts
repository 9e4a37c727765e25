// Notebooks that use each other: values, records, formulas behind a prefix; files that are missing, turn, or lose a name.

import { describe, expect, it } from "vitest";
import { FILE, fenced, open } from "./helper.ts";

const shop = "F_max = 2 kN | n | test own\nrecord Pin { D: Length }\nformula area(p: Pin) = pi / 4 * p.D^2\npin = Pin { D = 4 mm }";

describe("use of a notebook", () => {
  it("gives values, records and formulas behind the prefix, with their provenance", () => {
    const opened = open(
      'use "shop.joint.md" as shop\nF = shop.F_max / 2 as kN\nA = shop.area(shop.Pin { D = 2 mm }) as mm^2\nB = shop.area(shop.pin) as mm^2',
      { "shop.joint.md": shop },
    );
    expect(opened.codes()).toEqual([]);
    expect(opened.line("F").value?.text).toBe("1 kN");
    expect(opened.line("F").marks?.provenance?.level).toBe("test");
    expect(opened.line("A").value?.text).toBe("3.142 mm²");
    expect(opened.line("B").value?.text).toBe("12.57 mm²");
  });

  it("follows an edit of the other file", () => {
    const opened = open('use "shop.joint.md" as shop\nF = shop.F_max', { "shop.joint.md": shop });
    opened.session.put("shop.joint.md", fenced(shop.replace("2 kN", "3 kN")));
    expect(opened.line("F").value?.text).toBe("3000 N");
  });

  it("reaches prose that was written before its line, and follows the other file there", () => {
    const opened = open(`It holds {shop.F_max}.\n\n${fenced("x = 1")}`, { "shop.joint.md": shop });
    const { session } = opened;
    const told = (): readonly (string | undefined)[] =>
      session
        .snapshot(FILE)
        .changed.filter((line) => line.kind === "live")
        .map((line) => line.value?.text);
    expect(told()).toEqual([undefined]);
    const at = session.text(FILE).indexOf("x = 1");
    session.edit(FILE, [{ from: at, to: at, insert: 'use "shop.joint.md" as shop\n' }]);
    expect(told()).toEqual(["2000 N"]);
    session.put("shop.joint.md", fenced(shop.replace("2 kN", "3 kN")));
    expect(told()).toEqual(["3000 N"]);
  });

  it("a missing file is a fault at its name, and mends itself when the file comes", () => {
    const opened = open('use "shop.joint.md" as shop\nF = shop.F_max');
    expect(opened.codes()).toEqual(["use-missing-file"]);
    expect(opened.line("F").waitsFor).toEqual(["shop"]);
    opened.session.put("shop.joint.md", fenced(shop));
    expect(opened.codes()).toEqual([]);
    expect(opened.line("F").value?.text).toBe("2000 N");
    opened.session.remove("shop.joint.md");
    expect(opened.codes()).toEqual(["use-missing-file"]);
  });

  it("a loop of files is named", () => {
    const opened = open('use "b.joint.md" as b\nx = 1', { "b.joint.md": `use "${FILE}" as a\ny = 2` });
    expect(opened.codes()).toContain("use-loop");
    expect(opened.lines().flatMap((line) => line.diagnostics)[0]?.message).toContain(`${FILE}, b.joint.md, ${FILE}`);
    expect(opened.line("x").value?.text).toBe("1");
  });

  it("a name that went away there is a fault here that offers the nearest", () => {
    const opened = open('use "shop.joint.md" as shop\nF = shop.F_max', { "shop.joint.md": shop });
    opened.session.put("shop.joint.md", fenced(shop.replace("F_max", "F_mex")));
    expect(opened.line("F").diagnostics[0]).toMatchObject({ code: "not-in-file", hint: "Did you mean F_mex?" });
  });

  it("a prefix that names another file gives other values", () => {
    const opened = open('use "b.joint.md" as o\nF = o.k', { "b.joint.md": "k = 1", "c.joint.md": "k = 2" });
    const at = opened.session.text(FILE).indexOf("b.joint");
    opened.session.edit(FILE, [{ from: at, to: at + 1, insert: "c" }]);
    expect(opened.line("F").value?.text).toBe("2");
  });
});

describe("use of a csv file", () => {
  it("is a table whose heads carry the units", () => {
    const opened = open('use "pulls.csv" as pulls\nF = mean(pulls.F_max) as kN', { "pulls.csv": "id;F_max [N]\nP1;1500\nP2;1700\n" });
    expect(opened.codes()).toEqual([]);
    expect(opened.line("F").value?.text).toBe("1.6 kN");
  });

  it("a head without a unit holds text, so that no number loses its unit", () => {
    const opened = open('use "pulls.csv" as pulls\nF = mean(pulls.F_max)', { "pulls.csv": "id;F_max\nP1;1500\n" });
    expect(opened.line("F").diagnostics[0]?.severity).toBe("fault");
  });
});
