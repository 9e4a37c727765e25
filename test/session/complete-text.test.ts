// Completion inside texts: designations of the library, choices of a type; and values of the wanted type first.

import { describe, expect, test } from "vitest";
import { library } from "../../stdlib/index.ts";
import { FILE, open } from "./helper.ts";

/** What is offered at the mark ^, which is taken out of the text. */
function offered(marked: string): readonly string[] {
  const { session } = open(marked.replace("^", ""), {}, library);
  const at = session.text(FILE).indexOf(marked.slice(0, marked.indexOf("^"))) + marked.indexOf("^");
  return session.complete(FILE, at).options.map(({ label }) => label);
}

describe("inside a text", () => {
  test("designations that the library uses are offered, by what is typed", () => {
    const all = offered('t = thread("^")');
    expect(all).toEqual(expect.arrayContaining(["M5", "1/4-20 UNC"]));
    const some = offered('t = thread("M5^")');
    expect(some[0]).toBe("M5");
    expect(some.every((text) => text.toLowerCase().includes("m5"))).toBe(true);
  });
  test("names of the rows of a table go with the formula that reads it", () => {
    expect(offered('m = metal("^")')).toContain("EN AW-6082");
  });
  test("the second argument is not the first", () => {
    const classes = offered('s = socket_screw("M5", "^", 20 mm)');
    expect(classes).toContain("8.8");
    expect(classes).not.toContain("M5");
  });
  test("choices of a type are all there is, of a parameter and of a field", () => {
    expect(offered('i = HeatSetInsert { D = 6 mm, L = 8 mm, from = "^" }')).toEqual(["back", "loaded face"]);
    expect(offered('record R { face: "top" or "side" }\nr = R { face = "s^" }')).toEqual(["side"]);
    expect(offered('formula f(a: "one" or "two") = 1\nx = f("^")')).toEqual(["one", "two"]);
  });
  test("a text that nothing is known of offers nothing", () => {
    expect(offered('x = "^"')).toEqual([]);
  });
});

describe("by type", () => {
  test("of names that begin alike, the one of the wanted type comes first", () => {
    expect(offered("a_load = 2 N\na_mass = 3 kg\nx = 4 N\ncheck a_^ <= x")[0]).toBe("a_load");
    expect(offered("a_load = 2 N\na_mass = 3 kg\nx = 4 kg\ncheck a_^ <= x")[0]).toBe("a_mass");
  });
});
