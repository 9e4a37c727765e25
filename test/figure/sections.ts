// Joints for the tests of sections: one for each way of making the thread, and others at the ends of the range. All invented.

import type { DrawnAnchor, DrawnNut, DrawnPart, DrawnScrew, SectionView } from "../../engine/figure/index.ts";

const mm = (value: number): number => value / 1000;

/** Socket screws: nominal diameter, pitch, head diameter, key. */
const sizes: Readonly<Record<string, readonly [d: number, P: number, dk: number, s: number]>> = {
  M2: [2, 0.4, 3.8, 1.5],
  M3: [3, 0.5, 5.5, 2.5],
  M5: [5, 0.8, 8.5, 4],
  M6: [6, 1, 10, 5],
  M8: [8, 1.25, 13, 6],
  M16: [16, 2, 24, 14],
};

export function screw(size: string, length: number, head: string = "socket", shank = 0): DrawnScrew {
  const [d, P, dk, s] = sizes[size] ?? [5, 0.8, 8.5, 4];
  const shape = { hexagon: [1.85, 0.68, 1.6], button: [1.9, 0.55, 0.6], countersunk: [2.1, 0.55, 0.6], flange: [2.3, 0.95, 1.6] }[head];
  return {
    record: "DrawnScrew",
    designation: size,
    grade: "8.8",
    d: mm(d),
    P: mm(P),
    core: mm(d - 1.2269 * P),
    head,
    d_k: mm(shape === undefined ? dk : d * (shape[0] ?? 1)),
    k: mm(shape === undefined ? d : d * (shape[1] ?? 1)),
    s: mm(shape === undefined ? s : d * (shape[2] ?? 1)),
    length: mm(length),
    shank: mm(shank),
  };
}

const part: DrawnPart = {
  record: "DrawnPart",
  name: "PA6-CF",
  t: mm(22),
  edge: undefined,
  boss: undefined,
  walls: 6,
  bead: mm(0.4),
  layer: mm(0.2),
  top_layers: 5,
  bottom_layers: 5,
  infill: 0.4,
  pattern: "gyroid",
  screw_to_build: 0,
  bridge: "none",
};

const base: Omit<SectionView, "anchor"> = {
  record: "SectionView",
  screw: screw("M5", 14),
  washer: undefined,
  plates: [{ record: "DrawnPlate", t: mm(5), hole: mm(5.5), made: "metal", name: "EN AW-6082" }],
  part,
  fibre: undefined,
  load: 183,
  failure: { record: "FailureMark", surface: "cylinder", r: mm(3.7), from: 0, to: mm(9.5), text: "first damage: wall cylinder, 1.48 kN" },
};

const insert: DrawnAnchor = {
  record: "DrawnInsert",
  name: "heat-set insert",
  hole: mm(6.5),
  bottom: mm(11),
  D: mm(7),
  L: mm(9.5),
  from: "loaded face",
  groove: mm(6),
  flange: undefined,
  knurl: "bands with groove",
  taper: 0,
  protrusion: 0,
  bonded: false,
};

const nut: DrawnNut = {
  record: "DrawnNut",
  name: "hexagon nut ISO 4032",
  place: "pocket",
  shape: "hexagon",
  s: mm(8),
  m: mm(4.7),
  pocket: mm(8.3),
  over: mm(6),
  opening: "side slot",
  ceiling: "bridged",
  hole: mm(5.5),
  bottom: mm(16),
  washer: undefined,
  sleeve: undefined,
};

const washer = { record: "DrawnWasher", outside: mm(10), inside: mm(5.3), h: mm(1), name: "washer ISO 7089" } as const;
const fails = (surface: string, r: number, from: number, to: number, text: string): SectionView["failure"] => ({
  record: "FailureMark",
  surface,
  r: mm(r),
  from: mm(from),
  to: mm(to),
  text,
});

export const sections: Readonly<Record<string, SectionView>> = {
  "insert from the loaded face": { ...base, anchor: insert },
  "insert proud of the face, tapered, near an edge": {
    ...base,
    part: { ...part, edge: mm(11), t: mm(16) },
    anchor: { ...insert, knurl: "plain bands", groove: undefined, taper: 0.02, protrusion: mm(0.15) },
  },
  "insert with a flange from the back, with rings and plies": {
    ...base,
    screw: screw("M6", 25),
    plates: [{ record: "DrawnPlate", t: mm(8), hole: mm(6.6), made: "metal", name: "S235JR" }],
    part: { ...part, t: mm(18), walls: 4 },
    fibre: {
      record: "DrawnFibre",
      name: "carbon strand",
      r: mm(5),
      turns: 3,
      rings: 8,
      strand: mm(0.9),
      from: mm(4),
      to: mm(16),
      plies: 4,
      ply: mm(0.125),
      plies_from: mm(1.2),
    },
    anchor: { ...insert, hole: mm(7.9), bottom: undefined, D: mm(8.7), L: mm(12.7), from: "back", groove: mm(7.4), flange: mm(11) },
    load: 7300,
    failure: fails("plug", 7.9, 0, 5.3, "ultimate: plies torn and insert pulled through, 7.3 kN"),
  },
  "self-cut": {
    ...base,
    screw: screw("M5", 16),
    anchor: { record: "DrawnThread", how: "self-cut", hole: mm(4.3), bottom: mm(14), L: mm(11) },
    failure: fails("cylinder", 2.5, 0, 11, "ultimate: thread stripped, 1.3 kN"),
  },
  formed: {
    ...base,
    screw: screw("M5", 16, "button"),
    part: { ...part, boss: mm(13), walls: 5 },
    anchor: { record: "DrawnThread", how: "formed", hole: mm(4.1), bottom: mm(14), L: mm(11) },
    failure: fails("split", 6, 2, 11, "first damage: boss splits, 0.9 kN"),
  },
  tapped: {
    ...base,
    screw: screw("M6", 20, "hexagon"),
    washer: { ...washer, outside: mm(12), h: mm(1.6) },
    anchor: { record: "DrawnThread", how: "tapped", hole: mm(5), bottom: mm(18), L: mm(12.7) },
    failure: fails("cylinder", 3, 0, 12.7, "ultimate: thread stripped, 3.0 kN"),
  },
  "printed thread": {
    ...base,
    screw: screw("M8", 25, "flange"),
    part: { ...part, t: mm(40) },
    anchor: { record: "DrawnThread", how: "printed", hole: mm(7.0), bottom: mm(22), L: mm(16) },
    failure: fails("cylinder", 4, 0, 16, "ultimate: thread stripped, 2.2 kN"),
  },
  "flush nut with washer": {
    ...base,
    screw: screw("M5", 22),
    part: { ...part, t: mm(16) },
    anchor: { ...nut, place: "flush", washer, pocket: mm(10.4), hole: mm(5.5), bottom: undefined },
    failure: fails("cone", 9, 0, 10.3, "ultimate: nut pulled through, 3.0 kN"),
  },
  "square nut in a pocket": {
    ...base,
    screw: screw("M5", 22),
    anchor: { ...nut, name: "square nut DIN 562", shape: "square", m: mm(2.7) },
    failure: fails("face", 4, 6, 6, "first damage: bearing face crushed, 1.2 kN"),
  },
  "nut in a paused print": {
    ...base,
    screw: screw("M5", 20),
    anchor: { ...nut, opening: "paused print", ceiling: "supported" },
    failure: fails("plug", 4.3, 0, 6, "ultimate: plug torn out, 2.6 kN"),
  },
  "wire insert": {
    ...base,
    screw: screw("M6", 18),
    anchor: { record: "DrawnWire", hole: mm(6.3), major: mm(7.3), L: mm(9), bottom: mm(14) },
    failure: fails("cylinder", 3.65, 0, 9, "ultimate: coil pulled out, 2.9 kN"),
  },
  "bonded sleeve": {
    ...base,
    anchor: { ...insert, name: "bonded insert", knurl: "none", groove: undefined, bonded: true, D: mm(8), hole: mm(8.1) },
  },
  "through bolt with compression sleeve": {
    ...base,
    screw: screw("M6", 45, "hexagon", 27),
    washer: { ...washer, outside: mm(12), h: mm(1.6) },
    plates: [
      { record: "DrawnPlate", t: mm(4), hole: mm(6.6), made: "metal", name: "EN AW-6082" },
      { record: "DrawnPlate", t: mm(5), hole: mm(7), made: "printed", name: "PETG cover" },
    ],
    part: { ...part, t: mm(24), edge: mm(12) },
    anchor: {
      ...nut,
      place: "far face",
      s: mm(10),
      m: mm(5.2),
      hole: mm(9),
      bottom: undefined,
      washer: { ...washer, outside: mm(18), h: mm(1.6) },
      sleeve: { record: "DrawnSleeve", name: "steel sleeve", D: mm(9), d: mm(6.4), L: mm(24) },
    },
    failure: fails("screw", 3, -6, -6, "ultimate: screw, 16.1 kN"),
  },
  "countersunk into a lying hole": {
    ...base,
    screw: screw("M5", 15, "countersunk"),
    part: { ...part, screw_to_build: Math.PI / 2, bridge: "bridged", t: mm(20), edge: mm(12) },
    anchor: { ...insert, protrusion: mm(-0.3) },
    failure: fails("layer", 6, 0, 9.8, "first damage: layers part, 0.8 kN"),
  },
  "M2 in a thin part": {
    ...base,
    screw: screw("M2", 5),
    plates: [{ record: "DrawnPlate", t: mm(1.2), hole: mm(2.4), made: "metal", name: "EN AW-5754" }],
    part: { ...part, t: mm(4.5), walls: 3 },
    anchor: { ...insert, hole: mm(3), D: mm(3.5), L: mm(3), groove: mm(3), bottom: undefined },
    load: 40,
    failure: fails("cylinder", 1.9, 0, 3, "first damage: wall cylinder, 210 N"),
  },
  "M16 in a thick part": {
    ...base,
    screw: screw("M16", 60, "hexagon", 10),
    washer: { ...washer, outside: mm(30), h: mm(3) },
    plates: [{ record: "DrawnPlate", t: mm(20), hole: mm(17.5), made: "metal", name: "S355J2" }],
    part: { ...part, t: mm(120), walls: 8, infill: 0.25 },
    anchor: { ...insert, D: mm(22), hole: mm(20.8), L: mm(32), groove: mm(20), bottom: mm(42) },
    load: 9000,
    failure: fails("cylinder", 11.4, 0, 32, "first damage: wall cylinder, 12 kN"),
  },
  "solid part, nothing known of its size": {
    ...base,
    plates: [],
    screw: screw("M3", 10),
    part: { ...part, t: undefined, infill: 1 },
    anchor: { record: "DrawnThread", how: "tapped", hole: mm(2.5), bottom: undefined, L: mm(8) },
    load: undefined,
    failure: undefined,
  },
};
