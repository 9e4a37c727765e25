// The sheet as a PDF: pages, running title block, contents, outline, tags, attachments. The same sheet gives the same bytes.

import PDFDocument from "pdfkit";
import { toBytes } from "pdfkit/output";
import type { Sheet } from "../sheet/index.ts";
import type { ArchiveFile } from "./archive.ts";
import { blockSlabs, type Frame } from "./pdf/block-slabs.ts";
import { createPen } from "./pdf/create-pen.ts";
import { faces, INK, type Pen, type PrintFonts, RULE, SOFT, type TextStyle } from "./pdf/pen.ts";
import { useSameCompression } from "./pdf/same-compression.ts";
import { titleSlab } from "./pdf/sign-off-slabs.ts";
import { type Node, type PlacedSlab, placeSlabs, type Slab } from "./pdf/slab.ts";
import { createStructure } from "./pdf/structure.ts";
import { PackageRefused } from "./refused.ts";

export type { PrintFonts } from "./pdf/pen.ts";

export interface PdfOptions {
  readonly paper: "a4" | "letter";
  readonly fonts: PrintFonts;
  readonly attachments: readonly ArchiveFile[];
}

const PAPERS = { a4: [595.28, 841.89], letter: [612, 792] } as const;
const MARGIN = { left: 51, right: 45, top: 66, bottom: 50 };

/** Throws PackageRefused where a sign has no glyph, or something would be cut. */
export async function sheetPdf(sheet: Sheet, options: PdfOptions): Promise<Uint8Array> {
  const [width, height] = PAPERS[options.paper];
  const document = openDocument(sheet, [width, height]);
  for (const face of faces) document.registerFont(face, options.fonts(face) as Uint8Array<ArrayBuffer>);
  const problems = new Set<string>();
  const pages = new Map<string, number>();
  const pen = createPen(
    document,
    (what) => problems.add(what),
    (id) => pages.get(id),
  );
  const root: Node = { type: "Document" };
  const frame: Frame = {
    ruler: pen,
    width: width - MARGIN.left - MARGIN.right,
    height: height - MARGIN.top - MARGIN.bottom,
    blocks: sheet.blocks,
    problem: (what) => problems.add(what),
  };
  const slabs = [titleSlab(sheet, frame, [root]), ...blockSlabs(sheet.blocks, frame, [root])];
  const { placed, pages: count, tall } = placeSlabs(slabs, frame.height);
  for (const at of tall) problems.add(`Something is taller than a page, near ${nearestHeading(slabs, at)}.`);
  for (const { slab, page } of placed) if (slab.heading !== undefined) pages.set(slab.heading.id, page + 1);
  drawPages(document, pen, sheet, placed, count, [width, height]);
  for (const { name, bytes } of options.attachments)
    document.file(
      bytes as Uint8Array<ArrayBuffer> as never,
      {
        name,
        type: name.endsWith(".csv") ? "text/csv" : "text/markdown",
        description: "Source of this calculation",
        relationship: "Source",
      } as never,
    );
  if (problems.size > 0) throw new PackageRefused([...problems]);
  document.end();
  return toBytes(document);
}

const nearestHeading = (slabs: readonly Slab[], at: number): string =>
  slabs.slice(0, at + 1).findLast(({ heading }) => heading !== undefined)?.heading?.title ?? "the first page";

function openDocument(sheet: Sheet, size: readonly [number, number]): PDFKit.PDFDocument {
  const { title } = sheet;
  const date = /^\d{4}-\d\d-\d\d$/.test(title.date) ? title.date : "1980-01-01";
  // The writer takes the time of day where it gets no date and knows of zones: a text that answers as a date does neither.
  const created = Object.assign(new String(`D:${date.replaceAll("-", "")}000000Z`), { getTime: () => 0 });
  const made = new PDFDocument({
    size: [...size],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: "1.7",
    tagged: true,
    lang: sheet.language,
    displayTitle: true,
    font: "",
    info: {
      Title: [title.number, title.title].filter((part) => part !== "").join(" ") || "Calculation",
      Author: title.creator,
      Subject: title.project,
      Keywords: sheet.foot.left,
      Creator: "Jointwright",
      CreationDate: created as never,
    },
  });
  // Its XMP stream would repeat these texts unescaped, so that an ampersand in a title broke it; the information dictionary has them all.
  (made as unknown as { endMetadata: () => void }).endMetadata = () => undefined;
  useSameCompression(made);
  return made;
}

function drawPages(
  document: PDFKit.PDFDocument,
  pen: Pen,
  sheet: Sheet,
  placed: readonly PlacedSlab[],
  count: number,
  [width, height]: readonly [number, number],
): void {
  const structure = createStructure(document);
  const outline = new Map<number, PDFKit.PDFOutline>();
  for (let page = 0; page < count; page += 1) {
    document.addPage();
    structure.artifact(() => runningHead(pen, sheet, page + 1, count, width, height));
    for (const { slab, y, repeated } of placed.filter((each) => each.page === page)) {
      const top = MARGIN.top + y;
      if (repeated && slab.repeat !== undefined)
        for (const part of slab.repeat.parts) structure.artifact(() => part.draw(pen, MARGIN.left, top - (slab.repeat as Slab).height));
      const { heading } = slab;
      if (heading !== undefined) {
        document.addNamedDestination(heading.id, "XYZ", MARGIN.left, top - 6, null);
        const above = outline.get(heading.level - 1) ?? document.outline;
        outline.set(heading.level, above.addItem(heading.title, { top: top - 6, expanded: false } as never));
        for (let deeper = heading.level + 1; deeper <= 3; deeper += 1) outline.delete(deeper);
      }
      for (const part of slab.parts) {
        if (part.within.length === 0) structure.artifact(() => part.draw(pen, MARGIN.left, top));
        else structure.content(part.within, () => part.draw(pen, MARGIN.left, top));
      }
    }
  }
  structure.end();
}

/** On every page: number, title, project, revision, status, date and names; below digests, versions and page x of y. */
function runningHead(pen: Pen, sheet: Sheet, page: number, count: number, width: number, height: number): void {
  const { title } = sheet;
  const soft: TextStyle = { face: "sans-400", size: 7.2, colour: SOFT };
  const strong: TextStyle = { face: "sans-600", size: 7.2, colour: INK };
  const right = width - MARGIN.right;
  const place = (text: string, style: TextStyle, y: number, side: "left" | "middle" | "right"): void => {
    const own = pen.width(text, style);
    pen.text(text, side === "left" ? MARGIN.left : side === "right" ? right - own : (MARGIN.left + right - own) / 2, y, style);
  };
  const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" · ");
  const room = right - MARGIN.left;
  const named = (label: string, name: string): string => `${label} ${name === "" ? "–" : name}`;
  const state = joined(title.revision === "" ? "" : `rev. ${title.revision}`, title.status);
  place(shortened(pen, joined(title.number, title.title), strong, room - pen.width(state, soft) - 12), strong, 36, "left");
  place(state, soft, 36, "right");
  const people = joined(
    named("originator", title.creator),
    named("checker", title.checker),
    named("approver", title.approval_person),
    title.date,
  );
  place(shortened(pen, title.project, soft, room - pen.width(people, soft) - 12), soft, 46, "left");
  place(shortened(pen, people, soft, room), soft, 46, "right");
  pen.line([MARGIN.left, 51], [right, 51], 0.5, RULE);
  const foot = height - 30;
  pen.line([MARGIN.left, foot - 10], [right, foot - 10], 0.5, RULE);
  const number = `${page} / ${count}`;
  place(sheet.foot.left, soft, foot, "left");
  place(number, strong, foot, "right");
  const free = room - 2 * Math.max(pen.width(sheet.foot.left, soft), pen.width(number, strong)) - 20;
  const middle = sheet.foot.middle;
  if (pen.width(middle, soft) <= free) place(middle, soft, foot, "middle");
  else place(shortened(pen, middle, soft, room), soft, foot + 9, "left");
}

/** Running heads alone may be cut, with dots: what they say stands in full in the title block. */
function shortened(pen: Pen, text: string, style: TextStyle, room: number): string {
  if (pen.width(text, style) <= room) return text;
  const signs = [...text];
  while (signs.length > 1 && pen.width(`${signs.join("").trimEnd()}…`, style) > room) signs.pop();
  return `${signs.join("").trimEnd()}…`;
}
