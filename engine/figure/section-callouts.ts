// What the callouts of a section say and what each points at, always left of the axis.

import type { Callout } from "./callouts.ts";
import type { Point, Role } from "./scene.ts";
import { insertSpan, nutSpan } from "./section-anchor.ts";
import { failureLines } from "./section-extras.ts";
import { countersunk, type Plan, printedRadius } from "./section-plan.ts";
import type { SectionWriter } from "./section-words.ts";

export function sectionCallouts(plan: Plan, { length, thin, lengthUnit }: SectionWriter): readonly Callout[] {
  const { view } = plan;
  const { screw, part, fibre } = view;
  const size = (metres: number): string => `${length(metres)} ${lengthUnit}`;
  const fine = (metres: number): string => `${thin(metres)} ${lengthUnit}`;
  const out: Callout[] = [];
  const add = (words: string, x: number, depth: number, role: Role = "ink"): void => {
    if (words !== "") out.push({ words, target: [plan.x(x), plan.y(depth)], role });
  };
  const headMiddle = countersunk(view) ? plan.headTop + 0.35 * screw.k : (plan.headTop + plan.bearing) / 2;
  add(`${screw.designation} × ${length(screw.length)}${screw.grade === "" ? "" : `, ${screw.grade}`}`, -0.34 * screw.d_k, headMiddle);
  if (view.washer !== undefined && !countersunk(view))
    add(view.washer.name, -(view.washer.outside / 2 + Math.max(screw.d_k, screw.d) / 2) / 2, plan.bearing + view.washer.h / 2);
  let top = plan.plateTop;
  view.plates.forEach((plate, i) => {
    add(`${plate.name}, ${size(plate.t)}`, -0.62 * plan.plateHalf, top + 0.5 * plate.t, plate.made === "printed" ? "printed" : "ink");
    if (plate.hole > screw.d && i === view.plates.length - 1)
      add(`clearance hole ⌀ ${length(plate.hole)}`, -(plate.hole + screw.d) / 4, top + 0.72 * plate.t);
    top += plate.t;
  });
  addAnchor(plan, add, size, length);
  if (fibre !== undefined) {
    if (fibre.rings > 0) {
      const depth = fibre.from + (Math.floor(fibre.rings / 2) + 0.5) * ((fibre.to - fibre.from) / fibre.rings);
      add(
        `${fibre.name}: ${fibre.turns} ${fibre.turns === 1 ? "turn" : "turns"} in ${fibre.rings} layers`,
        -(fibre.r + (fibre.turns - 0.5) * fibre.strand),
        depth,
        "fibre",
      );
    }
    if (fibre.plies > 0)
      add(
        `${fibre.plies} ${fibre.plies === 1 ? "ply" : "plies"} in all directions, ${fine(fibre.ply)} each`,
        -0.8 * plan.left,
        fibre.plies_from + (fibre.plies / 2) * fibre.ply,
        "fibre",
      );
  }
  const first = plan.steps[0];
  const wallAt = first === undefined ? 0 : wallSpot(plan);
  const solid = part.infill >= 0.995;
  if (!solid) {
    const faces = plan.lying ? `${part.walls} walls along the face` : `${part.top_layers} top layers`;
    const skin = plan.lying ? plan.wall : plan.topSkin;
    if (skin > 0 && (fibre === undefined || fibre.plies === 0 || fibre.plies_from > skin))
      add(faces, -0.78 * plan.left, skin / 2, "printed");
    if (plan.lying) {
      add(
        `${part.top_layers} layers below and ${part.bottom_layers} above the hole${part.bridge === "none" || part.bridge === "" ? "" : `, roof ${part.bridge}`}`,
        -((first?.r ?? 0) + plan.topSkin / 2),
        wallAt,
        "printed",
      );
    } else if (plan.wall > 0)
      add(`${part.walls} walls, bead ${fine(part.bead)}`, -(radiusAt(plan, wallAt) + 0.7 * plan.wall), wallAt, "printed");
    add(
      `infill ${Math.round(part.infill * 100)} %${part.pattern === "" ? "" : `, ${part.pattern}`}`,
      -infillAt(plan),
      infillDepth(plan),
      "printed",
    );
    if (!plan.goesOn && !plan.lying && plan.bottomSkin > 0)
      add(`${part.bottom_layers} bottom layers`, -0.7 * plan.left, plan.bottom - plan.bottomSkin / 2, "printed");
  }
  add(
    `${part.name}${solid ? ", solid" : ""}, layers ${fine(part.layer)}`,
    -0.9 * plan.left,
    solid ? 0.6 * plan.bottom : infillDepth(plan) * 0.25 + 0.75 * (plan.bottom - (plan.goesOn ? 0 : plan.bottomSkin)) - 0.002,
    "printed",
  );
  const { failure } = view;
  if (failure !== undefined && failure.text !== "") {
    const line = failureLines(plan, failure)[0] ?? [];
    out.push({ words: failure.text, target: leftMiddle(plan, line), role: "failure" });
  }
  return out;
}

type Add = (words: string, x: number, depth: number, role?: Role) => void;

function addAnchor(plan: Plan, add: Add, size: (metres: number) => string, length: (metres: number) => string): void {
  const { anchor, screw } = plan.view;
  switch (anchor.record) {
    case "DrawnInsert": {
      const [from, to] = insertSpan(plan, anchor);
      const where = anchor.from === "back" ? ", from the back" : "";
      add(
        `${anchor.name} ⌀ ${length(anchor.D)} × ${length(anchor.L)}${where}`,
        -(anchor.D / 2 + screw.d / 2) / 2,
        from + 0.32 * (to - from),
        "insert",
      );
      const below = anchor.from === "back" ? from / 2 : (to + (plan.steps.at(-1)?.to ?? to)) / 2;
      const open = Math.abs((plan.steps.at(-1)?.to ?? to) - to) > 0.3e-3 || anchor.from === "back";
      add(
        `hole ⌀ ${length(anchor.hole)} before the insert`,
        -(anchor.hole / 2) * (open ? 0.98 : 1),
        open ? below : to - 0.06 * (to - from),
        "ink",
      );
      break;
    }
    case "DrawnThread": {
      const made = { "self-cut": "hole", formed: "hole", tapped: "tap drill", printed: "printed thread, core" }[anchor.how];
      const how = { "self-cut": ", thread cut by the screw", formed: ", thread formed by the screw", tapped: "", printed: "" }[anchor.how];
      add(`${made} ⌀ ${length(anchor.hole)}${how}`, -(anchor.hole + screw.d) / 4, 0.55 * anchor.L);
      break;
    }
    case "DrawnWire":
      add(`wire insert, ${size(anchor.L)} long`, -(screw.d / 2 + anchor.major / 2) / 2, 0.3 * anchor.L, "insert");
      add(`drilled ⌀ ${length(anchor.hole)}, tapped ⌀ ${length(anchor.major)}`, -anchor.major / 2, 0.75 * anchor.L);
      break;
    case "DrawnNut": {
      const [from, to] = nutSpan(plan, anchor);
      add(`${anchor.name}, ${size(anchor.m)} high`, -0.36 * anchor.s, (from + to) / 2);
      if (anchor.sleeve !== undefined)
        add(
          `${anchor.sleeve.name}, ⌀ ${length(anchor.sleeve.D)} × ${length(anchor.sleeve.L)}`,
          -(anchor.sleeve.D + anchor.sleeve.d) / 4,
          0.42 * anchor.sleeve.L,
        );
      else add(`clearance hole ⌀ ${length(anchor.hole)} in the part`, -(anchor.hole + screw.d) / 4, 0.4 * (plan.steps[0]?.to ?? from));
      if (anchor.washer !== undefined) add(anchor.washer.name, -0.45 * anchor.washer.outside, from - anchor.washer.h / 2);
      if (anchor.place === "pocket") {
        const opening = { "side slot": "slot to the side", "paused print": "closed in a paused print", "far face": "open to the far face" }[
          anchor.opening
        ];
        add(`pocket, ${opening}; bearing face ${anchor.ceiling}`, -(anchor.hole + anchor.pocket) / 4, anchor.over, "printed");
      }
    }
  }
}

/** Radius of the hole at a depth. */
const radiusAt = (plan: Plan, depth: number): number => {
  const step = plan.steps.find((one) => one.from <= depth && depth <= one.to) ?? plan.steps.at(-1);
  return step === undefined ? 0 : printedRadius(step);
};

/** Depth where the wall round the hole is free of other things to point at. */
function wallSpot(plan: Plan): number {
  const { anchor, fibre } = plan.view;
  const last = plan.steps.at(-1);
  const end = last?.to ?? plan.bottom;
  if (fibre !== undefined && fibre.rings > 0) {
    const above = fibre.from - plan.topSkin;
    return above > 1e-3 ? plan.topSkin + 0.85 * above : Math.max(plan.topSkin, Math.min(end, fibre.to + 0.4 * Math.max(0, end - fibre.to)));
  }
  switch (anchor.record) {
    case "DrawnInsert":
      return anchor.from === "back" ? 0.75 * (plan.steps[0]?.to ?? end) : 0.8 * Math.min(end, anchor.L);
    case "DrawnNut":
      return anchor.place === "pocket" ? 0.7 * anchor.over : 0.75 * (plan.steps[0]?.to ?? end);
    default:
      return 0.85 * Math.min(end, anchor.L);
  }
}

const infillAt = (plan: Plan): number => {
  const inner = Math.max(...plan.steps.map(printedRadius)) + (plan.lying ? plan.topSkin : plan.wall);
  const outer = plan.left - (plan.leftEnds ? plan.wall : 0);
  return inner + 0.5 * (outer - inner);
};

const infillDepth = (plan: Plan): number => {
  const [from, to] = [plan.lying ? plan.wall : plan.topSkin, plan.bottom - (plan.goesOn ? 0 : plan.lying ? plan.wall : plan.bottomSkin)];
  return from + 0.62 * (to - from);
};

/** A point on the left branch of the surface, two thirds along it. */
function leftMiddle(plan: Plan, line: readonly Point[]): Point {
  const [a, b] = [line[0] ?? [plan.axis, plan.y(0)], line[1] ?? line[0] ?? [plan.axis, plan.y(0)]];
  return [a[0] + 0.66 * (b[0] - a[0]), a[1] + 0.66 * (b[1] - a[1])];
}
