// Every check and every failure mode of a ledger in one list, the one nearest to failing first.

import type { Grid, LineOutput, ShownMarks } from "../session/index.ts";
import type { Book } from "./book.ts";
import { cell, nameText, state, text, valueCell } from "./inlines.ts";
import type { Cell, Column, State, TableBlock } from "./model.ts";

export interface CheckRow {
  readonly title: string;
  readonly state: State;
  /** The notebook's name of the ledger that a mode belongs to; empty for a check of its own. */
  readonly ledger: string;
  readonly case: string;
  readonly factor: string;
  readonly demand: string;
  readonly capacity: string;
  /** Load at first damage and at the ultimate, where a mode tells them apart. */
  readonly first: string;
  readonly ultimate: string;
  readonly utilisation?: number;
  readonly utilisationText: string;
  readonly marginText: string;
  /** In words: "assumed (Phi)". */
  readonly weakest: string;
  /** Rests on a formula outside its validity. */
  readonly outside: boolean;
  /** Why it is ruled out or open. */
  readonly reason: string;
}

/** Smallest margin first; what fails without a number before all; then open ones, then those ruled out. */
export function checkRows(book: Book): readonly CheckRow[] {
  const checked = book.outputs.flatMap((output) => (output.check === undefined ? [] : rowsOf(output, book)));
  const rows = [...checked, ...uncheckedLedgers(checked, book)];
  return rows
    .map((row, i) => ({ row, i }))
    .sort((a, b) => rank(a.row) - rank(b.row) || used(b.row) - used(a.row) || a.i - b.i)
    .map(({ row }) => row);
}

const used = ({ utilisation }: CheckRow): number => utilisation ?? -1;

function rank(row: CheckRow): number {
  if (row.state === "fails") return 0;
  if (row.state === "ruled out") return 3;
  return row.state === "holds" || row.state === "nominal" ? 1 : 2;
}

function rowsOf(output: LineOutput, book: Book): readonly CheckRow[] {
  const check = output.check as NonNullable<LineOutput["check"]>;
  const modes = check.modes === undefined ? undefined : ledgerOf(output, book);
  if (modes !== undefined) return modes;
  const faulty = output.diagnostics.some(({ severity }) => severity === "fault");
  const waits = output.waitsFor ?? [];
  return [
    {
      title: check.title,
      state: check.state,
      ledger: "",
      case: "",
      factor: check.factor === undefined ? "" : String(check.factor),
      demand: check.demand?.text ?? "",
      capacity: check.capacity?.text ?? "",
      first: "",
      ultimate: "",
      ...(check.utilisation === undefined ? {} : { utilisation: check.utilisation }),
      utilisationText: check.utilisationText ?? "",
      marginText: check.marginText ?? "",
      weakest: weakestWords(output.marks),
      outside: (output.marks?.outside.length ?? 0) > 0,
      reason:
        waits.length > 0
          ? `waits for ${waits.join(", ")}`
          : faulty
            ? "the line has a fault"
            : check.state === "open"
              ? "not evaluated"
              : "",
    },
  ];
}

/** A grid of failure modes. */
export const isLedger = (grid: Grid): boolean =>
  ["mode", "state", "utilisation"].every((head) => grid.columns.some((column) => column.head === head));

/** Modes of ledgers that no `check` names stand in the list all the same: none may be missing. */
function uncheckedLedgers(checked: readonly CheckRow[], book: Book): readonly CheckRow[] {
  return book.outputs.flatMap(({ kind, name, grid }) => {
    if (
      kind !== "definition" ||
      name === undefined ||
      grid === undefined ||
      !isLedger(grid) ||
      checked.some(({ ledger }) => ledger === name)
    )
      return [];
    return modeRows(grid, name);
  });
}

/** The rows of a ledger: of the check itself, or of the name that it checks. */
function ledgerOf(output: LineOutput, book: Book): readonly CheckRow[] | undefined {
  const tree = book.lines.get(output.from)?.tree;
  const name = tree?.kind === "check" && tree.condition.kind === "name" ? tree.condition.name : undefined;
  const defined = name === undefined ? undefined : book.outputs.find((each) => each.kind === "definition" && each.name === name);
  const grid = output.grid ?? defined?.grid;
  return grid === undefined ? undefined : modeRows(grid, name ?? "");
}

function modeRows(grid: Grid, ledger: string): readonly CheckRow[] {
  const at = (head: string): number => grid.columns.findIndex((column) => column.head === head);
  const rows = grid.rows.map((row): CheckRow => {
    const shown = (head: string): string => cellText(grid, row, at(head));
    const utilisation = row.cells[at("utilisation")];
    const number = utilisation === undefined || utilisation.full === "" ? undefined : Number(utilisation.full);
    const ruledOut = shown("state") === "ruled out";
    // Screw 0 is none in particular.
    const screw = ruledOut || shown("screw") === "" || shown("screw") === "0" ? "" : `screw\u00a0${shown("screw")}`;
    return {
      title: shown("mode"),
      state: shown("state") as State,
      ledger,
      case: [shown("case"), screw].filter((part) => part !== "").join(", "),
      factor: ruledOut ? "" : shown("factor"),
      demand: shown("demand"),
      capacity: shown("ultimate") === "" ? shown("first") : shown("ultimate"),
      first: shown("first"),
      ultimate: shown("ultimate"),
      ...(number === undefined ? {} : { utilisation: number }),
      utilisationText: utilisation?.text ?? "",
      marginText: number === undefined || !(number > 0) ? "" : marginWords(1 / number - 1),
      weakest: weakestWords(row.marks),
      outside: (row.marks?.outside.length ?? 0) > 0,
      reason: shown("state") === "holds" ? "" : shown("reason"),
    };
  });
  if (grid.count <= grid.rows.length) return rows;
  const none = {
    case: "",
    factor: "",
    demand: "",
    capacity: "",
    first: "",
    ultimate: "",
    utilisationText: "",
    marginText: "",
    weakest: "",
    outside: false,
  };
  return [
    ...rows,
    { ...none, title: `${grid.count - grid.rows.length} further modes of ${ledger}`, state: "open", ledger, reason: "not listed here" },
  ];
}

function cellText(grid: Grid, row: Grid["rows"][number], at: number): string {
  const shown = row.cells[at];
  const unit = grid.columns[at]?.unit ?? "";
  if (shown === undefined || shown.text === "") return "";
  return unit === "" || shown.number === "" ? shown.text : `${shown.text} ${unit}`;
}

/** Two decimals, and never a negative margin as zero. */
function marginWords(margin: number): string {
  const text = Math.abs(margin).toFixed(2);
  if (margin < 0) return text === "0.00" ? "−0.01" : `−${text}`;
  return text;
}

export function weakestWords(marks: ShownMarks | undefined): string {
  const provenance = marks?.provenance;
  if (provenance === undefined) return "";
  const level = provenance.level === "unsourced" ? "no reference" : provenance.level;
  return provenance.from === "" ? level : `${level} (${nameText(provenance.from)})`;
}

/** A number stays with its unit. */
const amount = (shown: string): Cell => valueCell(shown.length <= SHORT ? shown.replaceAll(" ", "\u00a0") : shown);
const SHORT = 16;

const NONE = "n/e";

/** The checks summary of the first page. Columns that no row fills are left out, but for those of scatter, which say that it is not evaluated. */
export function checksTable(rows: readonly CheckRow[]): TableBlock {
  type Maker = { readonly column: Column; readonly of: (row: CheckRow) => Cell; readonly kept?: boolean };
  const maker = (head: string, align: "left" | "right", share: number, of: (row: CheckRow) => Cell, kept = false): Maker => ({
    column: { head: cell(head), align, share },
    of,
    kept,
  });
  const makers: readonly Maker[] = [
    maker("Check or mode", "left", 3, titled),
    maker("State", "left", 1.3, (row) => [state(row.state)]),
    maker("Case", "left", 1.2, (row) => cell(row.case)),
    maker("Factor", "right", 0.8, (row) => cell(row.factor)),
    maker("Demand", "right", 1.2, (row) => amount(row.demand)),
    maker("First damage", "right", 1.2, (row) => amount(row.first)),
    maker(rows.some((row) => row.ultimate !== "") ? "Ultimate" : "Capacity", "right", 1.2, (row) =>
      amount(row.ultimate === "" ? (row.first === "" ? row.capacity : "") : row.ultimate),
    ),
    maker("Utilis.", "right", 0.8, (row) => cell(row.utilisationText)),
    maker("Margin", "right", 0.8, (row) => cell(row.marginText)),
    maker("Worst case", "right", 0.8, (row) => (told(row) ? cell(NONE) : []), true),
    maker("Chance", "right", 0.8, (row) => (told(row) ? cell(NONE) : []), true),
    maker("Weakest source", "left", 1.6, (row) => cell(row.weakest)),
  ];
  const shown = makers.filter(({ of, kept }) => kept === true || rows.some((row) => of(row).length > 0));
  return {
    kind: "table",
    id: "checks",
    caption: "Checks and failure modes, smallest margin first. n/e: worst case and chance of failing are not evaluated.",
    columns: shown.map(({ column }) => column),
    rows: rows.map((row) => shown.map(({ of }) => of(row))),
  };
}

/** What nobody could judge, each with what is missing. */
export const openTable = (rows: readonly CheckRow[]): TableBlock =>
  reasonTable("open", "Open: not evaluated, each with what is missing.", "What is missing", rows);

/** Modes that cannot occur, each with the reason that the assessment gives. */
export const ruledOutTable = (rows: readonly CheckRow[]): TableBlock =>
  reasonTable("ruled-out", "Failure modes that are ruled out, each with its reason.", "Reason", rows);

function reasonTable(id: string, caption: string, reason: string, rows: readonly CheckRow[]): TableBlock {
  return {
    kind: "table",
    id,
    caption,
    columns: [
      { head: cell("Check or mode"), align: "left", share: 2 },
      { head: cell("State"), align: "left", share: 0.8 },
      { head: cell(reason), align: "left", share: 4 },
      { head: cell("Weakest source"), align: "left", share: 1.4 },
    ],
    rows: rows.map((row) => [cell(row.title), [state(row.state)], cell(row.reason), cell(row.weakest)]),
    dense: true,
  };
}

/** Whether anything was evaluated that a table of numbers can show. */
export const isJudged = (row: CheckRow): boolean => told(row) || row.utilisation !== undefined;

const titled = (row: CheckRow): Cell =>
  row.reason === "" ? cell(row.title) : [text(row.title), { kind: "break" }, { kind: "emphasis", of: [text(row.reason)] }];

const told = (row: CheckRow): boolean => row.state === "holds" || row.state === "fails" || row.state === "nominal";

/** The verdict in sentences: how many hold, which governs, what is open, what fails. */
export function verdict(rows: readonly CheckRow[]): string {
  const count = (which: readonly State[]): readonly CheckRow[] => rows.filter((row) => which.includes(row.state));
  const judged = rows.filter((row) => row.state !== "ruled out");
  if (rows.length === 0) return "This calculation makes no check.";
  const holding = count(["holds", "nominal"]);
  const failing = count(["fails"]);
  const open = judged.filter((row) => !holding.includes(row) && !failing.includes(row));
  const governing = rows.find((row) => row.utilisation !== undefined);
  const sentences = [
    `${holding.length} of ${judged.length} ${judged.length === 1 ? "check or mode holds" : "checks and modes hold"}.`,
    failing.length === 0 ? "" : `Failing: ${failing.map((row) => row.title).join("; ")}.`,
    governing === undefined
      ? ""
      : `Governing: ${governing.title}, utilisation ${governing.utilisationText}${governing.marginText === "" ? "" : `, margin ${governing.marginText}`}.`,
    open.length === 0 ? "None is open." : `Open: ${open.map((row) => row.title).join("; ")}.`,
  ];
  return sentences.filter((sentence) => sentence !== "").join(" ");
}
