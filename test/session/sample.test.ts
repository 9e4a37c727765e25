// The design's sample: every name of it is in the library, every line has its value.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { placedChunks, readNotebook } from "../../engine/notebook/index.ts";
import { createSession } from "../../engine/session/index.ts";
import { parseStatement, printStatement, sameTree, tidy } from "../../engine/syntax/index.ts";
import { library } from "../../stdlib/index.ts";
import { open } from "./helper.ts";

const root = new URL("../../", import.meta.url);
const sample = readFileSync(new URL("test/syntax/data/sample.joint.md", root), "utf8");

describe("the sample notebook", () => {
  const opened = open(sample, {}, library);

  it("has no fault: everything it names is in the library", () => {
    const faults = opened.lines().flatMap((line) => line.diagnostics.filter((each) => each.severity === "fault"));
    expect(faults.map((each) => each.message)).toEqual([]);
  });

  it("evaluates the rest", () => {
    expect(opened.line("M").value?.text).toBe("15.54 N·m");
    expect(opened.line("F_t").value?.text).toBe("183.1 N");
    expect(opened.line("F_S").value?.text).toBe("770.2 N");
    expect(opened.line("A_strip").value?.unit).toBe("mm²");
    expect(opened.line("stripping of a tapped thread").check?.state).toBe("nominal");
    expect(opened.line("live:M").value?.text).toBe("15.54 N·m");
    expect(opened.line("pulls").value?.text).toBe("3 rows × 4");
  });
});

const notebooks = ["notebooks/", "stdlib/", "test/syntax/data/"].flatMap((folder) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith(".joint.md"))
    .map((name) => folder + name),
);

describe.each(notebooks)("%s", (name) => {
  const text = readFileSync(new URL(name, root), "utf8");
  const chunks = [...placedChunks(readNotebook(text))].map((placed) => placed.chunk.text);

  it("prints to what reads as the same tree", () => {
    for (const chunk of chunks) {
      const { tree } = parseStatement(chunk);
      expect(sameTree(parseStatement(printStatement(tree, chunk)).tree, tree), chunk).toBe(true);
    }
  });

  it("tidies to the same meaning, and a second time to the same text", () => {
    const once = tidy(chunks);
    expect(tidy(once)).toEqual(once);
    once.forEach((chunk, i) => {
      expect(sameTree(parseStatement(chunk).tree, parseStatement(chunks[i] ?? "").tree), chunk).toBe(true);
    });
  });

  it("tidied as a whole file gives the same values", () => {
    const values = (source: string): readonly (readonly [string | undefined, string | undefined])[] => {
      const session = createSession(library);
      session.put("x.joint.md", source);
      return session.outputs("x.joint.md").map((line) => [line.name, line.value?.full] as const);
    };
    const session = createSession(library);
    session.put("x.joint.md", text);
    expect(values(session.tidy("x.joint.md"))).toEqual(values(text));
  });
});
