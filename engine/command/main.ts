// The command line's root: hands the library, the system's files and streams to the commands.

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { printFont, webFonts } from "../../editor/fonts/files.ts";
import { library } from "../../stdlib/index.ts";
import { entries } from "../diagnostics/index.ts";
import { createSession } from "../session/index.ts";
import { runCommand } from "./run.ts";
import type { World } from "./world.ts";

/** npm runs its scripts from the package's root; the user named files from where npm was called. */
const here = (process.env.npm_lifecycle_event === "jointwright" ? process.env.INIT_CWD : undefined) ?? process.cwd();
const at = (path: string): string => resolve(here, path);

/** The system's words without the call that failed: "no such file or directory". */
function plainly<T>(work: () => T): T {
  try {
    return work();
  } catch (fault) {
    const words = fault instanceof Error ? fault.message : String(fault);
    throw new Error(words.replace(/^[A-Z]+: /, "").replace(/, \w+( '.*')?$/, ""));
  }
}

function version(): string {
  const { version: text } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string };
  return text;
}

const world: World = {
  version: version(),
  join,
  folderOf: dirname,
  nameOf: basename,
  readFile: (path) => plainly(() => readFileSync(at(path), "utf8")),
  writeFile: (path, text) => plainly(() => writeFileSync(at(path), text)),
  readBytes: (path) => plainly(() => new Uint8Array(readFileSync(at(path)))),
  writeBytes: (path, bytes) => plainly(() => writeFileSync(at(path), bytes)),
  webFonts,
  printFonts: printFont,
  listFolder: (path) =>
    plainly(() =>
      readdirSync(at(path), { withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ name }) => name)
        .sort(),
    ),
  readStandardInput: () => readFileSync(0, "utf8"),
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  outIsTerminal: process.stdout.isTTY === true,
  errIsTerminal: process.stderr.isTTY === true,
  colour: (process.env.NO_COLOR ?? "") === "" && process.env.TERM !== "dumb",
  createSession: () => createSession(library),
  library,
  catalogue: entries,
};

// A reader that has seen enough (`| head`) closes the pipe; that is no fault.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code === "EPIPE") process.exit();
  throw fault;
});

process.exitCode = await runCommand(process.argv.slice(2), world);
