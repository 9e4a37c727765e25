// The library's records of a drawing as the plain data that it is made from: fields by name, `none` as absent.

import type { RecordValue, Value } from "../run/index.ts";
import type { SectionView } from "./section-view.ts";

/** Fields of each record in the order of its declaration in stdlib/drawings.joint.md; a test holds the two together. */
export const sectionRecords: Readonly<Record<string, readonly string[]>> = {
  SectionView: ["screw", "washer", "plates", "part", "anchor", "fibre", "load", "failure"],
  DrawnScrew: ["designation", "grade", "d", "P", "core", "head", "d_k", "k", "s", "length", "shank"],
  DrawnWasher: ["outside", "inside", "h", "name"],
  DrawnPlate: ["t", "hole", "made", "name"],
  DrawnPart: [
    "name",
    "t",
    "edge",
    "boss",
    "walls",
    "bead",
    "layer",
    "top_layers",
    "bottom_layers",
    "infill",
    "pattern",
    "screw_to_build",
    "bridge",
  ],
  DrawnInsert: ["name", "hole", "bottom", "D", "L", "from", "groove", "flange", "knurl", "taper", "protrusion", "bonded"],
  DrawnThread: ["how", "hole", "bottom", "L"],
  DrawnNut: ["name", "place", "shape", "s", "m", "pocket", "over", "opening", "ceiling", "hole", "bottom", "washer", "sleeve"],
  DrawnSleeve: ["name", "D", "d", "L"],
  DrawnWire: ["hole", "major", "L", "bottom"],
  DrawnFibre: ["name", "r", "turns", "rings", "strand", "from", "to", "plies", "ply", "plies_from"],
  FailureMark: ["surface", "r", "from", "to", "text"],
};

/** `value` is a record `SectionView` of the library, which alone makes figures of this kind. */
export const readSection = (value: Value | undefined): SectionView => plain(value ?? null) as SectionView;

function plain(value: Value): unknown {
  if (value === null) return undefined;
  if (Array.isArray(value)) return (value as readonly Value[]).map(plain);
  if (typeof value !== "object" || !("shape" in value) || value.shape !== "record") return value;
  const held = value as RecordValue;
  const names = sectionRecords[held.record] ?? [];
  return Object.fromEntries([["record", held.record], ...names.map((name, i) => [name, plain(held.fields[i] ?? null)])]);
}
