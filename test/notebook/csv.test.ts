// engine/notebook: csv texts into typed columns, nothing guessed and nothing dropped.

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellRange, csvLimits, readCsv, readNotebook } from "../../engine/notebook/index.ts";

const read = (...lines: string[]) => readCsv(lines.join("\n"));
const faultsOf = (...lines: string[]): string[] => {
  const text = lines.join("\n");
  return readCsv(text).diagnostics.map(({ code, range }) => `${code} "${text.slice(range.from, range.to)}"`);
};

describe("heads", () => {
  it("give a column its type: a unit makes numbers, none makes text", () => {
    const table = read("specimen;method;F_max [N];ratio [1]", "P1;tapped;1510;0.5", "P2; self-cut ;1.3e3;-.25");
    expect(table.heads.map(({ name, unit }) => [name, unit])).toEqual([
      ["specimen", undefined],
      ["method", undefined],
      ["F_max", "N"],
      ["ratio", "1"],
    ]);
    expect(table.columns).toEqual([
      ["P1", "P2"],
      ["tapped", "self-cut"],
      [1510, 1300],
      [0.5, -0.25],
    ]);
    expect(table.rows).toEqual([
      ["P1", "tapped", "1510", "0.5"],
      ["P2", "self-cut", "1.3e3", "-.25"],
    ]);
    expect(table.diagnostics).toEqual([]);
  });

  it("may be any text in front of the unit, and are placed", () => {
    const text = 'id,"Max force, dry [N/mm^2]" \nA,1\n';
    const { heads } = readCsv(text);
    expect(heads.map(({ name, unit }) => [name, unit])).toEqual([
      ["id", undefined],
      ["Max force, dry", "N/mm^2"],
    ]);
    const head = heads[1];
    expect([text.slice(head?.nameRange.from, head?.nameRange.to), text.slice(head?.unitRange?.from, head?.unitRange?.to)]).toEqual([
      "Max force, dry",
      "N/mm^2",
    ]);
    const unit = readCsv("id;F_max [kN]\n").heads[1]?.unitRange;
    expect("id;F_max [kN]".slice(unit?.from, unit?.to)).toBe("kN");
  });

  it.each([
    [["a;a", "1;2"], 'csv-head-twice "a"'],
    [["F [N];F [kN]", "1;2"], 'csv-head-twice "F [kN]"'],
    [["a;", "1;2"], 'csv-no-head ""'],
    [["F [];b", "1;2"], 'csv-no-unit "F []"'],
    [["", "  "], 'csv-empty "\n  "'],
  ])("that are wrong are faults: %j", (lines, wanted) => {
    expect(faultsOf(...lines)).toEqual([wanted]);
  });

  it("behind a separator at every line's end are none", () => {
    expect(read("a [N];b;", "1;x;", "2;y").heads.length).toBe(2);
    expect(faultsOf("a [N];b;", "1;x;", "2;y")).toEqual([]);
  });
});

describe("separators", () => {
  it.each([
    ["F [N];d [mm]", "1;2", ";"],
    ["F [N]\td [mm]", "1\t2", "\t"],
    ["F [N]|d [mm]", "1|2", "|"],
    ["F [N],d [mm]", "1,2", ","],
    ["F [N]", "1", ","],
    ['"a;b",c', '"x;y",z', ","],
    ["a, b;c", "1;2", ";"],
  ])("are found by the head: %j", (head, row, wanted) => {
    expect(read(head, row).separator).toBe(wanted);
  });

  it("may be stated", () => {
    expect(readCsv("a;b,c\n1;2,3", { separator: "," }).heads.map(({ name }) => name)).toEqual(["a;b", "c"]);
  });

  it("F086: a byte-order mark is no part of the first head", () => {
    const table = readCsv("\uFEFFF [N];mm\n1;a");
    expect(table.heads[0]).toMatchObject({ name: "F", nameRange: { from: 1, to: 2 } });
  });
});

describe("decimal commas", () => {
  it("F087: are read where the separator is another mark, and said", () => {
    const table = read("n [1];F [N];d [mm]", "4000;125,50;20,08");
    expect(table.columns).toEqual([[4000], [125.5], [20.08]]);
    expect(table.decimalComma).toBe(true);
    expect(faultsOf("n [1];F [N];d [mm]", "4000;125,50;20,08")).toEqual(['csv-decimal-comma "125,50"']);
  });

  it("are not read beside decimal points, nor where commas separate", () => {
    expect(faultsOf("F [N];d [mm]", "1,5;2.5")).toEqual(['csv-not-number "1,5"']);
    expect(faultsOf("F [N],d [mm]", '"1,5",2')).toEqual(['csv-not-number ""1,5""']);
  });

  it("F063: that may be thousands are a fault, never a silent choice", () => {
    expect(faultsOf("F [N];m", "1,480;a")).toEqual(['csv-comma-unclear "1,480"']);
    expect(read("F [N];m", "1,480;a").columns[0]).toEqual([null]);
    expect(read("F [N];m", "1,480;a", "0,125;b").columns[0]).toEqual([1.48, 0.125]);
    expect(faultsOf("F [N];m", "13,379.70;a")).toEqual(['csv-not-number "13,379.70"']);
    expect(readCsv("F [N];m\n1,480;a", { decimalComma: true })).toMatchObject({ columns: [[1.48], ["a"]], diagnostics: [] });
  });
});

describe("cells", () => {
  it("F090, F091: of a column without unit stay text as written", () => {
    expect(read("id;screw;n", "1E5;4-40;007", "2E5;6-32;1_000").columns).toEqual([
      ["1E5", "2E5"],
      ["4-40", "6-32"],
      ["007", "1_000"],
    ]);
    expect(faultsOf("id;screw", "1E5;4-40")).toEqual([]);
  });

  it("F018: of numbers under a head without unit are text, with a notice when they look measured", () => {
    expect(faultsOf("impulse;id", "1.5;1", "2.25;2")).toEqual(['csv-numbers-as-text "impulse"']);
    expect(read("impulse;id", "1.5;1").columns[0]).toEqual(["1.5"]);
  });

  it("F084, F085, F097: that are no numbers are faults at their cell, and no row moves", () => {
    const lines = ["id;F [N]", "A;1", "B;2", "C;n/a", "D;4", "E;five"];
    expect(read(...lines).columns[1]).toEqual([1, 2, null, 4, null]);
    expect(faultsOf(...lines)).toEqual(['csv-not-number "n/a"', 'csv-not-number "five"']);
    expect(read(...lines).diagnostics[0]?.message).toBe("Row 3 of `F`: `n/a` is not a number.");
  });

  it.each(["NaN", "Infinity", "1e999", "0x10", "1 000", "1.", "--1", "1,000", "²"])("%s is no number", (cell) => {
    expect(read("F [N];a", `${cell};1`).columns[0]).toEqual([null]);
    expect(faultsOf("F [N];a", `${cell};1`).length).toBe(1);
  });

  it("F083: that are empty are missing, not zero and no fault", () => {
    const table = read("F [N];m", "1;a", ";", "3;", "  ;b");
    expect(table.columns).toEqual([
      [1, 3, null],
      ["a", null, "b"],
    ]);
    expect(table.diagnostics).toEqual([]);
  });

  it("take a true minus", () => {
    expect(read("F [N];m", "−1.5;a").columns[0]).toEqual([-1.5]);
  });

  it("hold separators, quotes and line ends inside quotes", () => {
    const text = 'note;F [N]\n"a;b ""c""\nd";1\nx;two\n';
    const table = readCsv(text);
    expect(table.columns[0]).toEqual(['a;b "c"\nd', "x"]);
    expect(table.diagnostics.map(({ range }) => text.slice(range.from, range.to))).toEqual(["two"]);
  });

  it("many of which are no numbers are counted, not listed", () => {
    const found = faultsOf("F [N]", ...Array.from({ length: 30 }, () => "x"));
    expect(found.length).toBe(11);
    expect(found[10]).toBe('csv-more-not-numbers "F"');
  });
});

describe("rows", () => {
  it("with too few or too many cells are faults and stay in place", () => {
    const lines = ["a;F [N]", "x;1", "y", "z;3;4", "w;5"];
    expect(faultsOf(...lines)).toEqual(['csv-ragged "y"', 'csv-ragged "z;3;4"']);
    expect(read(...lines).columns).toEqual([
      ["x", "y", "z", "w"],
      [1, null, 3, 5],
    ]);
    expect(read(...lines).diagnostics[0]?.message).toBe("Row 2 has 1 cells, but there are 2 heads.");
  });

  it("that are blank are none", () => {
    expect(read("", "F [N];a", "", "1;x", "   ", "2;y", "").rows.length).toBe(2);
  });

  it("whose quotes do not pair up are faults", () => {
    expect(faultsOf("a;F [N]", '"A"1;2').map((fault) => fault.split(" ")[0])).toContain("csv-quotes");
    expect(faultsOf("a;F [N]", '"open;2').map((fault) => fault.split(" ")[0])).toContain("csv-quotes");
    expect(faultsOf("a,b", 'x, "y,z"').map((fault) => fault.split(" ")[0])).toContain("csv-quotes");
  });

  it("F116: that are conflict marks are faults, those between stay", () => {
    const lines = ["a;F [N]", "<<<<<<< HEAD", "x;1", "=======", "x;2", ">>>>>>> other"];
    expect(faultsOf(...lines)).toEqual(['conflict-mark "<<<<<<< HEAD"', 'conflict-mark "======="', 'conflict-mark ">>>>>>> other"']);
    expect(read(...lines).columns[1]).toEqual([1, 2]);
  });

  it("of hostile length are read in time that grows with them", () => {
    expect(readCsv(`a${" ".repeat(200_000)}b\nx`).heads.length).toBe(1);
    expect(readCsv(`${"[".repeat(200_000)}]\nx`).heads.length).toBe(1);
  });

  it("past the limit are a fault", () => {
    const long = readCsv(`F [N]\n${"1\n".repeat(csvLimits.rows + 1)}`);
    expect(long.diagnostics.map(({ code }) => code)).toEqual(["csv-too-large"]);
    const wide = readCsv(Array.from({ length: csvLimits.columns + 1 }, (_, i) => `c${i}`).join(";"));
    expect(wide.diagnostics.map(({ code }) => code)).toEqual(["csv-too-large"]);
    expect(wide.heads.length).toBe(csvLimits.columns);
  });

  it("end as the file ends them", () => {
    expect(readCsv("a;F [N]\r\nx;1\r\ny;2\r\n").columns).toEqual([
      ["x", "y"],
      [1, 2],
    ]);
    expect(readCsv("a;F [N]\rx;1\ry;2").columns).toEqual([
      ["x", "y"],
      [1, 2],
    ]);
  });
});

describe("places", () => {
  it("of cells are exact, quotes with them", () => {
    const cell = fc.oneof(
      fc.string({ unit: fc.constantFrom("a", "1", " ", ".") }),
      fc.string({ unit: fc.constantFrom("a", ";", '"', "\n", " ") }).map((text) => `"${text.replaceAll('"', '""')}"`),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { maxLength: 6 }), (rows) => {
        const text = `a;b;c\n${rows.map((row) => row.join(";")).join("\n")}`;
        const table = readCsv(text, { separator: ";" });
        table.rows.forEach((row, i) => {
          row.forEach((wanted, column) => {
            const { from, to } = cellRange(text, table, i, column);
            const written = text.slice(from, to).trim();
            const plain = written.startsWith('"') ? written.slice(1, -1).replaceAll('""', '"').trim() : written;
            expect(plain).toBe(wanted);
          });
        });
      }),
      { numRuns: 1000 },
    );
  });

  it("of any text's diagnostics lie in it, and nothing throws", () => {
    const piece = fc.constantFrom(
      "a",
      "F [N]",
      ";",
      ",",
      "\t",
      "|",
      '"',
      "\n",
      "\r\n",
      "1",
      "1,5",
      "1.5",
      "[",
      "]",
      " ",
      "\uFEFF",
      "<<<<<<<\n",
      "é",
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
        const text = pieces.join("");
        const table = readCsv(text);
        for (const { range } of table.diagnostics) expect(0 <= range.from && range.from <= range.to && range.to <= text.length).toBe(true);
        for (const row of table.rows) expect(row.length).toBe(table.heads.length);
        for (const column of table.columns) expect(column.length).toBe(table.rows.length);
        for (const value of table.columns.flat()) expect(typeof value !== "number" || Number.isFinite(value)).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });
});

it("the data of a notebook are read from its fence", () => {
  const notebook = readNotebook(readFileSync(new URL("./data/sample.joint.md", import.meta.url), "utf8"));
  const part = notebook.parts.find(({ kind }) => kind === "csv");
  if (part?.kind !== "csv") throw new Error("no csv part");
  expect(readCsv(part.body).columns).toEqual([
    ["P1", "P2", "P3"],
    ["tapped", "tapped", "self-cut"],
    [1510, 1468, 1295],
    [1390, 1402, 1180],
  ]);
});
