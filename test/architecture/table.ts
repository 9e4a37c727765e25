// The table of allowed imports as DEVELOPERS.md shows it: one row a room, or a file that may more or less than its room.

import { builtinModules } from "node:module";
import { posix } from "node:path";
import type { Import } from "./scan.ts";

interface Permit {
  readonly name: string;
  readonly typesOnly: boolean;
}

interface Row {
  readonly name: string;
  readonly rooms: readonly Permit[];
  readonly packages: readonly Permit[];
}

export type Table = readonly Row[];

const HEAD = /^\| room or file \| may import \| packages \|$/m;

function permits(cell: string): readonly Permit[] {
  if (cell === "nothing") return [];
  return cell.split(",").map((item) => {
    const [, name, types] = /^`([^`]+)`( \(types\))?$/.exec(item.trim()) ?? [];
    if (name === undefined) throw new Error(`the import table holds "${item.trim()}"`);
    return { name, typesOnly: types !== undefined };
  });
}

/** Reads the table from the page's text; throws when it is not there or a cell is not understood. */
export function readTable(page: string): Table {
  const from = HEAD.exec(page)?.index;
  if (from === undefined) throw new Error("no import table found");
  const lines = page.slice(from).split("\n").slice(2);
  const end = lines.findIndex((line) => !line.startsWith("|"));
  return lines.slice(0, end === -1 ? lines.length : end).map((line) => {
    const [name, rooms, packages] = line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim());
    return { name: permits(name ?? "")[0]?.name ?? "", rooms: permits(rooms ?? ""), packages: permits(packages ?? "") };
  });
}

const isFile = (name: string): boolean => /\.m?[jt]sx?$/.test(name);
const within = (file: string, name: string): boolean => file === name || file.startsWith(`${name}/`);
const longest = (rows: Table): Row | undefined => [...rows].sort((a, b) => b.name.length - a.name.length)[0];

export const roomOf = (table: Table, file: string): string | undefined =>
  longest(table.filter(({ name }) => !isFile(name) && within(file, name)))?.name;

const rulesFor = (table: Table, file: string): Row | undefined => longest(table.filter(({ name }) => within(file, name)));

const INSTALLED = "node_modules/";

/** What the address means, from the root of the repository. */
function place(file: string, target: string): string {
  const path = target.split("?", 1)[0] ?? target;
  return path.startsWith(".") ? posix.normalize(posix.join(posix.dirname(file), path)) : INSTALLED + path;
}

/** The file an import means, from the root of the repository; undefined for a package, also for one named by its path. */
export function resolve(file: string, target: string): string | undefined {
  const meant = place(file, target);
  return meant.startsWith(INSTALLED) ? undefined : meant;
}

const packageOf = (file: string, target: string): string => {
  if (target.startsWith("node:") || builtinModules.includes(target)) return "node";
  return place(file, target)
    .slice(INSTALLED.length)
    .split("/")
    .slice(0, /node_modules\/@|^@/.test(target) ? 2 : 1)
    .join("/");
};

/** Why the import is not allowed, or undefined when it is. */
export function objection(table: Table, file: string, { target, typeOnly }: Import): string | undefined {
  const rules = rulesFor(table, file);
  if (rules === undefined) return `${file} is in no room`;
  const allows = (list: readonly Permit[], name: string): boolean =>
    list.some((permit) => permit.name === name && (typeOnly || !permit.typesOnly));
  const meant = resolve(file, target);
  if (meant === undefined) {
    const name = packageOf(file, target);
    return allows(rules.packages, name)
      ? undefined
      : `${file}: ${rules.name} may not import the package ${name}${typeOnly ? " (types)" : ""}`;
  }
  const room = roomOf(table, meant);
  if (room !== undefined && room === roomOf(table, file)) return undefined;
  if (allows(rules.rooms, meant)) return undefined;
  if (room === undefined) return `${file}: ${target} is in no room`;
  if (!allows(rules.rooms, room)) return `${file}: ${rules.name} may not import ${room}${typeOnly ? " (types)" : ""}`;
  return meant === `${room}/index.ts` ? undefined : `${file}: ${target} goes behind the door of ${room}`;
}
