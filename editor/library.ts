// The standard library as the page has it: its texts are part of the build, handed to the engine by the worker.

import type { Library } from "../engine/session/index.ts";
import { makeLibrary } from "../stdlib/manifest.ts";

const texts: Readonly<Record<string, string>> = {
  ...import.meta.glob<string>("../stdlib/*.{joint.md,yaml}", { query: "?raw", import: "default", eager: true }),
  ...import.meta.glob<string>("../stdlib/data/*.csv", { query: "?raw", import: "default", eager: true }),
};

const HOME = "../stdlib/";

export const library: Library = makeLibrary(
  Object.fromEntries(Object.entries(texts).map(([path, text]) => [path.slice(HOME.length), text])),
);
