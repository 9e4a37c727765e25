// The door of engine/figure: figures as plain scenes, and scenes as SVG.

export { drawFigure } from "./draw-figure.ts";
export { type Painter, type SvgElement, svgElements } from "./elements.ts";
export { darkPalette, lightPalette, type Palette, printPalette } from "./palette.ts";
export type { FigureOptions } from "./quantity-axis.ts";
export { type Fill, type Mark, type Point, type Role, roles, type Scene, type Stroke, type TextMark } from "./scene.ts";
export { drawSection } from "./section.ts";
export { sectionRecords } from "./section-read.ts";
export type {
  DrawnAnchor,
  DrawnFibre,
  DrawnInsert,
  DrawnNut,
  DrawnPart,
  DrawnPlate,
  DrawnScrew,
  DrawnSleeve,
  DrawnThread,
  DrawnWasher,
  DrawnWire,
  FailureMark,
  SectionView,
} from "./section-view.ts";
export { type SvgOptions, sceneSvg } from "./svg.ts";
export { type Box, overlap, textBox, textWidth } from "./text-width.ts";
