// Expressions for the published values of printed plastics: mixtures, creep, infill, layers, effective strength. By id, since most rows are one of a kind.

import { MissingInput } from "./inputs.ts";
import { after, type Entry } from "./joint-inputs.ts";
import { polymerAnchorEntries } from "./polymer-anchors.ts";
import { polymerInsertEntries } from "./polymer-inserts.ts";

/** The groups of a pattern in the row's inputs. */
function groups(text: string, pattern: RegExp): readonly string[] {
  const found = pattern.exec(text);
  if (found === null) throw new MissingInput(`no ${pattern.source} in "${text}"`);
  return found.slice(1);
}

const MODULUS_OF_SOLID = "3500 MPa";

const ownEntries: readonly Entry[] = [
  ["CV01", (i) => `mixture_modulus(${after(i, "Vf")}, ${after(i, "Ef", "GPa")}, ${after(i, "Em", "GPa")})`],
  ["CV53", (i) => `transverse_modulus(${after(i, "Vf")}, ${after(i, "Ef2", "GPa")}, ${after(i, "Em", "GPa")}, ${after(i, "xi")})`],
  // clamp force and creep
  ["remaining clamp force ratio Ft/F0", (i) => `laminate_clamp_left(${after(i, "t", "week")}, ${after(i, "a_th")})`],
  ["time to 20 % loss (Ft/F0=0.8)", (i) => `laminate_time_to(0.8, ${after(i, "a_th")})`],
  ["time to 50 % loss", (i) => `laminate_time_to(0.5, ${after(i, "a_th")})`],
  ["shift factor a_th", (i) => `laminate_shift(${after(i, "Ft/F0")}, ${after(i, "t", "week")})`],
  [
    "Findley strain e0+m t^n",
    (i) => `findley_strain(${after(i, "e0", "%")}, ${after(i, "m", "%")}, ${after(i, "n")}, ${after(i, "t", "h")})`,
  ],
  // the row before states the numbers
  ["creep modulus ratio from it", () => "findley_modulus_share(0.5 %, 0.05 %, 0.2, 1000 h)"],
  [
    "preload left by member creep (1/kb+1/km)/(1/kb+phi/km)",
    (i) => `1 * creep_retention(1 / (${after(i, "kb", "N/mm")}), 1 / (${after(i, "km", "N/mm")}), ${after(i, "phi")})`,
  ],
  [
    "thermal preload change = da*dT*Lc/(1/kb+1/km)",
    (i) => {
      const [plastic = "", steel = ""] = groups(i.text, /da=([\d.e-]+)-([\d.e-]+e-\d+)/);
      const [screw, members] = [`1 / (${after(i, "kb", "N/mm")})`, `1 / (${after(i, "km", "N/mm")})`];
      return `thermal_preload_change(${after(i, "dT", "K")}, [${after(i, "Lc", "mm")}], [${plastic} K^-1], ${steel} K^-1, ${screw}, ${members})`;
    },
  ],
  // layers
  [
    "filament strength implied by interlayer test",
    (i) => {
      const [strength, loss] = groups(i.text, /([\d.]+) MPa is a ([\d.]+) %/);
      return `strength_before_loss(${strength} MPa, ${loss} %)`;
    },
  ],
  // the row before states the loss
  ["Z/filament strength ratio PLA", (i) => `${groups(i.text, /^([\d.]+)/)[0]} MPa / strength_before_loss(22.8 MPa, 47.8 %)`],
  ["interlayer strength fit 79.9-62.8 h/dn", (i) => `layer_strength_fit(${after(i, "h", "mm")}, ${after(i, "dn", "mm")})`],
  // infill
  ["open-cell foam modulus E=Es*rho^2", (i) => `open_cell_modulus(${after(i, "Es", "MPa")}, ${after(i, "rho")})`],
  ["open-cell plateau 0.3*sy*rho^1.5", (i) => `open_cell_crush(${after(i, "sy", "MPa")}, ${after(i, "rho")})`],
  ["triangular lattice in-plane E=Es*rho/3", (i) => `triangular_modulus(${after(i, "Es", "MPa")}, ${after(i, "rho")})`],
  [
    "hexagonal honeycomb in-plane E=(4/sqrt3)(t/l)^3 Es",
    (i) => `hexagon_modulus(${MODULUS_OF_SOLID}, hexagon_slenderness(${after(i, "rho")}))`,
  ],
  // pulls
  [
    "apparent shear stress from a read test",
    (i) => {
      const [F, d, L] = groups(i.text, /: ([\d.]+) N; ([\d.]+) x ([\d.]+) mm/);
      return `cylinder_shear(${F} N, ${d} mm, ${L} mm)`;
    },
  ],
  [
    "PLA screw load from solid shear strength and rho^2",
    (i) => {
      const [tau, d, L] = groups(i.text, /^([\d.]+) MPa, ([\d.]+)x([\d.]+)/);
      return `${tau} MPa * cylinder_area(${d} mm, ${L} mm) * infill_power_share(${after(i, "rho")}, 2)`;
    },
  ],
];

export const polymerEntries: readonly Entry[] = [...ownEntries, ...polymerAnchorEntries, ...polymerInsertEntries];
