// A package opened: its files, its manifest and the results it states, or why it cannot be read.

import { archiveProblem, textOf, unpack } from "./archive.ts";
import type { Manifest } from "./make-package.ts";
import type { Results } from "./results.ts";

export interface OpenPackage {
  readonly files: ReadonlyMap<string, Uint8Array>;
  readonly manifest: Manifest;
  /** As results.json states them; absent where it cannot be read. */
  readonly results?: Results;
  readonly sources: readonly { readonly name: string; readonly text: string }[];
}

export const SOURCE_FOLDER = "source/";

/** Throws with a sentence where the bytes are no package. */
export function readPackage(bytes: Uint8Array): OpenPackage {
  const files = new Map(unpack(bytes).map(({ name, bytes: content }): [string, Uint8Array] => [name, content]));
  const written = files.get("manifest.json");
  if (written === undefined) throw new Error(archiveProblem.noManifest);
  const manifest = json(written);
  if (!isManifest(manifest)) throw new Error(archiveProblem.badManifest);
  const stated = files.get("results.json");
  const results = stated === undefined ? undefined : json(stated);
  return {
    files,
    manifest,
    ...(isResults(results) ? { results } : {}),
    sources: [...files].flatMap(([name, content]) =>
      name.startsWith(SOURCE_FOLDER) ? [{ name: name.slice(SOURCE_FOLDER.length), text: textOf(content) }] : [],
    ),
  };
}

function json(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(textOf(bytes));
  } catch {
    return undefined;
  }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === "string";

function isManifest(value: unknown): value is Manifest {
  if (!isObject(value) || value.format !== "jointwright-package" || value.formatVersion !== 1) return false;
  const { library, files, notebook, program, paper, units } = value;
  if (!isObject(library) || !isText(library.version) || !isText(library.sha256)) return false;
  if (!isText(notebook) || !isText(program) || (paper !== "a4" && paper !== "letter")) return false;
  if (units !== "notebook" && units !== "metric" && units !== "inch") return false;
  return (
    Array.isArray(files) &&
    files.every((file) => isObject(file) && isText(file.name) && isText(file.sha256) && typeof file.bytes === "number")
  );
}

const isNamed = (value: unknown): boolean => isObject(value) && isText(value.name) && isText(value.text);

function isResults(value: unknown): value is Results {
  if (!isObject(value) || value.format !== "jointwright-results" || value.formatVersion !== 1) return false;
  const { inputs, results, checks, title, library, sources, faults } = value;
  const lists = Array.isArray(inputs) && Array.isArray(results) && Array.isArray(checks) && Array.isArray(sources) && Array.isArray(faults);
  if (!lists || !isObject(title) || !isObject(library)) return false;
  return (
    inputs.every(isNamed) &&
    results.every(isNamed) &&
    checks.every((check) => isObject(check) && isText(check.title) && isText(check.state))
  );
}
