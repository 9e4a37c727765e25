// Expressions for the published values of stiffness, load sharing and preload: by quantity, or by the id of a row that is one of a kind.

import type { Inputs } from "./inputs.ts";
import { MissingInput } from "./inputs.ts";
import { after, type Entry, or } from "./joint-inputs.ts";
import { screwOf } from "./screw-text.ts";

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
const separation = (i: Inputs): string => `separation_factor(${after(i, "Fi", "kip")}, ${after(i, "P", "kip")}, ${after(i, "C")})`;
/** Guide table of VDI 2230 (2001): a preload, or a torque where the row's inputs begin with MA. Bearing diameters are those the rows state. */
function guide(id: string, designation: string, R_p: string, mu: string, d_W: number, d_h: number): readonly Entry[] {
  const screw = (i: Inputs): string => {
    const R_e = or(i, "Rp0.2", "MPa", `${R_p} MPa`);
    const band = `StrengthBand { d_max = 100 mm, R_m = ${R_e}, R_e = ${R_e} }`;
    return screwOf(
      `thread("${designation}")`,
      `PropertyClass { name = "as stated", standard = "the row", bands = [${band}] }`,
      `${d_W} mm`,
    );
  };
  const preload = (i: Inputs): string => `screw_yield_preload(${screw(i)}, ${mu}, ${or(i, "nu", "", "0.9")}, "2001-2015")`;
  const torque = (i: Inputs): string => `tightening_torque(${screw(i)}, ${preload(i)}, ${mu}, ${mu}, ${d_h} mm)`;
  return [[id, (i) => (i.text.startsWith("MA") ? torque(i) : preload(i))]];
}

function m8Preload(i: Inputs, edition: "1986" | "2001-2015"): string {
  return `assembly_preload(thread("M8"), ${after(i, "Rp", "MPa")}, ${or(i, "mu", "", "0.12")}, ${after(i, "nu")}, "${edition}")`;
}

/** A washer on a polymer up to the whole grip: `washer E=205000 t=1.6; polymer E=3000 to 20 mm grip; dh=6.6; D0=11.6`. */
function washerOnPolymer(i: Inputs): string {
  const [, E_1, t_1, E_2, grip] = /washer E=([\d.]+) t=([\d.]+); polymer E=([\d.]+) to ([\d.]+) mm/.exec(i.text) ?? [];
  if (grip === undefined) throw new MissingInput(`no washer and polymer in "${i.text}"`);
  const layer = (t: string, E = ""): string => `ClampedLayer { t = ${t}, E = ${E} MPa, D_A = 1 m, d_h = ${after(i, "dh", "mm")} }`;
  const D = `${/D0=([\d.]+)/.exec(i.text)?.[1]} mm`;
  return `ClampedStack { layers = [${layer(`${t_1} mm`, E_1)}, ${layer(`${grip} mm - ${t_1} mm`, E_2)}], D_head = ${D}, D_end = ${D} }`;
}

/** One polymer body 20 mm thick under an M6 head, as the rows of one set share it. */
function vdiBody(i: Inputs): string {
  const joint = /tapped|w=2/.test(i.text) ? "tapped" : "through";
  const [l, dw, dh, DA] = [or(i, "lK", "mm", "20 mm"), or(i, "dw", "mm", "11.6 mm"), or(i, "dh", "mm", "6.6 mm"), after(i, "DA", "mm")];
  return `vdi_member_compliance(${or(i, "E", "MPa", "3000 MPa")}, ${l}, ${dw}, ${dh}, ${DA}, "${joint}", vdi_cone_slope(${l}, ${dw}, ${DA}, "${joint}", 205 GPa))`;
}

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
    (i) =>
      `symmetric_cones_stiffness(${1 / Number(/E=Es\/(\d+)/.exec(i.text)?.[1] ?? "1")} MPa, ${after(i, "d", "in")}, ${after(i, "L", "in")}, 0.58) / 1 MPa`,
  ],
  ["VDI member compliance, sleeve (DA<=dw)", vdiBody],
  [
    "bolt compliance, M6 socket head, nut, all thread",
    (i) =>
      `screw_compliance_of(socket_screw("M6", "8.8", 20 mm), ${after(i, "lK", "mm")}, ${after(i, "E", "MPa")}, "nut", ${after(i, "E", "MPa")})`,
  ],
  ["frustum stack: steel washer on polymer", (i) => `stack_stiffness(${washerOnPolymer(i)})`],
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
  // Rows JT-048 to JT-058 name thread, class and friction in the quantity, or state Rp0.2; where a row says less, the set does.
  ...guide("JT-048", "M8x1", "640", "0.12", 11.6, 9),
  ...guide("JT-049", "M8x1", "640", "0.12", 11.6, 9),
  ...guide("JT-050", "M10x1.25", "940", "0.14", 14.6, 11),
  ...guide("JT-051", "M10x1.25", "940", "0.14", 14.6, 11),
  ...guide("JT-052", "M12x1.25", "1100", "0.10", 16.6, 13.5),
  ...guide("JT-053", "M12x1.25", "1100", "0.10", 16.6, 13.5),
  ...guide("JT-054", "M20x1.5", "940", "0.12", 28.2, 22),
  ...guide("JT-055", "M20x1.5", "940", "0.12", 28.2, 22),
  ...guide("JT-056", "M24x2", "660", "0.14", 33.6, 26),
  ...guide("JT-057", "M24x2", "660", "0.14", 33.6, 26),
  ...guide("JT-058", "M12", "640", "0.14", 16.6, 13.5),
  ["JC-025", (i) => m8Preload(i, "1986")],
  ["JC-026", (i) => m8Preload(i, "2001-2015")],
  ["minimum preload from tightening factor", (i) => `lowest_preload(${after(i, "FMmax", "kN")}, ${after(i, "alphaA")})`],
  ["tightening factor from symmetric scatter", (i) => `tightening_factor(${after(i, "s")})`],
  [
    "thermal preload change",
    (i) =>
      `thermal_preload_change(${after(i, "dT", "K")}, [${after(i, "l", "mm")}], [${after(i, "alphaP")} * 1 K^-1], ${after(i, "alphaS")} * 1 K^-1, ${after(i, "dS")} * 1 mm/N, ${after(i, "dP", "mm/N")})`,
  ],
  [
    "preload window, minimum",
    (i) =>
      `lowest_end_preload(preload_short_form(${after(i, "T")} N·m, ${after(i, "K")}, ${after(i, "d", "mm")}), ${after(i, "Gamma")}, [${/relaxation ([\d.]+) %/.exec(i.text)?.[1]} %, ${/creep ([\d.]+) %/.exec(i.text)?.[1]} %], "multiply", 0 N)`,
  ],
  // other rows of the same sets, by id
  ["JT-006", oneCone],
  ["JT-007", oneCone],
  ["JT-010", share],
  ["JT-016", cones],
  ["JC-001", vdiBody],
  ["JC-002", vdiBody],
  ["JC-004", vdiBody],
  ["JC-006", (i) => `load_factor_of_compliances(${after(i, "dS")} * 1 mm/N, ${after(i, "dP")} * 1 mm/N)`],
  ["JC-008", (i) => `embedding_loss(${after(i, "fZ", "um")}, ${after(i, "dS")} * 1 mm/N, ${after(i, "dP")} * 1 mm/N)`],
  [
    "JC-027",
    (i) =>
      `creep_retention(${or(i, "dS", "", "8e-6")} * 1 mm/N, ${or(i, "dP", "", "20e-6")} * 1 mm/N, creep_factor(${or(i, "A", "", "0.25")}, ${or(i, "t", "h", "1000 h")}, ${or(i, "n", "", "0.15")}))`,
  ],
];
