// Loops of definitions (area "circular reference").

import { expect, test } from "vitest";
import { calc, notebook } from "./helper.ts";

test("F105 two lines that need each other are both in error and nothing runs", () => {
  const read = notebook(calc("a = b + 1", "b = a + 1", "c = 2"));
  expect(read.faults("a")).toEqual(["loop"]);
  expect(read.faults("b")).toEqual(["loop"]);
  expect(read.output("a").value).toBeUndefined();
  expect(read.output("b").value).toBeUndefined();
  expect(read.number("c")).toBe(2);
});

test("F106 the message names the loop in order", () => {
  const read = notebook(calc("a = b + 1", "b = c + 1", "c = a + 1"));
  expect(read.output("a").diagnostics[0]?.message).toMatch(/a\b.*b\b.*c\b.*a\b/);
});

test("F108 a line that needs itself is found before anything is evaluated", () => {
  const read = notebook(calc("x = x + 1", "y = x * 2"));
  expect(read.faults("x")).toEqual(["loop"]);
  expect(read.output("x").value).toBeUndefined();
  expect(read.output("y").value).toBeUndefined();
  read.edit("x = x + 1", "x = 1");
  expect(read.number("y")).toBe(2);
});
