// engine/syntax: every form of statement, expression and type, and the trees they make.

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type {
  Call,
  Definition,
  Expression,
  Formula,
  GroupUse,
  MatchUse,
  RecordLiteral,
  Scatter,
  Solve,
  Study,
  TableLiteral,
} from "../../engine/syntax/index.ts";
import { parseHead, parseLive, parseStatement } from "../../engine/syntax/index.ts";
import { chunks, clean, codesOf, fences, valueIn } from "./read.ts";

const text = (source: string, range: { readonly from: number; readonly to: number } | undefined): string | undefined =>
  range === undefined ? undefined : source.slice(range.from, range.to);

describe("statements", () => {
  test("a definition has name, type, value, shown unit, bounds and columns, each at its place", () => {
    const source = "τ_max: [N/mm^2] = 5 MPa as ksi within 1 MPa .. 9 MPa | worst \\| pose | @log7 table 2\n";
    const tree = clean(source) as Definition;
    expect(tree.name).toMatchObject({ name: "tau_max", text: "τ_max" });
    expect(tree.type).toMatchObject({ kind: "unit", unit: { text: "N/mm^2" } });
    expect(tree.value).toMatchObject({ kind: "number", digits: "5", unit: { text: "MPa" }, absolute: false });
    expect(tree.unit?.text).toBe("ksi");
    expect(text(source, tree.within?.range)).toBe("within 1 MPa .. 9 MPa");
    expect(tree.columns).toMatchObject({ note: "worst | pose", reference: "@log7 table 2" });
    expect(text(source, tree.columns?.noteRange)).toBe("worst \\| pose");
    expect(text(source, tree.columns?.referenceRange)).toBe("@log7 table 2");
    expect(text(source, tree.working)).toBe("τ_max: [N/mm^2] = 5 MPa as ksi within 1 MPa .. 9 MPa");
  });

  test("empty columns are absent; a reference may stand without a note", () => {
    expect(clean("x = 1 | | ").columns).toBeUndefined();
    expect(clean("x = 1 | | given").columns).toEqual({
      range: { from: 6, to: 15 },
      reference: "given",
      referenceRange: { from: 10, to: 15 },
    });
  });

  test("a bar in text or a # in the note is neither", () => {
    expect(clean('x = "a | b" | no # comment "').columns?.note).toBe('no # comment "');
    expect(clean("x = 1 # a | b").columns).toBeUndefined();
  });

  test("a check has a condition and a factor", () => {
    expect(clean("check F_S <= F_strip factor 1.5 | title | ref")).toMatchObject({
      kind: "check",
      condition: { kind: "compare", operators: ["<="] },
      factor: { kind: "number", digits: "1.5" },
      columns: { note: "title", reference: "ref" },
    });
    expect(clean("check ledger")).toMatchObject({ kind: "check", condition: { kind: "name", name: "ledger" } });
  });

  test("a formula of one line has one result", () => {
    const tree = clean("formula f(a: Length, k = 0.2): Force = k * a as kN") as Formula;
    expect(tree.parameters).toMatchObject([
      { name: { name: "a" }, type: { kind: "named" } },
      { name: { name: "k" }, default: { digits: "0.2" } },
    ]);
    expect(tree.steps).toMatchObject([{ kind: "result", unit: { text: "kN" } }]);
    expect(tree.braced).toBe(false);
  });

  test("steps stand on lines or between commas and have columns of their own", () => {
    const tree = clean(
      "formula f(a) = {\n  b = a *\n    2 | double | @x\n  require b > 1, valid b < 9 | range\n  y: Length = b as mm\n\n  result = solve z: [mm] in 1 mm .. 2 mm where z == y\n} | n",
    ) as Formula;
    expect(tree.steps.map((step) => [step.kind, step.name?.name, step.columns?.note])).toEqual([
      ["step", "b", "double"],
      ["require", undefined, undefined],
      ["valid", undefined, "range"],
      ["step", "y", undefined],
      ["result", undefined, undefined],
    ]);
    expect(tree.steps[4]?.value).toMatchObject({ kind: "solve", type: { kind: "unit", unit: { text: "mm" } } });
    expect(tree.columns?.note).toBe("n");
  });

  test("require and valid are free as names", () => {
    const tree = clean("formula f(a) = {\n  valid = a\n  result = valid\n}") as Formula;
    expect(tree.steps[0]).toMatchObject({ kind: "step", name: { name: "valid" } });
  });

  test("a record declares fields with types, choices and defaults", () => {
    expect(clean('record Insert { D: Length | bore\n  face: "loaded" or "back" = "loaded", from: List shop.Part, k }')).toMatchObject({
      kind: "recordDeclaration",
      fields: [
        { name: { name: "D" }, type: { kind: "named" }, columns: { note: "bore" } },
        {
          name: { name: "face" },
          type: { kind: "choices", values: [{ value: "loaded" }, { value: "back" }] },
          default: { value: "loaded" },
        },
        { name: { name: "from" }, type: { kind: "list", of: { kind: "named", name: { kind: "member" } } } },
        { name: { name: "k" } },
      ],
    });
  });

  test("families, examples, uses", () => {
    expect(clean("family Anchor = TappedHole or shop.Insert")).toMatchObject({
      kind: "family",
      members: [{ kind: "name" }, { kind: "member" }],
    });
    expect(clean("example f(2) == 4.1 mm ± 0.1 mm | n | @s")).toMatchObject({
      kind: "example",
      actual: { kind: "call" },
      expected: { digits: "4.1" },
      tolerance: { digits: "0.1" },
    });
    expect(clean('use "shop.joint.md" as shop')).toMatchObject({ kind: "use", file: { value: "shop.joint.md" }, prefix: { name: "shop" } });
  });

  test("a comment or nothing is a remark", () => {
    expect(clean("# only words\n\n")).toEqual({ kind: "remark", range: { from: 0, to: 12 }, working: { from: 0, to: 0 } });
    expect(clean("")).toMatchObject({ kind: "remark" });
  });

  test("a broken statement keeps the name that it would define", () => {
    for (const [source, name] of [
      ["F = 3 kN 4", "F"],
      ["F: Force = (", "F"],
      ["formula g(", "g"],
      ["record A {", "A"],
      ["3 + 4", undefined],
    ] as const) {
      const { tree } = parseStatement(source);
      expect(tree.kind).toBe("broken");
      expect("name" in tree ? (tree.name as { readonly name: string }).name : undefined).toBe(name);
    }
  });
});

describe("expressions", () => {
  test("calls take names and shown units", () => {
    expect((valueIn("f(x, k = 0.18, y as mm)") as Call).arguments).toMatchObject([{}, { name: { name: "k" } }, { unit: { text: "mm" } }]);
    expect(valueIn("shop.f(1)")).toMatchObject({ kind: "call", callee: { kind: "member" } });
  });

  test("records are made and changed, a reserved word may name a field", () => {
    expect((valueIn('Insert { D = 7 mm ± 0.1 mm, from = "loaded" as mm }.from') as { of: RecordLiteral }).of.fields).toMatchObject([
      { name: { name: "D" }, value: { kind: "scatter" } },
      { name: { name: "from" }, unit: { text: "mm" } },
    ]);
    expect(valueIn("x with { L = 12 mm }")).toMatchObject({ kind: "with", fields: [{ name: { name: "L" } }] });
    const lines = valueIn("A {\n  a = 1 | one | @r\n  b = 2, | two\n\n  # remark\n  c = 3\n}") as RecordLiteral;
    expect(lines.fields.map((field) => field.columns?.note)).toEqual(["one", "two", undefined]);
  });

  test("lists, comprehensions, accumulate", () => {
    expect(valueIn("[e * 2 for p in xs where p > 3 in]")).toMatchObject({
      kind: "comprehension",
      variable: { name: "p" },
      condition: { operands: [{}, { unit: { text: "in" } }] },
    });
    expect(valueIn("[]")).toMatchObject({ kind: "list", items: [] });
    expect(valueIn("accumulate s = 0 for p in xs: s + p")).toMatchObject({
      kind: "accumulate",
      state: { name: "s" },
      variable: { name: "p" },
    });
  });

  test("tables have heads with units, empty cells and any text as a head", () => {
    const table = valueIn('table {\n  "Max force" | F_max [N/mm^2] | ok\n  "A1" | -12 | true\n\n  "A2" | | # none\n}') as TableLiteral;
    expect(table.heads).toMatchObject([{ name: { name: "Max force" } }, { name: { name: "F_max" }, unit: { text: "N/mm^2" } }, {}]);
    expect(table.rows.map((row) => row.map((cell) => cell.kind))).toEqual([
      ["text", "unary", "truth"],
      ["text", "none", "none"],
    ]);
    expect(valueIn('t."Max force"')).toMatchObject({ kind: "member", field: { name: "Max force" } });
  });

  test("where, group and match", () => {
    expect(valueIn("t where .F_max > 3 kN")).toMatchObject({ kind: "where", condition: { operands: [{ kind: "column" }, {}] } });
    const group = valueIn("group t by .method, .kind { n = count(.F_max), mean = mean(.F_max) }") as GroupUse;
    expect([group.by.length, group.fields.length]).toEqual([2, 2]);
    const match = valueIn("match (a) { TappedHole t: t.L\n shop.Insert i: i.L, none: 0, some v: v }") as MatchUse;
    expect(match.arms.map((arm) => [arm.member.kind, arm.variable?.name])).toEqual([
      ["record", "t"],
      ["record", "i"],
      ["none", undefined],
      ["some", "v"],
    ]);
  });

  test("study and solve", () => {
    const study = valueIn("study F_cap, MS over L_e in 6 mm .. 20 mm step 1 mm, b in [1, 2]") as Study;
    expect([study.subjects.length, study.axes.map((axis) => axis.variable.name)]).toEqual([2, ["L_e", "b"]]);
    const solve = valueIn("solve L_e in 4 mm .. 30 mm where F_cap == 3 kN") as Solve;
    expect([(solve.from as { digits: string }).digits, solve.condition.kind]).toEqual(["4", "compare"]);
  });

  test("unequal limits share the unit at their end", () => {
    const scatter = valueIn("8 mm +0.2/−0.1 mm") as Scatter;
    expect(scatter.spread).toMatchObject({
      kind: "unequal",
      plus: { digits: "0.2", unit: { text: "mm" } },
      minus: { digits: "0.1", unit: { text: "mm" } },
    });
  });

  test("soft words are names wherever they are not in their place", () => {
    for (const word of [
      "step",
      "over",
      "by",
      "factor",
      "result",
      "study",
      "solve",
      "group",
      "accumulate",
      "of",
      "abs",
      "require",
      "valid",
      "some",
    ]) {
      expect(valueIn(`${word} + ${word} * 2`), word).toMatchObject({ kind: "binary", left: { kind: "name", name: word } });
      expect(clean(`${word} = 3`), word).toMatchObject({ kind: "definition", name: { name: word } });
      expect(valueIn(`${word}(1)`), word).toMatchObject({ kind: "call" });
    }
  });

  test("a line end means nothing in round and square brackets, and a long item goes on behind an operator", () => {
    expect(valueIn("f(a,\n  b\n  + c)")).toMatchObject({ kind: "call", arguments: [{}, { value: { kind: "binary" } }] });
    expect((valueIn("A {\n  a = 1 +\n    2\n  b = if x then\n    1 else 2\n}") as RecordLiteral).fields.length).toBe(2);
  });

  test("types: lists, maybe, columns", () => {
    const type = (source: string): unknown => (clean(`x: ${source} = a`) as Definition).type;
    expect(type("List Maybe Force")).toMatchObject({ kind: "list", of: { kind: "maybe", of: { kind: "named" } } });
    expect(type("Table { F_max [N], ratio [1], method }")).toMatchObject({
      kind: "columns",
      heads: [{ unit: { text: "N" } }, { unit: { text: "1" } }, { name: { name: "method" } }],
    });
    expect(type("[1/K]")).toMatchObject({ kind: "unit", unit: { text: "1/K" } });
    expect(type("[°C]")).toMatchObject({ kind: "unit", unit: { text: "°C" } });
    expect(type("[W/(m K)]")).toMatchObject({ kind: "unit", unit: { text: "W/(m K)" } });
  });

  test("a match arm may begin with a list, a type with a unit", () => {
    expect(valueIn("match (a) { T t: [t.L], none: [1] }")).toMatchObject({
      arms: [{ body: { kind: "list" } }, { body: { kind: "list" } }],
    });
  });
});

describe("other entrances", () => {
  test("a live value is a name path with an optional unit, anything else is text", () => {
    expect(parseLive("F_strip as kN")).toMatchObject({ path: { kind: "name", name: "F_strip" }, unit: { text: "kN" } });
    expect(parseLive("shop.x.D as 1/K")).toMatchObject({ path: { kind: "member", field: { name: "D" } }, unit: { text: "1/K" } });
    for (const other of ["", "a + b", "f(x)", "3", "if", "a as", "x = 3", "a b", "a # b"]) expect(parseLive(other), other).toBeUndefined();
  });

  test("the head of a native", () => {
    const head = parseHead("linear(x: List Length, k: Number = 1): Force");
    expect(head).toMatchObject({ name: { name: "linear" }, type: { kind: "named" }, diagnostics: [] });
    expect(head.parameters).toMatchObject([{ type: { kind: "list" } }, { default: { digits: "1" } }]);
    expect(parseHead("linear(").diagnostics.map((one) => one.code)).toEqual(["bracket-open"]);
  });

  test("the sample notebook has no syntax fault", () => {
    const sample = readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8");
    const all = fences(sample).flatMap(chunks);
    expect(all.length).toBe(24);
    for (const chunk of all) expect(codesOf(chunk), chunk).toEqual([]);
  });

  test("deep and long statements are refused, long lists are not", () => {
    expect(codesOf(`x = ${"(".repeat(5000)}1${")".repeat(5000)}`)).toEqual(["too-nested"]);
    expect(codesOf(`x = ${"-".repeat(5000)}1`)).toEqual(["too-nested"]);
    expect(codesOf(`x = ${"if a then b else ".repeat(300)}c`)).toEqual(["too-nested"]);
    expect(codesOf(`x = a${" + a".repeat(5000)}`)).toEqual(["too-nested"]);
    expect(codesOf(`x = a${".b".repeat(5000)}`)).toEqual(["too-nested"]);
    expect(codesOf(`x = a${"^a".repeat(5000)}`)).toEqual(["too-nested"]);
    expect((valueIn(`[${"1 + 2, ".repeat(5000)}3]`) as Expression & { items: unknown[] }).items.length).toBe(5001);
  });
});
