// Which dimensions a section shows: upright ones at its right, level ones below it.

import type { Dimension } from "./dimension.ts";
import { insertSpan, nutSpan } from "./section-anchor.ts";
import { type Plan, printedRadius } from "./section-plan.ts";
import type { SectionWriter } from "./section-words.ts";

const SMALL = 1e-7;

export function uprightDimensions(plan: Plan, { length }: SectionWriter): readonly Dimension[] {
  const { view } = plan;
  const { anchor } = view;
  const out: Dimension[] = [];
  const add = (from: number, to: number, start: number, words = length(Math.abs(to - from)), startTo = start): void => {
    if (Math.abs(to - from) > SMALL)
      out.push({ from: plan.y(from), to: plan.y(to), start: plan.x(start), startTo: plan.x(startTo), words });
  };
  let top = plan.plateTop;
  for (const plate of view.plates) {
    add(top, top + plate.t, plan.plateHalf);
    top += plate.t;
  }
  if (!plan.goesOn) add(0, plan.bottom, Math.max(plan.plateHalf, plan.right), undefined, plan.right);
  const part = plan.right;
  switch (anchor.record) {
    case "DrawnInsert": {
      const [from, to] = insertSpan(plan, anchor);
      add(from, to, anchor.D / 2);
      if (Math.abs(anchor.protrusion) > SMALL) {
        const face = anchor.from === "loaded face" ? 0 : plan.bottom;
        const end = anchor.from === "loaded face" ? -anchor.protrusion : plan.bottom + anchor.protrusion;
        add(Math.min(face, end), Math.max(face, end), part);
      }
      if (anchor.from === "loaded face" && anchor.bottom !== undefined && Math.abs(anchor.bottom - to) > SMALL)
        add(0, anchor.bottom, anchor.hole / 2);
      break;
    }
    case "DrawnThread":
      add(0, anchor.L, view.screw.d / 2);
      if (anchor.bottom !== undefined && anchor.bottom - anchor.L > SMALL) add(0, anchor.bottom, anchor.hole / 2);
      break;
    case "DrawnWire":
      add(0, anchor.L, anchor.major / 2);
      if (anchor.bottom !== undefined && anchor.bottom - anchor.L > SMALL) add(0, anchor.bottom, anchor.hole / 2);
      break;
    case "DrawnNut": {
      const [from, to] = nutSpan(plan, anchor);
      if (anchor.place === "pocket") add(0, anchor.over, anchor.pocket / 2);
      add(from, to, anchor.s / 2);
      if (anchor.sleeve !== undefined && Math.abs(anchor.sleeve.L - plan.bottom) > SMALL) add(0, anchor.sleeve.L, anchor.sleeve.D / 2);
      break;
    }
  }
  return out;
}

export function levelDimensions(plan: Plan, { length }: SectionWriter): readonly Dimension[] {
  const { view } = plan;
  const { anchor, part } = view;
  const out: Dimension[] = [];
  const diameter = (d: number, depth: number): void => {
    out.push({ from: plan.x(-d / 2), to: plan.x(d / 2), start: plan.y(depth), words: `⌀ ${length(d)}` });
  };
  const last = plan.steps.at(-1);
  const bottom = last?.to ?? plan.bottom;
  switch (anchor.record) {
    case "DrawnInsert":
      diameter(anchor.D, insertSpan(plan, anchor)[1]);
      break;
    case "DrawnThread":
    case "DrawnWire":
      diameter(anchor.hole, bottom);
      break;
    case "DrawnNut":
      if (anchor.place === "far face") diameter(anchor.sleeve?.D ?? anchor.hole, plan.bottom);
      else {
        const [, to] = nutSpan(plan, anchor);
        out.push({
          from: plan.x(-anchor.pocket / 2),
          to: plan.x(anchor.pocket / 2),
          start: plan.y(Math.max(to, plan.steps[1]?.to ?? to)),
          words: length(anchor.pocket),
        });
      }
      break;
  }
  const r = wallRadius(plan);
  if (plan.wall > SMALL && !plan.lying && !(anchor.record === "DrawnNut" && anchor.opening === "side slot" && anchor.place === "pocket")) {
    const depth = wallDepth(plan);
    out.push({ from: plan.x(r), to: plan.x(r + plan.wall), start: plan.y(depth), words: length(plan.wall) });
  }
  if (part.boss !== undefined)
    out.push({ from: plan.x(-plan.left), to: plan.x(plan.right), start: plan.y(plan.bottom), words: `⌀ ${length(part.boss)}` });
  else if (plan.rightEnds && part.edge !== undefined)
    out.push({
      from: plan.x(0),
      to: plan.x(part.edge),
      start: plan.y(plan.bottom) + 10,
      startTo: plan.y(plan.bottom),
      words: length(part.edge),
    });
  return out;
}

const wallRadius = (plan: Plan): number => {
  const last = plan.steps.at(-1);
  return last === undefined ? 0 : printedRadius(last);
};

const wallDepth = (plan: Plan): number => plan.steps.at(-1)?.to ?? plan.bottom;
