// Packages for their tests, and readers of PDF (poppler and qpdf) to look at them with.

import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { printFont, webFonts } from "../../editor/fonts/files.ts";
import { type MadePackage, makePackage, type PackageOptions, sheetPdf } from "../../engine/package/index.ts";
import type { Library, Session } from "../../engine/session/index.ts";
import { makeSheet } from "../../engine/sheet/index.ts";
import { FILE, noLibrary, opened } from "../sheet/helper.ts";

export const options: PackageOptions = { version: "9.9.9", paper: "a4", units: "notebook", webFonts: webFonts(), printFonts: printFont };

export const packageOf = (
  text: string,
  library: Library = noLibrary,
  more: Partial<PackageOptions> = {},
  files: Readonly<Record<string, string>> = {},
): Promise<MadePackage> => makePackage(opened(text, library, files), library, FILE, { ...options, ...more });

export const pdfOf = (text: string, paper: "a4" | "letter" = "a4", session: Session = opened(text)): Promise<Uint8Array> =>
  sheetPdf(makeSheet(session, noLibrary, FILE, { version: "9.9.9" }), {
    paper,
    fonts: printFont,
    attachments: [{ name: FILE, bytes: strToU8(text) }],
  });

/** Runs a reader on a PDF; the places `PDF` and `OUT` in its arguments are a file with the PDF and a path to write to. */
export function read(program: string, args: readonly string[], pdf: Uint8Array): string {
  const folder = mkdtempSync(join(tmpdir(), "pdf-"));
  const file = join(folder, "a.pdf");
  writeFileSync(file, pdf);
  try {
    return execFileSync(
      program,
      args.map((each) => each.replace("PDF", file).replace("OUT", join(folder, "out"))),
      { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] },
    );
  } catch (fault) {
    if ((fault as { code?: string }).code === "ENOENT") throw new Error(`${program} is wanted: install poppler-utils and qpdf`);
    throw fault;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const pdfText = (pdf: Uint8Array, ...args: readonly string[]): string => read("pdftotext", ["-layout", ...args, "PDF", "-"], pdf);
export const pdfInfo = (pdf: Uint8Array): ReadonlyMap<string, string> =>
  new Map(
    read("pdfinfo", ["PDF"], pdf)
      .split("\n")
      .map((line): [string, string] => [line.slice(0, line.indexOf(":")), line.slice(line.indexOf(":") + 1).trim()]),
  );

/** The text of each page. */
export const pagesOf = (pdf: Uint8Array): readonly string[] => pdfText(pdf).split("\f").slice(0, -1);

/** The package with files changed: a text replaces a file, undefined takes it out. */
export function tampered(bytes: Uint8Array, change: Readonly<Record<string, string | Uint8Array | undefined>>): Uint8Array {
  const files: Record<string, Uint8Array> = { ...unzipSync(bytes) };
  for (const [name, content] of Object.entries(change)) {
    if (content === undefined) delete files[name];
    else files[name] = typeof content === "string" ? strToU8(content) : content;
  }
  return zipSync(files, { mtime: "1980-01-01T00:00:00" });
}
