// What the standard library is made of: its modules, its data files and its natives. No file access: a root hands the texts in.

import type { Natives } from "../engine/run/index.ts";
import type { Library } from "../engine/session/index.ts";
import { metricDesignation, readThread, unifiedDesignation } from "./native/threads.ts";
import { externalToleranceClass, internalToleranceClass } from "./native/tolerance-class.ts";
import { unifiedExternalClass, unifiedInternalClass } from "./native/unified-class.ts";

const version = "0.1.0";
const sourcesFile = "sources.yaml";
const moduleNames = [
  "constants.joint.md",
  "threads.joint.md",
  "metric-tolerances.joint.md",
  "unified-threads.joint.md",
  "engagement.joint.md",
  "drills.joint.md",
  "property-classes.joint.md",
  "fasteners.joint.md",
  "holes-and-lengths.joint.md",
  "tightening.joint.md",
  "clamped.joint.md",
  "strength.joint.md",
  "groups.joint.md",
  "screws.joint.md",
  "joint-records.joint.md",
];
const dataNames = [
  "data/nut-factors.csv",
  "data/friction-classes.csv",
  "data/tightening-scatter.csv",
  "data/tightening-factors.csv",
  "data/member-fits.csv",
  "data/embedding.csv",
  "data/iso-261.csv",
  "data/asme-b1-1.csv",
  "data/iso-965-1-steps.csv",
  "data/iso-965-1-deviations.csv",
  "data/iso-965-1-external-major.csv",
  "data/iso-965-1-internal-minor.csv",
  "data/iso-965-1-external-pitch.csv",
  "data/iso-965-1-internal-pitch.csv",
  "data/iso-965-1-engagement.csv",
  "data/iso-3-r40.csv",
  "data/drills.csv",
  "data/iso-898-1.csv",
  "data/iso-898-1-loads.csv",
  "data/iso-898-2.csv",
  "data/iso-3506-1.csv",
  "data/sae-j429.csv",
  "data/iso-4014.csv",
  "data/iso-4762.csv",
  "data/iso-7380-1.csv",
  "data/iso-10642.csv",
  "data/din-6921.csv",
  "data/asme-b18-3.csv",
  "data/asme-b18-2-1.csv",
  "data/iso-4032.csv",
  "data/iso-4035.csv",
  "data/iso-7040.csv",
  "data/iso-4161.csv",
  "data/din-557.csv",
  "data/din-562.csv",
  "data/asme-b18-2-2.csv",
  "data/iso-7089.csv",
  "data/iso-7093-1.csv",
  "data/iso-7092.csv",
  "data/asme-b18-22-1.csv",
  "data/iso-273.csv",
  "data/asme-b18-2-8.csv",
  "data/iso-888.csv",
  "data/limiting-pressure.csv",
  "data/en-shear-factors.csv",
];

const natives: Natives = {
  read_thread: readThread,
  metric_designation: metricDesignation,
  unified_designation: unifiedDesignation,
  external_tolerance_class: externalToleranceClass,
  internal_tolerance_class: internalToleranceClass,
  unified_external_class: unifiedExternalClass,
  unified_internal_class: unifiedInternalClass,
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
