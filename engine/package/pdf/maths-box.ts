// Formulas as boxes: fractions, roots, scripts, brackets as tall as what they hold.

import type { Typeset } from "../../sheet/index.ts";
import { type Box, lowered, nothing, roomBox, rowBox, textBox } from "./box.ts";
import type { Face, Pen, Ruler } from "./pen.ts";

interface Setting {
  readonly size: number;
  readonly colour: string;
  readonly ruler: Ruler;
  /** Inside a fraction or a script, where fractions are set smaller. */
  readonly tight: boolean;
}

/** Height of the bar of a fraction over the base line, and its thickness, in shares of the size. */
const AXIS = 0.26;
const BAR = 0.045;
const SCRIPT = 0.7;
const LEAST_SIZE = 5.5;
/** Brackets around more than this share of the size are drawn tall. */
const TALL = 1.35;

export const mathsBox = (set: Typeset, size: number, colour: string, ruler: Ruler): Box =>
  piece(set, { size, colour, ruler, tight: false });

const smaller = (setting: Setting): Setting => ({ ...setting, size: Math.max(LEAST_SIZE, setting.size * SCRIPT), tight: true });

function letters(text: string, face: Face, { size, colour, ruler }: Setting): Box {
  return textBox(text, { face, size, colour }, ruler);
}

function piece(set: Typeset, setting: Setting): Box {
  const { size } = setting;
  switch (set.kind) {
    case "row":
      return rowBox(set.items.map((item) => piece(item, setting)));
    case "letters":
      return letters(set.text, set.letters === "slanted" ? "serif-400-italic" : "serif-400", setting);
    case "number":
    case "words":
      return letters(set.text, "serif-400", setting);
    case "sign": {
      const box = letters(set.text, "serif-400", setting);
      const [before, behind] = set.room === "infix" ? [0.24, 0.24] : set.room === "comma" ? [0, 0.24] : [0, 0];
      return rowBox([gap(before * size, setting), box, gap(behind * size, setting)]);
    }
    case "fraction":
      return fraction(set, setting);
    case "root":
      return root(set, setting);
    case "scripts":
      return scripts(set, setting);
    case "fenced":
      return fenced(set.open, set.close, piece(set.of, setting), setting);
    case "cases":
      return cases(set, setting);
    case "room":
      return gap(set.width * size, setting);
  }
}

/** Room with a blank in it, so that what is copied from the page does not run together. */
const gap = (width: number, { size, colour }: Setting): Box =>
  width === 0 ? nothing : { ...roomBox(width), draw: (pen, x, base) => pen.text(" ", x, base, { face: "serif-400", size, colour }) };

function fraction(set: Extract<Typeset, { kind: "fraction" }>, setting: Setting): Box {
  const { size, colour } = setting;
  const inner: Setting = { ...setting, size: setting.tight ? Math.max(LEAST_SIZE, size * 0.8) : size, tight: true };
  const [over, under] = [piece(set.over, inner), piece(set.under, inner)];
  const space = 0.14 * size;
  const width = Math.max(over.width, under.width) + 0.24 * size;
  const axis = AXIS * size;
  return {
    width: width + 0.1 * size,
    up: axis + space + over.down + over.up,
    down: -axis + space + under.up + under.down,
    draw: (pen, x, base) => {
      const left = x + 0.05 * size;
      pen.line([left, base - axis], [left + width, base - axis], BAR * size, colour);
      over.draw(pen, left + (width - over.width) / 2, base - axis - space - over.down);
      under.draw(pen, left + (width - under.width) / 2, base - axis + space + under.up);
    },
  };
}

function root(set: Extract<Typeset, { kind: "root" }>, setting: Setting): Box {
  const { size, colour } = setting;
  const of = piece(set.of, setting);
  const degree = set.degree === 3 ? letters("3", "serif-400", smaller(smaller(setting))) : undefined;
  const hook = 0.62 * size;
  const lead = degree === undefined ? 0 : Math.max(0, degree.width - 0.2 * size);
  const top = of.up + 0.12 * size;
  return {
    width: lead + hook + of.width + 0.1 * size,
    up: top + 0.08 * size,
    down: of.down,
    draw: (pen, x, base) => {
      const at = x + lead;
      const low = base + of.down * 0.7;
      const points = [
        [at + 0.05 * size, base - 0.22 * size],
        [at + 0.16 * size, base - 0.3 * size],
        [at + 0.34 * size, low],
        [at + hook - 0.06 * size, base - top],
        [at + hook + of.width + 0.06 * size, base - top],
      ];
      pen.path(`M${points.map((point) => point.map((value) => value.toFixed(3)).join(" ")).join("L")}`, {
        stroke: { width: 0.055 * size, colour },
      });
      degree?.draw(pen, x, base - 0.42 * size);
      of.draw(pen, at + hook, base);
    },
  };
}

function scripts({ base: of, below, above }: Extract<Typeset, { kind: "scripts" }>, setting: Setting): Box {
  const { size } = setting;
  const base = piece(of, setting);
  const small = smaller(setting);
  // A tall base takes its scripts to its own corners.
  const extra = Math.max(0, base.up - size);
  const low = below === undefined ? undefined : lowered(piece(below, small), 0.2 * size + Math.max(0, base.down - 0.3 * size));
  const high = above === undefined ? undefined : lowered(piece(above, small), -(0.36 * size + extra));
  const room = 0.04 * size;
  return {
    width: base.width + room + Math.max(low?.width ?? 0, high?.width ?? 0) + room,
    up: Math.max(base.up, high?.up ?? 0),
    down: Math.max(base.down, low?.down ?? 0),
    draw: (pen, x, at) => {
      base.draw(pen, x, at);
      low?.draw(pen, x + base.width + room, at);
      high?.draw(pen, x + base.width + room, at);
    },
  };
}

function fenced(open: string, close: string, of: Box, setting: Setting): Box {
  const { size, colour } = setting;
  if (of.up + of.down <= TALL * size) return rowBox([letters(open, "serif-400", setting), of, letters(close, "serif-400", setting)]);
  const width = 0.38 * size;
  // As far up as down from the bar of fractions.
  const axis = AXIS * size;
  const half = Math.max(of.up - axis, of.down + axis) + 0.04 * size;
  const side = (sign: string): Box => ({
    width,
    up: axis + half,
    down: half - axis,
    draw: (pen, x, base) => bracket(pen, sign, x, base - axis - half, width, 2 * half, size, colour),
  });
  return rowBox([side(open), of, side(close)]);
}

function bracket(pen: Pen, sign: string, x: number, top: number, width: number, height: number, size: number, colour: string): void {
  pen.path(bracketPath(sign, x, top, width, height, size), { stroke: { width: 0.055 * size, colour } });
}

function bracketPath(sign: string, x: number, top: number, width: number, height: number, size: number): string {
  const [left, right, spine] = [x + 0.22 * width, x + 0.78 * width, x + width / 2];
  const [bottom, middle] = [top + height, top + height / 2];
  const path = (...steps: readonly (string | number)[]): string =>
    steps.map((step) => (typeof step === "string" ? step : step.toFixed(3))).join(" ");
  const bow = (from: number, to: number): string =>
    path("M", from, top, "C", to, top + height * 0.25, to, bottom - height * 0.25, from, bottom);
  switch (sign) {
    case "(":
      return bow(right, left - 0.1 * width);
    case ")":
      return bow(left, right + 0.1 * width);
    case "[":
      return path("M", right, top, "L", left, top, "L", left, bottom, "L", right, bottom);
    case "]":
      return path("M", left, top, "L", right, top, "L", right, bottom, "L", left, bottom);
    case "|":
      return path("M", spine, top, "L", spine, bottom);
    default: {
      // A brace: two quarter bows to a point in the middle.
      const [outer, tip] = sign === "{" ? [right, left] : [left, right];
      const bend = Math.min(0.5 * size, height / 4);
      const upper = path("M", outer, top, "Q", spine, top, spine, top + bend, "L", spine, middle - bend, "Q", spine, middle, tip, middle);
      return upper + path("Q", spine, middle, spine, middle + bend, "L", spine, bottom - bend, "Q", spine, bottom, outer, bottom);
    }
  }
}

function cases(set: Extract<Typeset, { kind: "cases" }>, setting: Setting): Box {
  const { size } = setting;
  const rows = set.rows.map(({ value, condition }) => ({ value: piece(value, setting), condition: piece(condition, setting) }));
  const column = Math.max(0, ...rows.map(({ value }) => value.width)) + 0.9 * size;
  const space = 0.28 * size;
  const heights = rows.map(({ value, condition }) => ({
    up: Math.max(value.up, condition.up),
    down: Math.max(value.down, condition.down),
  }));
  const total = heights.reduce((sum, { up, down }) => sum + up + down, 0) + space * Math.max(0, rows.length - 1);
  const axis = AXIS * size;
  const inner: Box = {
    width: column + Math.max(0, ...rows.map(({ condition }) => condition.width)),
    up: total / 2 + axis,
    down: total / 2 - axis,
    draw: (pen, x, base) => {
      let top = base - axis - total / 2;
      rows.forEach(({ value, condition }, i) => {
        const height = heights[i] ?? { up: 0, down: 0 };
        value.draw(pen, x, top + height.up);
        condition.draw(pen, x + column, top + height.up);
        top += height.up + height.down + space;
      });
    },
  };
  const width = 0.42 * size;
  const brace: Box = {
    width,
    up: inner.up,
    down: inner.down,
    draw: (pen, x, base) => bracket(pen, "{", x, base - inner.up, width, total, size, setting.colour),
  };
  return rowBox([brace, roomBox(0.2 * size), inner]);
}
