// Texts that the fuzz run starts from: every notebook of the repository, the README, the design sample, the catalogue's samples.

import { readdirSync, readFileSync } from "node:fs";
import { entries } from "../../engine/diagnostics/index.ts";

const root = new URL("../../", import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, root), "utf8");
const folder = (name: string, end: string): string[] =>
  readdirSync(new URL(name, root))
    .filter((file) => file.endsWith(end))
    .sort()
    .map((file) => `${name}${file}`);

export interface Sources {
  /** Whole notebook texts. */
  readonly notebooks: readonly string[];
  /** Short ones, one for each fault and its mend. */
  readonly samples: readonly string[];
  /** What stands in calc fences, each as a list of lines. */
  readonly workings: readonly (readonly string[])[];
}

const FENCE = /^```calc[^\n]*\n([\s\S]*?)^```/gm;

/** Reads the sources from the repository. */
export function readSources(): Sources {
  const notebooks = [
    ...folder("notebooks/", ".joint.md"),
    ...folder("stdlib/", ".joint.md"),
    "test/syntax/data/sample.joint.md",
    "README.md",
  ].map(read);
  const samples = entries.flatMap(({ wrong, right }) => [wrong, right].flatMap((sample) => (sample.trim() === "" ? [] : [sample])));
  const whole = (sample: string): string => (/^(?:---|\s*```)/m.test(sample) ? sample : `\`\`\`calc\n${sample.trimEnd()}\n\`\`\`\n`);
  const workings = [...notebooks, ...samples.map(whole), bench]
    .flatMap((text) => [...text.matchAll(FENCE)].map((found) => (found[1] ?? "").trimEnd().split("\n")))
    .filter((lines) => lines.join("").trim() !== "");
  return { notebooks: [...notebooks, bench], samples: samples.map(whole), workings };
}

/** What the others have little of: families, tables, loops over lists, points, kinds, money, studies. */
const bench = `---
title: Trial of everything
units: { length: mm, force: N, stress: MPa }
digits: 5
---

The mean is {m as N}, the first {pulls.F_max} and the area {A as mm^2}.

\`\`\`calc
pulls = table {
  specimen | method   | F_max [N] | F_first [N]
  "A1"     | "tapped" | 1480      | 1390
  "A2"     | "insert" | 1620      | 1400
  "A3"     | "tapped" | 1510      | 1402
}
m = mean(pulls.F_max)
strong = pulls where .F_max > 1.5 kN and .method == "tapped"
groups = group pulls by .method { n = count(.F_max), m = mean(.F_max) }
first = pulls.F_max[1]
share = [x / y for x in pulls.F_max where x > 1 kN]
total = accumulate s = 0 N for x in pulls.F_max: s + x
y = [1 mm, 2 mm, 3.5 mm]
ys = 1 mm .. 9 mm step 2 mm
z = y^2 * 3 N/mm^2
T_1 = 23 degC ± 2 K
T_2 = -40 degF
dT = T_1 - T_2
price = 0.45 EUR
M = 12 N * 3 mm as N*m
\`\`\`

\`\`\`calc
use "shop.joint.md" as shop
Z = shop.twice(shop.D) + 3 mm
nut = shop.Nut { L = shop.D }
H = nut.L * shop.n
record Insert { D: Length, L: Length = 9 mm, face: "loaded" or "back" = "loaded" }
record Tapped { L: Length }
family Anchor = Insert or Tapped
formula reach(a: Anchor): Length = match (a) { Insert i: i.L, Tapped t: t.L }
formula area(d: Length): Area = {
  require d > 0 mm       | a diameter
  valid d < 30 mm        | the trials
  r      = d / 2
  result = pi * r^2
}   | circle | @iso68
i = Insert { D = 8 mm within_limit, L = 12 mm }
j = Insert { D = 8 mm }
k = j with { L = 12 mm, face = "back" }
l = reach(k) + reach(Tapped { L = 3 mm })
A = area(k.D) as mm^2
tau = 17 MPa ~ 2 MPa of 4
F = tau * A
check 1.5 kN <= F factor 2      | strip
check all([x < 4 mm for x in y])
example area(2 mm) == 3.14159 mm^2 ± 0.00001 mm^2 | by hand
maybe = if 1 < 2 then none else 3 mm
got = match (maybe) { none: 0 mm, some v: v }
curve = study F over d_1 in 4 mm .. 14 mm step 1 mm
\`\`\`

\`\`\`csv data | invented | test own
name;F [N];t [s]
a;1,5;2
b;3;4.5
\`\`\`
`;
