// Expressions for the published values of strength, margins and groups: by quantity, or by the id of a row that is one of a kind.

import type { Inputs } from "./inputs.ts";
import { MissingInput } from "./inputs.ts";
import { after, type Entry, numbersIn, or } from "./joint-inputs.ts";

const enBearing = (i: Inputs): string => {
  const [d_0, f_ub, f_u] = [after(i, "d0", "mm"), after(i, "fub", "MPa"), after(i, "fu", "MPa")];
  const k_1 = `en_edge_factor(${after(i, "e2", "mm")}, ${after(i, "p2", "mm")}, ${d_0})`;
  const end = `en_end_factor(${after(i, "e1", "mm")}, ${d_0}, ${f_ub}, ${f_u})`;
  const inner = `en_pitch_factor(${after(i, "p1", "mm")}, ${d_0}, ${f_ub}, ${f_u})`;
  return `en_bearing_resistance(${k_1}, min(${end}, ${inner}), ${f_u}, ${after(i, "d", "mm")}, ${after(i, "t", "mm")}, ${after(i, "gM2")})`;
};
const overload = (i: Inputs): string => onProof("overload_factor", i);
const onProof = (name: string, i: Inputs): string =>
  `${name}(${after(i, "Sp", "ksi")}, ${after(i, "At", "in^2")}, ${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")})`;
const screwCount = (i: Inputs): string =>
  `screws_for_overload(${after(i, "n")}, ${after(i, "Sp", "ksi")}, ${after(i, "At", "in^2")}, ${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")})`;
const amplitude = (line: "goodman" | "gerber", i: Inputs, unit: string): string =>
  `${line}_amplitude(${after(i, "Se", unit)}, ${after(i, "Sut", unit)}, ${after(i, "sigma_i", unit)})`;

/** Numbers of a set that rows of it leave out, where a row says "as above" or gives prose: they hold by the id of the row. */
const plate = {
  t: (i: Inputs): string => or(i, "t", "in", "1 in"),
  d: (i: Inputs): string => or(i, "d", "in", "0.75 in"),
  Sp: (i: Inputs): string => or(i, "Sp", "ksi", "85 ksi"),
  Sy: (i: Inputs): string => or(i, "Sy", "ksi", "54 ksi"),
  nd: (i: Inputs): string => or(i, "nd", "", "1.5"),
  w: (i: Inputs): string => or(i, "w", "in", "4 in"),
};
const capScrew = {
  Sp: (i: Inputs): string => or(i, "Sp", "ksi", "85 ksi"),
  At: (i: Inputs): string => or(i, "At", "in^2", "0.226 in^2"),
  C: (i: Inputs): string => or(i, "C", "", "0.280"),
  P: (i: Inputs): string => or(i, "P", "kip", "5 kip"),
  Fi: (i: Inputs): string => or(i, "Fi", "kip", "14.4 kip"),
};
const lap = {
  F: (i: Inputs): string => or(i, "F", "kip", "4 kip"),
  d: (i: Inputs): string => or(i, "d", "in", "0.375 in"),
  t: (i: Inputs): string => or(i, "t", "in", "0.25 in"),
};
const endPlate = (i: Inputs): string =>
  `en_bearing_resistance(${after(i, "k1")}, ${after(i, "alpha_b")}, ${or(i, "fu", "MPa", "430 MPa")}, ${or(i, "d", "mm", "20 mm")}, ${or(i, "t", "mm", "12 mm")}, ${or(i, "gM2", "", "1.25")})`;

/** `bolts at (+-75,+-60) mm` and a shear V with a moment M or at an eccentricity e. */
function square(i: Inputs): string {
  const [, x = "75", y = "60"] = /\(\+-([\d.]+),\+-([\d.]+)\) mm/.exec(i.text) ?? [];
  const V = or(i, "V", "kN", "16 kN");
  const M = i.text.includes("e=") ? `${V} * ${after(i, "e", "mm")}` : or(i, "M", "N·m", "6800 N·m");
  return `group_forces(grid_pattern(2, 2, 2 * ${x} mm, 2 * ${y} mm), GroupLoad { V_y = ${V}, M_z = ${M} })`;
}

/** `M=6800 N*m; r=96.0 mm; 4 bolts`: n screws on a circle of that radius. */
const secondaryShear = (i: Inputs): string => {
  const n = /(\d+) bolts/.exec(i.text)?.[1] ?? "4";
  return `max(resultants(plane_forces(circle_pattern(${n}, 2 * ${after(i, "r", "mm")}, 0 deg), 0 N, 0 N, ${after(i, "M", "N·m")})))`;
};

/** `e=201 mm; pitch 50 mm`: three screws in a row, load of one at the eccentricity from the middle. */
const row = (i: Inputs): string => {
  const pitch = /pitch ([\d.]+) mm/.exec(i.text)?.[1];
  if (pitch === undefined) throw new MissingInput(`no pitch in "${i.text}"`);
  const pattern = `list_pattern([0 mm, ${pitch} mm, 2 * ${pitch} mm], [0 mm, 0 mm, 0 mm])`;
  return `max(resultants(plane_forces(${pattern}, 0 N, 1 N, 1 N * ${after(i, "e", "mm")}))) / 1 N`;
};

/** `rows at 30 and 180 mm from the edge; 2 bolts a row`, as places of all screws. */
const rows = (i: Inputs): string => {
  const [, near, far] = /rows at ([\d.]+) and ([\d.]+) mm/.exec(i.text) ?? [];
  const each = Number(/(\d+) bolts a row/.exec(i.text)?.[1] ?? "2");
  if (near === undefined || far === undefined) throw new MissingInput(`no rows in "${i.text}"`);
  return `[${[...Array<string>(each).fill(near), ...Array<string>(each).fill(far)].map((y) => `${y} mm`).join(", ")}]`;
};
const bracketMoment = (i: Inputs): string => `${after(i, "P", "kN")} * ${after(i, "e", "mm")}`;
const factors = (i: Inputs, safety: string): string => `Factors { safety = ${after(i, safety)}, fitting = ${after(i, "FF")} }`;

export const strengthEntries: readonly Entry[] = [
  ["preload stress Fi/At", (i) => `axial_stress(${after(i, "Fi", "kip")}, ${after(i, "At", "in^2")})`],
  [
    "service stress C*P/At+Fi/At",
    (i) => `service_stress(${after(i, "C")}, ${after(i, "P", "kip")}, ${after(i, "Fi", "kip")}, ${after(i, "At", "in^2")})`,
  ],
  ["overload load factor", overload],
  ["M30: load factor", overload],
  // "as JT-030": that row's numbers unless this one states others
  ["JT-031", (i) => `overload_factor(${capScrew.Sp(i)}, ${capScrew.At(i)}, ${capScrew.C(i)}, ${capScrew.P(i)}, ${capScrew.Fi(i)})`],
  ["yield (proof) factor np", (i) => onProof("proof_factor", i)],
  ["number of bolts", screwCount],
  ["Ex. 8-4: bolt count", screwCount],
  ["JT-033", (i) => `stress_amplitude(${capScrew.C(i)}, ${capScrew.P(i)}, ${capScrew.At(i)})`],
  ["JT-034", (i) => `mean_stress(${capScrew.C(i)}, ${capScrew.P(i)}, ${capScrew.Fi(i)}, ${capScrew.At(i)})`],
  ["strength amplitude on the load line, Goodman", (i) => amplitude("goodman", i, "ksi")],
  ["strength amplitude, Gerber", (i) => amplitude("gerber", i, "ksi")],
  ["JT-037", (i) => `elliptic_amplitude(${or(i, "Se", "ksi", "18.6 ksi")}, ${capScrew.Sp(i)}, ${or(i, "sigma_i", "ksi", "63.72 ksi")})`],
  ["M30: fatigue strength amplitude, Gerber", (i) => amplitude("gerber", i, "MPa")],
  // the amplitude it stands against is that of JT-038
  [
    "JT-039",
    (i) =>
      `gerber_amplitude(${or(i, "Se", "MPa", "129 MPa")}, ${or(i, "Sut", "MPa", "830 MPa")}, ${or(i, "sigma_i", "MPa", "450 MPa")}) / stress_amplitude(${after(i, "C")}, ${after(i, "P", "kN")}, ${after(i, "At", "mm^2")})`,
  ],
  ["JT-042", (i) => onProof("proof_factor", i)],
  ["JT-043", overload],
  ["JC-024", (i) => `vdi_endurance(${or(i, "d", "mm", "8 mm")}, "before heat treatment", 0.7)`],
  ["interaction, shank in plane", (i) => `interaction("shank in shear plane", ${after(i, "Rs")}, ${after(i, "Rt")})`],
  ["interaction, thread in plane", (i) => `interaction("thread in shear plane", ${after(i, "Rs")}, ${after(i, "Rt")})`],
  [
    "interaction with bending",
    (i) => `interaction_with_bending(${after(i, "Ra")}, ${after(i, "Rb")}, ${after(i, "K")}, ${after(i, "Rs")})`,
  ],
  // shear joints: JT-060 to JT-066 are one joint, each row states what the ones before did not
  ["JT-060", (i) => `2 * bearing_capacity(${plate.Sp(i)}, ${plate.d(i)}, ${plate.t(i)}) / ${plate.nd(i)}`],
  ["JT-061", (i) => `2 * bearing_capacity(${plate.Sy(i)}, ${plate.d(i)}, ${plate.t(i)}) / ${plate.nd(i)}`],
  ["JT-062", (i) => `shear_capacity(4, pi / 4 * (${plate.d(i)})^2, shear_yield_strength(${plate.Sp(i)})) / ${plate.nd(i)}`],
  ["JT-063", (i) => `shear_capacity(4, ${after(i, "Ar", "in^2")}, shear_yield_strength(${plate.Sp(i)})) / ${plate.nd(i)}`],
  [
    "JT-064",
    (i) => `2 * edge_shear_capacity(${after(i, "a", "in")}, ${plate.t(i)}, shear_yield_strength(${plate.Sy(i)})) / ${plate.nd(i)}`,
  ],
  ["JT-065", (i) => `${plate.Sy(i)} * net_area(${plate.w(i)}, ${or(i, "n", "", "1")}, ${plate.d(i)}, ${plate.t(i)}) / ${plate.nd(i)}`],
  ["JT-066", (i) => `${plate.Sy(i)} * net_area(${plate.w(i)}, 0, ${plate.d(i)}, ${plate.t(i)}) / ${plate.nd(i)}`],
  [
    "lap joint 8-40: bolt shear stress",
    (i) => {
      const [, n = "2", over = "3", under = "8"] = /(\d+) bolts (\d+)\/(\d+) in/.exec(i.text) ?? [];
      return `shear_stress(${lap.F(i)}, ${n}, pi / 4 * (${Number(over) / Number(under)} in)^2)`;
    },
  ],
  ["lap joint 8-40: bearing", (i) => `bearing_stress(${lap.F(i)} / ${/(\d+) holes/.exec(i.text)?.[1] ?? 2}, ${lap.d(i)}, ${lap.t(i)})`],
  [
    "lap joint 8-40: net tension",
    (i) =>
      `axial_stress(${lap.F(i)}, net_area(${after(i, "w", "in")}, 2, ${/([\d.]+) in holes/.exec(i.text)?.[1] ?? 0.375} in, ${lap.t(i)}))`,
  ],
  // the share of the worst of three screws is the answer of JT-074
  ["JT-076", (i) => `${after(i, "Sy", "MPa")} * ${after(i, "A", "mm^2")} / ${after(i, "n")} / 2.343`],
  ["EN bearing, vertical", enBearing],
  ["EN bearing, horizontal", enBearing],
  ["EN bearing, end bolt", endPlate],
  ["EN bearing, inner bolt", endPlate],
  [
    "EN bolt shear, thread in plane",
    (i) => `en_shear_resistance(${after(i, "alpha_v")}, ${after(i, "fub", "MPa")}, ${after(i, "As", "mm^2")}, ${after(i, "gM2")})`,
  ],
  [
    "JT-086",
    (i) => {
      const [, t = "10", w = "360", n = "5", d = "22"] = /Anet=([\d.]+)\(([\d.]+)-(\d+)\*([\d.]+)\)/.exec(i.text) ?? [];
      return `en_net_resistance(net_area(${w} mm, ${n}, ${d} mm, ${t} mm), ${after(i, "fu", "MPa")}, ${/fu\/([\d.]+)/.exec(i.text)?.[1]})`;
    },
  ],
  [
    "block tearing",
    (i) =>
      `en_block_resistance(${after(i, "Ant", "mm^2")}, ${after(i, "Anv", "mm^2")}, ${after(i, "fu", "MPa")}, ${after(i, "fy", "MPa")}, ${after(i, "gMu")}, 1)`,
  ],
  // under the head
  [
    "punching shear EN",
    (i) => {
      const [s = "", e = ""] = numbersIn(/dm=\(([^)]*)\)/.exec(i.text)?.[1] ?? "");
      return `en_punching_resistance(punching_diameter(${s} mm, ${e} mm), ${after(i, "tp", "mm")}, ${after(i, "fu", "MPa")}, ${after(i, "gM2")})`;
    },
  ],
  ["polymer pull-through", (i) => `pull_through_capacity(${after(i, "Dw", "mm")}, ${after(i, "t", "mm")}, ${after(i, "tau", "MPa")})`],
  ["pressure under head", (i) => `head_pressure(${after(i, "F", "N")}, ${after(i, "Dw", "mm")}, ${after(i, "dh", "mm")})`],
  ["prying, simple lever", (i) => `prying_lever(${after(i, "F", "N")}, ${after(i, "a", "mm")}, ${after(i, "b", "mm")})`],
  [
    "equivalent T-stub, mode 2",
    (i) => {
      const M_p = `plastic_moment(${after(i, "leff", "mm")}, ${after(i, "t", "mm")}, ${after(i, "fy", "MPa")}) / ${or(i, "gM0", "", "1")}`;
      return `t_stub_screws(${M_p}, ${after(i, "Ft", "kN")}, ${after(i, "m", "mm")}, ${after(i, "n", "mm")})`;
    },
  ],
  // margins
  ["margin, separation", (i) => `margin_of_safety(${after(i, "Ppmin", "N")}, ${after(i, "PtL", "N")}, ${factors(i, "FSsep")})`],
  [
    "margin, slip of a 4-bolt joint",
    (i) =>
      `slip_margin(${after(i, "mu")}, [${Array(4)
        .fill(after(i, "Ppmin", "N"))
        .join(", ")}], ${after(i, "V", "N")}, ${factors(i, "FS")})`,
  ],
  // groups
  [
    "bolt circle under bending moment, worst bolt",
    (i) =>
      `worst_tension_of_rotating_moment(circle_pattern(${after(i, "N")}, 2 * ${after(i, "R", "in")}, 0 deg), ${after(i, "M", "in·lbf")})`,
  ],
  ["bolt group in plane, elastic: secondary shear", secondaryShear],
  ["bolt group: worst bolts A,B", (i) => `worst_shear(${square(i)})`],
  ["bolt group: least loaded C,D", (i) => `min((${square(i)}).shear)`],
  ["three bolts in a row, eccentric: worst bolt", row],
  ["four-bolt bracket, in plane", (i) => `worst_shear(${square(i)})`],
  [
    "eccentric bolt group 2x5, shear",
    (i) => {
      const F = or(i, "Fv,Rd", "kN", "94 kN");
      return `en_group_resistance(${or(i, "nb", "", "10")}, ${F}, ${F}, ${after(i, "alpha")}, ${after(i, "beta")})`;
    },
  ],
  // "alpha, beta as above": those of JT-080
  [
    "JT-081",
    (i) =>
      `en_group_resistance(${or(i, "nb", "", "10")}, ${after(i, "Fb,ver", "kN")}, ${after(i, "Fb,hor", "kN")}, ${or(i, "alpha", "", "0.022")}, ${or(i, "beta", "", "0.105")})`,
  ],
  ["bracket, tilting edge", (i) => `max(tension_tipping(${rows(i)}, ${bracketMoment(i)}))`],
  ["JC-018", (i) => `max(tension_of_moment(${rows(i)}, ${bracketMoment(i)}))`],
];
