// Facts of the trade that get mixed up (area "domain data").

import { expect, test } from "vitest";
import { calc, evaluate, faultsOf, notebook } from "./helper.ts";

test("F142 each area of a thread has a name of its own", () => {
  expect(evaluate('root_area(thread("M3"))', "mm^2").number).toBeCloseTo(4.47, 2);
  expect(evaluate('stress_area(thread("M3"))', "mm^2").number).toBeCloseTo(5.03, 2);
  expect(evaluate('nominal_area(thread("M3"))', "mm^2").number).toBeCloseTo(7.07, 2);
  expect(evaluate('root_area(thread("M4"))', "mm^2").number).toBeCloseTo(7.75, 2);
  expect(faultsOf('minor_area(thread("M3"))')).toEqual(["unknown-name"]);
});

test("F143 the hole of an insert comes from one record and carries its source", () => {
  const read = notebook(
    calc(
      "record Insert { D_hole: Length, L: Length }",
      "m3 = Insert { D_hole = 4.7 mm, L = 5 mm } | heat-set insert, M3 | supplier sheet (invented)",
      "arm_hole = m3.D_hole as mm",
      "lid_hole = m3.D_hole as mm",
    ),
  );
  expect([read.text("arm_hole"), read.text("lid_hole")]).toEqual(["4.7 mm", "4.7 mm"]);
  expect(read.output("lid_hole").marks?.provenance).toMatchObject({ level: "supplier", from: "m3" });
  read.edit("D_hole = 4.7 mm", "D_hole = 4.8 mm");
  expect([read.text("arm_hole"), read.text("lid_hole")]).toEqual(["4.8 mm", "4.8 mm"]);
});

test("F144 a failure mode that nobody looked at keeps the check from holding", () => {
  const read = notebook(
    calc(
      'record Mode { name: Text, state: "checked" or "ruled out" or "open" = "open", reason: Text = "" }',
      'modes = [Mode { name = "strip", state = "checked" }, Mode { name = "torque-out", state = "ruled out", reason = "no insert" }, Mode { name = "creep" }]',
      'check all([m.state != "open" for m in modes]) | no mode is open',
    ),
  );
  expect(read.line("check all").check?.state).toBe("fails");
  read.edit('name = "creep"', 'name = "creep", state = "checked"');
  expect(read.line("check all").check?.state).toBe("holds");
  expect(notebook(calc("check all(ledger)")).line("check all").check?.state).toBe("open");
});
