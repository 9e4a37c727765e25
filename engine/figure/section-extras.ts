// Fibre, the surface that fails, the load, the build direction and the scale bar of a section.

import { arrowHead, circle, fill, line, polyline, segments, stroke, TEXT_SIZE, text } from "./marks.ts";
import type { Mark, Point } from "./scene.ts";
import type { Plan } from "./section-plan.ts";
import type { FailureMark } from "./section-view.ts";

/** Strands of the rings as dots where the section cuts them, plies as lines. */
export function drawFibre(plan: Plan): readonly Mark[] {
  const { fibre } = plan.view;
  if (fibre === undefined) return [];
  const marks: Mark[] = [];
  const r = Math.max(1.1, (fibre.strand / 2) * plan.scale * 0.82);
  for (let layer = 0; layer < fibre.rings; layer += 1) {
    const depth = fibre.from + ((layer + 0.5) * (fibre.to - fibre.from)) / fibre.rings;
    for (let turn = 0; turn < fibre.turns; turn += 1) {
      const x = fibre.r + (turn + 0.5) * fibre.strand;
      for (const side of [-1, 1]) marks.push(circle([plan.x(side * x), plan.y(depth)], r, { fill: fill("fibre"), part: "fibre" }));
    }
  }
  const hole = plan.steps[0]?.r ?? 0;
  for (let i = 0; i < fibre.plies; i += 1) {
    const y = plan.y(fibre.plies_from + (i + 0.5) * fibre.ply);
    const inner = plan.x(Math.max(hole, 0));
    marks.push(
      segments([plan.x(-plan.left) + 3, y, 2 * plan.axis - inner, y, inner, y, plan.x(plan.right) - 3, y], {
        stroke: stroke("fibre", Math.max(1, fibre.ply * plan.scale * 0.6)),
        part: "fibre",
      }),
    );
  }
  return marks;
}

const RED = { stroke: stroke("failure", 2.2, [5, 3]), part: "failure" } as const;

/** The surface on both sides of the axis, dashed. */
export function drawFailure(plan: Plan): readonly Mark[] {
  const { failure } = plan.view;
  if (failure === undefined) return [];
  return failureLines(plan, failure).map((points) => polyline(points, RED));
}

export function failureLines(plan: Plan, { surface, r, from, to }: FailureMark): readonly (readonly Point[])[] {
  const at = (x: number, depth: number): Point => [plan.x(x), plan.y(depth)];
  const both = (points: readonly (readonly [number, number])[]): readonly (readonly Point[])[] =>
    [-1, 1].map((side) => points.map(([x, depth]) => at(side * x, depth)));
  const inner = innerRadius(plan);
  switch (surface) {
    case "plug":
      return both([
        [r, from],
        [r, to],
        [Math.min(inner, r), to],
      ]);
    case "cone":
      return both([
        [r, from],
        [Math.min(inner, r), to],
      ]);
    case "face":
      return both([
        [Math.min(plan.steps[0]?.r ?? 0, r), from],
        [r, from],
      ]);
    case "layer":
      return both([
        [Math.min(plan.steps[0]?.r ?? 0, r), to],
        [r, to],
      ]);
    case "screw":
      return [
        [
          at(-plan.view.screw.d / 2, from),
          at(-plan.view.screw.d / 6, from + 0.12 * plan.view.screw.d),
          at(plan.view.screw.d / 6, from - 0.12 * plan.view.screw.d),
          at(plan.view.screw.d / 2, from),
        ],
      ];
    case "split": {
      const middle = (from + to) / 2;
      return both([
        [Math.min(inner, r), middle],
        [r, middle],
      ]);
    }
    default:
      return both([
        [r, from],
        [r, to],
      ]);
  }
}

/** Outside of what is torn out: the anchor, else the crest of the thread. */
function innerRadius(plan: Plan): number {
  const { anchor, screw } = plan.view;
  if (anchor.record === "DrawnInsert") return anchor.D / 2;
  if (anchor.record === "DrawnWire") return anchor.major / 2;
  return anchor.record === "DrawnNut" ? anchor.s / 2 : screw.d / 2;
}

/** A short arrow above the head along the axis, its value beside it. */
export function drawLoad(plan: Plan, words: string): readonly Mark[] {
  const foot = plan.y(plan.headTop) - 10;
  const tip = foot - 44;
  return [
    line([plan.axis, foot], [plan.axis, tip + 8], { stroke: stroke("load", 2.2), part: "load" }),
    arrowHead([plan.axis, tip], -Math.PI / 2, 14, "load", "load"),
    text([plan.axis + 12, tip + TEXT_SIZE + 2], words, { weight: 600, role: "load", part: "load" }),
  ];
}

export function drawCentreLine(plan: Plan, from: number, to: number): Mark {
  return line([plan.axis, from], [plan.axis, to], { stroke: stroke("centre", 0.8, [13, 3, 2.5, 3]), part: "centre" });
}

/** Layers with an arrow along the build direction, 60 wide and 62 high with its words. */
export function drawBuildDirection(plan: Plan, [left, top]: Point): readonly Mark[] {
  const turn = plan.view.part.screw_to_build;
  const middle: Point = [left + 30, top + 24];
  const turned = (x: number, y: number): Point => [
    middle[0] + x * Math.cos(turn) - y * Math.sin(turn),
    middle[1] + x * Math.sin(turn) + y * Math.cos(turn),
  ];
  const ends = [-12, -4, 4, 12].flatMap((y) => [...turned(-22, y), ...turned(22, y)]);
  const tip = turned(0, -24);
  return [
    segments(ends, { stroke: stroke("printed", 1) }),
    line(turned(0, 16), tip, { stroke: stroke("ink", 1.1) }),
    arrowHead(tip, turn - Math.PI / 2, 9, "ink"),
    text([middle[0], top + 62], "layers", { anchor: "middle", role: "printed", part: "note" }),
  ];
}

/** A round length to measure the picture by. */
export function drawScaleBar(plan: Plan, [left, y]: Point, millimetres: number, words: string): readonly Mark[] {
  const width = (millimetres / 1000) * plan.scale;
  return [
    segments([left, y, left + width, y, left, y - 4, left, y + 4, left + width, y - 4, left + width, y + 4], { stroke: stroke("soft", 1) }),
    text([left + width + 7, y + TEXT_SIZE * 0.36], words, { role: "soft", part: "note" }),
  ];
}
