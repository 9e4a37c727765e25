// Reads one part after another. A part depends only on the text from its start to its end.

import { range } from "../base/index.ts";
import { type Diagnostic, faults } from "../diagnostics/index.ts";
import { firstFence } from "./block-watch.ts";
import { readChunks } from "./chunks.ts";
import { conflictFault, conflictMarks } from "./conflict.ts";
import { beginsWithRule, frontRange } from "./front-range.ts";
import { type Info, readInfo } from "./info.ts";
import { closes, lineAfter, lineEnd, type Opening, ownCopy, readOpening } from "./line.ts";
import type { CalcPart, CsvPart, FencePart, FrontPart, Part, ProsePart } from "./part.ts";
import type { Pool } from "./pool.ts";
import { isReadable } from "./prose.ts";

/** The part that begins at `from`, where the part before ends. `first`: the notebook begins there, so front matter may. */
export function readPart(text: string, from: number, first: boolean, pool: Pool): Part {
  if (first) {
    const front = frontRange(text);
    if (front !== undefined) return readFront(text.slice(0, front.to), pool);
  }
  const end = lineEnd(text, from);
  const opening = readOpening(text, from, end);
  return opening === undefined ? readProse(text, from, first, pool) : readFence(text, from, end, opening, pool);
}

const readFront = (text: string, pool: Pool): FrontPart =>
  pool.part<FrontPart>("front", text, (own) => ({ kind: "front", length: own.length, diagnostics: [], text: own }));

function readProse(text: string, from: number, first: boolean, pool: Pool): ProsePart {
  const fence = firstFence(text, from);
  const to = fence === -1 ? text.length : fence;
  const opensFront = first && beginsWithRule(text);
  const make = (own: string): ProsePart => {
    const diagnostics: Diagnostic[] = opensFront ? [faults.frontMatterOpen(range(0, 3), {})] : [];
    if (!isReadable(own)) diagnostics.push(faults.proseTooLong(range(0, Math.min(80, lineEnd(own, 0))), {}));
    for (const mark of conflictMarks(own, 0)) diagnostics.push(conflictFault(own, mark.from, mark.to, 0));
    return { kind: "prose", length: own.length, diagnostics, text: own };
  };
  const slice = text.slice(from, to);
  return opensFront ? make(ownCopy(slice)) : pool.part<ProsePart>("prose", slice, make);
}

function readFence(text: string, from: number, end: number, opening: Opening, pool: Pool): CalcPart | CsvPart | FencePart {
  const info = readInfo(text, opening, from);
  const body = lineAfter(text, end);
  if (info.kind === "calc") return readCalc(text, from, body, opening, info, pool);
  let at = body;
  let lineTo = at;
  let closed = false;
  for (; at < text.length; at = lineAfter(text, lineTo)) {
    lineTo = lineEnd(text, at);
    closed = closes(text, at, lineTo, opening.mark, opening.size);
    if (closed) break;
  }
  const to = closed ? lineAfter(text, lineTo) : text.length;
  const bodyTo = closed ? at : text.length;
  const diagnostics = closed ? info.diagnostics : [...info.diagnostics, unclosed(end - from)];
  const shared = { bodyFrom: body - from, bodyTo: bodyTo - from, closed, diagnostics };
  const kind = info.kind;
  return pool.part<CsvPart | FencePart>(kind, text.slice(from, to), (own) => {
    if (kind === "fence") return { kind, text: own, length: own.length, info: info.text, ...shared };
    const { name, note, reference } = info;
    const said = { ...(name && { name }), ...(note && { note }), ...(reference && { reference }) };
    return { kind, text: own, length: own.length, ...shared, ...said, body: own.slice(shared.bodyFrom, shared.bodyTo) };
  });
}

function readCalc(text: string, from: number, body: number, opening: Opening, info: Info, pool: Pool): CalcPart {
  const run = readChunks(text, body, from, opening, pool);
  const { closed, chunks, starts, gaps } = run;
  const to = closed ? lineAfter(text, lineEnd(text, run.to)) : text.length;
  const ends = closed ? [] : [unclosed(lineEnd(text, from) - from)];
  return {
    kind: "calc",
    length: to - from,
    diagnostics: [...info.diagnostics, ...ends, ...run.diagnostics],
    bodyFrom: body - from,
    bodyTo: run.to - from,
    closed,
    open: pool.gap(text.slice(from, body)),
    close: pool.gap(text.slice(run.to, to)),
    gaps,
    chunks,
    starts,
  };
}

const unclosed = (lineLength: number): Diagnostic => faults.fenceOpen(range(0, lineLength), {});
