// The laws of the house that can be read from the sources: arrows, doors, circles, bans, sizes, headers.

import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ambient, unsafe } from "./architecture/bans.ts";
import { circles } from "./architecture/circles.ts";
import { scan } from "./architecture/scan.ts";
import { objection, readTable, resolve, roomOf } from "./architecture/table.ts";

const root = new URL("../", import.meta.url);
const read = (file: string): string => readFileSync(new URL(file, root), "utf8");

const sources = ["editor", "engine", "stdlib", "test"].flatMap((folder) =>
  readdirSync(new URL(folder, root), { recursive: true, encoding: "utf8" })
    .map((name) => `${folder}/${name.replaceAll("\\", "/")}`)
    .filter((name) => /\.(m?[jt]s|tsx)$/.test(name))
    .sort(),
);
const written = sources.filter((file) => !file.endsWith(".generated.ts"));
const files = new Map(sources.map((file) => [file, { text: read(file), ...scan(file, read(file)) }]));
const table = readTable(read("DEVELOPERS.md"));

/** Files that read the system on purpose: the command line's root and the generator of the catalogue. */
const REACHES_OUT = ["engine/command/main.ts", "engine/diagnostics/generate.ts"];
const LINES_TO_LOOK_AGAIN = 400;
const LINES_REFUSED = 700;
const BASE_LINES = 500;

const lines = (file: string): number => (files.get(file)?.text.split("\n").length ?? 1) - 1;

describe("imports", () => {
  test("arrows only as the table in DEVELOPERS.md allows, and only through doors", () => {
    const objections = [...files].flatMap(([file, { imports }]) => imports.map((one) => objection(table, file, one)));
    expect(objections.filter((one) => one !== undefined)).toEqual([]);
  });
  test("every import of a file means a file that is there", () => {
    const lost = [...files].flatMap(([file, { imports }]) =>
      imports.flatMap(({ target }) => {
        const meant = resolve(file, target);
        return meant !== undefined && /\.(m?[jt]s|tsx)$/.test(meant) && !files.has(meant) ? [`${file}: ${target}`] : [];
      }),
    );
    expect(lost).toEqual([]);
  });
  test("no circles among files; types, which are erased, do not count", () => {
    const graph = new Map(
      [...files].map(([file, { imports }]) => [
        file,
        imports.flatMap(({ target, typeOnly }) => (typeOnly ? [] : [resolve(file, target)])).filter((to) => to !== undefined),
      ]),
    );
    expect(circles(graph).map((circle) => circle.join(" -> "))).toEqual([]);
  });
  test("each room of the engine has its door", () => {
    const rooms = new Set(sources.filter((file) => file.startsWith("engine/")).map((file) => roomOf(table, file)));
    expect([...rooms].filter((room) => room !== undefined && room !== "engine" && !files.has(`${room}/index.ts`))).toEqual([]);
  });
});

describe("bans", () => {
  test("no page, clock, locale, randomness, storage or system in engine and stdlib", () => {
    const found = [...files].flatMap(([file, { uses }]) =>
      /^(engine|stdlib)\//.test(file) && !REACHES_OUT.includes(file) ? ambient(uses).map((name) => `${file}: ${name}`) : [],
    );
    expect(found).toEqual([]);
  });
  test("nowhere is text made into code or markup", () => {
    expect([...files].flatMap(([file, { uses }]) => unsafe(uses).map((name) => `${file}: ${name}`))).toEqual([]);
  });
  test("no default exports but those that a tool asks for", () => {
    expect([...files].filter(([file, { defaultExport }]) => defaultExport && !file.endsWith(".config.ts")).map(([file]) => file)).toEqual(
      [],
    );
  });
});

describe("files", () => {
  test("each says in its first line what it is", () => {
    const silent = written.filter((file) => !/^(#!.*\n)?(\/\/ |\/\*\*? )\S+ \S+ \S+/.test(files.get(file)?.text ?? ""));
    expect(silent).toEqual([]);
  });
  test(`none has ${LINES_REFUSED} lines`, () => {
    for (const file of written) {
      if (lines(file) > LINES_TO_LOOK_AGAIN) console.info(`look again: ${file} has ${lines(file)} lines`);
    }
    expect(written.filter((file) => lines(file) >= LINES_REFUSED)).toEqual([]);
  });
  test("engine/base stays small", () => {
    const total = written.filter((file) => file.startsWith("engine/base/")).reduce((sum, file) => sum + lines(file), 0);
    expect(total).toBeLessThanOrEqual(BASE_LINES);
  });
  test("names are kebab-case", () => {
    const named = sources.map((file) => file.split("/").at(-1) ?? "");
    expect(named.filter((name) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.(test|d|config|generated))?\.(m?[jt]s|tsx)$/.test(name))).toEqual([]);
  });
});
