// The library's own promises: every module is free of faults, every formula is explained, cited and held by an example.

import { expect, test } from "vitest";
import { parse } from "yaml";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const own = (text: string): readonly string[] => [...text.matchAll(/^formula (\w+)/gm)].map((match) => match[1] as string);

for (const { name, text } of library.modules) {
  test(`each example of ${name} passes, so every formula it calls is free of faults`, () => {
    const session = createSession(library);
    const examples = text.match(/^example .*/gm) ?? [];
    session.put("examples.joint.md", ["```calc", ...examples, "```", ""].join("\n"));
    session.snapshot("examples.joint.md");
    const outputs = session.outputs("examples.joint.md").filter((one) => one.kind === "example");
    expect(outputs.length).toBe(examples.length);
    const written = (one: (typeof outputs)[number]): string => session.text("examples.joint.md").slice(one.from, one.to);
    expect(outputs.flatMap((one) => one.diagnostics.map((d) => `${written(one)}: ${d.message}`))).toEqual([]);
    expect(outputs.filter((one) => one.example?.state !== "passes").map((one) => `${written(one)}: ${one.example?.shown}`)).toEqual([]);
  });

  test(`every formula of ${name} says its purpose and source, and an example calls it`, () => {
    const statements = text.split(/^(?=formula |example |record |use |```)/m).filter((part) => part.startsWith("formula "));
    for (const statement of statements) {
      const last =
        statement
          .trim()
          .split("\n")
          .filter((line) => !/^\s/.test(line))
          .at(-1) ?? "";
      const [, note, reference] = last.split(" | ");
      expect(note?.trim(), statement).toBeTruthy();
      expect(reference?.trim(), statement).toMatch(/^@\w+/);
    }
    const examples = text.match(/^example .*/gm) ?? [];
    for (const formula of own(text))
      expect(
        examples.some((line) => line.includes(`${formula}(`)),
        formula,
      ).toBe(true);
  });

  test(`every source that ${name} cites is in sources.yaml`, () => {
    const known = (parse(library.sources) as readonly { readonly id: string }[]).map((one) => one.id);
    const cited = [...text.matchAll(/@(\w+)/g)].map((match) => match[1]);
    expect(cited.filter((key) => key !== undefined && !known.includes(key))).toEqual([]);
    expect(new Set(known).size).toBe(known.length);
  });
}

const rowsOf = (file: string): readonly (readonly string[])[] =>
  (library.files.find((one) => one.name === file)?.text ?? "")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(";"));

test("the metric table has one coarse pitch a size at most, the largest, and each pair once", () => {
  const rows = rowsOf("data/iso-261.csv").map(([d, P, series, , iso262, known]) => ({ d: Number(d), P: Number(P), series, iso262, known }));
  expect(rows.length).toBe(162);
  expect(new Set(rows.map((row) => `${row.d}x${row.P}`)).size).toBe(rows.length);
  for (const d of new Set(rows.map((row) => row.d))) {
    const ofSize = rows.filter((row) => row.d === d);
    const coarse = ofSize.filter((row) => row.series === "coarse");
    expect(coarse.length, `M${d}`).toBeLessThanOrEqual(1);
    for (const row of ofSize) expect(row.P, `M${d}`).toBeLessThanOrEqual(coarse[0]?.P ?? row.P);
  }
  for (const row of rows) {
    expect(["coarse", "fine"]).toContain(row.series);
    expect(["yes", "no"]).toContain(row.iso262);
    expect(["read", "memory"]).toContain(row.known);
  }
});

test("numbered inch sizes are 0.060 in and 0.013 in a number, fractions are what they say", () => {
  for (const [size, D] of rowsOf("data/asme-b1-1.csv")) {
    const number = /^#(\d+)$/.exec(size ?? "");
    const fraction = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(size ?? "");
    const inches = number
      ? 0.06 + 0.013 * Number(number[1])
      : fraction
        ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
        : Number(size);
    expect(Number(D), size).toBeCloseTo(inches, 10);
  }
});
