// Inserts, nuts, through bolts and fibre through the language: modes that must be there, loads worked by hand, what must rise and fall.

import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const session = createSession(library);
const NAME = "anchors.joint.md";

/** A block of a plastic with round values, half filled, and one joint for each anchor. */
session.put(
  NAME,
  [
    "```calc",
    'mat   = Plastic { name = "round", sigma_xy = 40 MPa, sigma_z = 15 MPa, tau = 20 MPa, tau_z = 12 MPa, sigma_c = 60 MPa, E = 2 GPa }',
    "half  = PrintState { walls = 4, bead = 0.5 mm, layer = 0.2 mm, top_layers = 5, bottom_layers = 5, infill = 50 % }",
    "part  = PrintedPart { material = mat, state = half, t = 20 mm }",
    'solid = part with { state = half with { pattern = "solid" } }',
    'bolt  = socket_screw("M6", "8.8", 30 mm)',
    "nut   = nut_of_class(bolt)",
    "now   = Service { cycles = 1 }",
    "knurl = HeatSetInsert { D = 8 mm, L = 10 mm, hole = 7.6 mm }",
    "flush = FlushNut { nut = nut }",
    "held  = NutPocket { nut = nut, over = 8 mm }",
    "pin   = PressInsert { D = 8.1 mm, L = 10 mm, hole = 8 mm }",
    'tube  = Sleeve { D = 9 mm, d = 6.4 mm, L = 20 mm, material = metal("EN AW-6082") }',
    'long  = ThroughBolt { nut = nut, washer = washer(thread("M6"), series = "large"), sleeve = tube }',
    'ply   = Reinforcement { fibre = fibre_strand("carbon"), turns = 2, ring_layers = 10, plies = 8, ply = 0.125 mm }',
    "joint = Joint { screw = bolt, anchor = knurl, part = part }",
    "```",
    "",
  ].join("\n"),
);
session.snapshot(NAME);

function evaluated(expression: string, as?: string) {
  const { result, diagnostics } = session.evaluate(expression, as === undefined ? { file: NAME } : { file: NAME, as });
  if (result === undefined) throw new Error(`${expression}: ${diagnostics.map((one) => one.message).join("; ")}`);
  return result;
}

const number = (expression: string, as = "N"): number => Number(evaluated(expression, as).shown.full.replace("−", "-"));
const texts = (expression: string): readonly string[] => evaluated(expression).value as readonly string[];

const kinds: Readonly<Record<string, string>> = {
  heat_set_insert: "knurl",
  flush_nut: "flush",
  nut_pocket: "held",
  press_insert: "pin",
  through_bolt: "long",
};

const modesOf = (kind: string, joint = "joint", anchor = kinds[kind] ?? ""): string => `${kind}_modes(${anchor}, ${joint}, now)`;

/** First damage or greatest load of a mode, in newtons. */
function load(list: string, mode: string, which: "first" | "ultimate"): number {
  return number(`sum([${which}_force(m) for m in ${list} where m.mode == "${mode}"])`);
}

const expectedModes: Readonly<Record<string, readonly string[]>> = {
  heat_set_insert: [
    "insert pulls out",
    "plug with its walls tears out",
    "flange punches through the part",
    "taper wedges the boss open",
    "boss breaks at its root",
    "plastic in the groove crushes",
    "jacked out while it is tightened",
    "insert turns in the part",
    "thread of the insert strips",
    "thread of the screw strips",
    "cracks on cooling round the insert",
    "side load on the insert",
  ],
  flush_nut: [
    "nut pulls through the face",
    "face under the nut crushes",
    "face over the nut bends",
    "nut turns in its pocket",
    "thread of the nut strips",
    "side load on the wall of the hole",
  ],
  nut_pocket: [
    "nut pulls through the ceiling",
    "ceiling over the nut crushes",
    "face over the nut bends",
    "layers part at the nut",
    "nut turns in its pocket",
    "thread of the nut strips",
    "side load on the wall of the hole",
  ],
  press_insert: [
    "insert pulls out",
    "plug with its walls tears out",
    "boss breaks at its root",
    "boss splits from the press fit",
    "jacked out while it is tightened",
    "insert turns in the part",
    "thread of the insert strips",
    "thread of the screw strips",
    "side load on the insert",
  ],
  through_bolt: [
    "nut pulls through the part",
    "face under the nut crushes",
    "face over the nut bends",
    "thread of the nut strips",
    "nut turns",
    "side load on the wall of the hole",
    "sleeve yields",
    "preload crushes the plastic beside the sleeve",
  ],
};

for (const kind of Object.keys(kinds)) {
  test(`${kind}: every mode is in its list, and each is checked, ruled out or open with a reason`, () => {
    const list = modesOf(kind);
    expect(texts(`[m.mode for m in ${list}]`)).toEqual(expectedModes[kind]);
    const [states, reasons, methods] = ["status", "reason", "method"].map((field) => texts(`[m.${field} for m in ${list}]`));
    states?.forEach((state, i) => {
      if (state === "checked") expect(number(`[first_force(m) + ultimate_force(m) for m in ${list}][${i + 1}]`) >= 0).toBe(true);
      else expect(reasons?.[i], `${kind} ${i}`).toMatch(/\w{4}/);
      expect(methods?.[i]?.length).toBeGreaterThan(0);
    });
  });

  test(`${kind}: no first damage lies beyond the greatest load`, () => {
    const list = modesOf(kind);
    const [first, last] = ["first_force(m)", "ultimate_force(m)"].map(
      (each) => evaluated(`[${each} / 1 N for m in ${list}]`).value as number[],
    );
    first?.forEach((one, i) => {
      if ((last?.[i] ?? 0) > 0) expect(one).toBeLessThanOrEqual((last?.[i] ?? 0) * (1 + 1e-9));
    });
  });

  test(`${kind}: rules name a source for every length, have steps and tools, and a design can be assessed`, () => {
    const rules = `${kind}_rules(${kinds[kind]}, joint)`;
    expect(texts(`[r.source for r in ${rules}.lengths]`).every((source) => source.length > 3)).toBe(true);
    expect(texts(`${rules}.steps`).length).toBeGreaterThan(3);
    expect(texts(`${rules}.tools`).length).toBeGreaterThan(0);
    expect(texts(`[m.mode for m in ${kind}_modes(${kind}_design(bolt, part), joint, now)]`)).toEqual(expectedModes[kind]);
  });
}

test("what nobody has measured stays open", () => {
  expect(texts(`[m.mode for m in ${modesOf("heat_set_insert")} where m.status == "open"]`)).toEqual([
    "cracks on cooling round the insert",
    "side load on the insert",
  ]);
  const bonded = 'PressInsert { D = 8 mm, L = 10 mm, hole = 8.2 mm, hold = "bonded" }';
  expect(texts(`[m.mode for m in press_insert_modes(${bonded}, joint, now) where m.status == "open"]`)).toContain("insert pulls out");
});

test("a heat-set insert in half-filled print: knurl, plug through skin and infill, and torque by hand", () => {
  const list = modesOf("heat_set_insert");
  const wall = 0.62 * 2 * Math.PI * 4 * 10;
  expect(load(list, "insert pulls out", "ultimate")).toBeCloseTo(20 * wall, 6);
  expect(load(list, "insert pulls out", "first")).toBeCloseTo(12 * wall, 6);
  const share = number("sparse_share(part with { hole = 7.6 mm })", "1");
  const plug = 2 * Math.PI * (3.8 + 2) * (1 + share * 9);
  expect(load(list, "plug with its walls tears out", "ultimate")).toBeCloseTo(20 * plug, 6);
  expect(number("heat_set_torque(knurl, with_hole(part, 7.6 mm), part_strength(part, now))", "N·m")).toBeCloseTo(
    (0.62 * 20 * 2 * Math.PI * 4 * 10 * 4) / 1000,
    9,
  );
});

test("the fill factor comes from M3 in PLA: other sizes are marked, and it is assumed", () => {
  expect(evaluated('insert_fill_factor("plain bands", 4.6 mm)').outside).toEqual([]);
  expect(evaluated('insert_fill_factor("plain bands", 8 mm)').outside.length).toBe(1);
  expect(evaluated('insert_fill_factor("plain bands", 4.6 mm)').provenance).toMatch(/^assumed/);
});

test("knurls rank as they were pulled: bands with groove, plain bands, straight", () => {
  const pull = (knurl: string): number =>
    load(modesOf("heat_set_insert", "joint", `(knurl with { knurl = "${knurl}" })`), "insert pulls out", "ultimate");
  expect(pull("bands with groove")).toBeGreaterThan(pull("plain bands"));
  expect(pull("plain bands")).toBeGreaterThan(3 * pull("straight"));
});

test("a flange behind an insert carries once the knurl has slipped, and its plug takes the walls along where that is weaker", () => {
  const headed = modesOf("heat_set_insert", "joint", '(knurl with { from = "back", flange = 10 mm })');
  const plug = load(headed, "flange punches through the part", "ultimate");
  expect(plug).toBeLessThan(20 * 10 * Math.PI * 20);
  const held = Math.max(
    plug,
    load(modesOf("heat_set_insert", "joint", '(knurl with { from = "back" })'), "insert pulls through to the loaded face", "ultimate"),
  );
  expect(load(headed, "insert pulls through to the loaded face", "ultimate")).toBeCloseTo(held, 6);
});

test("an insert from the back holds more, by the plastic over it, and is not jacked out", () => {
  const back = modesOf("heat_set_insert", "joint", '(knurl with { from = "back" })');
  const front = load(modesOf("heat_set_insert"), "insert pulls out", "ultimate");
  const cover = 20 * 2 * Math.PI * 4 * 10;
  expect(load(back, "insert pulls through to the loaded face", "ultimate")).toBeCloseTo(front + cover, 6);
  expect(texts(`[m.status for m in ${back} where m.mode == "jacked out while it is tightened"]`)).toEqual(["ruled out"]);
});

test("jack-out is ruled out only where the plate rests on an insert that is not sunk", () => {
  const status = (seat: string, protrusion: string): string =>
    texts(
      `[m.status for m in heat_set_insert_modes(knurl with { protrusion = ${protrusion} }, joint with { seat = "${seat}" }, now) where m.mode == "jacked out while it is tightened"]`,
    )[0] ?? "";
  expect(status("on insert", "0.1 mm")).toBe("ruled out");
  expect(status("on both", "0 mm")).toBe("ruled out");
  expect(status("on insert", "-0.1 mm")).toBe("checked");
  expect(status("on plastic", "0.1 mm")).toBe("checked");
});

test("fibre plies hold an insert from the back and do nothing for one from the loaded face", () => {
  const worst = (anchor: string, joint: string): number =>
    number(
      `min([ultimate_force(m) for m in heat_set_insert_modes(${anchor}, ${joint}, now) where m.against == "anchor" and m.status == "checked"])`,
    );
  const fibre = "(joint with { fibre = ply })";
  expect(worst("knurl", fibre)).toBe(worst("knurl", "joint"));
  const back = '(knurl with { from = "back" })';
  expect(worst(back, fibre)).toBeGreaterThanOrEqual(worst(back, "joint"));
  const more = "(joint with { fibre = ply with { plies = 40 } })";
  expect(worst(back, more)).toBeGreaterThan(1.5 * worst(back, "joint"));
});

test("rings raise the pull that wedges a boss open, and a boss across its layers splits at first damage", () => {
  const taper = '(knurl with { from = "back", taper = 4 deg })';
  const boss = "part with { boss = 16 mm }";
  const wedge = (joint: string, which: "first" | "ultimate"): number => {
    const list = `heat_set_insert_modes(${taper}, ${joint}, now)`;
    return number(`sum([${which}_force(m) for m in ${list} where m.surface == "split"])`);
  };
  const bare = `(joint with { part = ${boss} })`;
  const ringed = `(joint with { part = ${boss}, fibre = ply with { plies = 0 } })`;
  expect(wedge(ringed, "first")).toBeGreaterThan(wedge(bare, "first"));
  expect(wedge(bare, "ultimate")).toBeGreaterThan(wedge(bare, "first"));
  const across = `(joint with { part = ${boss} with { state = half with { screw_to_build = 90 deg } } })`;
  expect(wedge(across, "ultimate")).toBe(wedge(across, "first"));
  expect(wedge(across, "first")).toBeLessThan(wedge(bare, "first"));
});

test("a flush nut: face on the walls of its hole, plug through skins and infill, by hand", () => {
  const list = modesOf("flush_nut");
  const face = (Math.PI / 4) * (8.9 ** 2 - 6.6 ** 2);
  expect(load(list, "face under the nut crushes", "first")).toBeCloseTo(60 * face, 6);
  const over = 20 - 5.2;
  const share = number("sparse_share(part with { hole = 6.6 mm })", "1");
  const outline = 20 * Math.sqrt(3);
  const radius = outline / (2 * Math.PI);
  const depth = radius < 3.3 + 2 ? over : 2 + share * (over - 2);
  expect(load(list, "nut pulls through the face", "ultimate")).toBeCloseTo(20 * outline * depth, 6);
});

test("a wide washer delays first damage; let into the same thickness it gains nothing at the end", () => {
  const washer = '(flush with { washer = washer(thread("M6"), series = "large") })';
  const solid = "(joint with { part = solid })";
  const [mode, plug] = ["face under the nut crushes", "nut pulls through the face"] as const;
  expect(load(modesOf("flush_nut", solid, washer), mode, "first")).toBeGreaterThan(2 * load(modesOf("flush_nut", solid), mode, "first"));
  const deeper = "(joint with { part = solid with { t = 21.6 mm } })";
  expect(load(modesOf("flush_nut", deeper, washer), plug, "ultimate")).toBeGreaterThan(load(modesOf("flush_nut", solid), plug, "ultimate"));
  expect(load(modesOf("flush_nut", solid, washer), plug, "ultimate")).toBeCloseTo(20 * Math.PI * 12.1 * (20 - 5.2 - 1.6), 6);
});

test("a square nut turns harder than a hexagon of the same width", () => {
  const torque = (shape: string): number => number(`${shape}_pocket_torque(60 MPa, 3 mm, 8 mm, "elastic")`, "N·mm");
  expect(torque("square")).toBeCloseTo(2 * torque("hexagon"), 9);
});

test("a bridged ceiling counts without two layers, and its pocket fails below a supported one", () => {
  const ceiling = (how: string): number =>
    load(modesOf("nut_pocket", "joint", `(held with { ceiling = "${how}" })`), "nut pulls through the ceiling", "ultimate");
  const outline = 20 * Math.sqrt(3);
  expect(ceiling("supported") - ceiling("bridged")).toBeCloseTo(20 * outline * 0.4, 6);
});

test("a pause opens its own plane, and a slot holds a third of the torque", () => {
  const paused = modesOf("nut_pocket", "joint", '(held with { opening = "paused print" })');
  expect(texts(`[m.status for m in ${paused} where m.mode == "layers part at the nut"]`)).toEqual(["checked"]);
  const inner = 10 / Math.sqrt(3);
  const outer = inner + 8;
  const share = number("sparse_share(part with { hole = 6.6 mm })", "1");
  expect(load(paused, "layers part at the nut", "first")).toBeCloseTo(0.5 * 15 * share * Math.PI * (outer ** 2 - inner ** 2), 6);
  expect(number('pocket_torque(nut, 60 MPa, "elastic", true)', "N·mm") * 3).toBeCloseTo(
    number('pocket_torque(nut, 60 MPa, "elastic", false)', "N·mm"),
    9,
  );
});

test("in a boss the layers at a captive nut are a mode of their own, a slot takes part of them", () => {
  const whole = modesOf(
    "nut_pocket",
    "(joint with { part = part with { boss = 16 mm } })",
    '(held with { over = 4 mm, opening = "far face" })',
  );
  const slotted = whole.replace("far face", "side slot");
  expect(load(slotted, "layers part at the nut", "first")).toBeLessThan(load(whole, "layers part at the nut", "first"));
  expect(load(slotted, "layers part at the nut", "first")).toBeGreaterThan(0);
});

test("a nut turns further the looser its pocket, and spins at 15.5 % of its width", () => {
  const turn = (c: number): number => number(`nut_free_rotation(10 mm, ${c} mm)`, "deg");
  expect([0.1, 0.4, 0.8, 1.5].map(turn)).toEqual([0.1, 0.4, 0.8, 1.5].map(turn).sort((a, b) => a - b));
  expect(turn(1.547)).toBeCloseTo(30, 0);
  expect(session.evaluate("nut_free_rotation(10 mm, 1.6 mm)", {}).diagnostics.map((one) => one.code)).toEqual(["requirement-broken"]);
});

test("a press fit loses its hold as the plastic creeps, and a tighter one strains its boss more", () => {
  const hold = (E: number): number => number(`press_hold(pin, ${E} MPa, 2)`);
  expect(hold(700)).toBeCloseTo(0.35 * hold(2000), 6);
  expect(number("press_hoop(pin with { hole = 7.95 mm }, 2 GPa, 2)", "MPa")).toBeGreaterThan(number("press_hoop(pin, 2 GPa, 2)", "MPa"));
});

test("a short sleeve leaves the plastic alone with the preload, a level one shares, a proud one takes it", () => {
  const at = (step: number): number => number(`force_for_plastic(3000 N, 20 kN/mm, 200 kN/mm, ${step} mm)`);
  expect(at(-0.2)).toBe(3000);
  expect(at(0)).toBe(33000);
  expect(at(0.05)).toBe(43000);
  const list = (L: string): string => modesOf("through_bolt", "joint", `(long with { sleeve = tube with { L = ${L} } })`);
  const beside = (L: string): number => load(list(L), "preload crushes the plastic beside the sleeve", "first");
  expect(beside("19.8 mm")).toBeLessThan(beside("20 mm"));
  expect(beside("20 mm")).toBeLessThan(beside("20.1 mm"));
});

test("a washer that does not reach past the sleeve leaves the part to friction, and says so", () => {
  const small = "(long with { washer = none })";
  const rows = texts(`[m.status for m in ${modesOf("through_bolt", "joint", small)} where m.against == "anchor"]`);
  expect(rows.slice(0, 2)).toEqual(["open", "open"]);
});

test("heat takes from every load that the plastic carries, none from the metal", () => {
  const hot = "Service { temperature = 40 degC }";
  const warm = '(joint with { part = part with { material = mat with { T_limit = 80 degC, structure = "amorphous" } } })';
  const cold = evaluated(`[ultimate_force(m) / 1 N for m in heat_set_insert_modes(knurl, ${warm}, now)]`).value as number[];
  const heated = evaluated(`[ultimate_force(m) / 1 N for m in heat_set_insert_modes(knurl, ${warm}, ${hot})]`).value as number[];
  const elements = texts(`[m.element for m in ${modesOf("heat_set_insert")}]`);
  elements.forEach((element, i) => {
    if (element === "part" && (cold[i] ?? 0) > 0) expect(heated[i]).toBeCloseTo(((cold[i] ?? 0) * 40) / 57, 6);
    if (element === "screw") expect(heated[i]).toBe(cold[i]);
  });
});

test("Lamé's ring and the press-fit factor are one thing, and a boss of a given pressure is just strong enough", () => {
  for (const k of [1.2, 1.5, 2, 3]) {
    expect(number(`hoop_over_pressure(${k})`, "1")).toBeCloseTo(number(`wall_geometry_factor(1 / ${k})`, "1"), 12);
    expect(number(`bore_pressure_at_full_yield(30 MPa, ${k})`, "MPa")).toBeGreaterThan(
      number(`bore_pressure_at_first_damage(30 MPa, ${k})`, "MPa"),
    );
    const p = number(`bore_pressure_at_first_damage(30 MPa, ${k})`, "MPa");
    expect(number(`boss_for_pressure(6 mm, ${p} MPa, 30 MPa)`, "mm")).toBeCloseTo(6 * k, 9);
  }
  expect(session.evaluate("boss_for_pressure(6 mm, 31 MPa, 30 MPa)", {}).diagnostics.map((one) => one.code)).toEqual([
    "requirement-broken",
  ]);
});

test("sharing by stiffness: stiffer fibre takes more, and what is damaged first changes sides", () => {
  const first = (E: number): string =>
    String(evaluated(`shared_load(2000 N, 2000 N, fibre_share(${E} GPa, 2 mm^2, 2 GPa, 40 mm^2), false).first_in`).value);
  expect(first(10)).toBe("polymer");
  expect(first(60)).toBe("fibre");
  const share = (E: number): number => number(`fibre_share(${E} GPa, 2 mm^2, 2 GPa, 40 mm^2)`, "1");
  expect(share(60)).toBeGreaterThan(share(30));
});

test("hole criteria run between no notch and the concentration of three", () => {
  const point = (R: number): number => number(`point_stress_share(${R} mm, 1 mm)`, "1");
  const mean = (R: number): number => number(`average_stress_share(${R} mm, 3.8 mm)`, "1");
  expect([0.1, 1, 5, 50].map(point)).toEqual([0.1, 1, 5, 50].map(point).sort((a, b) => b - a));
  expect([0.1, 1, 5, 50].map(mean)).toEqual([0.1, 1, 5, 50].map(mean).sort((a, b) => b - a));
  expect(point(1e6)).toBeCloseTo(1 / 3, 5);
  expect(mean(1e-6)).toBeCloseTo(1, 5);
});
