// The instruments of the architecture test find what they are for, and nothing else.

import { describe, expect, test } from "vitest";
import { ambient, unsafe } from "./bans.ts";
import { circles } from "./circles.ts";
import { scan } from "./scan.ts";
import { objection, readTable } from "./table.ts";

const imports = (source: string) => scan("a.ts", source).imports;
const uses = (source: string) => scan("a.tsx", source).uses;

describe("imports", () => {
  test.each([
    ['import { a } from "./a.ts";', "./a.ts", false],
    ['import type { A } from "./a.ts";', "./a.ts", true],
    ['import { type A } from "./a.ts";', "./a.ts", false],
    ['import "./a.css";', "./a.css", false],
    ['import * as a from "./a.ts";', "./a.ts", false],
    ['export { a } from "./a.ts";', "./a.ts", false],
    ['export type { A } from "./a.ts";', "./a.ts", true],
    ['export { type A } from "./a.ts";', "./a.ts", true],
    ['export * from "./a.ts";', "./a.ts", false],
    ['const f = () => import("./a.ts");', "./a.ts", false],
    ["const f = () => import(`./a.ts`);", "./a.ts", false],
    ['type A = import("./a.ts").A;', "./a.ts", true],
    ["const f = (x: string) => import(x);", "(computed)", false],
    ['import u from "./a.ts?worker&url";', "./a.ts?worker&url", false],
  ])("%s", (source, target, typeOnly) => expect(imports(source)).toEqual([{ target, typeOnly }]));
  test("text and comments that look like one are none", () =>
    expect(imports('// import "./a.ts"\nconst s = `import "./b.ts"`; const r = /import "x"/;')).toEqual([]));
  test("default exports", () => {
    expect(scan("a.ts", "export default 1;").defaultExport).toBe(true);
    expect(scan("a.ts", "const a = 1; export { a as default };").defaultExport).toBe(true);
    expect(scan("a.ts", "export const a = 1;").defaultExport).toBe(false);
  });
});

describe("bans", () => {
  test.each([
    ["const t = Date.now();", "Date"],
    ["const t = new Date();", "Date"],
    ["const f = (d: Date) => d;", "Date"],
    ["const r = Math.random();", "Math.random"],
    ['const r = Math["random"]();', "Math.random"],
    ["const s = (1).toLocaleString();", ".toLocaleString"],
    ['localStorage.setItem("a", "b");', "localStorage"],
    ["const f = (e: HTMLElement) => e;", "HTMLElement"],
    ["const { now } = performance;", "performance"],
    ["const o = { document };", "document"],
    ["console.log(1);", "console"],
  ])("%s", (source, name) => expect(ambient(uses(source))).toEqual([name]));
  test.each([
    ["interface A { readonly document: string; readonly location: number }"],
    ["const f = (document: string) => document.length;"],
    ["const a = b.location; const c = { Date: 1, screen: 2 };"],
    ["import type { Worker } from './w.ts'; const f = (w: Worker) => w;"],
    ["const f = ({ history }: { history: number }) => history;"],
    ['const s = "Date"; // Date'],
  ])("not %s", (source) => expect(ambient(uses(source))).toEqual([]));
  test.each([
    ["eval('1');", "eval"],
    ["const f = new Function('a', 'return a');", "Function"],
    ["e.innerHTML = s;", ".innerHTML"],
    ['e["innerHTML"] = s;', ".innerHTML"],
    ["const a = <p dangerouslySetInnerHTML={x} />;", ".dangerouslySetInnerHTML"],
    ["document.write(s);", "document.write"],
  ])("%s", (source, name) => expect(unsafe(uses(source))).toContain(name));
});

describe("table", () => {
  const page = [
    "| room or file | may import | packages |",
    "| --- | --- | --- |",
    "| `a` | nothing | nothing |",
    "| `b` | `a`, `c` (types) | `left`, `@x/y` |",
    "| `b/main.ts` | `a`, `c/deep.ts` | `node` |",
    "| `c` | `a` | nothing |",
    "",
    "| `d` | `a` | nothing |",
  ].join("\n");
  const table = readTable(page);
  const says = (file: string, target: string, typeOnly = false) => objection(table, file, { target, typeOnly });

  test("ends where the table ends", () => expect(table.map(({ name }) => name)).toEqual(["a", "b", "b/main.ts", "c"]));
  test("a page without it, or a cell that is not understood, throws", () => {
    expect(() => readTable("nothing")).toThrow();
    expect(() => readTable(page.replace("`a`, `c` (types)", "a and c"))).toThrow(/a and c/);
  });
  test("own room, allowed door, allowed package", () => {
    expect(says("b/x.ts", "./y.ts")).toBeUndefined();
    expect(says("b/deep/x.ts", "../../a/index.ts")).toBeUndefined();
    expect(says("b/x.ts", "@x/y/part")).toBeUndefined();
    expect(says("b/x.ts", "left")).toBeUndefined();
    expect(says("b/x.ts", "../node_modules/left/deep.js")).toBeUndefined();
    expect(says("b/x.ts", "../node_modules/@x/y/deep.js")).toBeUndefined();
  });
  test("arrows against the table", () => {
    expect(says("a/x.ts", "../b/index.ts")).toMatch(/may not import b/);
    expect(says("b/x.ts", "right")).toMatch(/package right/);
    expect(says("b/x.ts", "../node_modules/right/deep.js")).toMatch(/package right/);
    expect(says("b/x.ts", "node:fs")).toMatch(/package node/);
    expect(says("b/x.ts", "fs")).toMatch(/package node/);
  });
  test("behind a door", () => expect(says("b/x.ts", "../a/x.ts")).toMatch(/behind the door of a/));
  test("types only", () => {
    expect(says("b/x.ts", "../c/index.ts", true)).toBeUndefined();
    expect(says("b/x.ts", "../c/index.ts")).toMatch(/may not import c/);
  });
  test("a file's own row replaces its room's; a file may be allowed by its name", () => {
    expect(says("b/main.ts", "node:fs")).toBeUndefined();
    expect(says("b/main.ts", "left")).toMatch(/package left/);
    expect(says("b/main.ts", "../c/deep.ts")).toBeUndefined();
    expect(says("b/x.ts", "../c/deep.ts", true)).toMatch(/behind the door/);
  });
  test("no room", () => {
    expect(says("e/x.ts", "./y.ts")).toMatch(/no room/);
    expect(says("b/x.ts", "../e/index.ts")).toMatch(/no room/);
  });
});

test("circles are found once, through any length", () => {
  const graph = new Map([
    ["a", ["b"]],
    ["b", ["c"]],
    ["c", ["a", "d"]],
    ["d", []],
    ["e", ["e"]],
  ]);
  expect(circles(graph)).toEqual([
    ["a", "b", "c", "a"],
    ["e", "e"],
  ]);
});
