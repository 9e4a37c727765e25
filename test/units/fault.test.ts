// Unit problems as diagnostics: code, place, and a mend that puts it right.

import { describe, expect, it } from "vitest";
import { applyChanges, range } from "../../engine/base/index.ts";
import { parseUnit, preferenceFault, preferences, unitFault } from "../../engine/units/index.ts";
import { problem } from "./helpers.ts";

const faultOf = (text: string) => unitFault(problem(text), range(10, 10 + text.length), text);

describe("every unit problem has an entry of the catalogue", () => {
  it.each([
    ["gramm", "unit-unknown", "gram"],
    ["abcdefgh", "unit-unknown", undefined],
    ["pt", "unit-ambiguous", undefined],
    ["lbs", "unit-mass-or-force", undefined],
    ["kdegF", "unit-prefix", undefined],
    ["mm·mm", "unit-twice", "mm^2"],
    ["N.m", "unit-form", "N·m"],
    ["W/m/K", "unit-division", "W/(m·K)"],
    ["1/K", "unit-leading-one", "K^-1"],
    ["W/(m·degC)", "unit-point", "W/(m·K)"],
    ["mm2", "unit-power", "mm^2"],
  ])("%s: %s", (text, code, mended) => {
    const fault = faultOf(text);
    expect(fault.code).toBe(code);
    expect(fault.severity).toBe("fault");
    expect(10 <= fault.range.from && fault.range.to <= 10 + text.length).toBe(true);
    expect(fault.message).not.toMatch(/[{}]|undefined|: \.$/);
    if (mended === undefined) {
      expect(fault.mends).toEqual([]);
      return;
    }
    const line = `x = 12345 ${text}`;
    expect(applyChanges(line, fault.mends[0]?.changes ?? [])).toBe(`x = 12345 ${mended}`);
    expect("unit" in parseUnit(mended)).toBe(true);
  });

  it("says both sides of a preference that does not fit", () => {
    const { problems } = preferences({ lenght: "mm", force: "mm", stress: "Mpa" });
    const faults = problems.map((each) => preferenceFault(each, range(0, 2)));
    expect(faults.map(({ code }) => code)).toEqual(["preference-quantity", "preference-dimension", "unit-unknown"]);
    expect(faults[1]?.message).toContain("Length");
    expect(faults[1]?.message).toContain("Force");
  });
});
