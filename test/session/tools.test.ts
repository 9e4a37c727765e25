// What an editor asks of a session beside outputs: units, views, sensitivities, definitions, the library and what fits.

import { describe, expect, test } from "vitest";
import { applyChanges } from "../../engine/base/index.ts";
import { library } from "../../stdlib/index.ts";
import { FILE, fenced, open } from "./helper.ts";

describe("units of a value", () => {
  const chosen = (line: string, unit: string): string => {
    const { session } = open(line);
    const found = session.tools.unitChoices(FILE, "M");
    if (found === undefined) return "none";
    return applyChanges(session.text(FILE), [{ from: found.from, to: found.to, insert: ` as ${unit}` }]);
  };
  test("each is the same value, and writing it shows it", () => {
    const { session } = open("M = 2 N * 3 m");
    const shown = session.tools.unitChoices(FILE, "M")?.choices.map((choice) => choice.shown.text);
    expect(shown).toEqual(expect.arrayContaining(["6 N·m", "6000 N·mm", "53.1 in·lbf"]));
    for (const choice of session.tools.unitChoices(FILE, "M")?.choices ?? []) {
      const after = open(chosen("M = 2 N * 3 m", choice.unit));
      expect(after.line("M").value?.text).toBe(choice.shown.text);
    }
  });
  test("a moment is not offered as an energy, nor per angle", () => {
    const units =
      open("M = 2 N * 3 m")
        .session.tools.unitChoices(FILE, "M")
        ?.choices.map(({ unit }) => unit) ?? [];
    expect(units.filter((unit) => /J|Wh|rad/.test(unit))).toEqual([]);
  });
  test("the unit is put before the bounds and in place of the one that is there", () => {
    expect(chosen("M = 2 N*m within 1 N*m .. 3 N*m", "N*mm")).toBe(fenced("M = 2 N*m as N*mm within 1 N*m .. 3 N*m"));
    expect(chosen("M = 2 N * 3 m as N*m | that", "N*mm")).toBe(fenced("M = 2 N * 3 m as N*mm | that"));
  });
  test("what has no unit to choose offers none", () => {
    expect(chosen('M = "a"', "mm")).toBe("none");
    expect(chosen("M = 2 N + 3 mm", "mm")).toBe("none");
  });
});

describe("a view in one system", () => {
  const text =
    "---\nunits: { force: kN }\n---\n\n```calc\nF = 2000 N\nd = 1 in as in\nM = F * d as N*m\nT = 20 degC\ndur = 3 s\nn = 40 % as %\n```\n";
  const shown = (system: "written" | "metric" | "inch"): readonly (string | undefined)[] => {
    const { session, lines } = open(text);
    session.snapshot(FILE);
    session.tools.setSystem(system);
    const snapshot = session.snapshot(FILE);
    expect(snapshot.changed.length).toBe(lines().length);
    return lines().flatMap(({ value }) => (value === undefined ? [] : [value.text]));
  };
  test("metric shows no inch unit, keeps those of the notebook, and leaves times and shares alone", () => {
    expect(shown("metric")).toEqual(["2000 N", "25.4 mm", "50.8 N·m", "20 °C", "3 s", "40 %"]);
  });
  test("inch shows no metric unit", () => {
    expect(shown("inch")).toEqual(["449.6 lbf", "1 in", "449.6 in·lbf", "68 °F", "3 s", "40 %"]);
  });
  test("written is as before", () => {
    expect(shown("written")).toEqual(["2000 N", "1 in", "50.8 N·m", "20 °C", "3 s", "40 %"]);
  });
});

describe("sensitivities", () => {
  test("of a value by the inputs that reach it, the largest first", () => {
    const { session } = open("a = 2 mm\nb = 3 mm\nc = 4 mm\nx = a^3 * b\ny = x / 1 mm");
    const found = session.tools
      .sensitivities(FILE, "y", 0, 9)
      .list.map(({ name, change }) => [name, Math.round((change ?? 0) * 1e4) / 1e4]);
    expect(found).toEqual([
      ["a", 0.03],
      ["b", 0.01],
    ]);
  });
  test("inputs are told a few at a time", () => {
    const { session } = open("a = 2 mm\nb = 3 mm\nc = 4 mm\nx = a * b * c");
    const first = session.tools.sensitivities(FILE, "x", 0, 2);
    const rest = session.tools.sensitivities(FILE, "x", first.next ?? 0, 2);
    expect([...first.list, ...rest.list].map(({ name }) => name).sort()).toEqual(["a", "b", "c"]);
    expect(rest.next).toBeUndefined();
  });
  test("of a check by its utilisation", () => {
    const { session } = open("F = 2 N\nG = 4 N\ncheck F <= G factor 2 | holds");
    const [id] = session.tools.readers(FILE, "F");
    const found = session.tools
      .sensitivities(FILE, id ?? "", 0, 9)
      .list.map(({ name, change }) => [name, Math.round((change ?? 0) * 1e3) / 1e3]);
    expect(found.sort()).toEqual([
      ["F", 0.01],
      ["G", -0.01],
    ]);
  });
  test("of what has no number there are none", () => {
    expect(open('a = "x"').session.tools.sensitivities(FILE, "a", 0, 9).list).toEqual([]);
    expect(open("a = b").session.tools.sensitivities(FILE, "a", 0, 9).list).toEqual([]);
  });
});

describe("names at a place", () => {
  const place = (text: string, marked: string, files: Readonly<Record<string, string>> = {}) => {
    const { session } = open(text, files, library);
    return session.tools.definitionOf(FILE, session.text(FILE).indexOf(marked));
  };
  test("a use leads to its definition, a live value too", () => {
    const text = "See {F}.\n\n```calc\nF = 2 N\nG = 2 * F\n```\n";
    const at = text.indexOf("F = 2");
    expect(place(text, "F\n```")).toEqual({ in: "notebook", file: FILE, from: at, to: at + 1 });
    expect(place(text, "F}")).toEqual({ in: "notebook", file: FILE, from: at, to: at + 1 });
  });
  test("a name behind a prefix leads to the other notebook", () => {
    const found = place('use "b.joint.md" as b\nG = b.F_max', "F_max", { "b.joint.md": "F_max = 2 N" });
    expect(found).toMatchObject({ in: "notebook", file: "b.joint.md" });
  });
  test("a name of the library leads to its module", () => {
    const found = place('t = thread("M5")\nA = stress_area(t)', "stress_area");
    expect(found).toMatchObject({ in: "library", name: "stress_area", module: "threads.joint.md" });
  });
  test("numbers, units and fields lead nowhere", () => {
    expect(place("F = 2 N", "2 N")).toBeUndefined();
    expect(place("record R { d: Length }\nr = R { d = 1 mm }\nx = r.d", "d\n```")).toMatchObject({ from: expect.any(Number) });
  });
});

describe("the library", () => {
  const text = 't = thread("M5")\nL_e = 8 mm\nd_h = 5 mm\nA = 1 mm^2 as mm^2';
  test("every name has its types", () => {
    const { tools } = open(text, {}, library).session;
    const list = [...tools.library(0).listings];
    for (let page = tools.library(0); page.next !== undefined; page = tools.library(page.next))
      list.push(...tools.library(page.next).listings);
    expect(list.find(({ name }) => name === "stress_area")).toMatchObject({
      kind: "formula",
      gives: "Area",
      parameters: [{ name: "t", type: "Thread", optional: false }],
    });
    expect(list.length).toBeGreaterThan(100);
  });
  test("a unit leads to its quantity", () => {
    const { tools } = open(text, {}, library).session;
    expect(["mm^2", "N·m", "MPa", "1/K", "thread", ""].map((unit) => tools.quantityOfUnit(unit))).toEqual([
      "Area",
      "Torque",
      "Pressure",
      "LinearExpansionCoefficient",
      "",
      "",
    ]);
  });
  test("a card tells maths, limits, source and examples that pass", () => {
    const card = open(text, {}, library).session.tools.libraryCard("internal_thread_shear_area");
    expect(card?.steps.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["require", "step", "result"]));
    expect(card?.sources.length).toBeGreaterThan(0);
    expect(card?.examples.length).toBeGreaterThan(0);
    expect(card?.examples.filter(({ passes }) => !passes)).toEqual([]);
  });
  test("what fits gives the type asked for, what the notebook can fill first", () => {
    const { session } = open(text, {}, library);
    const at = session.text(FILE).indexOf("1 mm^2");
    const { wanted, offers } = session.tools.fitting(FILE, at);
    expect(wanted).toBe("Area");
    expect(offers[0]?.missing).toBe(0);
    expect(offers.map(({ name }) => name)).toContain("internal_shear_area");
    expect(offers.map(({ name }) => name)).not.toContain("thread");
  });
  test("a call is filled by name and type", () => {
    const { session } = open(text, {}, library);
    expect(session.tools.callOf(FILE, "internal_shear_area")).toEqual({
      name: "internal_shear_area",
      kind: "formula",
      arguments: [
        { name: "t", value: "t", hint: "Thread" },
        { name: "L_e", value: "L_e", hint: "Length" },
      ],
    });
  });
  test("what a line cites, whole, and where else it is cited", () => {
    const cited =
      "---\nreferences:\n  - { id: log7, type: report, number: log 7, title: Load log }\n---\n\n```calc\nW = 42 N | load | @log7 table 2\nk = 2 | start | @log7 table 3\n```\n";
    const { session } = open(cited);
    expect(session.tools.citations(FILE, "W")).toEqual([{ entry: "log 7: Load log.", alsoAt: ["k"] }]);
  });
});
