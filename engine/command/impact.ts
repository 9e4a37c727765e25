// `jointwright impact`: which packages a change of the library or of a shared notebook touches, old and new margins side by side.

import type { Impact, ImpactRow } from "../life/index.ts";
import { UsageFault } from "./arguments.ts";
import { type Command, JSON_OPTION } from "./command.ts";
import { readBytes } from "./output-file.ts";
import { type Paint, paintOut } from "./paint.ts";
import type { World } from "./world.ts";

/** The word for this program's own library. */
const LIBRARY = "library";

export const impact: Command = {
  name: "impact",
  words: "LIBRARY-OR-NOTEBOOK FOLDER",
  least: 2,
  most: 2,
  purpose: "Says which packages of a folder this library, or a changed notebook that they use, moves, and by how much.",
  options: [JSON_OPTION],
  more: `The word ${LIBRARY} is this program's own library; any other is a notebook, found in the packages by its file name.\nNothing is changed.\nExit code: 0 no package moves, 1 one does, 2 one cannot be read.`,
  async run({ words, switches }, world) {
    const { impactOf } = await import("../life/index.ts");
    const { readPackage } = await import("../package/index.ts");
    const [what = "", folder = ""] = words;
    const changed = what === LIBRARY ? undefined : { name: world.nameOf(what), text: textOf(what, world) };
    const found: { readonly file: string; readonly impact: Impact }[] = [];
    const unread: string[] = [];
    const packages = listed(folder, world);
    for (const file of packages) {
      try {
        const one = impactOf(readPackage(readBytes(world.join(folder, file), world)), world.library, world.version, changed);
        if (one !== undefined) found.push({ file, impact: one });
      } catch (fault) {
        unread.push(`${file}: ${fault instanceof Error ? fault.message : String(fault)}`);
      }
    }
    const code = unread.length > 0 ? 2 : found.some(({ impact: one }) => one.touched) ? 1 : 0;
    for (const problem of unread) world.err(`cannot be read: ${problem}\n`);
    if (switches.has("json")) world.out(`${JSON.stringify({ packages: found, unread, exit: code }, null, 2)}\n`);
    else world.out(`${report(found, packages.length, paintOut(world))}\n`);
    return code;
  },
};

function listed(folder: string, world: World): readonly string[] {
  try {
    return world.listFolder(folder).filter((name) => /\.zip$/i.test(name));
  } catch (fault) {
    throw new UsageFault(`Cannot read ${folder}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

function textOf(path: string, world: World): string {
  try {
    return world.readFile(path);
  } catch (fault) {
    throw new UsageFault(`Cannot read ${path}: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}

function report(found: readonly { readonly file: string; readonly impact: Impact }[], of: number, paint: Paint): string {
  const moved = found.filter(({ impact: one }) => one.touched);
  const lines = moved.flatMap(({ file, impact: one }) => [
    `${paint("strong", file)}  ${one.title}`,
    ...one.rows.map((row) => `  ${row.title}: ${sideText(row.before)} -> ${sideText(row.after)}`),
    ...(one.rows.length === 0 ? [`  ${one.differences.length} values or texts differ; no check and no mode moves`] : []),
  ]);
  return [
    ...lines,
    `${moved.length} of ${of} packages ${moved.length === 1 ? "moves" : "move"}; ${of - found.length} do not use it or cannot be read`,
  ].join("\n");
}

const sideText = ({ state, margin }: ImpactRow["before"]): string =>
  state === "" ? "not there" : margin === undefined ? state : `${state}, margin ${margin.toFixed(2)}`;
