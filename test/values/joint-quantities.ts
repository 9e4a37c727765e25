// Expressions for the published values of clamped joints, strength and groups: by quantity, or by the id of a row that is one of a kind.

import type { Inputs } from "./inputs.ts";
import { MissingInput, unitOf } from "./inputs.ts";

export type Entry = readonly [string, (inputs: Inputs) => string];

const LITERAL = /[-+−]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?/;

/** The literal after `KEY=` (so that `mu_G=mu_K=0.10` gives both), in `unit` unless the row writes another. */
export function after(inputs: Inputs, name: string, unit = ""): string {
  const escaped = name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const found = new RegExp(`(?:^|[\\s;,(=])${escaped}\\s*=\\s*(?:[A-Za-z_]+\\s*=\\s*)?(${LITERAL.source})\\s*([A-Za-z%][\\w/*]*)?`).exec(
    inputs.text,
  );
  if (found === null) throw new MissingInput(`no ${name} in "${inputs.text}"`);
  const own = unitOf(found[2] ?? "");
  return `${Number((found[1] ?? "").replace("−", "-"))} ${unit === "" ? "" : own === "" ? unit : own}`.trim();
}

/** Cones in series, written `(E,D,t) (E,D,t)` or `E=,D=,t= / E=,D=,t=`: inches with Msi, millimetres with GPa. */
function cones(i: Inputs): string {
  const [, hole = "", unit = ""] = /\bd\s*=\s*([\d.]+)\s*(mm|in)\b/.exec(i.text) ?? [];
  const modulus = unit === "in" ? "Msi" : "GPa";
  const triples = [...i.text.matchAll(/\(([\d.]+),([\d.]+),([\d.]+)\)|E=([\d.]+),D=([\d.]+),t=([\d.]+)/g)].map((m) =>
    m.slice(1).filter((one) => one !== undefined),
  );
  if (hole === "" || triples.length === 0) throw new MissingInput(`no cones in "${i.text}"`);
  const each = triples.map(([E, D, t]) => `cone_stiffness(${E} ${modulus}, ${hole} ${unit}, ${D} ${unit}, ${t} ${unit}, 30 deg)`);
  return `series_stiffness([${each.join(", ")}])`;
}

const oneCone = (i: Inputs): string =>
  `cone_stiffness(${after(i, "E", "GPa")}, ${after(i, "d", "mm")}, ${after(i, "D", "mm")}, ${after(i, "t", "mm")}, 30 deg)`;
const exponential = (i: Inputs): string =>
  `exponential_stiffness(${after(i, "E", "Msi")}, ${after(i, "d", "in")}, ${after(i, "l", "in")}, ${after(i, "A")}, ${after(i, "B")})`;
const shankAndThread = (i: Inputs): string =>
  `screw_stiffness(${after(i, "Ad", "mm^2")}, ${after(i, "At", "mm^2")}, ${after(i, "ld", "mm")}, ${after(i, "lt", "mm")}, ${after(i, "E", "GPa")})`;
const threadOnly = (i: Inputs): string => `rod_stiffness(${after(i, "E", "Msi")}, ${after(i, "At", "in^2")}, ${after(i, "l", "in")})`;
/** Both stiffnesses stand in one unit, written once: only their ratio counts. */
const share = (i: Inputs): string => `load_factor(${after(i, "kb")} * 1 N/mm, ${after(i, "km")} * 1 N/mm)`;
const enBearing = (i: Inputs): string => {
  const [d_0, f_ub, f_u] = [after(i, "d0", "mm"), after(i, "fub", "MPa"), after(i, "fu", "MPa")];
  const k_1 = `en_edge_factor(${after(i, "e2", "mm")}, ${after(i, "p2", "mm")}, ${d_0})`;
  const end = `en_end_factor(${after(i, "e1", "mm")}, ${d_0}, ${f_ub}, ${f_u})`;
  const inner = `en_pitch_factor(${after(i, "p1", "mm")}, ${d_0}, ${f_ub}, ${f_u})`;
  return `en_bearing_resistance(${k_1}, min(${end}, ${inner}), ${f_u}, ${after(i, "d", "mm")}, ${after(i, "t", "mm")}, ${after(i, "gM2")})`;
};
const separation = (i: Inputs): string => `separation_factor(${after(i, "Fi", "kip")}, ${after(i, "P", "kip")}, ${after(i, "C")})`;
const overload = (i: Inputs): string => onProof("overload_factor", i);
const onProof = (name: string, i: Inputs): string =>
  `${name}(${after(i, "Sp", "ksi")}, ${after(i, "At", "in^2")}, ${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")})`;
const screwCount = (i: Inputs): string =>
  `screws_for_overload(${after(i, "n")}, ${after(i, "Sp", "ksi")}, ${after(i, "At", "in^2")}, ${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")})`;
const amplitude = (line: "goodman" | "gerber", i: Inputs, unit: string): string =>
  `${line}_amplitude(${after(i, "Se", unit)}, ${after(i, "Sut", unit)}, ${after(i, "sigma_i", unit)})`;

/** Guide table of VDI 2230 (2001) for fine threads; the bearing diameters are those the rows state. */
const guide = (designation: string, R_p: number, mu: string): string =>
  `assembly_preload(thread("${designation}"), ${R_p} MPa, ${mu}, 0.9, "2001-2015")`;
const guideTorque = (designation: string, R_p: number, mu: string, d_W: number, d_h: number): string =>
  `torque_long_form(${guide(designation, R_p, mu)}, thread("${designation}"), ${mu}, ${mu}, bearing_mean_diameter(${d_W} mm, ${d_h} mm))`;

/** One polymer body 20 mm thick under an M6 head, as the rows of one set share it. */
function vdiBody(i: Inputs): string {
  const or = (name: string, unit: string, usual: string): string => (i.text.includes(`${name}=`) ? after(i, name, unit) : usual);
  const joint = /tapped|w=2/.test(i.text) ? "tapped" : "through";
  const [l, dw, dh, DA] = [or("lK", "mm", "20 mm"), or("dw", "mm", "11.6 mm"), or("dh", "mm", "6.6 mm"), after(i, "DA", "mm")];
  return `vdi_member_compliance(${or("E", "MPa", "3000 MPa")}, ${l}, ${dw}, ${dh}, ${DA}, "${joint}", vdi_cone_slope(${l}, ${dw}, ${DA}, "${joint}", 205 GPa))`;
}

const shearJoint = {
  tau: (S: string): string => `shear_yield_strength(${S})`,
  perDesign: (capacity: string): string => `${capacity} / 1.5`,
};
const bracket = `plane_forces(grid_pattern(2, 2, 150 mm, 120 mm), 0 kN, 16 kN, 6800 N·m)`;
const clampedWasher =
  "ClampedStack { layers = [ClampedLayer { t = 1.6 mm, E = 205000 MPa, D_A = 1 m, d_h = 6.6 mm }, " +
  "ClampedLayer { t = 18.4 mm, E = 3000 MPa, D_A = 1 m, d_h = 6.6 mm }], D_head = 11.6 mm, D_end = 11.6 mm }";
const fourClamps = "[988 N, 988 N, 988 N, 988 N]";

export const jointEntries: readonly Entry[] = [
  // stiffness
  ["member stiffness, exponential fit, cast iron", exponential],
  ["member stiffness, exponential fit, steel", exponential],
  ["Ex. 8-2c: km all steel, exponential fit", exponential],
  [
    "two-material joint from two half joints",
    (i) => `two_material_stiffness(${after(i, "k_CI", "lbf/in")}, ${after(i, "k_steel", "lbf/in")})`,
  ],
  ["bolt stiffness, shank + thread in series", shankAndThread],
  ["bolt stiffness, 1/2-13", shankAndThread],
  ["cap screw: bolt stiffness with effective grip l=h+d/2", shankAndThread],
  ["cap screw 1/2-13: kb, fully threaded", threadOnly],
  ["kb for JT-020", threadOnly],
  ["frustum diameter", (i) => `cone_diameter(${after(i, "dw", "mm")}, ${after(i, "t", "mm")}, 30 deg)`],
  ["frustum stiffness (30 deg), upper", oneCone],
  ["frustum stiffness (30 deg), middle", oneCone],
  ["frustum stiffness (30 deg), lower", oneCone],
  [
    "member stiffness, three frusta in series",
    (i) =>
      `series_stiffness([${(/k=([\d.,]+)/.exec(i.text)?.[1] ?? "")
        .split(",")
        .map((k) => `${k} kN/mm`)
        .join(", ")}])`,
  ],
  ["cap screw: member stiffness (CORRECTED)", cones],
  ["cap screw 1/2-13: km", cones],
  ["cap screw, E=14 Mpsi members under a steel washer, km", cones],
  ["M10: km", cones],
  ["Ex. 8-5 cap screw: km", cones],
  ["Ex. 8-2a: km steel over cast iron with washer", cones],
  [
    "symmetric joint, closed form, relative stiffness",
    (i) => `symmetric_cones_stiffness(0.5 MPa, ${after(i, "d", "in")}, ${after(i, "L", "in")}, 0.58) / 1 MPa`,
  ],
  ["VDI member compliance, sleeve (DA<=dw)", vdiBody],
  [
    "bolt compliance, M6 socket head, nut, all thread",
    (i) =>
      `screw_compliance(thread("M6"), ${after(i, "E", "MPa")}, 0 mm, ${after(i, "lK", "mm")}, "socket", "nut", ${after(i, "E", "MPa")})`,
  ],
  ["frustum stack: steel washer on polymer", () => `stack_stiffness(${clampedWasher})`],
  // sharing a load
  ["joint stiffness constant C=kb/(kb+km)", share],
  ["C for JT-015/016", share],
  ["Ex. 8-5: C", share],
  ["joint constant C", (i) => `load_factor(${after(i, "kb/Es")} * 1 N/mm, ${after(i, "kp/Es")} * 1 N/mm)`],
  ["separation factor n0", separation],
  ["M30: separation factor", separation],
  [
    "bolt share / residual clamp / separation load",
    (i) => `separation_load(${after(i, "FV", "N")}, ${after(i, "n")}, ${after(i, "Phi")}, "load shared")`,
  ],
  // preload and what it loses
  [
    "recommended preload, reused",
    (i) => `preload_of_proof(${after(i, "At", "mm^2")}, ${after(i, "Sp", "MPa")}, recommended_proof_share("reused"))`,
  ],
  [
    "preload and torque, M20 permanent",
    (i) =>
      `torque_short_form(preload_of_proof(${after(i, "At", "mm^2")}, ${after(i, "Sp", "MPa")}, recommended_proof_share("permanent")), ${after(i, "K")}, ${after(i, "d", "mm")})`,
  ],
  ["JT-048", () => guide("M8x1", 640, "0.12")],
  ["JT-049", () => guideTorque("M8x1", 640, "0.12", 11.6, 9)],
  ["JT-050", () => guide("M10x1.25", 940, "0.14")],
  ["JT-051", () => guideTorque("M10x1.25", 940, "0.14", 14.6, 11)],
  ["JT-052", () => guide("M12x1.25", 1100, "0.10")],
  ["JT-053", () => guideTorque("M12x1.25", 1100, "0.10", 16.6, 13.5)],
  ["JT-054", () => guide("M20x1.5", 940, "0.12")],
  ["JT-055", () => guideTorque("M20x1.5", 940, "0.12", 28.2, 22)],
  ["JT-056", () => guide("M24x2", 660, "0.14")],
  ["JT-057", () => guideTorque("M24x2", 660, "0.14", 33.6, 26)],
  ["JT-058", () => guide("M12", 640, "0.14")],
  ["JC-025", (i) => `assembly_preload(thread("M8"), ${after(i, "Rp", "MPa")}, 0.12, ${after(i, "nu")}, "1986")`],
  ["JC-026", (i) => `assembly_preload(thread("M8"), ${after(i, "Rp", "MPa")}, 0.12, ${after(i, "nu")}, "2001-2015")`],
  ["minimum preload from tightening factor", (i) => `lowest_preload(${after(i, "FMmax", "kN")}, ${after(i, "alphaA")})`],
  ["tightening factor from symmetric scatter", (i) => `tightening_factor(${after(i, "s")})`],
  [
    "thermal preload change",
    (i) =>
      `thermal_preload_change(40 K, [${after(i, "l", "mm")}], [${after(i, "alphaP")} * 1 K^-1], ${after(i, "alphaS")} * 1 K^-1, ${after(i, "dS")} * 1 mm/N, ${after(i, "dP", "mm/N")})`,
  ],
  [
    "preload window, minimum",
    (i) =>
      `lowest_end_preload(preload_short_form(${after(i, "T")} N·m, ${after(i, "K")}, ${after(i, "d", "mm")}), ${after(i, "Gamma")}, [5 %, 20 %], "multiply", 0 N)`,
  ],
  // strength of the screw
  ["preload stress Fi/At", (i) => `axial_stress(${after(i, "Fi", "kip")}, ${after(i, "At", "in^2")})`],
  [
    "service stress C*P/At+Fi/At",
    (i) => `service_stress(${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")}, ${after(i, "At", "in^2")})`,
  ],
  ["overload load factor", overload],
  ["M30: load factor", overload],
  ["JT-031", () => "overload_factor(85 ksi, 0.226 in^2, 0.280, 5 kip, 14.4 kip)"],
  ["yield (proof) factor np", (i) => onProof("proof_factor", i)],
  ["number of bolts", screwCount],
  ["Ex. 8-4: bolt count", screwCount],
  ["JT-034", () => "mean_stress(0.280, 5 kip, 14.4 kip, 0.226 in^2)"],
  ["strength amplitude on the load line, Goodman", (i) => amplitude("goodman", i, "ksi")],
  ["strength amplitude, Gerber", (i) => amplitude("gerber", i, "ksi")],
  ["M30: fatigue strength amplitude, Gerber", (i) => amplitude("gerber", i, "MPa")],
  [
    "JT-039",
    (i) =>
      `gerber_amplitude(129 MPa, 830 MPa, 450 MPa) / stress_amplitude(${after(i, "C")}, ${after(i, "P", "kN")}, ${after(i, "At", "mm^2")})`,
  ],
  ["interaction, shank in plane", (i) => `interaction("shank in shear plane", ${after(i, "Rs")}, ${after(i, "Rt")})`],
  ["interaction, thread in plane", (i) => `interaction("thread in shear plane", ${after(i, "Rs")}, ${after(i, "Rt")})`],
  [
    "interaction with bending",
    (i) => `interaction_with_bending(${after(i, "Ra")}, ${after(i, "Rb")}, ${after(i, "K")}, ${after(i, "Rs")})`,
  ],
  // shear joints
  ["JT-060", () => shearJoint.perDesign("2 * bearing_capacity(85 ksi, 0.75 in, 1 in)")],
  ["JT-061", () => shearJoint.perDesign("2 * bearing_capacity(54 ksi, 0.75 in, 1 in)")],
  ["JT-062", () => shearJoint.perDesign(`shear_capacity(4, pi / 4 * (0.75 in)^2, ${shearJoint.tau("85 ksi")})`)],
  ["JT-063", () => shearJoint.perDesign(`shear_capacity(4, 0.351 in^2, ${shearJoint.tau("85 ksi")})`)],
  ["JT-064", () => shearJoint.perDesign(`2 * edge_shear_capacity(1.125 in, 1 in, ${shearJoint.tau("54 ksi")})`)],
  ["JT-066", () => shearJoint.perDesign("54 ksi * net_area(4 in, 0, 0.75 in, 1 in)")],
  ["lap joint 8-40: bolt shear stress", () => "shear_stress(4 kip, 2, pi / 4 * (0.375 in)^2)"],
  ["lap joint 8-40: bearing", () => "bearing_stress(4 kip / 2, 0.375 in, 0.25 in)"],
  ["lap joint 8-40: net tension", () => "axial_stress(4 kip, net_area(2.375 in, 2, 0.375 in, 0.25 in))"],
  ["JT-076", () => "bearing_capacity(170 MPa, 12 mm, 6.4 mm) / 2.8 / 2.343"],
  ["EN bearing, vertical", enBearing],
  ["EN bearing, horizontal", enBearing],
  ["EN bearing, end bolt", (i) => `en_bearing_resistance(${after(i, "k1")}, ${after(i, "alpha_b")}, 430 MPa, 20 mm, 12 mm, 1.25)`],
  ["EN bearing, inner bolt", (i) => `en_bearing_resistance(${after(i, "k1")}, ${after(i, "alpha_b")}, 430 MPa, 20 mm, 12 mm, 1.25)`],
  [
    "EN bolt shear, thread in plane",
    (i) => `en_shear_resistance(${after(i, "alpha_v")}, ${after(i, "fub", "MPa")}, ${after(i, "As", "mm^2")}, ${after(i, "gM2")})`,
  ],
  ["JT-086", () => "en_net_resistance(net_area(360 mm, 5, 22 mm, 10 mm), 430 MPa, 1.1)"],
  ["block tearing", () => "en_block_resistance(1920 mm^2, 1540 mm^2, 430 MPa, 275 MPa, 1.1, 1)"],
  // under the head
  ["punching shear EN", () => "en_punching_resistance(punching_diameter(30 mm, 32.95 mm), 8 mm, 360 MPa, 1.25)"],
  ["polymer pull-through", (i) => `pull_through_capacity(${after(i, "Dw", "mm")}, ${after(i, "t", "mm")}, ${after(i, "tau", "MPa")})`],
  ["pressure under head", (i) => `head_pressure(${after(i, "F", "N")}, ${after(i, "Dw", "mm")}, ${after(i, "dh", "mm")})`],
  ["prying, simple lever", (i) => `prying_lever(${after(i, "F", "N")}, ${after(i, "a", "mm")}, ${after(i, "b", "mm")})`],
  ["equivalent T-stub, mode 2", () => "t_stub_screws(plastic_moment(80 mm, 10 mm, 235 MPa), 180.8 kN, 30 mm, 37.5 mm)"],
  // margins
  ["margin, separation", () => "margin_of_safety(988 N, 500 N, Factors { safety = 1.2, fitting = 1.15 })"],
  ["margin, slip of a 4-bolt joint", () => `slip_margin(0.15, ${fourClamps}, 300 N, Factors { safety = 1.1, fitting = 1.15 })`],
  // groups
  ["bolt circle under bending moment, worst bolt", () => "worst_tension_of_rotating_moment(circle_pattern(12, 8 in, 0 deg), 12000 in·lbf)"],
  [
    "bolt group in plane, elastic: secondary shear",
    () => "max(resultants(plane_forces(grid_pattern(2, 2, 150 mm, 120 mm), 0 N, 0 N, 6800 N·m)))",
  ],
  ["bolt group: worst bolts A,B", () => `max(resultants(${bracket}))`],
  ["bolt group: least loaded C,D", () => `min(resultants(${bracket}))`],
  [
    "three bolts in a row, eccentric: worst bolt",
    () => "max(resultants(plane_forces(list_pattern([0 mm, 50 mm, 100 mm], [0 mm, 0 mm, 0 mm]), 0 N, 1 N, 1 N * 201 mm))) / 1 N",
  ],
  ["four-bolt bracket, in plane", () => "max(resultants(plane_forces(grid_pattern(2, 2, 80 mm, 60 mm), 0 kN, 10 kN, 10 kN * 100 mm)))"],
  ["eccentric bolt group 2x5, shear", (i) => `en_group_resistance(10, 94 kN, 94 kN, ${after(i, "alpha")}, ${after(i, "beta")})`],
  ["JT-081", () => "en_group_resistance(10, 89 kN, 114 kN, 0.022, 0.105)"],
  ["bracket, tilting edge", () => "max(tension_tipping([30 mm, 30 mm, 180 mm, 180 mm], 6 kN * 150 mm))"],
  // rows of the same sets that other files hold
  ["JT-006", oneCone],
  ["JT-007", oneCone],
  ["JT-010", share],
  ["JT-016", cones],
  ["JT-033", (i) => `stress_amplitude(${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "At", "in^2")})`],
  ["JT-037", (i) => `elliptic_amplitude(${after(i, "Se", "ksi")}, ${after(i, "Sp", "ksi")}, ${after(i, "sigma_i", "ksi")})`],
  ["JC-001", vdiBody],
  ["JC-002", vdiBody],
  ["JC-004", vdiBody],
  ["JC-006", (i) => `load_factor_of_compliances(${after(i, "dS")} * 1 mm/N, ${after(i, "dP")} * 1 mm/N)`],
];
