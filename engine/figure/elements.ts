// A scene as SVG elements with attributes: the one walk that the writer of text and the page both use.

import { type Fill, type Mark, tidyNumber as n, type Point, type Role, type Scene, type Stroke } from "./scene.ts";

export interface SvgElement {
  readonly name: "path" | "rect" | "circle" | "text";
  readonly attributes: Readonly<Record<string, string>>;
  /** What a text says. */
  readonly text?: string;
}

/** How a role is painted: with attributes of its own (a colour), or with a class that a style sheet colours. */
export type Painter = (role: Role, what: "stroke" | "fill") => Readonly<Record<string, string>>;

/** Marks in the order in which they lie on each other, one element a mark. */
export const svgElements = (scene: Scene, painter: Painter): readonly SvgElement[] => scene.marks.map((mark) => element(mark, painter));

function element(mark: Mark, painter: Painter): SvgElement {
  if (mark.kind === "text") {
    const { x, y, size, anchor, weight, role, turn } = mark;
    const attributes = {
      x: n(x),
      y: n(y),
      "font-size": n(size),
      ...(anchor === "start" ? {} : { "text-anchor": anchor }),
      ...(weight === 400 ? {} : { "font-weight": String(weight) }),
      ...(turn === undefined ? {} : { transform: `rotate(${n(turn)} ${n(x)} ${n(y)})` }),
    };
    return { name: "text", attributes: joined([attributes, painter(role, "fill")]), text: mark.text };
  }
  const paint = joined([painted(mark.fill, "fill", painter), painted(mark.stroke, "stroke", painter)]);
  switch (mark.kind) {
    case "rect":
      return {
        name: "rect",
        attributes: joined([{ x: n(mark.x), y: n(mark.y), width: n(mark.width), height: n(mark.height) }, paint]),
      };
    case "circle":
      return { name: "circle", attributes: joined([{ cx: n(mark.x), cy: n(mark.y), r: n(mark.r) }, paint]) };
    case "polyline":
      return { name: "path", attributes: joined([{ d: polylinePath(mark.points, mark.closed === true) }, paint]) };
    case "segments":
      return { name: "path", attributes: joined([{ d: segmentsPath(mark.ends) }, paint]) };
    case "path":
      return { name: "path", attributes: joined([{ d: mark.d }, paint]) };
  }
}

/** Both a fill and a stroke may bring a class. */
function joined(sets: readonly Readonly<Record<string, string>>[]): Readonly<Record<string, string>> {
  const all: Record<string, string> = {};
  for (const set of sets) {
    for (const [name, value] of Object.entries(set))
      all[name] = name === "class" && all.class !== undefined ? `${all.class} ${value}` : value;
  }
  return all;
}

function painted(paint: Fill | Stroke | undefined, what: "fill" | "stroke", painter: Painter): Readonly<Record<string, string>> {
  if (paint === undefined) return what === "fill" ? { fill: "none" } : {};
  const colour = painter(paint.role, what);
  if ("width" in paint) {
    const dash = paint.dash === undefined ? {} : { "stroke-dasharray": paint.dash.map(n).join(" ") };
    return { ...colour, "stroke-width": n(paint.width), ...dash };
  }
  return paint.opacity === undefined ? colour : { ...colour, "fill-opacity": n(paint.opacity) };
}

export function polylinePath(points: readonly Point[], closed: boolean): string {
  const steps = points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${n(x)} ${n(y)}`);
  return steps.join("") + (closed ? "Z" : "");
}

function segmentsPath(ends: readonly number[]): string {
  let d = "";
  for (let i = 0; i + 3 < ends.length; i += 4) {
    d += `M${n(ends[i] as number)} ${n(ends[i + 1] as number)}L${n(ends[i + 2] as number)} ${n(ends[i + 3] as number)}`;
  }
  return d;
}
