// Cuts a calc fence into statements.

import type { Diagnostic } from "../diagnostics/index.ts";
import { conflictFault, isConflictMark } from "./conflict.ts";
import { closes, isBlank, lineAfter, lineEnd, startsChunk } from "./line.ts";
import type { Chunk } from "./part.ts";
import type { Pool } from "./pool.ts";

/** The fence that the lines stand in: what would close it. */
export interface Fence {
  readonly mark: number;
  readonly size: number;
}

/** What a walk over calc lines found. */
export interface ChunkRun {
  readonly chunks: Chunk[];
  /** Offsets from `base`. */
  readonly starts: number[];
  /** Before each chunk and after the last; one more than the chunks. */
  readonly gaps: string[];
  /** Conflict marks; ranges from `base`. */
  readonly diagnostics: Diagnostic[];
  /** Where the walk ended: at a closing line, or at the text's end. */
  readonly to: number;
  readonly closed: boolean;
}

/**
 * Reads lines from `from` on, a line start outside any statement. A line that is not blank, not indented and does not
 * begin with a closing bracket starts a statement; other lines belong to the statement before. Indented lines with none
 * before them make one of their own, for the parser to fault.
 */
export function readChunks(text: string, from: number, base: number, fence: Fence, pool: Pool): ChunkRun {
  const chunks: Chunk[] = [];
  const starts: number[] = [];
  const gaps: string[] = [];
  const diagnostics: Diagnostic[] = [];
  let open = -1;
  let openTo = from;

  const finish = (): void => {
    if (open === -1) return;
    chunks.push(pool.chunk(text.slice(open, openTo)));
    starts.push(open - base);
    open = -1;
  };
  const run = (to: number, closed: boolean): ChunkRun => {
    finish();
    gaps.push(pool.gap(text.slice(openTo, to)));
    return { chunks, starts, gaps, diagnostics, to, closed };
  };

  for (let at = from; at < text.length; ) {
    const end = lineEnd(text, at);
    if (closes(text, at, end, fence.mark, fence.size)) return run(at, true);
    if (isConflictMark(text, at, end)) {
      finish();
      diagnostics.push(conflictFault(text, at, end, base));
    } else if (!isBlank(text, at, end)) {
      if (open === -1 || startsChunk(text.charCodeAt(at))) {
        finish();
        gaps.push(pool.gap(text.slice(openTo, at)));
        open = at;
      }
      openTo = text.charCodeAt(end - 1) === 13 ? end - 1 : end;
    }
    at = lineAfter(text, end);
  }
  return run(text.length, false);
}
