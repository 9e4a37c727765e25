// The plan of a section: how large, where the axis and the loaded face stand, how far the part is shown, the steps of its hole.

import type { Point } from "./scene.ts";
import type { SectionView } from "./section-view.ts";

/** A stretch of the hole: a cylinder of radius r between two depths; `right` where a slot leaves to the right. */
export interface Step {
  readonly from: number;
  readonly to: number;
  readonly r: number;
  readonly right?: number;
  /** Radius of the printed hole, round which the walls run, where something made it wider afterwards. */
  readonly printed?: number;
}

export const printedRadius = (step: Step): number => step.printed ?? step.r;

export interface Plan {
  readonly view: SectionView;
  /** Pixels a metre. */
  readonly scale: number;
  /** Pixels of picture to pixels of the thing at full size. */
  readonly ratio: number;
  /** Of the axis, in pixels. */
  readonly axis: number;
  readonly x: (metres: number) => number;
  readonly y: (depth: number) => number;
  /** Top of the plates, under the washer: negative. */
  readonly plateTop: number;
  /** Under the head, or at the top of a countersunk one. */
  readonly bearing: number;
  readonly headTop: number;
  readonly tip: number;
  /** Where the part ends in the picture. */
  readonly bottom: number;
  /** Whether it goes on below. */
  readonly goesOn: boolean;
  readonly left: number;
  readonly right: number;
  readonly leftEnds: boolean;
  readonly rightEnds: boolean;
  /** Half the width of the plates in the picture. */
  readonly plateHalf: number;
  readonly steps: readonly Step[];
  /** Thickness of the printed wall round the hole. */
  readonly wall: number;
  readonly topSkin: number;
  readonly bottomSkin: number;
  /** The layers stand along the screw in the picture: the screw lies across the build direction. */
  readonly lying: boolean;
}

const PIXELS_A_METRE = 96 / 0.0254;
const RATIOS = [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20];
const BODY_WIDTH = 430;
const BODY_HEIGHT = 490;

export const countersunk = (view: SectionView): boolean => view.screw.head === "countersunk";

/** `origin`: where the axis and the top of the picture's body stand. */
export function planSection(view: SectionView, origin: Point): Plan {
  const { screw, part } = view;
  const stack = view.plates.reduce((sum, plate) => sum + plate.t, 0);
  const plateTop = -stack;
  const bearing = plateTop - (countersunk(view) ? 0 : (view.washer?.h ?? 0));
  const headTop = countersunk(view) ? bearing : bearing - screw.k;
  const tip = bearing + screw.length;
  const wall = part.walls * part.bead;
  const lying = part.screw_to_build > Math.PI / 4;
  const deepest = lowest(view, tip);
  const least = Math.max(deepest + 1.1 * screw.d, 1.5 * screw.d);
  const ends = part.t !== undefined && (endsAtFarFace(view) || part.t <= 2 * least);
  const bottom = ends ? (part.t as number) : least;
  const widest = Math.max(widestAt(view) + wall, ...[screw.d_k, view.washer?.outside ?? 0, (view.failure?.r ?? 0) * 2].map((d) => d / 2));
  const half = Math.max(widest + 0.9 * screw.d, 1.6 * widest);
  const boss = part.boss === undefined ? undefined : part.boss / 2;
  const rightEnds = boss !== undefined || (part.edge !== undefined && part.edge <= 1.35 * half);
  const right = boss ?? (rightEnds ? (part.edge as number) : half);
  const left = boss ?? half;
  const plateHalf = Math.max(half, boss === undefined ? 0 : boss + 0.5 * screw.d);
  const top = Math.min(headTop, plateTop, ...(view.anchor.record === "DrawnInsert" ? [-view.anchor.protrusion] : []));
  const below = view.anchor.record === "DrawnNut" && view.anchor.place === "far face" ? Math.max(tip, bottom) : Math.max(bottom, tip);
  const width = Math.max(left, plateHalf) + Math.max(right, plateHalf);
  const room = Math.min(BODY_WIDTH / (width * PIXELS_A_METRE), BODY_HEIGHT / ((below - top) * PIXELS_A_METRE));
  const ratio = [...RATIOS].reverse().find((one) => one <= room) ?? room;
  const scale = ratio * PIXELS_A_METRE;
  const axis = origin[0] + Math.max(left, plateHalf) * scale;
  const zero = origin[1] - top * scale;
  const plan = {
    view,
    scale,
    ratio,
    axis,
    x: (metres: number) => axis + metres * scale,
    y: (depth: number) => zero + depth * scale,
    plateTop,
    bearing,
    headTop,
    tip,
    bottom,
    goesOn: !ends,
    left,
    right,
    leftEnds: boss !== undefined,
    rightEnds,
    plateHalf,
    wall,
    topSkin: part.top_layers * part.layer,
    bottomSkin: part.bottom_layers * part.layer,
    lying,
  };
  return { ...plan, steps: holeSteps(view, bottom, right) };
}

function endsAtFarFace({ anchor }: SectionView): boolean {
  if (anchor.record === "DrawnNut") return anchor.place !== "pocket" || anchor.opening === "far face" || anchor.bottom === undefined;
  return anchor.record === "DrawnInsert" && anchor.from === "back";
}

/** The deepest thing that must be seen. */
function lowest({ anchor, part }: SectionView, tip: number): number {
  const far = part.t ?? 0;
  switch (anchor.record) {
    case "DrawnInsert":
      return anchor.from === "back" ? far : Math.max(tip, anchor.L, anchor.bottom ?? 0);
    case "DrawnThread":
    case "DrawnWire":
      return Math.max(tip, anchor.L, anchor.bottom ?? 0);
    case "DrawnNut":
      return anchor.place === "pocket" ? Math.max(tip, anchor.over + anchor.m, anchor.bottom ?? 0) : Math.max(tip, far);
  }
}

function widestAt({ anchor, fibre }: SectionView): number {
  const rings = fibre === undefined || fibre.rings === 0 ? 0 : fibre.r + fibre.turns * fibre.strand;
  switch (anchor.record) {
    case "DrawnInsert":
      return Math.max(anchor.D / 2, (anchor.flange ?? 0) / 2, rings);
    case "DrawnThread":
      return Math.max(anchor.hole / 2, rings);
    case "DrawnWire":
      return Math.max(anchor.major / 2, rings);
    case "DrawnNut":
      return Math.max(
        anchor.s / 2,
        anchor.place === "far face" ? 0 : anchor.pocket / 2,
        (anchor.washer?.outside ?? 0) / 2,
        (anchor.sleeve?.D ?? 0) / 2,
        rings,
      );
  }
}

function holeSteps(view: SectionView, bottom: number, right: number): readonly Step[] {
  const { anchor } = view;
  switch (anchor.record) {
    case "DrawnInsert":
      return insertSteps(anchor, bottom);
    case "DrawnThread":
      return [{ from: 0, to: anchor.bottom ?? bottom, r: anchor.hole / 2 }];
    case "DrawnWire":
      return [{ from: 0, to: anchor.bottom ?? bottom, r: anchor.hole / 2 }];
    case "DrawnNut":
      return nutSteps(anchor, bottom, right);
  }
}

type InsertAnchor = Extract<SectionView["anchor"], { record: "DrawnInsert" }>;
type NutAnchor = Extract<SectionView["anchor"], { record: "DrawnNut" }>;

/** The insert displaced or melted its way in: along it the hole is as wide as its knurl. */
function insertSteps(anchor: InsertAnchor, bottom: number): readonly Step[] {
  const [narrow, wide] = [anchor.hole / 2, anchor.D / 2];
  const printed = Math.min(narrow, wide);
  const inside = Math.max(0, anchor.L - anchor.protrusion);
  if (anchor.from === "back") {
    return [
      { from: 0, to: bottom - inside, r: narrow },
      { from: bottom - inside, to: bottom, r: wide, printed },
    ];
  }
  const end = Math.max(inside, anchor.bottom ?? bottom);
  return [{ from: 0, to: inside, r: wide, printed }, ...(end > inside ? [{ from: inside, to: end, r: narrow }] : [])];
}

function nutSteps(anchor: NutAnchor, bottom: number, right: number): readonly Step[] {
  const r = (anchor.sleeve?.D ?? anchor.hole) / 2;
  if (anchor.place === "far face") return [{ from: 0, to: bottom, r }];
  const pocket = anchor.pocket / 2;
  if (anchor.place === "flush") {
    const depth = anchor.m + (anchor.washer?.h ?? 0);
    return [
      { from: 0, to: bottom - depth, r },
      { from: bottom - depth, to: bottom, r: pocket },
    ];
  }
  const room = pocketRoom(anchor);
  const end = anchor.over + room;
  const through = anchor.opening === "far face";
  return [
    { from: 0, to: anchor.over, r },
    { from: anchor.over, to: through ? bottom : end, r: pocket, ...(anchor.opening === "side slot" ? { right } : {}) },
    ...(through ? [] : [{ from: end, to: Math.max(end, anchor.bottom ?? bottom), r }]),
  ];
}

/** A pocket is made higher than its nut by the play that it has across flats. */
export const pocketRoom = (anchor: NutAnchor): number => anchor.m + (anchor.pocket - anchor.s);
