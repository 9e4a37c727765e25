// The sheet as data: what stands on its first page, in its working, in its appendices.

import { describe, expect, test } from "vitest";
import { checkRows, openBook, plainText, typesetText } from "../../engine/sheet/index.ts";
import { calc, FILE, noLibrary, opened, sayings, sheetOf, tablesOf, tableText, workingOf } from "./helper.ts";

const front = "---\ntitle: Bracket\nnumber: C-1\nrevision: B\ndate: 2026-05-01\ncreator: A. Author\n---\n\n";

describe("first page", () => {
  test("the purpose comes first and is not said twice", () => {
    const sheet = sheetOf(`${front}# Loads\n\nSome loads.\n\n# Purpose\n\nShow that it holds.\n\n# End\n\n${calc("a = 1 N | x | given")}`);
    const words = sayings(sheet.blocks);
    expect(words.slice(0, 3)).toEqual(["1 Purpose", "Show that it holds.", "2 Result"]);
    expect(words.filter((each) => each === "Show that it holds.")).toHaveLength(1);
    expect(words).toContain("3 Loads");
  });

  test("a notebook without a purpose is told so", () => {
    expect(sayings(sheetOf(calc("a = 1 N")).blocks)[1]).toBe("◆ open: the notebook states no purpose.");
  });

  test("the check nearest to failing is first, one that fails before it, an open one after those that hold", () => {
    const text = calc(
      "F = 10 N",
      "check F <= 100 N | far from it",
      "check F <= 11 N | near",
      "check F <= 9 N | fails",
      "check F <= missing | open",
      "check 1 N < 2 N and 2 N < 3 N | a condition",
    );
    const rows = checkRows(openBook(opened(text), noLibrary, FILE));
    expect(rows.map(({ title }) => title)).toEqual(["fails", "near", "far from it", "a condition", "open"]);
    const table = tableText(sheetOf(text), "checks");
    expect(table[0]?.join("|")).toBe("Check or mode|State|Factor|Demand|Capacity|Utilis.|Margin|Worst case|Chance|Weakest source");
    expect(table[1]?.join("|")).toBe("fails|▲ fails|1|10 N|9 N|1.11|−0.10|n/e|n/e|no reference (F)");
    expect(tableText(sheetOf(text), "open")[1]?.slice(0, 3)).toEqual(["open", "◆ open", "the line has a fault"]);
    expect(sayings(sheetOf(text).blocks)).toContain(
      "3 of 5 checks and modes hold. Failing: fails. Governing: fails, utilisation 1.11, margin −0.10. Open: open.",
    );
  });

  test("assumptions that nobody confirmed are listed with their value, confirmed ones are not", () => {
    const words = sayings(
      sheetOf(calc("mu = 0.15 | friction | assumed", "k = 2 | dynamic | assumed; confirmed test 4", "F = 3 N | load | given")).blocks,
    );
    expect(words).toContain("Unverified assumptions: μ = 0.15 (friction).");
  });

  test("modes of a ledger are rows of their own: reasons, cases, first damage and ultimate", () => {
    const text = calc(
      'record Mode { mode: Text, state: "holds" or "fails" or "open" or "ruled out", case: Text = "", factor = 1, demand: Maybe Force = none, first: Maybe Force = none, ultimate: Maybe Force = none, utilisation: Maybe Number = none, reason: Text = "" }',
      "record Ledger { modes: List Mode }",
      'l = Ledger { modes = [Mode { mode = "slip", state = "ruled out", reason = "dowels" }, Mode { mode = "strip", state = "holds", case = "picking", factor = 1.5, demand = 10 N, first = 20 N, ultimate = 30 N, utilisation = 0.5 }, Mode { mode = "side load", state = "open", reason = "no data" }] }',
      "check l | every mode",
    );
    const table = tableText(sheetOf(text), "checks");
    expect(table[0]).toContain("First damage");
    expect(table.slice(1).map((row) => row.slice(0, 3))).toEqual([["strip", "● holds", "picking"]]);
    expect(tableText(sheetOf(text), "open")[1]?.slice(0, 3)).toEqual(["side load", "◆ open", "no data"]);
    expect(tableText(sheetOf(text), "ruled-out").slice(1)).toEqual([["slip", "○ ruled out", "dowels", "no reference (l)"]]);
    expect(table[1]?.slice(0, 11).join("|")).toBe("strip|● holds|picking|1.5|10 N|20 N|30 N|0.50|1.00|n/e|n/e");
  });
});

describe("working", () => {
  test("a line shows symbols, numbers, result, note and reference", () => {
    const [, , line] = workingOf(
      sheetOf(calc("M = 12 N*m | moment | given", "s = 60 mm | side | given", "F_t = M / (2 * s) as N | tension in the screw | practice")),
    );
    expect(line?.equation.sides.map((side) => typesetText(side).trim())).toEqual(["M / (2 s)", "(12 N·m) / (2 × 60 mm)"]);
    expect(plainText(line?.output ?? [])).toBe("100 N");
    expect(line?.below.map(plainText)).toEqual(["tension in the screw"]);
    expect(plainText(line?.reference ?? [])).toBe("practice");
  });

  test("a check shows the factor once, in symbols and with numbers", () => {
    const line = workingOf(sheetOf(calc("F = 10 N", "R = 30 N", "check R >= F factor 2 | it holds"))).at(-1);
    expect(line?.equation.sides.map((side) => typesetText(side).trim())).toEqual(["2 F ≤ R", "2 × 10 N ≤ 30 N"]);
    expect(plainText(line?.output ?? [])).toBe("● holds utilisation 0.67");
  });

  test("faults and waiting lines say what is wrong, and live values of them are marked", () => {
    const sheet = sheetOf(`Force {b}.\n\n${calc("a = 2 N + 3 mm", "b = a * 2")}`);
    const [first, second] = workingOf(sheet);
    expect(first?.below.map(plainText).join()).toMatch(/^✕ fault: /);
    expect(second?.below.map(plainText)).toEqual(["◇ waits for a"]);
    const live = sheet.blocks.flatMap((block) => (block.kind === "paragraph" ? block.of.filter(({ kind }) => kind === "value") : []));
    expect(live).toEqual([{ kind: "value", text: "{b}", missing: true }]);
  });

  test("a broken limit of validity is shown where it is passed and told on the first page", () => {
    const text = calc(
      "formula f(x: Length): Length = {\n  valid x < 1 m | short ones | practice\n  result = 2 * x\n}",
      "y = f(3 m)",
      "check y <= 10 m | it is short",
    );
    const sheet = sheetOf(text);
    expect(
      workingOf(sheet)
        .flatMap(({ below }) => below.map(plainText))
        .join("|"),
    ).toContain("◆ outside validity: f, x < 1 m (short ones)");
    expect(sayings(sheet.blocks).join("|")).toContain("◆ outside validity: it is short.");
  });

  test("records stay names inside formulas, and their fields stand below the line", () => {
    const sheet = sheetOf(
      "---\nunits: { length: mm, stress: MPa }\n---\n" +
        calc(
          "record Plate {\n  t: Length | thickness\n  E: Stress | modulus\n}",
          "formula double(p: Plate): Plate = p with { t = 2 * p.t }",
          "p = Plate {\n  t = 5 mm | thin | given\n  E = 70 GPa\n}",
          "q = double(p)",
        ),
    );
    expect(
      workingOf(sheet).find(({ depth, equation }) => depth === 0 && equation.left !== undefined && typesetText(equation.left) === "q")
        ?.equation.sides,
    ).toHaveLength(1);
    expect(tableText(sheet, "fields-q")).toEqual([
      ["Field", "Value", "What it is"],
      ["t", "10 mm", "thickness"],
      ["E", "70000 MPa", "modulus"],
    ]);
    expect(tableText(sheet, "record-p").slice(1)).toEqual([
      ["t", "5 mm", "thin", "given"],
      ["E", "70 GPa", "", ""],
    ]);
  });

  test("measured data is a table with its units; a long one says how much of it is printed", () => {
    const rows = Array.from({ length: 75 }, (_, i) => `P${i};${i}.5`).join("\n");
    const sheet = sheetOf(`\`\`\`csv pulls | four pulls | test own\nspecimen;F_max [N]\n${rows}\n\`\`\`\n`);
    const table = tablesOf(sheet).find(({ id }) => id === "data-pulls");
    expect(table?.columns.map(({ head }) => plainText(head))).toEqual(["specimen", "F_max (N)"]);
    expect(table?.rows).toHaveLength(60);
    expect(table?.caption).toContain("rows 1 to 60 of 75");
  });
});

test("modes of a ledger that no check names stand in the list all the same", () => {
  const text = calc(
    'record Mode { mode: Text, state: "holds" or "fails" or "open" or "ruled out", utilisation: Maybe Number = none }',
    "record Ledger { modes: List Mode }",
    'l = Ledger { modes = [Mode { mode = "strip", state = "holds", utilisation = 0.5 }] }',
  );
  expect(tableText(sheetOf(text), "checks")[1]?.slice(0, 2)).toEqual(["strip", "● holds"]);
});

test("a limit that is passed is told in full once, after that by name", () => {
  const words = workingOf(
    sheetOf(calc("formula f(x: Length): Length = {\n  valid x <= 1 m | short ones\n  result = 2 * x\n}", "y = f(3 m)", "z = y + 1 m")),
  ).flatMap(({ below }) => below.map(plainText));
  expect(words.filter((each) => each.includes("outside validity"))).toEqual([
    "◆ outside validity: f, x ≤ 1 m (short ones)",
    "◆ outside validity as above: f",
  ]);
});

test("lists are printed whole, texts a line each, and a long text stands below its line", () => {
  const sheet = sheetOf(
    calc(
      "record Card { steps: List Text, x: List Length }",
      `b = Card { steps = [${Array.from({ length: 9 }, (_, i) => `"step ${i}"`).join(", ")}], x = [1 m] }`,
      `c = b with { x = [${Array.from({ length: 9 }, (_, i) => `${i + 1} m`).join(", ")}] }`,
      `t = "${"words and ".repeat(12)}more"`,
    ),
  );
  const fields = tableText(sheet, "fields-c");
  expect(fields[1]?.[1]?.split(" ").filter((word) => word === "step")).toHaveLength(9);
  expect(fields[2]?.[1]).toBe("[1, 2, 3, 4, 5, 6, 7, 8, 9] m");
  const line = workingOf(sheet).find(({ equation }) => equation.left !== undefined && typesetText(equation.left) === "t");
  expect([plainText(line?.output ?? []), line?.below.map(plainText).join("")]).toEqual(["Text", `${"words and ".repeat(12)}more`]);
});

describe("prose", () => {
  test("a live value is none of Markdown's business", () => {
    const text = `Set {T as N*m}, *not* above {T as N*m}.\n\n${calc("T = 2 N*m")}`;
    const block = sheetOf(text).blocks.find((each) => each.kind === "paragraph" && plainText(each.of).startsWith("Set"));
    expect(block?.kind === "paragraph" ? plainText(block.of) : "").toBe("Set 2 N·m, not above 2 N·m.");
  });

  const blocks = (text: string) => sheetOf(`# Loads\n\n${text}\n`).blocks;
  test("raw HTML stays text, a comment is not printed, a script link is no link", () => {
    const json = JSON.stringify(
      blocks("A <b>bold</b> claim <!-- secret -->.\n\n<script>alert(1)</script>\n\n[x](javascript:alert(1)) and [y](https://example.org)"),
    );
    expect(json).not.toContain("secret");
    expect(json).toContain('{"kind":"code","text":"<script>alert(1)</script>"}');
    expect(json).toContain("A <b>bold</b> claim");
    expect(json).toContain('"address":"https://example.org"');
    expect(json).not.toContain('"address":"javascript');
  });
  test("lists, emphasis, tables and reference links are read", () => {
    const found = blocks("- one *two*\n- three\n\n| a | b |\n| --- | ---: |\n| 1 |  |\n\nSee [it][k].\n\n[k]: https://example.org/k");
    const [list] = found.filter(({ kind }) => kind === "list");
    expect(JSON.stringify(list)).toContain('{"kind":"emphasis","of":[{"kind":"text","text":"two"}]}');
    const table = found.find(
      (block) => block.kind === "table" && block.columns.length === 2 && plainText(block.columns[0]?.head ?? []) === "a",
    );
    expect(table).toMatchObject({ columns: [{ align: "left" }, { align: "right" }], rows: [[[{ text: "1" }], []]] });
    expect(JSON.stringify(found)).toContain('"address":"https://example.org/k"');
  });
});

describe("appendices", () => {
  const text = `---\nreferences:\n  - { id: std, type: standard, number: "ISO 1", title: "A standard", edition: "2", issued: 2011 }\n---\n\n${calc(
    "F = 3 N within 1 N .. 5 N | load | @std table 2",
    "k = 2 ± 0.1 | factor | assumed",
    "formula twice(x: Force): Force = 2 * x | doubles | @std 4.1",
    "example twice(3 N) == 6 N | by hand",
    "G = k * twice(F) | result",
  )}`;
  const sheet = sheetOf(text);
  test("inputs with range, note and reference; references with every place cited", () => {
    expect(tableText(sheet, "inputs").slice(1)).toEqual([
      ["F", "3 N", "1 N to 5 N", "load", "ISO 1, table 2"],
      ["k", "2 ± 0.1", "", "factor", "assumed"],
    ]);
    expect(tableText(sheet, "references")[1]).toEqual(["1", "ISO 1: A standard. edition 2, 2011.", "table 2; 4.1", "notebook"]);
  });
  test("own formulas with their examples, passed or not; results with their weakest source", () => {
    expect(tableText(sheet, "verification")[1]).toEqual(["twice ISO 1, 4.1", "twice(3 N) == 6 N by hand", "computed", "● passes"]);
    expect(tableText(sheet, "results")[1]).toEqual(["G", "12 N", "result", "assumed (k)", "within"]);
  });
  test("digests and versions name what was used, and nothing claims approval", () => {
    expect(
      tableText(sheet, "files")
        .slice(1)
        .map((row) => row.slice(0, 2)),
    ).toEqual([
      [FILE, ""],
      ["Standard library", "0.0.0"],
      ["Jointwright", "9.9.9"],
    ]);
    expect(tableText(sheet, "files")[1]?.[2]).toMatch(/^[0-9a-f]{64}$/);
    expect(sheet.blocks.find(({ kind }) => kind === "signatures")).toEqual({
      kind: "signatures",
      roles: [
        { role: "Originator", name: "" },
        { role: "Checker", name: "" },
        { role: "Approver", name: "" },
      ],
    });
  });
});
