// A calc package: the sheet, the results for machines, the sources and a manifest with the digest of each, in one archive.

import { sha256, utf8 } from "../base/index.ts";
import { createSession, type Library, type Session } from "../session/index.ts";
import { libraryDigest, makeSheet, type Sheet, sheetHtml, sourceFiles, type WebFont } from "../sheet/index.ts";
import { type ArchiveFile, archiveTime, pack } from "./archive.ts";
import { resultsCsv } from "./csv.ts";
import { type PrintFonts, sheetPdf } from "./pdf.ts";
import { SOURCE_FOLDER } from "./read-package.ts";
import { PackageRefused } from "./refused.ts";
import { type Results, readResults, resultsJson } from "./results.ts";
import { resultsXlsx } from "./spreadsheet.ts";

export type Paper = "a4" | "letter";

export interface PackageOptions {
  /** The program's version. */
  readonly version: string;
  readonly paper: Paper;
  readonly units: Sheet["units"];
  readonly webFonts: readonly WebFont[];
  readonly printFonts: PrintFonts;
}

export interface Manifest {
  readonly format: "jointwright-package";
  readonly formatVersion: 1;
  readonly program: string;
  readonly library: { readonly version: string; readonly sha256: string };
  /** The notebook's name among the sources. */
  readonly notebook: string;
  readonly paper: Paper;
  readonly units: Sheet["units"];
  /** How the recomputation from a clean start compared with what the caller's session held. */
  readonly recomputed: { readonly values: number; readonly agree: number };
  readonly files: readonly { readonly name: string; readonly bytes: number; readonly sha256: string }[];
}

export interface MadePackage {
  readonly bytes: Uint8Array;
  readonly files: readonly ArchiveFile[];
  readonly manifest: Manifest;
  readonly results: Results;
}

/**
 * Makes the package of a notebook that the session holds, with what it uses. Everything is computed again in a session of its
 * own; where that gives another value than the caller's session shows, nothing is made. Throws PackageRefused.
 */
export async function makePackage(held: Session, library: Library, file: string, options: PackageOptions): Promise<MadePackage> {
  const names = sourceFiles(held, file);
  const outside = names.filter((name) => name.startsWith("/") || name.split("/").includes(".."));
  if (outside.length > 0)
    throw new PackageRefused(outside.map((name) => `${name} lies outside the folder of the notebook and cannot go into its package.`));
  const session = createSession(library);
  for (const name of names) session.put(name, held.text(name));
  const results = readResults(session, library, file, options.version);
  const recomputed = agreement(results, readResults(held, library, file, options.version));
  if (options.units !== "notebook") session.tools.setSystem(options.units);
  const sheet = makeSheet(session, library, file, { version: options.version, units: options.units, recomputed });
  const sources = names.map((name): ArchiveFile => ({ name: `${SOURCE_FOLDER}${name}`, bytes: utf8(held.text(name)) }));
  const time = archiveTime(results.title.date ?? "");
  const files: readonly ArchiveFile[] = [
    { name: "sheet.pdf", bytes: await sheetPdf(sheet, { paper: options.paper, fonts: options.printFonts, attachments: sources }) },
    { name: "sheet.html", bytes: utf8(sheetHtml(sheet, options.webFonts)) },
    { name: "results.xlsx", bytes: await resultsXlsx(results, time) },
    { name: "results.csv", bytes: resultsCsv(results) },
    { name: "results.json", bytes: resultsJson(results) },
    ...sources,
  ];
  const manifest: Manifest = {
    format: "jointwright-package",
    formatVersion: 1,
    program: options.version,
    library: { version: library.version, sha256: libraryDigest(library) },
    notebook: file,
    paper: options.paper,
    units: options.units,
    recomputed,
    files: files.map(({ name, bytes }) => ({ name, bytes: bytes.length, sha256: sha256(bytes) })),
  };
  const all = [...files, { name: "manifest.json", bytes: utf8(`${JSON.stringify(manifest, null, 2)}\n`) }];
  return { bytes: pack(all, time), files: all, manifest, results };
}

/** Values from a clean start beside those that the caller's session holds. */
function agreement(fresh: Results, held: Results): Manifest["recomputed"] {
  const entries = (from: Results): ReadonlyMap<string, string> =>
    new Map([
      ...from.inputs.map((entry): [string, string] => [`input ${entry.name}`, JSON.stringify([entry.si, entry.text])]),
      ...from.results.map((entry): [string, string] => [`result ${entry.name}`, JSON.stringify([entry.si, entry.text, entry.validity])]),
      ...from.checks.map((entry, i): [string, string] => [`check ${i} ${entry.title}`, JSON.stringify([entry.state, entry.utilisation])]),
    ]);
  const [now, before] = [entries(fresh), entries(held)];
  const keys = new Set([...now.keys(), ...before.keys()]);
  const different = [...keys].filter((key) => now.get(key) !== before.get(key));
  if (different.length > 0)
    throw new PackageRefused(
      different.map((key) => `${key}: computed from a clean start it is not what is shown; open the notebook again.`),
    );
  return { values: keys.size, agree: keys.size - different.length };
}
