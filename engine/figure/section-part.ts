// The printed part in section: infill, walls round the hole, top and bottom layers, edges; and plates above it.

import { hatch } from "./hatch.ts";
import { fill, HAIR, polygon, polyline, segments, stroke } from "./marks.ts";
import type { Mark, Point } from "./scene.ts";
import { edgeMark, levelEdge, metal, uprightEdge, type ZoneLines, zone, zoneBox } from "./section-pieces.ts";
import { countersunk, type Plan, printedRadius, type Step } from "./section-plan.ts";
import type { DrawnPlate } from "./section-view.ts";

export function drawPart(plan: Plan): readonly Mark[] {
  const outer = outerOutline(plan);
  const cavity = cavityOutline(plan);
  const { infill } = plan.view.part;
  // Two sets of crossing lines of bead width b at spacing a fill the share 2 b/a.
  const spacing = Math.max(5, ((2 * plan.view.part.bead) / Math.max(0.05, infill)) * plan.scale);
  const solid = infill >= 0.995;
  const inside = solid
    ? zone(outer, layerLines(plan))
    : [Math.PI / 4, -Math.PI / 4].map((angle) =>
        segments(hatch([outer, cavity], { angle, spacing }), { stroke: stroke("infill", 0.7), part: "infill" }),
      );
  return [...inside, ...(plan.lying ? lyingShell(plan) : standingShell(plan)), polygon(cavity, { fill: fill("paper") }), ...outlines(plan)];
}

const layerLines = (plan: Plan): ZoneLines =>
  plan.lying
    ? { run: "upright", pitch: plan.view.part.layer * plan.scale, at: plan.axis }
    : { run: "level", pitch: plan.view.part.layer * plan.scale, at: plan.y(0) };

const beadLines = (plan: Plan, at: number): ZoneLines => ({ run: "upright", pitch: plan.view.part.bead * plan.scale, at });

function outerOutline(plan: Plan): readonly Point[] {
  const [left, right] = [plan.x(-plan.left), plan.x(plan.right)];
  const [top, bottom] = [plan.y(0), plan.y(plan.bottom)];
  return [
    [left, top],
    [right, top],
    ...uprightEdge(right, top, bottom, plan.rightEnds),
    ...[...levelEdge(bottom, left, right, !plan.goesOn)].reverse(),
    ...[...uprightEdge(left, top, bottom, plan.leftEnds)].reverse(),
  ];
}

const rightOf = (step: Step): number => step.right ?? step.r;

function cavityOutline(plan: Plan): readonly Point[] {
  const down = plan.steps.flatMap((step): Point[] => [
    [plan.x(rightOf(step)), plan.y(step.from)],
    [plan.x(rightOf(step)), plan.y(step.to)],
  ]);
  const up = [...plan.steps].reverse().flatMap((step): Point[] => [
    [plan.x(-step.r), plan.y(step.to)],
    [plan.x(-step.r), plan.y(step.from)],
  ]);
  return [...down, ...up];
}

/** Layers lie across the screw: walls stand along the hole, skins lie under every face. */
function standingShell(plan: Plan): readonly Mark[] {
  const { steps, wall, topSkin, bottomSkin } = plan;
  const layers = layerLines(plan);
  const marks: Mark[] = [];
  const bottom = plan.y(plan.bottom);
  const last = steps.at(-1) as Step;
  const blind = last.to < plan.bottom - 1e-9;
  // Skins of the two faces, from the hole to the edges.
  const skin = (from: number, to: number, ends: boolean): void => {
    const [a, b] = [plan.y(from), plan.y(to)];
    if (b - a < 0.05) return;
    const shape = [
      ...uprightEdge(plan.x(plan.right), a, b, plan.rightEnds),
      ...[...uprightEdge(plan.x(-plan.left), a, b, plan.leftEnds)].reverse(),
    ];
    if (ends) marks.push(...zone(shape, layers));
  };
  skin(0, topSkin, true);
  skin(plan.bottom - bottomSkin, plan.bottom, !plan.goesOn);
  for (const side of [1, -1] as const) {
    const at = (x: number): number => plan.x(side * x);
    const boxAt = (a: number, b: number, from: number, to: number, lines: ZoneLines): void => {
      marks.push(...zoneBox(Math.min(at(a), at(b)), plan.y(from), Math.max(at(a), at(b)), plan.y(to), lines));
    };
    steps.forEach((step, i) => {
      const next = steps[i + 1];
      if (next === undefined) return;
      const [r, below] = [printedRadius(step), printedRadius(next)];
      if (below < r) boxAt(below, r + wall, step.to, Math.min(plan.bottom, step.to + topSkin), layers);
      if (r < below) boxAt(r, below + wall, Math.max(0, step.to - bottomSkin), step.to, layers);
    });
    if (blind) boxAt(0, printedRadius(last) + wall, last.to, Math.min(plan.bottom, last.to + topSkin), layers);
    const edge = side === 1 ? plan.right : plan.left;
    const ends = side === 1 ? plan.rightEnds : plan.leftEnds;
    // Where the hole is near the edge its wall and that of the edge meet half-way.
    const wallOf = (r: number): number => (ends ? Math.min(wall, Math.max(0, (edge - r) / 2)) : wall);
    for (const step of steps) {
      if (side === 1 && step.right !== undefined) continue;
      const r = printedRadius(step);
      boxAt(r, Math.min(edge, r + wallOf(r)), step.from, step.to, beadLines(plan, at(r)));
    }
    if (ends) boxAt(edge - wallOf(Math.max(...steps.map(printedRadius))), edge, 0, plan.bottom, beadLines(plan, at(edge)));
  }
  if (plan.goesOn) return marks;
  marks.push(
    polyline(
      [
        [plan.x(-plan.left), bottom],
        [plan.x(plan.right), bottom],
      ],
      { stroke: stroke("printed", 1) },
    ),
  );
  return marks;
}

/** The screw lies across the build direction: layers stand in the picture, the loaded face is a wall. */
function lyingShell(plan: Plan): readonly Mark[] {
  const { steps, wall, topSkin, bottomSkin } = plan;
  const layers = layerLines(plan);
  const marks: Mark[] = [];
  const face = (from: number, to: number): void => {
    const [a, b] = [plan.y(from), plan.y(to)];
    if (b - a < 0.05) return;
    const shape = [
      ...uprightEdge(plan.x(plan.right), a, b, plan.rightEnds),
      ...[...uprightEdge(plan.x(-plan.left), a, b, plan.leftEnds)].reverse(),
    ];
    marks.push(...zone(shape, { run: "level", pitch: plan.view.part.bead * plan.scale, at: a }));
    marks.push(
      segments(hatch([shape], { angle: Math.PI / 2, spacing: Math.max(3, layers.pitch), shift: -layers.at }), {
        stroke: stroke("layer", HAIR),
      }),
    );
  };
  face(0, wall);
  if (!plan.goesOn) face(plan.bottom - wall, plan.bottom);
  // The build direction points to the right: the right of the hole is its roof, the left its floor.
  for (const [side, skin] of [
    [1, bottomSkin],
    [-1, topSkin],
  ] as const) {
    const at = (x: number): number => plan.x(side * x);
    for (const step of steps) {
      if (side === 1 && step.right !== undefined) continue;
      marks.push(
        ...zoneBox(
          Math.min(at(printedRadius(step)), at(printedRadius(step) + skin)),
          plan.y(step.from),
          Math.max(at(printedRadius(step)), at(printedRadius(step) + skin)),
          plan.y(step.to),
          layers,
        ),
      );
    }
    const edge = side === 1 ? plan.right : plan.left;
    if (side === 1 ? plan.rightEnds : plan.leftEnds) {
      const outside = side === 1 ? topSkin : bottomSkin;
      marks.push(
        ...zoneBox(Math.min(at(edge - outside), at(edge)), plan.y(0), Math.max(at(edge - outside), at(edge)), plan.y(plan.bottom), layers),
      );
    }
  }
  const last = steps.at(-1) as Step;
  if (last.to < plan.bottom - 1e-9)
    marks.push(
      ...zoneBox(plan.x(-last.r), plan.y(last.to), plan.x(last.r), plan.y(last.to + wall), {
        run: "level",
        pitch: plan.view.part.bead * plan.scale,
        at: plan.y(last.to),
      }),
    );
  return marks;
}

function outlines(plan: Plan): readonly Mark[] {
  const { steps } = plan;
  const [first, last] = [steps[0] as Step, steps.at(-1) as Step];
  const through = last.to >= plan.bottom - 1e-9;
  const [top, bottom] = [plan.y(0), plan.y(plan.bottom)];
  const strong = { stroke: stroke("printed", 1.4) };
  const profile = (side: 1 | -1): readonly Point[] =>
    steps.flatMap((step): Point[] => {
      const r = side === 1 ? rightOf(step) : step.r;
      return [
        [plan.x(side * r), plan.y(step.from)],
        [plan.x(side * r), plan.y(step.to)],
      ];
    });
  const left: Point = [plan.x(-plan.left), top];
  const right: Point = [plan.x(plan.right), top];
  const marks: Mark[] = [
    polyline([left, [plan.x(-first.r), top], ...profile(-1)], strong),
    polyline([right, [plan.x(rightOf(first)), top], ...profile(1)], strong),
    edgeMark(uprightEdge(plan.x(-plan.left), top, bottom, plan.leftEnds), plan.leftEnds, "printed"),
    ...rightEdges(plan),
  ];
  if (!through)
    marks.push(
      polyline(
        [
          [plan.x(-last.r), plan.y(last.to)],
          [plan.x(last.r), plan.y(last.to)],
        ],
        strong,
      ),
    );
  const ends = !plan.goesOn;
  if (through) {
    marks.push(edgeMark(levelEdge(bottom, plan.x(-plan.left), plan.x(-last.r), ends), ends, "printed"));
    marks.push(edgeMark(levelEdge(bottom, plan.x(rightOf(last)), plan.x(plan.right), ends), ends, "printed"));
  } else marks.push(edgeMark(levelEdge(bottom, plan.x(-plan.left), plan.x(plan.right), ends), ends, "printed"));
  return marks;
}

/** A slot leaves a gap in the right edge. */
function rightEdges(plan: Plan): readonly Mark[] {
  const x = plan.x(plan.right);
  const slot = plan.steps.find((step) => step.right !== undefined);
  const spans = slot === undefined ? [[0, plan.bottom] as const] : [[0, slot.from] as const, [slot.to, plan.bottom] as const];
  return spans.map(([from, to]) => edgeMark(uprightEdge(x, plan.y(from), plan.y(to), plan.rightEnds), plan.rightEnds, "printed"));
}

/** Plates from the head down, each cut on both sides of its hole; neighbours are hatched the other way. */
export function drawPlates(plan: Plan): readonly Mark[] {
  let top = plan.plateTop;
  return plan.view.plates.flatMap((plate, i) => {
    const from = top;
    top += plate.t;
    return [1, -1].flatMap((side) => drawPlate(plan, plate, from, side as 1 | -1, i % 2 === 1, i === 0));
  });
}

function drawPlate(plan: Plan, plate: DrawnPlate, from: number, side: 1 | -1, turned: boolean, first: boolean): readonly Mark[] {
  const { screw } = plan.view;
  const [a, b] = [plan.y(from), plan.y(from + plate.t)];
  const inner = plan.x((side * plate.hole) / 2);
  const outer = plan.x(side * plan.plateHalf);
  const sunk = first && countersunk(plan.view);
  const cone: readonly Point[] = sunk
    ? [
        [plan.x((side * Math.max(screw.d_k, plate.hole)) / 2), a],
        [inner, plan.y(from + Math.min(plate.t, countersinkDepth(screw.d_k, plate.hole, screw.k, screw.d)))],
      ]
    : [[inner, a]];
  const outline: readonly Point[] = [...cone, [inner, b], ...[...uprightEdge(outer, a, b, false)].reverse()];
  const printed = plate.made === "printed";
  const body = printed
    ? zone(outline, { run: "level", pitch: plan.view.part.layer * plan.scale, at: a })
    : [polygon(outline, { fill: fill("paper") }), ...metal([outline], turned)];
  const role = printed ? "printed" : "ink";
  const firm: readonly Point[] = [[outer, a], ...cone, [inner, b], [outer, b]];
  return [...body, polyline(firm, { stroke: stroke(role, 1.4) }), edgeMark(uprightEdge(outer, a, b, false), false, role)];
}

/** How deep the cone of the head goes before it meets the hole. */
const countersinkDepth = (d_k: number, hole: number, k: number, d: number): number => (d_k <= hole ? 0 : (k * (d_k - hole)) / (d_k - d));
