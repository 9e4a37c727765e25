// What follows the working: assumptions, inputs, results, references, verification, files and versions, sign-off.

import type { LineOutput } from "../session/index.ts";
import { symbolOf } from "../trace/index.ts";
import type { Book } from "./book.ts";
import { weakestWords } from "./checks.ts";
import { cell, emphasis, maths, state, text, valueCell } from "./inlines.ts";
import { computedLines, inputRows } from "./inputs.ts";
import type { Block, Cell, Column, SheetFile, TableBlock } from "./model.ts";
import { referenceRows } from "./references.ts";
import { isRecordList, isRecordText, recordName, wholeValue } from "./shown-value.ts";
import { symbol } from "./typeset.ts";
import { type VerifiedFormula, verification } from "./verification.ts";

const column = (head: string, share: number, align: Column["align"] = "left"): Column => ({ head: cell(head), share, align });
const heading = (words: string): Block => ({ kind: "heading", level: 1, number: "", text: words, id: "" });
const paragraph = (words: string): Block => ({ kind: "paragraph", of: [text(words)] });
const table = (id: string, columns: readonly Column[], rows: TableBlock["rows"], caption = ""): TableBlock => ({
  kind: "table",
  id,
  caption,
  columns,
  rows,
});

const LONGEST_SYMBOL = 24;

/** A name as it is set; a path of fields as it is written. */
export const nameCell = (name: string): Cell =>
  name.includes(".") || name.length > LONGEST_SYMBOL ? [{ kind: "code", text: name }] : [maths(symbol(symbolOf(name)))];

export function assumptionBlocks(book: Book): readonly Block[] {
  const rows = inputRows(book).filter(({ reference }) => reference.level === "assumed");
  const weak = inputRows(book).filter(
    ({ reference, si }) => reference.level === "memory" || (reference.level === "unsourced" && si !== undefined),
  );
  const outside = book.outputs.filter(({ marks, kind }) => (marks?.outside.length ?? 0) > 0 && kind !== "live");
  return [
    heading("Assumptions"),
    rows.length === 0
      ? paragraph("No input is an assumption.")
      : table(
          "assumptions",
          [
            column("Input", 1.6),
            column("Value", 1.4, "right"),
            column("What is assumed", 4),
            column("State", 1.6),
            column("Borne out by", 2),
          ],
          rows.map((row) => [
            nameCell(row.name),
            valueCell(row.value),
            cell(row.note),
            row.unverified ? [state("assumed")] : cell("confirmed"),
            cell(row.citation.replace(/^assumed[\s,;:]*/, "")),
          ]),
        ),
    ...(weak.length === 0
      ? []
      : [
          paragraph(
            `Inputs from memory or with no reference: ${weak.map(({ name }) => name).join(", ")}. They need a source before the sheet is relied on.`,
          ),
        ]),
    ...(outside.length === 0
      ? []
      : [
          paragraph(
            `Outside the validity of a formula: ${[...new Set(outside.map(({ name, note }) => name ?? note))].join(", ")}; the working says which limit.`,
          ),
        ]),
  ];
}

export function inputBlocks(book: Book): readonly Block[] {
  const rows = inputRows(book);
  if (rows.length === 0) return [];
  return [
    heading("Inputs"),
    table(
      "inputs",
      [column("Input", 1.6), column("Value", 1.8, "right"), column("Range", 1.8), column("What it is", 3.4), column("Reference", 2.4)],
      rows.map((row) => [
        nameCell(row.name),
        valueCell(row.value),
        cell(row.bounds),
        cell(row.note),
        row.reference.level === "unsourced" && row.citation === "" ? [emphasis("no reference")] : cell(row.citation),
      ]),
    ),
  ];
}

export function resultBlocks(book: Book): readonly Block[] {
  const lines = computedLines(book).filter(({ output }) => output.value !== undefined && output.figure === undefined);
  if (lines.length === 0) return [];
  return [
    heading("Results"),
    table(
      "results",
      [column("Result", 1.6), column("Value", 2, "right"), column("What it is", 3.6), column("Weakest source", 2), column("Validity", 1.4)],
      lines.map(({ output }) => [
        nameCell(output.name ?? ""),
        wholeResult(output, book),
        cell(output.note),
        cell(weakestWords(output.marks)),
        (output.marks?.outside.length ?? 0) > 0 ? [state("outside")] : cell("within"),
      ]),
    ),
  ];
}

function wholeResult(output: LineOutput, book: Book): Cell {
  const shown = output.value?.text ?? "";
  if (isRecordText(shown) || isRecordList(shown)) return cell(output.type ?? recordName(shown));
  return wholeValue(output.name ?? "", shown, book);
}

export function referenceBlocks(book: Book): readonly Block[] {
  const rows = referenceRows(book);
  if (rows.length === 0) return [];
  return [
    heading("References"),
    table(
      "references",
      [column("No.", 0.5, "right"), column("Work", 5), column("Cited at", 2.6), column("By", 1)],
      rows.map((row, i) => [cell(String(i + 1)), cell(row.entry), cell(row.places.join("; ")), cell(row.citedBy)]),
    ),
  ];
}

export function verificationBlocks(book: Book): readonly Block[] {
  const formulas = verification(book);
  if (formulas.length === 0) return [];
  const examples = formulas.flatMap((formula) => formula.examples);
  const different = new Set(examples.map(({ text: words }) => words));
  const failing = new Set(examples.filter((example) => example.state !== "passes").map(({ text: words }) => words));
  const without = formulas.filter((formula) => formula.examples.length === 0);
  const count = different.size;
  const bad = failing.size;
  const said = [
    `${formulas.length} formulas can come to be used. Their ${count} worked examples were run when this sheet was made: ${count - bad} ${count - bad === 1 ? "passes" : "pass"}, ${bad} ${bad === 1 ? "does" : "do"} not.`,
    without.length === 0 ? "" : `No example calls these by name: ${without.map(({ name }) => name.replaceAll("_", " ")).join(", ")}.`,
    "Answers are published, or computed independently of this program, or from memory.",
  ];
  const every: TableBlock =
    count > PRINTED_EXAMPLES
      ? {
          ...table(
            "verification",
            [
              column("Formula", 2),
              column("Source", 2),
              column("Examples", 0.7),
              column("Published answers from", 3),
              column("Result", 0.8),
            ],
            formulas.flatMap((formula) => shortRows(formula, book)),
            "Every example with its answer stands in results.json; here those of this notebook, and any that does not pass.",
          ),
          dense: true,
        }
      : table(
          "verification",
          [column("Formula", 2.4), column("Worked example", 6), column("Answer", 1), column("Result", 1)],
          formulas.flatMap(formulaRows),
        );
  return [heading("Verification of the formulas used"), paragraph(said.filter((part) => part !== "").join(" ")), every];
}

/** More examples than this are counted by formula. */
const PRINTED_EXAMPLES = 80;

function nameOf(formula: VerifiedFormula): Cell {
  const source = formula.citation === "" ? formula.module.replace(/\.joint\.md$/, "") : formula.citation;
  return [text(formula.name.replaceAll("_", " ")), { kind: "break" }, emphasis(source)];
}

function formulaRows(formula: VerifiedFormula): readonly (readonly Cell[])[] {
  if (formula.examples.length === 0) return [[nameOf(formula), [emphasis("none calls it by name")], [], []]];
  return formula.examples.map((example, i) => [
    i === 0 ? nameOf(formula) : [],
    [{ kind: "code", text: example.text }, ...(example.citation === "" ? [] : [{ kind: "break" } as const, emphasis(example.citation)])],
    cell(example.known),
    [state(example.state)],
  ]);
}

/** One row a formula, and one for each example that is this notebook's own or does not pass. */
function shortRows(formula: VerifiedFormula, book: Book): readonly (readonly Cell[])[] {
  const { examples, citation, module } = formula;
  const name = text(formula.name.replaceAll("_", " "));
  const source = cell(citation === "" ? module.replace(/\.joint\.md$/, "") : citation);
  if (examples.length === 0) return [[[name], source, cell("none"), [], []]];
  const published = [...new Set(examples.filter(({ known }) => known === "published").map((example) => example.source))];
  const remembered = examples.filter(({ known }) => known === "memory").length;
  const from = [...published, remembered === 0 ? "" : `memory (${remembered})`].filter((part) => part !== "");
  const passing = examples.every((example) => example.state === "passes");
  const shown = examples.filter((example) => example.state !== "passes" || module === book.file);
  return [
    [[name], source, cell(String(examples.length)), cell(from.join("; ")), [state(passing ? "passes" : "fails")]],
    ...shown.map((example): readonly Cell[] => [[], [], [], [{ kind: "code", text: example.text }], [state(example.state)]]),
  ];
}

export interface Versions {
  readonly program: string;
  readonly library: string;
  readonly libraryDigest: string;
  /** What the notebook is pinned to, empty when it is not. */
  readonly pinned: string;
}

export function versionBlocks(files: readonly SheetFile[], versions: Versions): readonly Block[] {
  const row = (name: string, version: string, digest: string): readonly Cell[] => [
    cell(name),
    cell(version),
    digest === "" ? [] : [{ kind: "code", text: digest }],
  ];
  return [
    heading("Files and versions"),
    table(
      "files",
      [column("File or program", 2), column("Version", 1.2), column("SHA-256", 5)],
      [
        ...files.map(({ name, sha256 }) => row(name, "", sha256)),
        row("Standard library", versions.library, versions.libraryDigest),
        row("Jointwright", versions.program, ""),
      ],
    ),
    paragraph(
      versions.pinned === ""
        ? "The notebook is pinned to no library version; it was computed with the one named here."
        : versions.pinned === versions.library
          ? `The notebook is pinned to library ${versions.pinned}, with which it was computed.`
          : `The notebook is pinned to library ${versions.pinned}, but was computed with ${versions.library}.`,
    ),
  ];
}

export function signatureBlocks(book: Book): readonly Block[] {
  const { creator, checker, approval_person } = book.front.title;
  return [
    heading("Sign-off"),
    {
      kind: "signatures",
      roles: [
        { role: "Originator", name: creator },
        { role: "Checker", name: checker },
        { role: "Approver", name: approval_person },
      ],
    },
    paragraph(
      "Names come from the title block. Whoever signs confirms; this tool approves nothing, and the same person does not sign twice.",
    ),
  ];
}
