// A figure drawn into a PDF: the same marks that the SVG writer walks.

import { printPalette, type Scene, type TextMark } from "../../figure/index.ts";
import type { Pen } from "./pen.ts";

/** Points to a pixel of a scene. */
const POINTS = 72 / 96;

/** At its own size where it fits, else made smaller; true to its shape always. */
export function sceneSize(
  scene: Scene,
  width: number,
  height: number,
): { readonly width: number; readonly height: number; readonly scale: number } {
  const scale = Math.min(POINTS, width / scene.width, height / scene.height);
  return { width: scene.width * scale, height: scene.height * scale, scale };
}

/** `x` and `y` are the corner at the top left, `scale` points to a pixel. */
export function drawScene(pen: Pen, scene: Scene, x: number, y: number, scale: number): void {
  const { document } = pen;
  document.save();
  document.transform(scale, 0, 0, scale, x, y);
  document.lineJoin("round");
  for (const mark of scene.marks) {
    if (mark.kind === "text") {
      drawText(pen, mark);
      continue;
    }
    document.save();
    switch (mark.kind) {
      case "rect":
        document.rect(mark.x, mark.y, mark.width, mark.height);
        break;
      case "circle":
        document.circle(mark.x, mark.y, mark.r);
        break;
      case "polyline":
        for (const [i, [px, py]] of mark.points.entries()) {
          if (i === 0) document.moveTo(px, py);
          else document.lineTo(px, py);
        }
        if (mark.closed === true) document.closePath();
        break;
      case "segments":
        for (let i = 0; i + 3 < mark.ends.length; i += 4) {
          const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = mark.ends.slice(i, i + 4);
          document.moveTo(x1, y1).lineTo(x2, y2);
        }
        break;
      case "path":
        document.path(mark.d);
        break;
    }
    const { stroke, fill } = mark;
    if (fill !== undefined) document.fillColor(printPalette[fill.role]).fillOpacity(fill.opacity ?? 1);
    if (stroke !== undefined) {
      document.strokeColor(printPalette[stroke.role]).lineWidth(stroke.width);
      if (stroke.dash !== undefined && stroke.dash.length > 0)
        document.dash(stroke.dash[0] ?? 1, { space: stroke.dash[1] ?? stroke.dash[0] ?? 1 });
    }
    if (fill !== undefined && stroke !== undefined) document.fillAndStroke();
    else if (fill !== undefined) document.fill();
    else if (stroke !== undefined) document.stroke();
    document.restore();
  }
  document.restore();
}

function drawText(pen: Pen, mark: TextMark): void {
  const { document } = pen;
  const style = { face: mark.weight === 600 ? "sans-600" : "sans-400", size: mark.size, colour: printPalette[mark.role] } as const;
  const width = pen.width(mark.text, style);
  const before = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? width / 2 : width;
  document.save();
  if (mark.turn !== undefined && mark.turn !== 0) document.rotate(mark.turn, { origin: [mark.x, mark.y] });
  pen.text(mark.text, mark.x - before, mark.y, style);
  document.restore();
}
