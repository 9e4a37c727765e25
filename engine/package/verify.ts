// A package held against its own manifest and its own source: digests, versions, values, and every file made anew.

import { sha256 } from "../base/index.ts";
import { createSession, type Library } from "../session/index.ts";
import { libraryDigest } from "../sheet/index.ts";
import { compareResults, type Difference } from "./compare.ts";
import { makePackage, type PackageOptions } from "./make-package.ts";
import { readPackage } from "./read-package.ts";
import { PackageRefused } from "./refused.ts";
import { readResults } from "./results.ts";

export interface Finding {
  readonly kind: /** A file is not the one of the manifest. */
    | "digest"
    | "missing"
    | "unlisted"
    /** Program or library are not those that made it. */
    | "version"
    /** The source gives another value. */
    | "value"
    /** The source gives another sheet, table or list. */
    | "content"
    | "unreadable";
  readonly name: string;
  readonly words: string;
}

export interface Verified {
  readonly findings: readonly Finding[];
  /** Files whose digests agree, and values recomputed. */
  readonly files: number;
  readonly values: number;
  readonly title: string;
}

export type VerifyOptions = Pick<PackageOptions, "version" | "webFonts" | "printFonts">;

/** Throws with a sentence where the bytes are no package at all. */
export async function verifyPackage(bytes: Uint8Array, library: Library, options: VerifyOptions): Promise<Verified> {
  const opened = readPackage(bytes);
  const { files, manifest, results: stated, sources } = opened;
  const findings: Finding[] = [...digests(files, manifest.files), ...versions(manifest, library, options.version)];
  const title =
    stated === undefined
      ? manifest.notebook
      : [stated.title.number, stated.title.revision, stated.title.title].filter((part) => part !== undefined).join(" ");
  const agreed = manifest.files.filter(({ name, sha256: digest }) => digest === digestOf(files, name)).length;
  if (!sources.some(({ name }) => name === manifest.notebook)) {
    findings.push({
      kind: "missing",
      name: manifest.notebook,
      words: "the notebook is not among the sources, so nothing can be recomputed",
    });
    return { findings, files: agreed, values: 0, title };
  }
  const session = createSession(library);
  for (const { name, text } of sources) session.put(name, text);
  const fresh = readResults(session, library, manifest.notebook, options.version);
  if (stated === undefined) findings.push({ kind: "unreadable", name: "results.json", words: "the stated results cannot be read" });
  else {
    const differences = compareResults({ results: stated, sources }, { results: fresh, sources }).filter(
      ({ kind }) => kind !== "library" && kind !== "program",
    );
    findings.push(...differences.map(valueFinding));
  }
  const values = fresh.inputs.length + fresh.results.length + fresh.checks.length;
  try {
    const made = await makePackage(session, library, manifest.notebook, { ...options, paper: manifest.paper, units: manifest.units });
    findings.push(...contents(files, made.files, findings));
  } catch (fault) {
    if (!(fault instanceof PackageRefused)) throw fault;
    findings.push(...fault.problems.map((words): Finding => ({ kind: "content", name: "sheet", words: `cannot be made anew: ${words}` })));
  }
  return { findings, files: agreed, values, title };
}

const digestOf = (files: ReadonlyMap<string, Uint8Array>, name: string): string => {
  const content = files.get(name);
  return content === undefined ? "" : sha256(content);
};

function digests(
  files: ReadonlyMap<string, Uint8Array>,
  listed: readonly { readonly name: string; readonly sha256: string }[],
): readonly Finding[] {
  const names = new Set(listed.map(({ name }) => name));
  return [
    ...listed.flatMap(({ name, sha256: digest }): readonly Finding[] => {
      const own = digestOf(files, name);
      if (own === "") return [{ kind: "missing", name, words: "is listed in the manifest but not in the package" }];
      return own === digest
        ? []
        : [{ kind: "digest", name, words: `was changed: SHA-256 ${own.slice(0, 12)}…, the manifest says ${digest.slice(0, 12)}…` }];
    }),
    ...[...files.keys()]
      .filter((name) => name !== "manifest.json" && !names.has(name))
      .map((name): Finding => ({ kind: "unlisted", name, words: "is not listed in the manifest" })),
  ];
}

function versions(
  manifest: { readonly program: string; readonly library: { readonly version: string; readonly sha256: string } },
  library: Library,
  program: string,
): readonly Finding[] {
  const digest = libraryDigest(library);
  return [
    ...(manifest.program === program
      ? []
      : [{ kind: "version" as const, name: "Jointwright", words: `made with ${manifest.program}, verified with ${program}` }]),
    ...(manifest.library.version === library.version
      ? []
      : [
          {
            kind: "version" as const,
            name: "standard library",
            words: `made with version ${manifest.library.version}, verified with ${library.version}`,
          },
        ]),
    ...(manifest.library.sha256 === digest
      ? []
      : [
          {
            kind: "version" as const,
            name: "standard library",
            words: `its text is another: SHA-256 ${digest.slice(0, 12)}… here, ${manifest.library.sha256.slice(0, 12)}… when the package was made`,
          },
        ]),
  ];
}

function valueFinding({ kind, name, before, after }: Difference): Finding {
  const words =
    before === ""
      ? `the source gives it, the package does not state it: ${after}`
      : after === ""
        ? `is stated but the source does not give it: ${before}`
        : `is stated as ${before}; the source gives ${after}`;
  return { kind: "value", name: `${kind} ${name}`, words };
}

/** Files that say something else than what the source gives; those already found changed are not told twice. */
function contents(
  files: ReadonlyMap<string, Uint8Array>,
  made: readonly { readonly name: string; readonly bytes: Uint8Array }[],
  found: readonly Finding[],
): readonly Finding[] {
  const told = new Set(found.filter(({ kind }) => kind === "digest" || kind === "missing").map(({ name }) => name));
  return made.flatMap(({ name, bytes }): readonly Finding[] => {
    const own = files.get(name);
    if (own === undefined || told.has(name) || name === "manifest.json" || sameBytes(own, bytes)) return [];
    return [{ kind: "content", name, words: "is not what the source gives" }];
  });
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => a.length === b.length && a.every((byte, i) => byte === b[i]);
