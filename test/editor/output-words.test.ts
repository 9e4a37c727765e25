// What the output column says: a word and a shape for every state.

import { describe, expect, test } from "vitest";
import { fileName, outputWords, referenceWords, stepOf } from "../../editor/index.ts";
import type { LineOutput } from "../../engine/session/index.ts";

const output = (rest: Partial<LineOutput>): LineOutput => ({
  id: "F",
  kind: "definition",
  from: 0,
  to: 1,
  name: "F",
  citation: "",
  note: "",
  diagnostics: [],
  ...rest,
});
const value = { text: "183.1 N", number: "183.1", unit: "N", full: "183.125" };
const check = (rest: Partial<NonNullable<LineOutput["check"]>>): LineOutput =>
  output({ kind: "check", check: { state: "holds", title: "stripping", ...rest } });
const fault = {
  code: "unlike-units",
  severity: "fault",
  from: 0,
  to: 1,
  message: "A force and an area do not add.",
  mends: [],
  related: [],
} as const;

describe("output words", () => {
  test("a plain value has no word", () => {
    expect(outputWords(output({ value }))).toMatchObject({
      tone: "plain",
      word: "",
      shape: "",
      number: "183.1",
      unit: "N",
      sentence: "F = 183.1 N",
    });
  });
  test("a fault before a value", () => {
    expect(outputWords(output({ value, diagnostics: [fault] }))).toMatchObject({
      tone: "fault",
      shape: "✕",
      word: "unlike units",
      number: "",
    });
  });
  test("a notice does not hide the value", () => {
    expect(outputWords(output({ value, diagnostics: [{ ...fault, severity: "notice" }] }))).toMatchObject({
      tone: "plain",
      number: "183.1",
    });
  });
  test("every state of a check has its own word and shape", () => {
    const seen = (["holds", "fails", "nominal", "open"] as const).map((state) => outputWords(check({ state, utilisation: 0.85 })));
    expect(seen.map((words) => words?.word)).toEqual(["holds", "fails", "nominal", "not evaluated"]);
    expect(seen[0]?.shape).not.toBe(seen[1]?.shape);
    expect(seen[0]).toMatchObject({ number: "0.85", bar: { filled: 0.85, over: false } });
  });
  test("the bar of a failing check is full and says over", () => {
    expect(outputWords(check({ state: "fails", utilisation: 1.24 }))?.bar).toEqual({ filled: 1, over: true });
  });
  test("a check outside validity never shows a plain holds", () => {
    const words = outputWords({
      ...check({ state: "holds" }),
      marks: { outside: [{ formula: "f", limit: "d <= 39 mm" }], nominalOnly: false },
    });
    expect(words).toMatchObject({ tone: "open", word: "outside" });
    expect(words?.sentence).toContain("d <= 39 mm");
  });
  test("what waits names what it waits for", () => {
    expect(outputWords(output({ waitsFor: ["M", "h"] }))).toMatchObject({ tone: "open", word: "waits for M, h" });
  });
});

describe("reference words", () => {
  const marks = (level: "assumed" | "test", from: string): NonNullable<LineOutput["marks"]> => ({
    provenance: { level, text: "", from },
    outside: [],
    nominalOnly: false,
  });
  test("a citation as it is", () => {
    expect(referenceWords(output({ citation: "ISO 965-1", marks: marks("test", "F") }))).toMatchObject({
      text: "ISO 965-1",
      doubtful: false,
    });
  });
  test("what depends on an assumption says so", () => {
    expect(referenceWords(output({ marks: marks("assumed", "k") }))).toMatchObject({
      text: "◇ assumed",
      doubtful: true,
      sentence: "F depends on k, which is assumed",
    });
  });
  test("nothing to say, nothing shown", () => {
    expect(referenceWords(output({ marks: marks("test", "k") }))).toBeUndefined();
  });
});

describe("small things", () => {
  test.each([
    [40, 80, 0.5],
    [0, 1, 0.02],
    [4, 14, 0.2],
    [0, 1000, 20],
  ])("a slider from %f to %f goes by %f", (low, high, step) => expect(stepOf({ low, high })).toBeCloseTo(step, 12));
  test.each([
    ["Wrist bracket, four M5", "wrist-bracket-four-m5.joint.md"],
    ["", "untitled.joint.md"],
    ["Träger / Öse", "trager-ose.joint.md"],
  ])("%s is kept as %s", (title, name) => expect(fileName(title)).toBe(name));
});
