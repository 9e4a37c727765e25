// What holds the screw in the printed part: insert, nut, wire coil, sleeve, or the thread in the plastic itself.

import { fill, HAIR, line, polygon, polyline, segments, stroke, THIN } from "./marks.ts";
import type { Mark, Point } from "./scene.ts";
import { metal } from "./section-pieces.ts";
import type { Plan } from "./section-plan.ts";
import { drawWasher, hexagon } from "./section-screw.ts";
import type { DrawnInsert, DrawnNut, DrawnThread, DrawnWire } from "./section-view.ts";

/** What lies behind the screw. */
export function drawBehind(plan: Plan): readonly Mark[] {
  const { anchor } = plan.view;
  switch (anchor.record) {
    case "DrawnInsert":
      return drawInsert(plan, anchor);
    case "DrawnThread":
      return drawThread(plan, anchor);
    case "DrawnWire":
      return drawWireThread(plan, anchor);
    case "DrawnNut":
      return drawSleeve(plan, anchor);
  }
}

/** What hides the screw. */
export function drawBefore(plan: Plan): readonly Mark[] {
  const { anchor } = plan.view;
  if (anchor.record === "DrawnNut") return drawNut(plan, anchor);
  return anchor.record === "DrawnWire" ? drawCoils(plan, anchor) : [];
}

/** Depths of the insert's two ends, the nearer to the loaded face first. */
export function insertSpan(plan: Plan, anchor: DrawnInsert): readonly [number, number] {
  if (anchor.from === "loaded face") return [-anchor.protrusion, anchor.L - anchor.protrusion];
  return [plan.bottom + anchor.protrusion - anchor.L, plan.bottom + anchor.protrusion];
}

function drawInsert(plan: Plan, anchor: DrawnInsert): readonly Mark[] {
  const { screw } = plan.view;
  const [from, to] = insertSpan(plan, anchor);
  // Built as if it stood with its entry side up; turned over when it came from the back.
  const depth = (z: number): number => plan.y(anchor.from === "loaded face" ? from + z : to - z);
  const outside = outerProfile(anchor, screw.P);
  const bore = screw.d / 2 - 0.54 * screw.P;
  const chamfer = Math.min(0.35 * screw.P, 0.1 * anchor.L);
  const marks: Mark[] = [];
  for (const side of [1, -1]) {
    const at = (r: number, z: number): Point => [plan.x(side * r), depth(z)];
    const outline: readonly Point[] = [
      at(bore + chamfer, 0),
      ...outside.map(([r, z]) => at(r, z)),
      at(bore + chamfer, anchor.L),
      at(bore, anchor.L - chamfer),
      at(bore, chamfer),
    ];
    marks.push(
      polygon(outline, { fill: fill("paper") }),
      polygon(outline, { fill: fill("insert", 0.14) }),
      ...metal([outline], side === 1, "insert", 4),
      polygon(outline, { stroke: stroke("insert", 1.2) }),
      // The root of its thread, where no screw covers it.
      line(at(screw.d / 2, 0), at(screw.d / 2, anchor.L), { stroke: stroke("insert", THIN) }),
    );
    if (anchor.bonded) marks.push(line(at(anchor.D / 2, 0), at(anchor.D / 2, anchor.L), { stroke: stroke("open", 2.2) }));
  }
  const [rim, mouth] = [bore, bore + chamfer];
  marks.push(
    segments(
      [plan.x(-mouth), depth(0), plan.x(mouth), depth(0), plan.x(-rim), depth(anchor.L - chamfer), plan.x(rim), depth(anchor.L - chamfer)],
      { stroke: stroke("insert", THIN) },
    ),
  );
  return marks;
}

/** Radii along the insert, from its entry side: flange, knurl teeth, groove between two bands, plain lead at the far end. */
function outerProfile(anchor: DrawnInsert, pitch: number): readonly (readonly [number, number])[] {
  const { D, L, knurl } = anchor;
  const flangeHeight = anchor.flange === undefined ? 0 : Math.min(0.12 * L, 0.6e-3 + 0.05 * L);
  const points: (readonly [number, number])[] = [];
  if (anchor.flange !== undefined) points.push([anchor.flange / 2, 0], [anchor.flange / 2, flangeHeight]);
  const start = flangeHeight;
  const slope = Math.tan(anchor.taper);
  const radius = (z: number): number => Math.max(D / 2 - slope * (z - start), 0.35 * D);
  if (knurl === "none") return [...points, [radius(start), start], [radius(L), L]];
  const lead = Math.min(0.12 * L, 0.8 * pitch);
  const tooth = Math.max(0.12 * pitch, 0.018 * D);
  const step = Math.max(0.45 * pitch, L / 26);
  const groove = anchor.groove === undefined || knurl === "straight" ? undefined : anchor.groove / 2;
  const bands: (readonly [number, number])[] =
    knurl === "straight"
      ? [[start, L - lead]]
      : [
          [start, start + 0.4 * (L - start - lead)],
          [start + 0.58 * (L - start - lead), L - lead],
        ];
  const between = groove ?? D / 2 - 2.5 * tooth;
  bands.forEach(([a, b], i) => {
    if (i > 0) points.push([between, bands[i - 1]?.[1] ?? a], [between, a]);
    const count = Math.max(1, Math.round((b - a) / step));
    if (knurl === "straight") points.push([radius(a), a], [radius(b), b]);
    else
      for (let k = 0; k < count; k += 1) {
        const [z0, z1] = [a + ((b - a) * k) / count, a + ((b - a) * (k + 1)) / count];
        points.push([radius(z0) - tooth, z0], [radius((z0 + z1) / 2), (z0 + z1) / 2], [radius(z1) - tooth, z1]);
      }
  });
  const plain = Math.min(between, radius(L - lead) - tooth);
  points.push([plain, L - lead], [plain, L]);
  return points;
}

/** Cut, formed, tapped or printed: the groove in the plastic reaches to the crest of the screw along the engagement. */
function drawThread(plan: Plan, anchor: DrawnThread): readonly Mark[] {
  const { screw } = plan.view;
  const crest = screw.d / 2;
  const beyond =
    anchor.how === "tapped" || anchor.how === "printed" ? Math.max(plan.tip, anchor.L) : Math.min(plan.tip, Math.max(anchor.L, plan.tip));
  const threaded = Math.min(beyond, (anchor.bottom ?? plan.bottom) - (anchor.bottom === undefined ? 0 : 0.5 * screw.P));
  return [-1, 1].map((side) =>
    line([plan.x(side * crest), plan.y(0)], [plan.x(side * crest), plan.y(threaded)], { stroke: stroke("printed", THIN) }),
  );
}

function drawWireThread(plan: Plan, anchor: DrawnWire): readonly Mark[] {
  const end = plan.y(Math.min(anchor.bottom ?? plan.bottom, anchor.L + plan.view.screw.P));
  return [-1, 1].map((side) =>
    line([plan.x((side * anchor.major) / 2), plan.y(0)], [plan.x((side * anchor.major) / 2), end], { stroke: stroke("printed", THIN) }),
  );
}

/** The wire is a rhombus in section: half of it makes the inner thread, half lies in the larger one. */
function drawCoils(plan: Plan, anchor: DrawnWire): readonly Mark[] {
  const { P, d } = plan.view.screw;
  const [inner, outer] = [d / 2 - 0.54 * P, anchor.major / 2];
  const middle = (inner + outer) / 2;
  const half = 0.36 * P;
  const marks: Mark[] = [];
  for (const side of [1, -1]) {
    // The other side stands half a turn on.
    for (let z = 0.75 * P + (side === 1 ? 0 : P / 2); z + half <= anchor.L; z += P) {
      const at = (r: number, dz: number): Point => [plan.x(side * r), plan.y(z + dz)];
      const rhombus = [at(inner, 0), at(middle, -half), at(outer, 0), at(middle, half)];
      marks.push(polygon(rhombus, { fill: fill("paper") }), polygon(rhombus, { fill: fill("insert", 0.4), stroke: stroke("insert", 0.9) }));
    }
  }
  return marks;
}

function drawSleeve(plan: Plan, anchor: DrawnNut): readonly Mark[] {
  const { sleeve } = anchor;
  if (sleeve === undefined) return [];
  return [1, -1].flatMap((side) => {
    const outline: readonly Point[] = [
      [plan.x((side * sleeve.d) / 2), plan.y(0)],
      [plan.x((side * sleeve.D) / 2), plan.y(0)],
      [plan.x((side * sleeve.D) / 2), plan.y(sleeve.L)],
      [plan.x((side * sleeve.d) / 2), plan.y(sleeve.L)],
    ];
    return [
      polygon(outline, { fill: fill("paper") }),
      ...metal([outline], side === 1, "metal", 4),
      polygon(outline, { stroke: stroke("ink", 1.2) }),
    ];
  });
}

/** Depths of the nut. */
export function nutSpan(plan: Plan, anchor: DrawnNut): readonly [number, number] {
  const washer = anchor.washer?.h ?? 0;
  if (anchor.place === "far face") return [plan.bottom + washer, plan.bottom + washer + anchor.m];
  if (anchor.place === "flush") return [plan.bottom - anchor.m, plan.bottom];
  return [anchor.over, anchor.over + anchor.m];
}

/** Seen from outside: across its flats in a pocket, across its corners on the far face. */
function drawNut(plan: Plan, anchor: DrawnNut): readonly Mark[] {
  const [from, to] = nutSpan(plan, anchor);
  const marks: Mark[] = [];
  if (anchor.washer !== undefined) marks.push(...drawWasher(plan, anchor.washer, from - anchor.washer.h));
  const half = anchor.s / 2;
  const [x0, x1, y0, y1] = [plan.x(-half), plan.x(half), plan.y(from), plan.y(to)];
  if (anchor.shape === "hexagon" && anchor.place === "far face") marks.push(...hexagon(plan, anchor.s / Math.sqrt(3), from, to, "down"));
  else {
    const bevel = anchor.shape === "hexagon" ? Math.min(0.1 * (x1 - x0), 0.22 * (y1 - y0)) : 0;
    const outline: readonly Point[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1 - bevel],
      [x1 - 1.7 * bevel, y1],
      [x0 + 1.7 * bevel, y1],
      [x0, y1 - bevel],
    ];
    marks.push(polygon(outline, { fill: fill("paper"), stroke: stroke("ink") }));
    if (bevel > 0)
      marks.push(
        polyline(
          [
            [x0, y1 - bevel],
            [x1, y1 - bevel],
          ],
          { stroke: stroke("ink", HAIR) },
        ),
      );
  }
  // The thread inside is hidden.
  const { screw } = plan.view;
  const crest = screw.d / 2;
  marks.push(
    segments(
      [-1, 1].flatMap((side) => [plan.x(side * crest), y0, plan.x(side * crest), y1]),
      { stroke: stroke("ink", THIN, [3, 2]) },
    ),
  );
  if (anchor.place === "pocket" && anchor.ceiling === "bridged") {
    const [a, b] = [plan.x(anchor.hole / 2), plan.x(anchor.pocket / 2)];
    const under = plan.y(anchor.over);
    for (const side of [1, -1])
      marks.push(
        line([plan.axis + side * (a - plan.axis), under], [plan.axis + side * (b - plan.axis), under], { stroke: stroke("printed", 2.2) }),
      );
  }
  return marks;
}
