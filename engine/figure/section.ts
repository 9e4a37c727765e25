// A joint in section through the screw axis, true to scale, with its dimensions and what it is made of.

import { type Callout, columnWidth, layOutCallouts } from "./callouts.ts";
import { inRows, levelDimension, uprightDimension } from "./dimension.ts";
import type { FigureOptions } from "./quantity-axis.ts";
import type { Mark, Scene } from "./scene.ts";
import { drawBefore, drawBehind } from "./section-anchor.ts";
import { sectionCallouts } from "./section-callouts.ts";
import { levelDimensions, uprightDimensions } from "./section-dimensions.ts";
import { drawBuildDirection, drawCentreLine, drawFailure, drawFibre, drawLoad, drawScaleBar } from "./section-extras.ts";
import { drawPart, drawPlates } from "./section-part.ts";
import { type Plan, planSection } from "./section-plan.ts";
import { drawScrew, drawWasher } from "./section-screw.ts";
import type { SectionView } from "./section-view.ts";
import { sectionWords, sectionWriter } from "./section-words.ts";

const LEFT = 12;
const COLUMN_GAP = 30;
const LOAD_ROOM = 66;
const DIMENSION_STEP = 44;
const ROW_STEP = 27;

/** Same view and options, same scene. */
export function drawSection(view: SectionView, options?: FigureOptions): Scene {
  const words = sectionWriter(options);
  const top = 16 + (view.load === undefined ? 0 : LOAD_ROOM);
  // The column's width hangs on its words alone, so the plan can be made after it.
  const draft = sectionCallouts(planSection(view, [0, 0]), words);
  const right = LEFT + columnWidth(draft);
  const plan = planSection(view, [right + COLUMN_GAP, top]);
  const callouts: readonly Callout[] = sectionCallouts(plan, words);
  const column = layOutCallouts(callouts, right, 8);
  const bodyRight = plan.x(Math.max(plan.right, plan.plateHalf));
  const bodyBottom = plan.y(Math.max(plan.bottom, plan.tip, lowestMetal(plan)));
  const upright = inRows(uprightDimensions(plan, words), { first: bodyRight + 22, step: DIMENSION_STEP, draw: uprightDimension });
  const level = inRows(levelDimensions(plan, words), { first: bodyBottom + 32, step: ROW_STEP, draw: levelDimension });
  const bar = barLength(plan);
  const barAt = Math.max(column.bottom + 22, bodyBottom + 32);
  const symbolAt = bodyBottom + 22;
  const height = Math.max(level.last + 14, barAt + 14, symbolAt + 70);
  const marks: Mark[] = [
    ...drawPart(plan),
    ...drawFibre(plan),
    ...drawPlates(plan),
    ...drawBehind(plan),
    ...(view.washer === undefined || plan.bearing === plan.plateTop ? [] : drawWasher(plan, view.washer, plan.bearing)),
    ...drawScrew(plan),
    ...drawBefore(plan),
    ...drawFailure(plan),
    drawCentreLine(plan, plan.y(plan.headTop) - 8, bodyBottom + 10),
    ...(view.load === undefined ? [] : drawLoad(plan, words.force(view.load))),
    ...upright.marks,
    ...level.marks,
    ...column.marks,
    ...drawScaleBar(plan, [LEFT + 4, barAt], bar, `${words.length(bar / 1000)} ${words.lengthUnit}`),
  ];
  const width = Math.max(upright.last + DIMENSION_STEP, bodyRight + 90);
  marks.push(...drawBuildDirection(plan, [width - 84, symbolAt]));
  return {
    width: Math.ceil(width),
    height: Math.ceil(height),
    marks,
    ...sectionWords(plan, words),
    scale: plan.ratio,
  };
}

/** About a quarter of the body's width, a round number of millimetres. */
function barLength(plan: Plan): number {
  const wanted = ((plan.left + plan.right) * 1000) / 4;
  return [1, 2, 5, 10, 20, 50, 100, 200].reduce((best, one) => (Math.abs(one - wanted) < Math.abs(best - wanted) ? one : best));
}

function lowestMetal(plan: Plan): number {
  const { anchor } = plan.view;
  if (anchor.record === "DrawnNut" && anchor.place === "far face") return plan.bottom + (anchor.washer?.h ?? 0) + anchor.m;
  if (anchor.record === "DrawnInsert" && anchor.from === "back") return plan.bottom + Math.max(0, anchor.protrusion);
  return plan.bottom;
}
