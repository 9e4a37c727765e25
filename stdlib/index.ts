// The door of the standard library for Node: reads its texts from disk beside this file.

import { readFileSync } from "node:fs";
import type { Library } from "../engine/session/index.ts";
import { fileNames, makeLibrary } from "./manifest.ts";

export const library: Library = makeLibrary(
  Object.fromEntries(fileNames.map((name) => [name, readFileSync(new URL(name, import.meta.url), "utf8")])),
);

export { readFields as figureFields } from "./native/figures.ts";
