// Results that no longer belong to what stands above them (area "stale results").

import { expect, test } from "vitest";
import { calc, notebook } from "./helper.ts";

test("F099 an edit above a result computes it again", () => {
  const read = notebook(calc("a = 2 N", "b = a * 3 as N"));
  expect(read.text("b")).toBe("6 N");
  const changed = read.edit("a = 2 N", "a = 5 N");
  expect(read.text("b")).toBe("15 N");
  expect(changed.changed.map((one) => one.name)).toContain("b");
});

test("F100 the numbers in the text are those of a clean start", () => {
  const text = `${calc("a = 2 N", "b = a * 3 as N")}\nThe force is {b}.\n`;
  const read = notebook(text);
  read.edit("a = 2 N", "a = 5 N");
  read.edit("* 3", "* 4");
  const clean = notebook(read.session.text(read.file));
  const shown = (one: typeof read): readonly (string | undefined)[] => one.outputs().map((line) => line.value?.text);
  expect(shown(read)).toEqual(shown(clean));
  expect(read.outputs().find((one) => one.kind === "live")?.value?.text).toBe("20 N");
});

test("F101 a renamed value leaves no ghost", () => {
  const read = notebook(calc("answer = 42 N", "twice = answer * 2"));
  read.edit("answer = 42 N", "foo = 42 N");
  expect(read.faults("twice")).toEqual(["unknown-name"]);
  expect(read.output("twice").value).toBeUndefined();
  expect(read.session.evaluate("answer", { file: read.file }).result).toBeUndefined();
});

test("F102 a line put in above changes no reference and runs nothing again", () => {
  const read = notebook(calc("a = 2 N", "b = a * 3 as N"));
  const changed = read.edit("a = 2 N", "z = 7 N\na = 2 N");
  expect(read.text("b")).toBe("6 N");
  expect(changed.reran).not.toContain("a");
  expect(changed.reran).not.toContain("b");
});

test("F103 a renamed notebook is a fault at the one line that names it, and that line mends every use", () => {
  const shop = calc("F_max = 5 N");
  const read = notebook(calc('use "shop.joint.md" as shop', "F = shop.F_max * 2 as N", "G = shop.F_max * 3 as N"), {
    "shop.joint.md": shop,
  });
  expect(read.text("F")).toBe("10 N");
  read.session.remove("shop.joint.md");
  read.session.put("store.joint.md", shop);
  expect(read.line("use").diagnostics.length).toBeGreaterThan(0);
  expect(read.output("F").value).toBeUndefined();
  read.edit('"shop.joint.md"', '"store.joint.md"');
  expect(read.allFaults()).toEqual([]);
  expect([read.text("F"), read.text("G")]).toEqual(["10 N", "15 N"]);
});

test("F104 a name defined twice is a fault at the second place, and the first keeps its meaning", () => {
  const read = notebook(calc("a = 2 N", "a = 3 N", "b = a * 2"));
  expect(read.line("a = 3 N").diagnostics.map((one) => one.code)).toEqual(["duplicate-name"]);
  expect(read.line("a = 3 N").value).toBeUndefined();
  expect(read.number("b")).toBe(4);
});
