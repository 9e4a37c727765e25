// Tables and columns (area "tables").

import { expect, test } from "vitest";
import { calc, csv, evaluate, faultsOf, notebook } from "./helper.ts";

test("F079 beyond its ends a table is not asked", () => {
  expect(evaluate("interpolate([0, 1], [1, 2], 0.5)").number).toBeCloseTo(1.5, 12);
  expect(faultsOf("interpolate([0, 1], [1, 2], 1.5)")).toEqual(["outside-table"]);
});

test("F080 a table that does not ascend is refused", () => {
  expect(faultsOf("interpolate([0.1, 0.3, 0.2], [1, 2, 3], 0.25)")).toEqual(["table-unsorted"]);
});

test("F082 a key is exact or it is a fault", () => {
  expect(evaluate("lookup([3, 4], [30, 40], 4)").number).toBe(40);
  expect(faultsOf("lookup([3, 4], [30, 40], 3.5)")).toEqual(["key-missing"]);
});

test("F083 an empty cell is left out of a mean and counted as missing", () => {
  const read = notebook(
    csv("log", "id;x [1]", "a;1", "b;2", "c;3", "d;") + calc("m = mean(log.x)", "n = count(log.x)", "of_all = length(log.x)"),
  );
  expect([read.number("m"), read.number("n"), read.number("of_all")]).toEqual([2, 3, 4]);
});

test("F084 text in a column of numbers is a fault where the table is read", () => {
  const read = notebook(csv("log", "id;x [1]", 'a;"two"', "b;4") + calc("s = sum(log.x)", "m = mean(log.x)"));
  expect(read.faults("log")).toEqual(["csv-not-number"]);
  expect(read.output("s").value).toBeUndefined();
  expect(read.output("m").value).toBeUndefined();
});

test("F085 a bad cell is reported at its row and nothing shifts", () => {
  const rows = ["1;use;10", "2;use;20", "3;use;n/a", "4;no;40", "5;use;50"];
  const read = notebook(csv("log", "row [1];state;x [N]", ...rows) + calc('s = sum((log where .state == "use").x) as N'));
  const [fault] = read.output("log").diagnostics;
  expect(read.session.text(read.file).slice(fault?.from, fault?.to)).toContain("n/a");
  expect(read.output("s").value).toBeUndefined();
  read.edit("3;use;n/a", "3;use;");
  expect(read.faults("s")).toEqual(["empty-cell"]);
  read.edit("3;use;", "3;use;30");
  expect(read.number("s")).toBeCloseTo(110, 10);
});
