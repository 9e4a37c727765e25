// A small share of the fuzz run, always the same texts: nothing throws, hangs, or differs from a fresh reading.

import { expect, test } from "vitest";
import { library } from "../../stdlib/index.ts";
import { readSources } from "../bench/fuzz-sources.ts";
import { makeTrial, runTrial } from "../bench/fuzz-trial.ts";
import { chance } from "../bench/random.ts";

const COUNT = 200;

test("chance is the same for the same seed and differs from stream to stream", () => {
  const draw = (seed: number, stream: number): readonly number[] => {
    const by = chance(seed, stream);
    return Array.from({ length: 20 }, () => by.below(1000));
  };
  expect(draw(1, 2)).toEqual(draw(1, 2));
  expect(draw(1, 2)).not.toEqual(draw(1, 3));
  expect(draw(1, 2)).not.toEqual(draw(2, 2));
  const [first] = draw(7, 0);
  expect(new Set(Array.from({ length: 50 }, (_, stream) => draw(7, stream)[0])).size, String(first)).toBeGreaterThan(40);
});

test("a fault of the engine would be seen", () => {
  const trial = { text: "```calc\na = 1\n```\n", edits: [], seed: 1 };
  expect(runTrial(trial, library)).toBeUndefined();
  const broken = { ...library, modules: undefined as unknown as typeof library.modules };
  expect(runTrial(trial, broken)).toMatchObject({ kind: "throws" });
});

test.each([0, 1, 2])(
  "texts, part %i",
  (part) => {
    const sources = readSources();
    for (let i = 0; i < COUNT; i += 1) {
      const trial = makeTrial(sources, 20, part * COUNT + i);
      const failure = runTrial(trial, library);
      expect(failure, `${JSON.stringify(trial)}\n${failure?.what}`).toBeUndefined();
    }
  },
  120_000,
);
