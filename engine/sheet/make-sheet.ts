// The whole sheet in the order a reviewer reads it: first page, working, appendices, sign-off.

import type { Part } from "../notebook/index.ts";
import type { Library, Session } from "../session/index.ts";
import {
  assumptionBlocks,
  inputBlocks,
  nameCell,
  referenceBlocks,
  resultBlocks,
  signatureBlocks,
  verificationBlocks,
  versionBlocks,
} from "./appendices.ts";
import { type Book, openBook } from "./book.ts";
import { checkRows, checksTable, isJudged, openTable, ruledOutTable, verdict } from "./checks.ts";
import { csvTable } from "./grid-tables.ts";
import { emphasis, state, strong, text } from "./inlines.ts";
import { inputRows } from "./inputs.ts";
import { lineBlocks, proseOf } from "./line-blocks.ts";
import type { Block, Inline, Sheet } from "./model.ts";
import { libraryDigest, sourceDigests } from "./sources.ts";

export interface SheetOptions {
  /** The program's version. */
  readonly version: string;
  readonly units?: Sheet["units"];
  /** How a recomputation from a clean start came out, where there was one. */
  readonly recomputed?: { readonly values: number; readonly agree: number };
}

type Heading = Extract<Block, { kind: "heading" }>;

const CAUTION =
  "Hot tools burn. Pull tests store energy: guard them. Fibre ends splinter. Plastic creeps under lasting load. The results are an aid for a qualified engineer; lifting, life safety and regulated work need local codes and a licensed engineer's review.";

/** Makes the sheet of a notebook that the session holds. The same notebook, library and options give the same sheet. */
export function makeSheet(session: Session, library: Library, file: string, options: SheetOptions): Sheet {
  const book = openBook(session, library, file);
  const files = sourceDigests(session, file);
  const versions = {
    program: options.version,
    library: library.version,
    libraryDigest: libraryDigest(library),
    pinned: book.front.library?.text ?? "",
  };
  const { purpose, working } = parted(workingBlocks(book));
  const first = [heading(purpose.title), ...purpose.blocks, ...firstPage(book, options.units ?? "notebook"), { kind: "contents" } as const];
  const body = numbered([...first, ...working], "digits");
  const appendices = numbered(
    [
      ...assumptionBlocks(book),
      ...inputBlocks(book),
      ...resultBlocks(book),
      ...referenceBlocks(book),
      ...verificationBlocks(book),
      ...versionBlocks(files, versions),
      ...signatureBlocks(book),
    ],
    "letters",
  );
  const { title } = book.front;
  const digest = files[0]?.sha256 ?? "";
  return {
    title,
    units: options.units ?? "notebook",
    blocks: counted([...body, ...appendices]),
    foot: {
      left: [
        [title.number, title.revision === "" ? "" : `rev. ${title.revision}`].filter((part) => part !== "").join(" "),
        `source ${digest.slice(0, 12)}`,
      ]
        .filter((part) => part !== "")
        .join(" · "),
      middle: [
        `library ${library.version} · Jointwright ${options.version}`,
        options.recomputed === undefined
          ? ""
          : `recomputed from a clean start: ${options.recomputed.agree} of ${options.recomputed.values} values agree`,
      ]
        .filter((part) => part !== "")
        .join(" · "),
    },
    language: "en",
  };
}

const heading = (words: string): Heading => ({ kind: "heading", level: 1, number: "", text: words, id: "" });

function workingBlocks(book: Book): readonly Block[] {
  const told = new Set<string>();
  return book.notebook.parts.flatMap((part, i) => partBlocks(part, book.notebook.starts[i] ?? 0, book, told));
}

function partBlocks(part: Part, start: number, book: Book, told: Set<string>): readonly Block[] {
  switch (part.kind) {
    case "prose":
      return proseOf(part, start, book);
    case "calc":
      return part.starts.flatMap((from) => {
        const line = book.lines.get(start + from);
        return line === undefined ? [] : lineBlocks(line, book, told);
      });
    case "csv": {
      const output = book.outputs.find(({ kind, from }) => kind === "csv" && from === start);
      return output === undefined ? [] : [csvTable(part, output)];
    }
    case "fence":
      return [{ kind: "code", text: part.text.slice(part.bodyFrom, part.bodyTo).replace(/\n$/, "") }];
    case "front":
      return [];
  }
}

const PURPOSE = /^(?:purpose|scope|objective|aim|task|why)\b/i;

/** The section that says what the calculation is for goes to the first page; a heading that stands above all others is the title again. */
function parted(all: readonly Block[]): {
  readonly purpose: { readonly title: string; readonly blocks: readonly Block[] };
  readonly working: readonly Block[];
} {
  const blocks = levelled(all);
  const at = blocks.findIndex((block) => block.kind === "heading" && PURPOSE.test(block.text));
  const start = at >= 0 ? at + 1 : 0;
  const end = blocks.findIndex(
    (block, i) => i >= start && (block.kind === "heading" || block.kind === "working" || block.kind === "table" || block.kind === "figure"),
  );
  const stop = end === -1 ? blocks.length : end;
  const found = blocks.slice(start, stop);
  const named = blocks[at];
  const missing: Block = { kind: "paragraph", of: [state("open"), text(": the notebook states no purpose.")] };
  return {
    purpose: { title: named?.kind === "heading" ? named.text : "Purpose", blocks: found.length === 0 ? [missing] : found },
    working: [...blocks.slice(0, Math.max(0, at)), ...blocks.slice(stop)],
  };
}

function levelled(blocks: readonly Block[]): readonly Block[] {
  const headings = blocks.filter((block): block is Heading => block.kind === "heading");
  const [first] = headings;
  const alone = first?.level === 1 && headings.length > 1 && headings.slice(1).every(({ level }) => level > 1);
  if (!alone) return blocks;
  return blocks
    .filter((block) => block !== first)
    .map((block) => (block.kind === "heading" ? { ...block, level: Math.max(1, block.level - 1) as Heading["level"] } : block));
}

function firstPage(book: Book, units: Sheet["units"]): readonly Block[] {
  const rows = checkRows(book);
  const ruledOut = rows.filter((row) => row.state === "ruled out");
  const judged = rows.filter((row) => isJudged(row) && !ruledOut.includes(row));
  const open = rows.filter((row) => !judged.includes(row) && !ruledOut.includes(row));
  const inputs = inputRows(book);
  const unverified = inputs.filter((row) => row.unverified);
  const faults = book.outputs.flatMap(({ diagnostics }) => diagnostics.filter(({ severity }) => severity === "fault"));
  const outside = judged.filter((row) => row.outside);
  const paragraph = (...of: readonly Inline[]): Block => ({ kind: "paragraph", of });
  const switched =
    units === "notebook"
      ? []
      : [
          paragraph(
            emphasis(`All values of this copy are shown in ${units} units, whatever unit their line names; no value is altered by that.`),
          ),
        ];
  const problem =
    faults.length === 0
      ? []
      : [
          paragraph(
            state("fault"),
            text(
              `: ${faults.length} ${faults.length === 1 ? "line has a fault" : "lines have faults"}; what depends on ${faults.length === 1 ? "it" : "them"} is not computed.`,
            ),
          ),
        ];
  const which = outside.length === judged.length && outside.length > 1 ? "every one of them" : outside.map(({ title }) => title).join("; ");
  const beyond = outside.length === 0 ? [] : [paragraph(state("outside"), text(`: ${which}. The working says which limit is passed.`))];
  const assumed: Block =
    unverified.length === 0
      ? paragraph(strong("Unverified assumptions: "), text("none."))
      : paragraph(
          strong("Unverified assumptions: "),
          ...unverified.flatMap((row, i): readonly Inline[] => [
            ...(i === 0 ? [] : [text("; ")]),
            ...nameCell(row.name),
            text(` = ${row.value}${row.note === "" ? "" : ` (${row.note})`}`),
          ]),
          text("."),
        );
  return [
    heading("Result"),
    ...problem,
    paragraph(text(verdict(rows))),
    ...(judged.length === 0 ? [] : [checksTable(judged)]),
    ...(open.length === 0 ? [] : [openTable(open)]),
    ...beyond,
    assumed,
    ...(ruledOut.length === 0 ? [] : [ruledOutTable(ruledOut)]),
    ...switched,
    { kind: "caution", title: "Caution", of: [text(CAUTION)] },
  ];
}

/** Numbers for headings: 1, 1.1 or A, A.1; with an id to point at. */
function numbered(blocks: readonly Block[], style: "digits" | "letters"): readonly Block[] {
  const counts = [0, 0, 0];
  return blocks.map((block): Block => {
    if (block.kind !== "heading") return block;
    counts[block.level - 1] = (counts[block.level - 1] ?? 0) + 1;
    counts.fill(0, block.level);
    const [top = 0, ...rest] = counts.slice(0, block.level);
    const lead = style === "digits" ? String(top) : String.fromCharCode(64 + top);
    const number = [lead, ...rest.map(String)].join(".");
    return { ...block, number, id: `section-${number.replaceAll(".", "-").toLowerCase()}` };
  });
}

/** Figures numbered in their order; every table with an id of its own. */
function counted(blocks: readonly Block[]): readonly Block[] {
  let figures = 0;
  let tables = 0;
  return blocks.map((block): Block => {
    if (block.kind === "figure") {
      figures += 1;
      return { ...block, number: figures };
    }
    if (block.kind !== "table") return block;
    tables += 1;
    return { ...block, id: block.id === "" ? `table-${tables}` : block.id };
  });
}
