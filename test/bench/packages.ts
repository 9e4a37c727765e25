// A calc package of about a hundred pages: how long it takes, how large it is.

import { printFont, webFonts } from "../../editor/fonts/files.ts";
import { type MadePackage, makePackage, type PackageOptions, verifyPackage } from "../../engine/package/index.ts";
import { createSession, type Session } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { bigNotebook } from "./big-notebook.ts";
import { bench, milliseconds } from "./harness.ts";

const FILE = "a.joint.md";
/** Statements that come to a hundred pages of A4: working, inputs and results. */
const STATEMENTS = 1200;

let session: Session | undefined;
let made: MadePackage | undefined;

const options = (): PackageOptions => ({ version: "0.0.0", paper: "a4", units: "notebook", webFonts: webFonts(), printFonts: printFont });

async function madeOnce(): Promise<MadePackage> {
  if (session === undefined) {
    session = createSession(library);
    session.put(FILE, bigNotebook(STATEMENTS));
  }
  made = await makePackage(session, library, FILE, options());
  return made;
}

const sizeOf = (name: string): number => (made?.files.find((file) => file.name === name)?.bytes.length ?? Number.NaN) / 1e6;

bench("package of a hundred pages", "ms", () => milliseconds(madeOnce), 2);
bench(
  "pages in that package",
  "pages",
  async () => {
    made ??= await madeOnce();
    const pdf = new TextDecoder("latin1").decode(made.files.find(({ name }) => name === "sheet.pdf")?.bytes);
    return Number(/\/Type \/Pages\s*\/Count (\d+)/.exec(pdf)?.[1]);
  },
  1,
);
bench("its PDF", "MB", async () => (made === undefined ? madeOnce() : Promise.resolve(made)).then(() => sizeOf("sheet.pdf")), 1);
bench("its HTML", "MB", async () => (made === undefined ? madeOnce() : Promise.resolve(made)).then(() => sizeOf("sheet.html")), 1);
bench("its archive", "MB", async () => (made ?? (await madeOnce())).bytes.length / 1e6, 1);
bench(
  "verifying that package",
  "ms",
  async () => {
    const { bytes } = made ?? (await madeOnce());
    return milliseconds(async () => {
      const { findings } = await verifyPackage(bytes, library, options());
      if (findings.length > 0) throw new Error(`the package does not agree with itself: ${findings[0]?.words}`);
    });
  },
  1,
);
