// The screw in a section: not cut, as the trade draws it: outline at the crest, a thin line at the root, head by its kind.

import { fill, polygon, polyline, rect, segments, stroke, THIN } from "./marks.ts";
import { type Mark, tidyNumber as n, type Point } from "./scene.ts";
import { countersunk, type Plan } from "./section-plan.ts";

const OUT = { fill: fill("paper"), stroke: stroke("ink") } as const;
const HIDDEN = { stroke: stroke("ink", THIN, [3, 2]) } as const;
const INNER = { stroke: stroke("ink", THIN) } as const;

export function drawScrew(plan: Plan): readonly Mark[] {
  return [...shank(plan), ...head(plan)];
}

function shank(plan: Plan): readonly Mark[] {
  const { screw } = plan.view;
  const [crest, root] = [screw.d / 2, Math.min(screw.d / 2, screw.core / 2)];
  const from = countersunk(plan.view) ? plan.headTop + screw.k : plan.bearing;
  const chamfer = Math.min(crest - root, (plan.tip - from) / 2);
  const threadFrom = Math.min(
    plan.tip - chamfer,
    plan.bearing + screw.shank + (screw.shank > 0 ? 0 : countersunk(plan.view) ? screw.k : 0),
  );
  const at = (r: number, depth: number): Point => [plan.x(r), plan.y(depth)];
  const marks: Mark[] = [
    polygon(
      [
        at(-crest, from),
        at(crest, from),
        at(crest, plan.tip - chamfer),
        at(root, plan.tip),
        at(-root, plan.tip),
        at(-crest, plan.tip - chamfer),
      ],
      OUT,
    ),
    polyline([at(-crest, plan.tip - chamfer), at(crest, plan.tip - chamfer)], INNER),
    ...[-1, 1].map((side) => polyline([at(side * root, threadFrom), at(side * root, plan.tip)], INNER)),
  ];
  if (screw.shank > 0) marks.push(polyline([at(-crest, threadFrom), at(crest, threadFrom)], { stroke: stroke("ink", 1.1) }));
  return marks;
}

function head(plan: Plan): readonly Mark[] {
  const { screw } = plan.view;
  const r = screw.d_k / 2;
  const [top, bearing] = [plan.y(plan.headTop), plan.y(plan.bearing)];
  const at = (x: number, depth: number): Point => [plan.x(x), plan.y(depth)];
  const socket = (depth: number): readonly Mark[] => recess(plan, Math.min(depth, 0.6 * screw.k));
  switch (screw.head) {
    case "hexagon":
      return hexagon(plan, r, plan.headTop, plan.bearing, "up");
    case "flange": {
      const flange = 0.25 * screw.k;
      const e = Math.min(r, screw.s / Math.sqrt(3));
      const rim = 0.35 * flange;
      return [
        polygon(
          [
            at(-r, plan.bearing),
            at(-r, plan.bearing - rim),
            at(-e, plan.bearing - flange),
            at(e, plan.bearing - flange),
            at(r, plan.bearing - rim),
            at(r, plan.bearing),
          ],
          OUT,
        ),
        ...hexagon(plan, e, plan.headTop, plan.bearing - flange, "up"),
      ];
    }
    case "button": {
      const flat = 0.5 * r;
      const [x0, x1] = [plan.x(-r), plan.x(r)];
      const rim = bearing - 0.12 * (bearing - top);
      const d = `M${n(x0)} ${n(bearing)}L${n(x0)} ${n(rim)}Q${n(plan.x(-0.86 * r))} ${n(top)} ${n(plan.x(-flat))} ${n(top)}L${n(plan.x(flat))} ${n(top)}Q${n(plan.x(0.86 * r))} ${n(top)} ${n(x1)} ${n(rim)}L${n(x1)} ${n(bearing)}Z`;
      return [{ kind: "path", d, ...OUT }, ...socket(0.55 * screw.k)];
    }
    case "countersunk": {
      const crest = screw.d / 2;
      return [
        polygon([at(-r, plan.headTop), at(r, plan.headTop), at(crest, plan.headTop + screw.k), at(-crest, plan.headTop + screw.k)], OUT),
        ...socket(0.55 * screw.k),
      ];
    }
    case "socket": {
      const bevel = 0.08 * screw.k;
      return [
        polygon(
          [
            at(-r, plan.bearing),
            at(-r, plan.headTop + bevel),
            at(-r + bevel, plan.headTop),
            at(r - bevel, plan.headTop),
            at(r, plan.headTop + bevel),
            at(r, plan.bearing),
          ],
          OUT,
        ),
        ...socket(0.5 * screw.k),
      ];
    }
    default:
      return [rect(plan.x(-r), top, plan.x(r), bearing, OUT)];
  }
}

/** A hexagon socket, hidden: its corners, its floor with the cone of the drill. */
function recess(plan: Plan, depth: number): readonly Mark[] {
  const half = plan.view.screw.s / Math.sqrt(3);
  const floor = plan.headTop + depth;
  const at = (x: number, z: number): Point => [plan.x(x), plan.y(z)];
  return [
    polyline([at(-half, plan.headTop), at(-half, floor), at(half, floor), at(half, plan.headTop)], HIDDEN),
    segments([...at(-half / 2, plan.headTop), ...at(-half / 2, floor), ...at(half / 2, plan.headTop), ...at(half / 2, floor)], {
      stroke: stroke("ink", 0.45, [3, 2]),
    }),
  ];
}

/**
 * A hexagon seen across its corners between two depths: three faces, with the arcs that a chamfer of 30° cuts on the free
 * side. `free`: the chamfered side.
 */
export function hexagon(plan: Plan, corner: number, from: number, to: number, free: "up" | "down"): readonly Mark[] {
  const [top, bottom] = [plan.y(from), plan.y(to)];
  const bevel = Math.min(0.16 * corner * plan.scale, 0.3 * (bottom - top));
  const x = (share: number): string => n(plan.x(share * corner));
  const [end, base, into] = free === "up" ? [top, bottom, 1] : [bottom, top, -1];
  const low = n(end + into * bevel);
  const tipY = n(end);
  const outline = `M${x(-1)} ${n(base)}L${x(-1)} ${low}Q${x(-0.75)} ${n(end - into * 0.55 * bevel)} ${x(-0.5)} ${low}Q${x(0)} ${n(end - into * bevel)} ${x(0.5)} ${low}Q${x(0.75)} ${n(end - into * 0.55 * bevel)} ${x(1)} ${low}L${x(1)} ${n(base)}Z`;
  const cap = `M${x(-1)} ${low}L${x(-0.86)} ${tipY}L${x(0.86)} ${tipY}L${x(1)} ${low}`;
  return [
    { kind: "path", d: `${cap}L${x(1)} ${n(base)}L${x(-1)} ${n(base)}Z`, ...OUT },
    { kind: "path", d: outline, ...INNER },
    segments(
      [
        plan.x(-corner / 2),
        end + into * bevel,
        plan.x(-corner / 2),
        base,
        plan.x(corner / 2),
        end + into * bevel,
        plan.x(corner / 2),
        base,
      ],
      { stroke: stroke("ink", 1) },
    ),
  ];
}

/** A washer under the head or a nut, not cut. */
export function drawWasher(plan: Plan, washer: { readonly outside: number; readonly h: number }, from: number): readonly Mark[] {
  return [rect(plan.x(-washer.outside / 2), plan.y(from), plan.x(washer.outside / 2), plan.y(from + washer.h), OUT)];
}
