// The results as a workbook: numbers as numbers beside their unit, texts as texts whatever they begin with.

import writeExcelFile, { type Cell, type SheetData } from "write-excel-file/universal";
import { pack, unpack } from "./archive.ts";
import type { NumberValue, Results } from "./results.ts";

type Value = string | number | undefined;

const head = (words: readonly string[]): Cell[] =>
  words.map((value) => ({ value, type: String, fontWeight: "bold", wrap: true, alignVertical: "bottom" }));
const cellOf = (value: Value): Cell =>
  value === undefined || value === ""
    ? null
    : typeof value === "number"
      ? { value, type: Number }
      : { value, type: String, wrap: true, alignVertical: "top" };

function sheetOf(heads: readonly string[], rows: readonly (readonly Value[])[]): SheetData {
  return [head(heads), ...rows.map((row) => row.map(cellOf))];
}

const single = ({ value, si }: NumberValue): readonly [Value, Value] => [
  typeof value === "number" ? value : undefined,
  typeof si === "number" ? si : undefined,
];

/** `time` as `archiveTime` gives it. */
export async function resultsXlsx(results: Results, time: string): Promise<Uint8Array> {
  const inputs = results.inputs.map((input) => {
    const [value, si] = single(input);
    return [input.name, value, input.unit, input.text, si, input.ucum, input.range, input.note, input.reference, input.provenance];
  });
  const computed = results.results.map((result) => {
    const [value, si] = single(result);
    const validity = result.validity === "within" ? "within" : result.validity.join("; ");
    return [result.name, value, result.unit, result.text, si, result.ucum, result.note, result.reference, result.provenance, validity];
  });
  const checks = results.checks.map((check) => [
    check.title,
    check.ledger,
    check.state,
    check.case,
    check.factor,
    check.demand,
    check.capacity,
    check.firstDamage,
    check.ultimate,
    check.utilisation,
    check.margin,
    check.worstCase,
    check.chanceOfFailing,
    check.weakest,
    check.reason,
  ]);
  const lists = results.results.flatMap(({ name, value, si, unit, ucum }) =>
    Array.isArray(value) && Array.isArray(si)
      ? (value as readonly number[]).map((item, i) => [name, i + 1, item, unit, (si as readonly number[])[i], ucum])
      : [],
  );
  const about = [
    ...Object.entries(results.title),
    ["notebook", results.notebook],
    ["program", `Jointwright ${results.program}`],
    ["library", results.library.version],
    ["library SHA-256", results.library.sha256],
    ...results.sources.map(({ name, sha256 }) => [`SHA-256 of ${name}`, sha256]),
  ];
  const written = writeExcelFile([
    {
      sheet: "Inputs",
      data: sheetOf(["Input", "Value", "Unit", "As shown", "SI value", "UCUM", "Range", "What it is", "Reference", "Provenance"], inputs),
      columns: widths(18, 14, 10, 18, 16, 12, 18, 40, 30, 12),
      stickyRowsCount: 1,
    },
    {
      sheet: "Results",
      data: sheetOf(
        ["Result", "Value", "Unit", "As shown", "SI value", "UCUM", "What it is", "Reference", "Weakest source", "Validity"],
        computed,
      ),
      columns: widths(18, 14, 10, 24, 16, 12, 40, 30, 14, 20),
      stickyRowsCount: 1,
    },
    {
      sheet: "Checks",
      data: sheetOf(
        [
          "Check or mode",
          "Ledger",
          "State",
          "Case",
          "Factor",
          "Demand",
          "Capacity",
          "First damage",
          "Ultimate",
          "Utilisation",
          "Margin",
          "Worst case",
          "Chance of failing",
          "Weakest source",
          "Reason",
        ],
        checks,
      ),
      columns: widths(44, 12, 12, 14, 10, 14, 14, 14, 14, 12, 12, 14, 16, 20, 40),
      stickyRowsCount: 1,
    },
    ...(lists.length === 0
      ? []
      : [
          {
            sheet: "Lists",
            data: sheetOf(["Result", "Item", "Value", "Unit", "SI value", "UCUM"], lists),
            columns: widths(18, 8, 14, 10, 16, 12),
            stickyRowsCount: 1,
          },
        ]),
    { sheet: "About", data: sheetOf(["What", "Value"], about), columns: widths(28, 70) },
  ]);
  const blob = await written.toBlob();
  // Packed again, because the writer's own archive carries the time of day.
  return pack(
    [...unpack(new Uint8Array(await blob.arrayBuffer()))].sort((a, b) => (a.name < b.name ? -1 : 1)),
    time,
  );
}

const widths = (...all: readonly number[]): { readonly width: number }[] => all.map((width) => ({ width }));
