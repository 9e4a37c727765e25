// Sections of joints: to scale, every number readable, nothing over anything else, for each way of making the thread.

import { describe, expect, test } from "vitest";
import { drawSection, overlap, sceneSvg } from "../../engine/figure/index.ts";
import { boxOf, crosses, meets, reach, segmentsOf, texts } from "./geometry.ts";
import { sections } from "./sections.ts";

describe.each(Object.entries(sections))("%s", (_, view) => {
  const scene = drawSection(view);
  const leaders = segmentsOf(scene, "leader");
  const dimensions = segmentsOf(scene, "dimension");
  const extensions = segmentsOf(scene, "extension");

  test("everything lies within the picture", () => {
    const out = scene.marks.filter((mark) => {
      if (mark.kind === "segments" && mark.ends.length === 0) return false;
      const { left, top, right, bottom } = reach(mark);
      return !(0 <= left && 0 <= top && right <= scene.width && bottom <= scene.height);
    });
    expect(out).toEqual([]);
  });
  test("no two texts overlap", () => {
    const words = texts(scene);
    const pairs = words.flatMap((a, i) =>
      words.slice(i + 1).flatMap((b) => (overlap(boxOf(a), boxOf(b)) ? [`${a.text} / ${b.text}`] : [])),
    );
    expect(pairs).toEqual([]);
  });
  test("no leader crosses another, a dimension or a text", () => {
    const lines = [...leaders, ...dimensions];
    const pairs = leaders.flatMap((a) => lines.filter((b) => b.mark !== a.mark && crosses(a, b)).map((b) => `${b.part}`));
    expect(pairs).toEqual([]);
    expect(
      texts(scene)
        .filter((one) => leaders.some((leader) => meets(leader, boxOf(one))))
        .map((one) => one.text),
    ).toEqual([]);
  });
  test("no dimension or extension line runs through a number", () => {
    const struck = texts(scene).filter((one) => [...dimensions, ...extensions].some((line) => meets(line, boxOf(one))));
    expect(struck.map((one) => one.text)).toEqual([]);
  });
  test("callouts end left of the body and point left of the axis", () => {
    const axis = Math.min(...segmentsOf(scene, "centre").map(({ from }) => from[0]));
    expect(leaders.every(({ from, to }) => from[0] < axis && to[0] < axis)).toBe(true);
  });
  test("the same view gives the same bytes", () => {
    expect(sceneSvg(drawSection(view))).toBe(sceneSvg(scene));
  });
  test("words say what it is", () => {
    expect(scene.alternative).toContain(view.screw.designation);
    expect(scene.alternative).toContain(view.part.name);
    expect(scene.caption).toContain("to scale");
  });
});

describe("scale", () => {
  const PIXELS_A_METRE = 96 / 0.0254;
  test.each(Object.entries(sections))("dimensions of %s are as long as their numbers say", (_, view) => {
    const scene = drawSection(view);
    const lines = scene.marks.filter((mark) => mark.kind === "polyline" && mark.part === "dimension" && mark.points.length === 2);
    const words = texts(scene).filter((one) => one.part === "dimension");
    expect(lines.length).toBe(words.length);
    const heads = scene.marks.filter((mark) => mark.kind === "polyline" && mark.part === "dimension" && mark.closed === true);
    expect(heads.length).toBe(2 * words.length);
    words.forEach((one, i) => {
      const [a, b] = [heads[2 * i], heads[2 * i + 1]].map((head) => (head?.kind === "polyline" ? head.points[0] : undefined));
      if (a === undefined || b === undefined) throw new Error("a dimension has two heads");
      const drawn = Math.hypot(a[0] - b[0], a[1] - b[1]) / (PIXELS_A_METRE * (scene.scale ?? 1));
      expect(drawn * 1000, one.text).toBeCloseTo(Number(one.text.replace("⌀ ", "")), 2);
    });
  });
});

test("each anchor kind and each kind of head is among the samples", () => {
  const views = Object.values(sections);
  expect(new Set(views.map(({ anchor }) => anchor.record))).toEqual(new Set(["DrawnInsert", "DrawnThread", "DrawnNut", "DrawnWire"]));
  expect(new Set(views.map(({ screw }) => screw.head))).toEqual(new Set(["socket", "hexagon", "button", "countersunk", "flange"]));
});

test("the view of an inch notebook is dimensioned in inches", async () => {
  const { inchSet } = await import("../../engine/units/index.ts");
  const view = Object.values(sections)[0];
  if (view === undefined) throw new Error("no sample");
  const scene = drawSection(view, { preferences: inchSet, digits: 4 });
  expect(scene.caption).toContain("dimensions in in");
  expect(texts(scene).map(({ text }) => text)).toContain("0.374");
});
