// Notebooks made by rule in which nearly everything fits, so that what is tried is evaluation: arithmetic at its edges, lists,
// ranges, records, formulas with their limits.

import type { Chance } from "./random.ts";

type Sort = "number" | "length" | "force" | "truth" | "numbers" | "lengths" | "part" | "maybe";
type Known = Record<Sort, string[]>;

const plain = "0 1 2 3 7 0.5 12.7 1e3 1e-3 100 1000000 0.1 0.30000000000000004 1e308 1e-308 5e-324 1.7976931348623157e308".split(" ");
const edges = 9;
const sorts: readonly Sort[] = ["number", "length", "force", "truth", "numbers", "lengths", "part", "maybe"];
const asked: Readonly<Record<Sort, readonly string[]>> = {
  number: ["", " as %", ""],
  length: ["", " as mm", " as in", " as um"],
  force: ["", " as kN", " as lbf"],
  truth: [""],
  numbers: [""],
  lengths: ["", " as mm"],
  part: [""],
  maybe: [""],
};

const head = `record Part { D: Length, L: Length = 9 mm, n = 1, face: "front" or "back" = "front" }
formula area(d: Length): Area = {
  require d > 0 mm
  valid d < 30 mm | the trials
  result = pi / 4 * d^2
}
formula scaled(x, k = 2) = x * k
pulls = table {
  name | F [N] | t [s]
  "A1" | 1480  | 1
  "A2" | 1510  | 2.5
  "A3" | 0     | -1
}
`;

/** A working of up to sixteen statements; later ones use earlier ones. */
export function soberWorking(by: Chance): string {
  const known: Known = { number: ["pi"], length: [], force: [], truth: [], numbers: [], lengths: [], part: [], maybe: [] };
  const shop = by.oneIn(3);
  if (shop) {
    known.length.push("shop.D", "shop.twice(shop.D)", "shop.Nut { L = 3 mm }.L");
    known.number.push("shop.n");
  }
  const lines = Array.from({ length: 2 + by.below(15) }, (_, at) => {
    const sort = by.oneIn(3) ? by.from(sorts) : by.from<Sort>(["number", "length", "force"]);
    if (by.oneIn(6))
      return `check ${make(ordered(sort), known, by, 2)} ${by.from(["<=", "<", ">=", ">"])} ${make(ordered(sort), known, by, 2)}${by.oneIn(2) ? ` factor ${by.from(plain.slice(1))}` : ""} | title ${at}`;
    if (by.oneIn(12))
      return `example ${make(ordered(sort), closed, by, 2)} == ${make(ordered(sort), closed, by, 1)}${by.oneIn(2) ? ` ± ${literal(ordered(sort), by)}` : ""}`;
    const name = `v_${at}`;
    const line = `${name} = ${make(sort, known, by, 1 + by.below(3))}${by.from(asked[sort])}${by.oneIn(3) ? ` | note | ${by.from(["given", "test own", "assumed", "memory"])}` : ""}`;
    known[sort].push(name);
    return line;
  });
  if (by.oneIn(3)) lines.reverse();
  return `${shop ? 'use "shop.joint.md" as shop\n' : ""}${head}${lines.join("\n")}`;
}

const closed: Known = { number: ["pi"], length: [], force: [], truth: [], numbers: [], lengths: [], part: [], maybe: [] };

/** What can be compared in order. */
const ordered = (sort: Sort): Sort => (sort === "length" || sort === "force" ? sort : "number");

function literal(sort: Sort, by: Chance): string {
  const digits = by.oneIn(4) ? by.from(plain) : by.from(plain.slice(0, edges));
  if (sort === "length") return `${digits} ${by.from(["mm", "in", "m", "um", "ft"])}`;
  return sort === "force" ? `${digits} ${by.from(["N", "kN", "lbf", "kgf"])}` : digits;
}

function make(sort: Sort, known: Known, by: Chance, depth: number): string {
  const names = known[sort];
  if (names.length > 0 && by.oneIn(3)) return by.from(names);
  const part = (wanted: Sort = sort): string => make(wanted, known, by, depth - 1);
  const leaf = depth <= 0;
  switch (sort) {
    case "truth":
      return leaf ? by.from(["true", "false"]) : `(${part("length")} ${by.from(["<", "<=", "==", "!=", ">"])} ${part("length")})`;
    case "part":
      return by.oneIn(2) || names.length === 0
        ? `Part { D = ${leaf ? "8 mm" : part("length")}, L = ${leaf ? "9 mm" : part("length")} }`
        : `(${by.from(names)} with { L = ${part("length")}, face = "${by.from(["front", "back", "side"])}" })`;
    case "maybe":
      return leaf ? "none" : `(if ${part("truth")} then none else ${part("length")})`;
    case "numbers":
    case "lengths":
      return list(sort === "numbers" ? "number" : "length", known, by, leaf, part);
    default:
      return leaf ? literal(sort, by) : scalar(sort, by, part);
  }
}

function list(of: "number" | "length", known: Known, by: Chance, leaf: boolean, part: (sort?: Sort) => string): string {
  const item = (): string => (leaf ? literal(of, by) : part(of));
  switch (leaf ? 0 : by.below(6)) {
    case 1:
      return `(${item()} .. ${item()} step ${literal(of, by)})`;
    case 2:
      return `[${of === "number" ? "x / 1 mm" : "2 * x"} for x in ${part("lengths")}${by.oneIn(2) ? ` where x ${by.from(["<", ">="])} ${part("length")}` : ""}]`;
    case 3:
      return `(${part(of === "number" ? "numbers" : "lengths")} * ${part("number")})`;
    case 4:
      return `sort(${part(of === "number" ? "numbers" : "lengths")})`;
    default: {
      const items = Array.from({ length: 1 + by.below(5) }, item);
      return known.number.length === 1 && by.oneIn(8) ? "[]" : `[${items.join(", ")}]`;
    }
  }
}

function scalar(sort: "number" | "length" | "force", by: Chance, part: (sort?: Sort) => string): string {
  const many: Sort = sort === "number" ? "numbers" : "lengths";
  switch (by.below(sort === "force" ? 6 : 14)) {
    case 0:
      return `(${part()} ${by.from(["+", "-"])} ${part()})`;
    case 1:
      return `(${part()} ${by.from(["*", "/"])} ${part("number")})`;
    case 2:
      return `${by.from(["min", "max"])}(${part()}, ${part()})`;
    case 3:
      return `(if ${part("truth")} then ${part()} else ${part()})`;
    case 4:
      return `-${by.from(["abs", "scaled"])}(${part()})`;
    case 5:
      if (sort === "force")
        return by.from(["sum(pulls.F)", "max(pulls.F)", `pulls.F[${by.below(5)}]`, `mean((pulls where .F > ${literal("force", by)}).F)`]);
      return sort === "number" ? `(${part("length")} / ${part("length")})` : `sqrt(${part()} * ${part()})`;
    case 6:
      return sort === "number"
        ? `${by.from(["sqrt", "exp", "ln", "log10", "sin", "tan", "asin", "atan", "round", "floor", "ceil", "abs"])}(${part()})`
        : `sqrt(area(${part()}))`;
    case 7:
      return `${by.from(["sum", "mean", "min", "max", "first", "last", "deviation"])}(${part(many)})`;
    case 8:
      return `${part(many)}[${by.oneIn(2) ? by.below(5) : part("number")}]`;
    case 9:
      return sort === "number"
        ? `(${part()})^${by.from(["2", "3", "-1", "0.5", "(1/3)", "0", "400", "(-2)"])}`
        : `${part("part")}.${by.from(["D", "L"])}`;
    case 10:
      return `(accumulate s = ${part()} for x in ${part(many)}: ${by.from(["s + x", "max(s, x)", "2 * s"])})`;
    case 11:
      return sort === "number" ? `mod(${part()}, ${part()})` : `(match (${part("maybe")}) { none: ${part()}, some v: v })`;
    case 12:
      return sort === "number"
        ? `interpolate(${part("lengths")}, ${part("numbers")}, ${part("length")})`
        : `(${part("part")} with { D = ${part()} }).D`;
    default:
      return sort === "number" ? `(area(${part("length")}) / (1 mm)^2)` : `(${part("number")} * ${part()})`;
  }
}
