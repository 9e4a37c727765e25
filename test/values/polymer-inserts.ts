// Expressions for the published values of inserts, nuts and reinforcement. By id where rows are one of a kind.

import { type Inputs, MissingInput } from "./inputs.ts";
import { after, type Entry, numbersIn, or } from "./joint-inputs.ts";

const wall = (i: Inputs): string => `wall_geometry_factor(${after(i, "D", "in")} / (${after(i, "OD", "in")}))`;

const interference = (i: Inputs): string =>
  `interference_hoop_stress(${["I", "D"].map((key) => after(i, key, "in")).join(", ")}, ${after(i, "E", "psi")}, ${after(i, "W")}, ${after(i, "nu")})`;

/** `D=4.6, L=5.7, tau=14.17 MPa`, and a fill factor where the row states one. */
const turnedOut = (i: Inputs): string => `knurl_torque_capacity(${after(i, "tau", "MPa")}, ${after(i, "D", "mm")}, ${after(i, "L", "mm")})`;

/** `k=OD/ID=1.5`; the ratio is the last number of the row. */
const hoop = (i: Inputs): string => `hoop_over_pressure(${last(i)})`;

/** `F=500 N; Dm=5; L=5 mm; half-angle 4 deg; mu=0.2`, the hoop stress of a boss where the row states its ratio. */
const wedge = (i: Inputs): string => {
  const angle = /half-angle\s*=?\s*([\d.]+)/.exec(i.text)?.[1] ?? "4";
  const pressure = `wedge_pressure(${or(i, "F", "N", "500 N")}, ${or(i, "Dm", "mm", "5 mm")}, ${or(i, "L", "mm", "5 mm")}, ${angle} deg, ${or(i, "mu", "", "0.2")})`;
  return /\bk\s*=/.test(i.text) ? `${pressure} * hoop_over_pressure(${last(i)})` : pressure;
};

/** `M5: s=8.0, clearance 5.5` */
const bearing = (i: Inputs): string => `hexagon_bearing_area(${after(i, "s", "mm")}, ${last(i)} mm)`;

const plug = (i: Inputs): string =>
  `punch_shear_capacity(${after(i, "tau", "MPa")}, hexagon_perimeter(${after(i, "s", "mm")}), ${after(i, "t", "mm")})`;

/** Rows after the first of the set state only how they differ from it. */
const pocket =
  (stage: "elastic" | "plastic", share: string) =>
  (i: Inputs): string =>
    `${share}hexagon_pocket_torque(${or(i, "sigma", "MPa", "50 MPa")}, ${or(i, "m", "mm", "2.4 mm")}, ${or(i, "s", "mm", "5.5 mm")}, "${stage}")`;

/** `8 rings, strand 0.1125 mm2, 800 MPa`, straight strands. */
const rings = (i: Inputs): string => {
  const [n, strand, sigma] = /^([\d.]+) rings, strand ([\d.]+) mm2, ([\d.]+) MPa/.exec(i.text)?.slice(1) ?? [];
  if (sigma === undefined) throw new MissingInput(`no rings in "${i.text}"`);
  return `ring_hoop_force(${n}, ${strand} mm^2, ${sigma} MPa, 1)`;
};

const ringPressure = (i: Inputs): string => `ring_pressure(${or(i, "T", "N", "720 N")}, ${after(i, "r", "mm")}, ${after(i, "h", "mm")})`;

const sharing = (i: Inputs): string =>
  `fibre_share(${after(i, "Ef", "GPa")}, ${after(i, "Af", "mm^2")}, ${after(i, "Em", "GPa")}, ${after(i, "Am", "mm^2")})`;

const besideFibre = (i: Inputs): string =>
  `polymer_stress_at_fibre_strength(${or(i, "sigma_f", "MPa", "800 MPa")}, ${after(i, "Ef", "GPa")}, ${after(i, "Em", "GPa")})`;

const lekhnitskii = (i: Inputs): string =>
  `orthotropic_hole_factor(${after(i, "Ex", "GPa")}, ${after(i, "Ey", "GPa")}, ${after(i, "G", "GPa")}, ${after(i, "nu")})`;

const isotropic = (i: Inputs): string => {
  const [E, nu] = [after(i, "E"), after(i, "nu")];
  return `orthotropic_hole_factor(${E} GPa, ${E} GPa, ${E} GPa / (2 * (1 + ${nu})), ${nu})`;
};

/** Five digits are printed of a third. */
const limits = (): string => "[point_stress_share(0 mm, 1 mm), round(point_stress_share(1000 km, 1 mm), 0.00001)]";

/** `s=5.5, total clearance 0.2 mm` */
const rotation = (i: Inputs): string =>
  `nut_free_rotation(${after(i, "s", "mm")}, ${/clearance ([\d.]+)/.exec(i.text)?.[1] ?? last(i)} mm)`;

function last(i: Inputs): string {
  const number = numbersIn(i.text).at(-1);
  if (number === undefined) throw new MissingInput(`no number in "${i.text}"`);
  return number;
}

export const polymerInsertEntries: readonly Entry[] = [
  ["thick-wall geometry factor W=(1+k^2)/(1-k^2), k=D/OD", wall],
  ["CV03", interference],
  ["insert torque-out T = tau*pi*D^2*L/2", turnedOut],
  ["boss hoop stress at bore, sigma/p = (k^2+1)/(k^2-1)", hoop],
  ["CV40", wedge],
  ["CV41", wedge],
  ["nut bearing area = 0.8660 s^2 - pi/4 dh^2", bearing],
  ["plug shear F = tau * 2 sqrt3 s * t", plug],
  ["CV46", pocket("elastic", "")],
  ["CV47", pocket("plastic", "")],
  ["CV48", pocket("plastic", "slot_share(false) * ")],
  ["fibre ring hoop force", rings],
  ["pressure carried by the ring p = T/(r h)", ringPressure],
  ["CV51", sharing],
  ["polymer stress when the ring reaches 800 MPa", besideFibre],
  ["CV60", (i) => `hole_factor_net(${after(i, "d/W")} * 1 mm, 1 mm)`],
  ["CV61", lekhnitskii],
  ["CV62", isotropic],
  ["point-stress criterion sN/s0 = 2/(2+x^2+3x^4)", (i) => `point_stress_share(${after(i, "R", "mm")}, ${after(i, "d0", "mm")})`],
  ["average-stress criterion sN/s0 = 2(1-x)/(2-x^2-x^4)", (i) => `average_stress_share(${after(i, "R", "mm")}, ${after(i, "a0", "mm")})`],
  ["point-stress limits", limits],
  ["CV72", rotation],
  ["clearance ratio at which a hexagon nut spins freely", () => "spin_clearance_ratio()"],
];
