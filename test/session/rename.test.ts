// Renaming: every place that means the name, no place that does not, and a refusal where a meaning would change.

import { describe, expect, test } from "vitest";
import { applyChanges } from "../../engine/base/index.ts";
import { FILE, fenced, open } from "./helper.ts";

/** The text of each file after renaming, or the reason why not. */
function renamed(
  text: string,
  name: string,
  newName: string,
  files: Readonly<Record<string, string>> = {},
): Readonly<Record<string, string>> | string {
  const { session } = open(text, files);
  const outcome = session.tools.rename(FILE, name, newName);
  if (!outcome.ok) return outcome.why;
  return Object.fromEntries(outcome.edits.map(({ file, changes }) => [file, applyChanges(session.text(file), changes)]));
}

const one = (text: string, name: string, newName: string): string => {
  const outcome = renamed(text, name, newName);
  return typeof outcome === "string" ? outcome : (outcome[FILE] ?? "");
};

describe("renaming", () => {
  test("a name changes where it is defined, in other lines, in checks and in prose", () => {
    const text = `The load is {F_t as kN}.\n\n${fenced("F_t = 2 N\ncheck F_t <= 2 * F_t factor 2\nG = F_t + 1 N | not F_t here | given F_t")}`;
    expect(one(text, "F_t", "F_far")).toBe(
      `The load is {F_far as kN}.\n\n${fenced("F_far = 2 N\ncheck F_far <= 2 * F_far factor 2\nG = F_far + 1 N | not F_t here | given F_t")}`,
    );
  });
  test("fields, named arguments, parameters and bound names of the same letters stay", () => {
    const text = fenced(
      "record R { d: Length }\nd = 2 mm\nr = R { d = d }\nformula f(d: Length) = 2 * d\ny = f(d = d) + r.d\nz = [d * 2 for d in [1 mm, 2 mm]]",
    );
    expect(one(text, "d", "D")).toBe(
      fenced(
        "record R { d: Length }\nD = 2 mm\nr = R { d = D }\nformula f(d: Length) = 2 * d\ny = f(d = D) + r.d\nz = [d * 2 for d in [1 mm, 2 mm]]",
      ),
    );
  });
  test("both spellings of a Greek name are one name", () => {
    expect(one(fenced("tau_max = 3 MPa\nx = τ_max * 2"), "tau_max", "tau_lim")).toBe(fenced("tau_lim = 3 MPa\nx = tau_lim * 2"));
  });
  test("formulas, records and csv blocks are renamed with their uses", () => {
    expect(one(fenced("formula f(a) = 2 * a\nx = f(3)"), "f", "twice")).toBe(fenced("formula twice(a) = 2 * a\nx = twice(3)"));
    expect(one(fenced("record R { d: Length }\nr: R = R { d = 1 mm }"), "R", "Rod")).toBe(
      fenced("record Rod { d: Length }\nr: Rod = Rod { d = 1 mm }"),
    );
    expect(one(`${fenced("n = count(pulls.F)")}\n\`\`\`csv pulls\nF [N]\n3\n\`\`\`\n`, "pulls", "trial")).toBe(
      `${fenced("n = count(trial.F)")}\n\`\`\`csv trial\nF [N]\n3\n\`\`\`\n`,
    );
  });
  test("a notebook that uses this one follows behind its prefix", () => {
    const other = `use "${FILE}" as shop\nF = 1 N\nG = shop.F * 2 + F`;
    expect(renamed(fenced("F = 2 N"), "F", "F_max", { "b.joint.md": other })).toEqual({
      [FILE]: fenced("F_max = 2 N"),
      "b.joint.md": fenced(`use "${FILE}" as shop\nF = 1 N\nG = shop.F_max * 2 + F`),
    });
  });
  test("the subject of a study and of a solve is the notebook's own input", () => {
    const text = fenced("L = 2 mm within 1 mm .. 9 mm\nF = L * 3 N/mm\nx = solve L in 1 mm .. 9 mm where F == 2 * L * 3 N/mm");
    expect(one(text, "L", "L_e")).toBe(
      fenced("L_e = 2 mm within 1 mm .. 9 mm\nF = L_e * 3 N/mm\nx = solve L_e in 1 mm .. 9 mm where F == 2 * L_e * 3 N/mm"),
    );
  });
  test("a new name that is no name, is taken, or would be caught is refused", () => {
    const text = fenced("a = 2 mm\nb = a\nxs = [p * a for p in [1, 2]]");
    expect(one(text, "a", "2a")).toBe("form");
    expect(one(text, "a", "check")).toBe("reserved");
    expect(one(text, "a", "b")).toBe("taken");
    expect(one(text, "a", "p")).toBe("bound");
    expect(one(text, "nothing", "c")).toBe("unknown");
  });
});
