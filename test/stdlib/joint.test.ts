// The joint through the language: path of the preload, ledger, torque window, rulings, shop card, ranking.

import { describe, expect, test } from "vitest";
import type { RecordValue, Value } from "../../engine/run/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);

function value(expression: string): Value {
  const { result, diagnostics } = session.evaluate(expression, {});
  if (result === undefined) throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return result.value as Value;
}

const number = (expression: string): number => Number(value(expression));
const text = (expression: string): string => String(value(expression));
const joint = (changes: string): string => `(worked_joint() with { ${changes} })`;

interface Row {
  readonly mode: string;
  readonly element: string;
  readonly state: string;
  readonly case: string;
  readonly screw: number;
  readonly factor: number;
  readonly utilisation: number | null;
  readonly reason: string;
}

/** Fields of the record `Mode`, in the order of its declaration. */
function row(mode: RecordValue): Row {
  const [name, element, state, loadCase, screw, factor, , , , utilisation, , reason] = mode.fields;
  return {
    mode: String(name),
    element: String(element),
    state: String(state),
    case: String(loadCase),
    screw: Number(screw),
    factor: Number(factor),
    utilisation: utilisation === null ? null : Number(utilisation),
    reason: String(reason),
  };
}

const ledger = (expression: string): readonly Row[] => (value(`assess(${expression}).modes`) as readonly RecordValue[]).map(row);
const named = (rows: readonly Row[], mode: string): Row => rows.find((one) => one.mode === mode) ?? expect.fail(`no mode ${mode}`);

const LIGHT =
  'loads = [LoadCase { name = "a", F_z = 40 N, duration = 1 h }], tightening = Tightening { mu_low = 0.12, mu_high = 0.16, scatter = 15 % }';
const INSERT = 'anchor = HeatSetInsert { D = 7 mm, L = 9.5 mm }, seat = "on insert"';
const KINDS = value("method_names()") as readonly string[];

describe("the path of the preload", () => {
  test("on an insert the part carries the load alone, on plastic the preload as well", () => {
    const at = (seat: string): number =>
      number(
        `case_demand(case_state(worked_insert() with { seat = "${seat}" }, LoadCase { name = "a", F_z = 80 N }), joint_state(worked_insert()), 1 N·m, 30 %, 0.5).anchor`,
      );
    expect(at("on insert")).toBeCloseTo(20, 9);
    expect(at("on plastic")).toBeGreaterThan(500);
    expect(at("on both")).toBeGreaterThan(20);
    expect(at("on both")).toBeLessThan(at("on plastic") + 20);
  });

  test("a sunk insert gives no seat, a proud one takes more of the preload than a level one", () => {
    const path = (protrusion: string): string =>
      text(
        `case_state(worked_insert() with { anchor = HeatSetInsert { D = 7 mm, L = 9.5 mm, protrusion = ${protrusion} } }, LoadCase { name = "a" }).path`,
      );
    expect(path("0 mm")).toBe("insert");
    expect(path("-0.05 mm")).toBe("plastic");
    expect(number('preload_in_part("both", 900 N, 20 kN/mm, 180 kN/mm, 0.003 mm)')).toBeLessThan(
      number('preload_in_part("both", 900 N, 20 kN/mm, 180 kN/mm, 0 mm)'),
    );
  });

  test("soft plastic in the chain sends most of a load through the screw, metal in the chain less", () => {
    expect(number("case_load_factor(worked_springs())")).toBeGreaterThan(number("case_load_factor(worked_insert_springs())"));
  });

  test("retightening leaves more of the preload, and never more than all", () => {
    const left = (retightened: boolean): number =>
      number(`joint_state(${joint(`life = Life { retightened = ${retightened} }`)}).retention`);
    expect(left(true)).toBeGreaterThan(left(false));
    expect(left(true)).toBeLessThanOrEqual(1);
  });
});

describe("loads on the pattern", () => {
  test("a pull beside the middle of the pattern tips: both spellings give the same forces", () => {
    const p = "grid_pattern(2, 2, 60 mm, 80 mm)";
    const moved = "Pattern { x = grid_pattern(2, 2, 60 mm, 80 mm).x + 50 mm, y = grid_pattern(2, 2, 60 mm, 80 mm).y }";
    const a = number(`max(case_forces(${moved}, LoadCase { name = "a", F_z = 100 N }).tension)`);
    const b = number(`max(case_forces(${p}, LoadCase { name = "a", F_z = 100 N, M_y = 5 N·m }).tension)`);
    expect(a).toBeCloseTo(b, 9);
  });

  test("a turning moment loads a screw of a square 41 % more than one about its side", () => {
    const at = (turning: boolean): number =>
      number(`max(case_forces(grid_pattern(2, 2, 60 mm, 60 mm), LoadCase { name = "a", M_x = 6 N·m, turning = ${turning} }).tension)`);
    expect(at(true) / at(false)).toBeCloseTo(Math.SQRT2, 9);
  });

  test("a single screw under a moment is open, not silently safe", () => {
    const rows = ledger(joint('pattern = single_screw(), loads = [LoadCase { name = "a", F_z = 20 N, M_x = 1 N·m }]'));
    expect(named(rows, "moment about the line of screws").state).toBe("open");
    expect(named(ledger(joint(LIGHT)), "moment about the line of screws").state).toBe("ruled out");
  });
});

describe("the ledger", () => {
  const rows = ledger(joint(LIGHT));

  test("every row is checked with a demand, or says why it is not", () => {
    for (const one of rows) {
      expect(["holds", "fails", "open", "ruled out"]).toContain(one.state);
      if (one.state === "open") expect(one.reason, one.mode).toMatch(/^no data: |^no lever: /);
      if (one.state === "ruled out") expect(one.reason.length, one.mode).toBeGreaterThan(5);
      if (one.state === "holds") expect(one.utilisation, one.mode).toBeLessThanOrEqual(1);
    }
  });

  test("no mode stands in it twice", () => {
    for (const kind of KINDS) {
      const names = ledger(`(worked_joint() with { anchor = anchor_of_kind("${kind}", worked_joint().screw, worked_part()) })`).map(
        (one) => one.mode,
      );
      expect(
        names.filter((name, i) => names.indexOf(name) !== i),
        kind,
      ).toEqual([]);
    }
  });

  test("a torque inside the window keeps every mode that hangs on the preload", () => {
    const insert = joint(`${LIGHT}, ${INSERT}`);
    expect(value(`torque_window(${insert}).empty`)).toBe(false);
    for (const share of [0, 0.5, 1]) {
      const T = `(torque_window(${insert}).T_low + ${share} * (torque_window(${insert}).T_high - torque_window(${insert}).T_low))`;
      const at = ledger(
        `(${insert} with { tightening = ${insert}.tightening with { T = ${T} * ${share === 1 ? "0.999999" : "1.000001"} } })`,
      );
      expect(
        at.filter((one) => one.state === "fails").map((one) => `${share} ${one.mode}`),
        String(share),
      ).toEqual([]);
    }
    const over = `(${insert} with { tightening = ${insert}.tightening with { T = torque_window(${insert}).T_high * 1.01 } })`;
    expect(ledger(over).some((one) => one.state === "fails")).toBe(true);
    const under = `(${insert} with { tightening = ${insert}.tightening with { T = torque_window(${insert}).T_low * 0.99 } })`;
    expect(ledger(under).some((one) => one.state === "fails")).toBe(true);
  });

  test("an empty window says which two ends meet", () => {
    const heavy = joint('loads = [LoadCase { name = "a", F_z = 4 kN }]');
    expect(value(`torque_window(${heavy}).empty`)).toBe(true);
    expect(text(`torque_window(${heavy}).reason`)).toMatch(/asks for .* N·m, .* allows .* N·m/);
  });

  test("a load marked ultimate has its factor already", () => {
    const factors = (level: string): readonly number[] =>
      ledger(joint(`loads = [LoadCase { name = "a", F_z = 900 N, level = "${level}" }], life = Life { time = 60 s }`))
        .filter((one) => one.case === "a" && one.utilisation !== null)
        .map((one) => one.factor);
    expect(factors("ultimate").every((factor) => factor === 1)).toBe(true);
    expect(factors("limit").some((factor) => factor > 1)).toBe(true);
  });

  test("an open mode of side load is ruled out while friction holds, and open again when it does not", () => {
    const side = (force: string): Row =>
      ledger(joint(`${INSERT}, loads = [LoadCase { name = "a", F_x = ${force} }]`)).find((one) => one.mode.includes("side load")) ??
      expect.fail("no side load");
    expect(side("4 N").state).toBe("ruled out");
    expect(side("4 N").reason).toContain("friction");
    expect(side("4 kN").state).toBe("open");
  });

  test("a ruling closes an open mode and is quoted; it cannot close a failing one, and one that closes nothing shows", () => {
    const closed = ledger(joint(`${LIGHT}, rulings = [Ruling { mode = "prying of the plate on plastic", reason = "own trial" }]`));
    expect(named(closed, "prying of the plate on plastic")).toMatchObject({ state: "ruled out", reason: "own trial" });
    const idle = ledger(joint(`${LIGHT}, rulings = [Ruling { mode = "pryng", reason = "own trial" }]`));
    expect(named(idle, "ruling on pryng").state).toBe("open");
  });

  test("cold, blows, vibration, fluids and carbon on aluminium are open with a test", () => {
    const rough = ledger(
      joint(
        'loads = [LoadCase { name = "a", rate = "impact", temperature = -10 degC }], life = Life { vibration = true, fluids = "oil" }, through = [Plate { t = 5 mm, material = metal("EN AW-6082") }], part = worked_part() with { material = plastic("PA6-CF") }',
      ),
    );
    for (const mode of ["impact", "cold", "self-loosening", "stress cracking by fluids", "galvanic corrosion"])
      expect(named(rough, mode).state, mode).toBe("open");
  });

  test("the governing mode is the one nearest to its limit", () => {
    const worst = Math.max(...rows.flatMap((one) => (one.utilisation === null ? [] : [one.utilisation])));
    expect(number(`governing_mode(assess(${joint(LIGHT)})).utilisation`)).toBeCloseTo(worst, 12);
  });

  test("a heavier load never lowers a utilisation of a pull", () => {
    const at = (force: number): readonly Row[] =>
      ledger(joint(`loads = [LoadCase { name = "a", F_z = ${force} N }], tightening = Tightening { T = 0.3 N·m }`));
    const [light, heavy] = [at(40), at(400)];
    for (const one of light) {
      const other = named(heavy, one.mode);
      if (one.utilisation !== null && other.utilisation !== null)
        expect(other.utilisation, one.mode).toBeGreaterThanOrEqual(one.utilisation - 1e-12);
    }
  });
});

describe("the shop", () => {
  test("a card names screw, torque, steps, tools and cautions for every kind of anchor", () => {
    for (const kind of KINDS) {
      const card = value(
        `shop_card(worked_joint() with { anchor = anchor_of_kind("${kind}", worked_joint().screw, worked_part()) })`,
      ) as RecordValue;
      const [title, anchor, , hole, tools, steps, , torque, , cautions] = card.fields;
      expect(String(title)).toContain("M5");
      expect(String(anchor).length, kind).toBeGreaterThan(10);
      for (const list of [hole, tools, steps, cautions]) expect((list as readonly string[]).length, kind).toBeGreaterThan(0);
      expect(String(torque), kind).toMatch(/N·m/);
      expect((cautions as readonly string[]).some((one) => one.includes("licensed engineer"))).toBe(true);
    }
  });

  test("what was measured takes the place of what was drawn, and moves the ledger", () => {
    const strip = (expression: string): number =>
      named(ledger(expression), "thread stripped from the part").utilisation ?? expect.fail("no utilisation");
    const drawn = joint("tightening = Tightening { T = 0.2 N·m }");
    expect(strip(`as_built(${drawn}, InstallationRecord { length = 6 mm })`)).toBeGreaterThan(strip(drawn));
    expect(strip(`as_built(${drawn}, InstallationRecord { by = "A" })`)).toBeCloseTo(strip(drawn), 12);
  });

  test("texts round as the shop reads them", () => {
    const say = (name: string, x: number): string => String(library.natives[name]?.apply([x]));
    expect(say("length_text", 0.0042049)).toBe("4.2 mm");
    expect(say("length_text", -0.0001)).toBe("−0.1 mm");
    expect(say("force_text", 12345)).toBe("12.3 kN");
    expect(say("force_text", 9999)).toBe("10000 N");
    expect(say("torque_text", 0.8512)).toBe("0.851 N·m");
    expect(say("temperature_text", 273.15 - 20)).toBe("−20 °C");
    expect(say("time_text", 90)).toBe("1.5 min");
    expect(say("percent_text", 0.1234)).toBe("12.3 %");
    expect(library.natives.list_text?.apply([["a", "", "b"], "; "])).toBe("a; b");
  });
});

describe("the ranking", () => {
  const rows = (expression: string): readonly RecordValue[] => value(`${expression}.rows`) as readonly RecordValue[];

  test("all methods are there, best first, and each rejected one says why", () => {
    const all = rows("compare_methods(worked_joint(), shop = Shop { back_access = false, taps = false })");
    expect(all.map((one) => String(one.fields[0])).sort()).toEqual([...KINDS].sort());
    const order = ["serves", "open", "fails", "rejected"];
    const places = all.map((one) => order.indexOf(String(one.fields[1])));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const one of all) if (one.fields[1] === "rejected") expect(String(one.fields[2]).length).toBeGreaterThan(5);
    expect(
      all
        .filter((one) => one.fields[1] === "rejected")
        .map((one) => String(one.fields[0]))
        .sort(),
    ).toEqual(["flush nut", "insert from the back", "tapped hole", "through bolt"]);
  });

  test("weights move the ranking", () => {
    const score = (weights: string, method: string): number =>
      Number(rows(`compare_methods(worked_joint(), weights = Weights { ${weights} })`).find((one) => one.fields[0] === method)?.fields[3]);
    const quick = "strength = 0, ultimate = 0, cost = 0, time = 1, reassembly = 0";
    const strong = "strength = 1, ultimate = 0, cost = 0, time = 0, reassembly = 0";
    expect(score(quick, "formed hole")).toBe(1);
    expect(score(strong, "formed hole")).toBeLessThan(1);
  });

  test("more assemblies than the trade trusts reject a method", () => {
    const all = rows(`compare_methods(${joint("life = Life { reassemblies = 30 }")})`);
    expect(all.find((one) => one.fields[0] === "self-cut hole")?.fields[1]).toBe("rejected");
  });
});
