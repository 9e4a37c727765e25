// The demonstration notebooks of the repository: no fault, every check holds, every example passes.

import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";

const folder = new URL("../../notebooks/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".joint.md"));

test("there is a demonstration notebook", () => {
  expect(names).toContain("drill-guide.joint.md");
});

for (const name of names) {
  test(`${name} has no fault and its checks hold`, () => {
    const session = createSession(library);
    const text = readFileSync(new URL(name, folder), "utf8");
    session.put(name, text);
    const { counts } = session.snapshot(name);
    const outputs = session.outputs(name);
    expect(outputs.flatMap((one) => one.diagnostics.map((d) => `${d.code}: ${d.message} (${text.slice(d.from, d.to)})`))).toEqual([]);
    expect(outputs.filter((one) => (one.waitsFor ?? []).length > 0).map((one) => one.name)).toEqual([]);
    expect(counts.checks).toBe(text.match(/^check /gm)?.length ?? 0);
    expect(outputs.filter((one) => one.check !== undefined && one.check.state !== "holds").map((one) => one.check?.title)).toEqual([]);
    expect(outputs.filter((one) => one.example !== undefined && one.example.state !== "passes").map((one) => one.id)).toEqual([]);
    expect(outputs.filter((one) => one.kind === "live").every((one) => one.value !== undefined)).toBe(true);
  });
}

test("the drill guide gives the numbers worked out by hand", () => {
  const session = createSession(library);
  session.put("drill-guide.joint.md", readFileSync(new URL("drill-guide.joint.md", folder), "utf8"));
  session.snapshot("drill-guide.joint.md");
  const number = (name: string): number =>
    Number(
      session
        .outputs("drill-guide.joint.md")
        .find((one) => one.name === name)
        ?.value?.full.replace("−", "-"),
    );
  expect(number("F_t")).toBeCloseTo((180 * 55) / 140, 6);
  expect(number("F_V")).toBeCloseTo(1200, 6);
  expect(number("F_S")).toBeCloseTo(1200 + 0.8 * ((180 * 55) / 140), 6);
  expect(number("tau")).toBeCloseTo(2440 / (0.875 * Math.PI * 5 * 10), 6);
  expect(number("T_slip")).toBeCloseTo(4 * 0.15 * 540 * (0.07 / Math.SQRT2), 6);
});
