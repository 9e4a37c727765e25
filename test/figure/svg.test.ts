// Scenes as SVG: well-formed, harmless, readable on their paper.

import { describe, expect, test } from "vitest";
import {
  darkPalette,
  lightPalette,
  type Palette,
  printPalette,
  roles,
  type Scene,
  sceneSvg,
  svgElements,
} from "../../engine/figure/index.ts";

const scene: Scene = {
  width: 100,
  height: 50,
  marks: [
    { kind: "rect", x: 1, y: 2, width: 3, height: 4, fill: { role: "printed", opacity: 0.1 } },
    {
      kind: "polyline",
      points: [
        [0, 0],
        [1 / 3, 2],
      ],
      stroke: { role: "ink", width: 1.4, dash: [3, 2] },
    },
    {
      kind: "text",
      x: 5,
      y: 6,
      text: '<script>alert("1 & 2")</script>\u0001',
      size: 12,
      anchor: "middle",
      weight: 600,
      role: "failure",
      turn: -90,
    },
  ],
  alternative: 'A <b> & "c"',
  caption: "",
};

/** Names of elements in order; throws where tags do not close. A reader of our own subset of XML: no comments, no entities but four. */
function elements(xml: string): readonly string[] {
  const open: string[] = [];
  const names: string[] = [];
  for (const [, closing, name, attributes, empty] of xml.matchAll(
    /<(\/?)([a-z]+)((?:\s+[\w:-]+="[^"<&]*(?:&(?:amp|lt|gt|quot);[^"<&]*)*")*)\s*(\/?)>|</g,
  )) {
    if (name === undefined || attributes === undefined) throw new Error("a stray <");
    if (closing === "/") {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
      continue;
    }
    names.push(name);
    if (empty === "") open.push(name);
  }
  if (open.length > 0) throw new Error(`${open.join()} stays open`);
  return names;
}

describe("the text", () => {
  const svg = sceneSvg(scene, { palette: lightPalette });
  test("is well-formed, with its alternative text first and no control characters", () => {
    expect(elements(svg)).toEqual(["svg", "title", "rect", "path", "text"]);
    expect(svg).toContain("&lt;script&gt;alert(&quot;1 &amp; 2&quot;)&lt;/script&gt;</text>");
    expect(svg).toContain("A &lt;b&gt; &amp; &quot;c&quot;</title>");
  });
  test("holds no script, style, event or reference", () => {
    expect(svg).not.toMatch(/<script|<style|<image|<use|\son\w+=|href|style=/);
    expect(svg.match(/url\(|https?:/g)).toEqual(["http:"]);
  });
  test("rounds to a hundredth of a pixel and gives the same bytes twice", () => {
    expect(svg).toContain('d="M0 0L0.33 2"');
    expect(sceneSvg(scene, { palette: lightPalette })).toBe(svg);
  });
  test("is measured in millimetres for print, with the paper under it when asked", () => {
    expect(sceneSvg({ ...scene, width: 96 }, { millimetres: true })).toContain('width="25.4mm"');
    expect(elements(sceneSvg(scene, { ground: true }))[2]).toBe("rect");
  });
});

test("the walk gives classes to those who colour by style sheet", () => {
  const [rect, path, text] = svgElements(scene, (role, what) => ({ class: `${what}-${role}` }));
  expect(rect?.attributes).toEqual({ x: "1", y: "2", width: "3", height: "4", class: "fill-printed", "fill-opacity": "0.1" });
  expect(path?.attributes).toMatchObject({ fill: "none", class: "stroke-ink", "stroke-dasharray": "3 2" });
  expect(text?.attributes).toMatchObject({ class: "fill-failure", transform: "rotate(-90 5 6)", "text-anchor": "middle" });
});

const channel = (value: number): number => (value <= 0.03928 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => channel(Number.parseInt(hex.slice(at, at + 2), 16) / 255)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((one, other) => one - other) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const palettes: readonly (readonly [string, Palette])[] = [
  ["light", lightPalette],
  ["dark", darkPalette],
  ["print", printPalette],
];

/** Lines that only fill areas or lead the eye; no text is written in them. */
const QUIET = new Set(["paper", "infill", "layer", "grid"]);

test.each(palettes)("every role that writes reads at 4.5 to 1 on %s paper", (_, palette) => {
  const poor = roles.filter((role) => !QUIET.has(role) && contrast(palette[role], palette.paper) < 4.5);
  expect(poor).toEqual([]);
});

test.each(palettes)("beads and infill are seen on %s paper", (_, palette) => {
  expect(["infill", "layer"].filter((role) => contrast(palette[role as "infill"], palette.paper) < 2)).toEqual([]);
});
