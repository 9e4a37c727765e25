// What the standard library is made of: its modules, its data files and its natives. No file access: a root hands the texts in.

import type { Natives } from "../engine/run/index.ts";
import type { Library } from "../engine/session/index.ts";
import { metricDesignation, readThread, unifiedDesignation } from "./native/threads.ts";

const version = "0.1.0";
const sourcesFile = "sources.yaml";
const moduleNames = [
  "constants.joint.md",
  "threads.joint.md",
  "property-classes.joint.md",
];
const dataNames = [
  "data/iso-261.csv",
  "data/asme-b1-1.csv",
  "data/iso-898-1.csv",
  "data/iso-898-1-loads.csv",
  "data/iso-898-2.csv",
  "data/iso-3506-1.csv",
  "data/sae-j429.csv",
];

const natives: Natives = {
  read_thread: readThread,
  metric_designation: metricDesignation,
  unified_designation: unifiedDesignation,
};

/** Every text the library needs, by its path under stdlib. */
export const fileNames: readonly string[] = [...moduleNames, ...dataNames, sourcesFile];

/** The library from its texts, keyed by the paths of `fileNames`; throws when one is missing, which is a fault of the build. */
export function makeLibrary(texts: Readonly<Record<string, string>>): Library {
  const file = (name: string): { readonly name: string; readonly text: string } => {
    const text = texts[name];
    if (text === undefined) throw new Error(`the standard library lacks ${name}`);
    return { name, text };
  };
  return { version, modules: moduleNames.map(file), files: dataNames.map(file), natives, sources: file(sourcesFile).text };
}
