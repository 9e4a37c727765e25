// A check of a ledger stands for all its modes; ledgers, lists of records and tables are told as rows.

import { describe, expect, it } from "vitest";
import { open } from "./helper.ts";

const records = `
record Pull { F: Force }
record Twist { T: Torque }
family Amount = Pull or Twist
record Mode { mode: Text, state: "holds" or "fails" or "open" or "ruled out", demand: Maybe Amount = none, utilisation: Maybe Number = none, reason: Text = "", r: Length = 0 mm }
record Ledger { modes: List Mode }
`;

const ledger = (modes: readonly string[]): string =>
  `${records}l = Ledger { modes = [${modes.map((fields) => `Mode { ${fields} }`).join(", ")}] }\ncheck l | every mode`;

const state = (modes: readonly string[]) => open(ledger(modes)).line("every mode").check;

describe("check of a ledger", () => {
  it("holds when every mode holds or is ruled out, with the highest utilisation", () => {
    const check = state([
      `mode = "a", state = "holds", utilisation = 0.5`,
      `mode = "b", state = "holds", utilisation = 0.8`,
      `mode = "c", state = "ruled out", reason = "dowels"`,
    ]);
    expect(check).toMatchObject({ state: "holds", utilisation: 0.8, margin: 0.25 });
    expect(check?.modes?.counts).toEqual({ holds: 2, fails: 0, open: 0, "ruled out": 1 });
  });

  it("never holds while a mode is open, and says which", () => {
    const check = state([`mode = "a", state = "holds", utilisation = 0.5`, `mode = "side load", state = "open", reason = "no data"`]);
    expect(check).toMatchObject({ state: "open", modes: { open: ["side load"] } });
  });

  it("fails when one mode fails, whatever is open", () => {
    const check = state([`mode = "strip", state = "fails", utilisation = 1.4`, `mode = "side load", state = "open"`]);
    expect(check).toMatchObject({ state: "fails", modes: { failing: ["strip"], open: ["side load"] } });
  });

  it("is open when nothing was checked", () => {
    expect(state([`mode = "a", state = "ruled out", reason = "no load"`])?.state).toBe("open");
    expect(open(`${records}l = Ledger { modes = [] }\ncheck l | every mode`).line("every mode").check?.state).toBe("open");
  });

  it("takes no factor of its own", () => {
    expect(open(`${ledger([`mode = "a", state = "holds"`])} `.replace("check l |", "check l factor 2 |")).codes()).toEqual([
      "factor-misplaced",
    ]);
  });

  it("is no check of a record that is no ledger", () => {
    expect(open(`record R { modes: List Number }\nr = R { modes = [1] }\ncheck r`).codes()).toContain("check-wants-truth");
  });
});

describe("rows of a value", () => {
  it("shows the fields of a mode that a reviewer reads, amounts of unlike kinds in one column", () => {
    const { grid } = open(
      ledger([
        `mode = "a", state = "holds", demand = Pull { F = 100 N }, utilisation = 0.5`,
        `mode = "b", state = "holds", demand = Twist { T = 2 N·m }, utilisation = 0.25`,
      ]),
    ).line("l");
    expect(grid?.columns.map((column) => column.head)).toEqual(["mode", "state", "demand", "utilisation"]);
    expect(grid?.rows.map((row) => row.cells.map((cell) => cell.text))).toEqual([
      ["a", "holds", "100 N", "0.50"],
      ["b", "holds", "2 N·m", "0.25"],
    ]);
  });

  it("puts a unit that all cells share into the head, and leaves out columns that say nothing", () => {
    const { grid } = open(
      `record P { name: Text, F: Force, note: Text = "" }\nps = [P { name = "A", F = 3 N }, P { name = "B", F = 4 N }]`,
    ).line("ps");
    expect(grid?.columns).toEqual([
      { head: "name", unit: "", numeric: false },
      { head: "F", unit: "N", numeric: true },
    ]);
    expect(grid?.rows.map((row) => row.cells.map((cell) => cell.text))).toEqual([
      ["A", "3"],
      ["B", "4"],
    ]);
  });

  it("marks each row by what reached it", () => {
    const { grid } = open(`record P { F: Force }\na = 3 N | | given drawing\nb = 4 N | | assumed\nps = [P { F = a }, P { F = b }]`).line(
      "ps",
    );
    expect(grid?.rows.map((row) => row.marks?.provenance?.level)).toEqual(["given", "assumed"]);
  });

  it("shows a table by its heads and counts the rows it has", () => {
    const { grid } = open(`t = table {\n  name | F [N]\n  "A"  | 3\n  "B"  | 4\n}`).line("t");
    expect(grid).toMatchObject({ count: 2, columns: [{ head: "name" }, { head: "F", unit: "N", numeric: true }] });
  });
});
