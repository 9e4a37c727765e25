// Archives: many files in one, the same bytes for the same files.

import { strFromU8, unzipSync, zipSync } from "fflate";

export interface ArchiveFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A time without zone, so that it reads the same everywhere; the format's first year where there is none. */
export const archiveTime = (date: string): string =>
  /^(?:19[89]\d|20\d\d)-\d\d-\d\d$/.test(date) ? `${date}T00:00:00` : "1980-01-01T00:00:00";

/** `time` as `archiveTime` gives it stands for every file. */
export function pack(files: readonly ArchiveFile[], time: string): Uint8Array {
  return zipSync(Object.fromEntries(files.map(({ name, bytes }) => [name, bytes])), { level: 6, mtime: time, os: 0, attrs: 0 });
}

/** Most that is unpacked: an archive that claims more is refused before it is read. */
const MOST_BYTES = 512 * 1024 * 1024;
const MOST_FILES = 2000;

/** Why bytes are no package, in words. */
export const archiveProblem = {
  broken: "This is no archive, or a broken one.",
  large: "The archive is larger than any package.",
  noManifest: "This archive is no calc package: it has no manifest.json.",
  badManifest: "The manifest of this package cannot be read.",
} as const;

/** Throws with a sentence where the bytes are no archive, or one of unreasonable size. */
export function unpack(bytes: Uint8Array): readonly ArchiveFile[] {
  let total = 0;
  let count = 0;
  let refused = "";
  const entries = (() => {
    try {
      return unzipSync(bytes, {
        filter: ({ originalSize }) => {
          total += originalSize;
          count += 1;
          if (total > MOST_BYTES || count > MOST_FILES) refused = archiveProblem.large;
          return refused === "";
        },
      });
    } catch {
      throw new Error(archiveProblem.broken);
    }
  })();
  if (refused !== "") throw new Error(refused);
  return Object.entries(entries).map(([name, content]) => ({ name, bytes: content }));
}

export const textOf = (bytes: Uint8Array): string => strFromU8(bytes);
