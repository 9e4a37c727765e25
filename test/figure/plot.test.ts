// Plots, bars, windows and patterns as the language makes them, drawn in the notebook's units.

import { describe, expect, test } from "vitest";
import { overlap, type Scene, sceneSvg, type TextMark } from "../../engine/figure/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { boxOf, reach, texts } from "./geometry.ts";

const METRIC = "units: { length: mm, force: N, torque: N*m }";

function outputs(working: string, units = METRIC) {
  const session = createSession(library);
  session.put("a.joint.md", `---\n${units}\n---\n\`\`\`calc\n${working}\n\`\`\`\n`);
  return session.outputs("a.joint.md");
}

function figure(working: string, units = METRIC): Scene {
  const lines = outputs(working, units);
  const found = lines.find((line) => line.name === "fig")?.figure;
  if (found === undefined) throw new Error(lines.flatMap((line) => line.diagnostics.map(({ message }) => message)).join("; "));
  return found;
}

const words = (scene: Scene, part?: string): readonly string[] =>
  texts(scene)
    .filter((one) => part === undefined || one.part === part)
    .map(({ text }) => text);

const CURVE = `x = [0 mm, 1 mm, 2 mm, 3 mm]
F_t = [0 N, 800 N, 1400 N, 600 N]
fig = line_plot(x, F_t, label = "A1")`;

describe("axes", () => {
  test("names and units of the arguments stand at the axes, in the notebook's units", () => {
    expect(words(figure(CURVE), "title").join("")).toBe("Ft(N)x (mm)");
    expect(words(figure(CURVE, "units: { length: in, force: lbf }"), "title").join("")).toBe("Ft(lbf)x (in)");
  });
  test("an expression without a name is called by its quantity, a Greek name by its letter", () => {
    const scene = figure("tau_m = [1 MPa, 2 MPa]\nfig = line_plot(tau_m, 2 * [3 N, 4 N])", "units: { stress: MPa, force: N }");
    expect(words(scene, "title").join("")).toBe("Force (N)τm(MPa)");
  });
  test("temperature points keep their scale", () => {
    const scene = figure("T = [20 degC, 60 degC]\nfig = line_plot(T, [5 N, 3 N])", "units: { temperature: degC }");
    expect(words(scene, "tick")).toEqual(expect.arrayContaining(["20", "60"]));
    expect(words(scene, "title").join("")).toContain("(°C)");
  });
  test("ticks are round and hold every value", () => {
    expect(words(figure(CURVE), "tick")).toEqual(expect.arrayContaining(["0", "200", "1400", "0.0", "3.0"]));
  });
  test("large numbers are told in powers of ten at the title", () => {
    const scene = figure("x = [0 mm, 1 mm]\nE = [0 Pa, 2e9 Pa]\nfig = line_plot(x, E)", "units: { length: mm }");
    expect(words(scene, "title").join("")).toContain("10⁹ Pa");
  });
  test("a formula that makes a figure must say its quantities", () => {
    const codes = outputs("formula curve(xs: List Force, k) = line_plot(xs, k * xs)").flatMap((line) =>
      line.diagnostics.map(({ code }) => code),
    );
    expect(codes).toEqual(["axis-of-no-unit"]);
  });
  test("lists of unlike length are a fault, and so are texts on an axis", () => {
    const codes = outputs('a = line_plot([1 mm, 2 mm], [1 N])\nb = line_plot(["x"], [1 N])').map((line) => line.diagnostics[0]?.code);
    expect(codes.filter((code) => code !== undefined)).toEqual(["lengths-differ", "wrong-argument"]);
  });
});

describe("curves", () => {
  test("several share one picture, told apart by dashes and named in the legend", () => {
    const scene = figure(`a = line_plot([0 mm, 1 mm], [0 N, 5 N], "A1")
b = line_plot([0 mm, 1 mm], [0 N, 4 N], "A2")
c = point_plot([0.5 mm], [3 N], "first damage")
fig = overlay([a, b, c])`);
    expect(words(scene, "legend")).toEqual(["A1", "A2", "first damage"]);
    const dashes = scene.marks.flatMap((mark) =>
      mark.kind === "polyline" && mark.part === "series" ? [mark.stroke?.dash?.join() ?? ""] : [],
    );
    expect(new Set(dashes).size).toBe(2);
  });
  test("plots of unlike quantities do not lie over each other", () => {
    const lines = outputs("a = line_plot([0 mm], [0 N])\nb = line_plot([0 mm], [1 mm])\nfig = overlay([a, b])");
    expect(lines.find((line) => line.name === "fig")?.diagnostics.map(({ code }) => code)).toEqual(["refused"]);
  });
  test("50,000 points become a path that keeps every peak", () => {
    const scene = figure(`x = [i * 1 mm for i in 1 .. 50000 step 1]
y = [if mod(i, 5000) == 77 then 9 N else 1 N for i in 1 .. 50000 step 1]
fig = line_plot(x, y)`);
    const path = scene.marks.find((mark) => mark.kind === "polyline" && mark.part === "series");
    const points = path?.kind === "polyline" ? path.points : [];
    expect(points.length).toBeLessThan(3000);
    const top = Math.min(...points.map(([, y]) => y));
    expect(points.filter(([, y]) => y === top).length).toBe(10);
    expect(sceneSvg(scene).length).toBeLessThan(60_000);
  });
  test("where a value is missing the curve breaks", () => {
    const session = createSession(library);
    session.put("a.joint.md", "```csv t\nx [mm];F [N]\n0;1\n1;2\n2;\n3;4\n4;5\n```\n\n```calc\nfig = line_plot(t.x, t.F)\n```\n");
    const scene = session.outputs("a.joint.md").find((line) => line.name === "fig")?.figure;
    expect(scene?.marks.filter((mark) => mark.kind === "polyline" && mark.part === "series").length).toBe(2);
  });
});

const others: Readonly<Record<string, string>> = {
  bars: 'fig = bar_chart(["tapped", "self-cut", "insert from the back with rings and plies of carbon fibre"], [3 kN, -2.6 kN, 7.3 kN], label = "Maximum load")',
  curve: CURVE,
  grid: "fig = hole_pattern(grid_pattern(3, 2, 40 mm, 60 mm), hole = 5.5 mm)",
  "two screws": "fig = hole_pattern(grid_pattern(2, 1, 40 mm, 0 mm))",
  "one screw": "fig = hole_pattern(list_pattern([0 mm], [0 mm]))",
  circle: "fig = hole_pattern(circle_pattern(6, 80 mm, 15 deg))",
  anywhere: "fig = hole_pattern(list_pattern([0 mm, 50 mm, 80 mm], [0 mm, 12 mm, 40 mm]), hole = 9 mm)",
  window:
    'fig = torque_window_figure(0.42 N·m, 0.95 N·m, ["torque-out", "strip"], [1.15 N·m, 1.3 N·m], "Torque window, 6 months at 35 °C")',
  "narrow window": 'fig = torque_window_figure(0.94 N·m, 0.95 N·m, ["a", "b", "c"], [0.951 N·m, 0.952 N·m, 9 N·m])',
  "empty window":
    'fig = torque_window_figure(1.2 N·m, 0.95 N·m, ["torque-out of the insert", "strip", "screw"], [1.15 N·m, 1.17 N·m, 3 N·m])',
};

describe.each(Object.entries(others))("%s", (_, working) => {
  const scene = figure(working);
  test("all within the picture, no text over another", () => {
    const out = scene.marks.filter((mark) => {
      const { left, top, right, bottom } = reach(mark);
      return !(-0.5 <= left && -0.5 <= top && right <= scene.width + 0.5 && bottom <= scene.height + 0.5);
    });
    expect(out).toEqual([]);
    const all: readonly TextMark[] = texts(scene);
    const pairs = all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => (overlap(boxOf(a), boxOf(b)) ? [`${a.text}/${b.text}`] : [])));
    expect(pairs).toEqual([]);
  });
  test("says in words what it shows", () => {
    expect(scene.alternative.length).toBeGreaterThan(12);
  });
});

test("an empty window says so", () => {
  expect(figure(others["empty window"] ?? "").alternative).toContain("empty");
});

test("holes of a pattern stand to scale", () => {
  const scene = figure(others.grid ?? "");
  const holes = scene.marks.filter((mark) => mark.kind === "circle");
  const [first, second] = holes;
  const pixels = Math.abs((second?.x ?? 0) - (first?.x ?? 0));
  expect((pixels / (96 / 0.0254) / (scene.scale ?? 1)) * 1000).toBeCloseTo(40, 6);
  expect(((holes[0]?.r ?? 0) / pixels) * 40).toBeCloseTo(2.75, 6);
});

test("an edit that leaves a figure the same draws nothing again", () => {
  const session = createSession(library);
  session.put("a.joint.md", `\`\`\`calc\n${CURVE}\n\`\`\`\n\nWords.\n`);
  session.snapshot("a.joint.md");
  const text = session.text("a.joint.md");
  session.edit("a.joint.md", [{ from: text.length - 2, to: text.length - 1, insert: "!" }]);
  expect(session.snapshot("a.joint.md").changed.filter((line) => line.figure !== undefined)).toEqual([]);
});
