// Values as print has them whole: records by their name, long lists without an end cut off, texts a line each.

import type { Book } from "./book.ts";
import { cell, text, valueCell } from "./inlines.ts";
import type { Cell } from "./model.ts";

/** Items of a list of numbers that are printed; the others stand in the results for machines, and the cell says so. */
const PRINTED_ITEMS = 60;

/** A record without a designation: `Pattern { x = …, y = … }`. */
export const isRecordText = (shown: string): boolean => /^[\p{L}_][\p{L}\p{N}_]* \{/u.test(shown);

export const isRecordList = (shown: string): boolean => /^\[[\p{L}_][\p{L}\p{N}_]* \{/u.test(shown);

/** A record that only wraps one amount is that amount: `ForceAmount { F = 3854 N }`. */
export const unwrapped = (shown: string): string =>
  /^[\p{L}_][\p{L}\p{N}_]* \{ [\p{L}_][\p{L}\p{N}_]* = ([^,={}]*) \}$/u.exec(shown)?.[1] ?? shown;

/** A record's name alone. */
export const recordName = (shown: string): string => (isRecordText(shown) ? (shown.split(" {", 1)[0] ?? "") : shown);

/** Whether a list as it is shown leaves items out. */
export const isCut = (shown: string): boolean => /, … \d+ items\]/.test(shown);

/** The value of a path, nothing left out. */
export function wholeValue(path: string, shown: string, book: Book): Cell {
  if (!isCut(shown)) return valueCell(unwrapped(shown));
  const value = book.session.evaluate(path, { file: book.file }).result?.value;
  if (!Array.isArray(value)) return valueCell(shown);
  const items = value as readonly unknown[];
  if (items.every((item): item is string => typeof item === "string"))
    return items.flatMap((item, i) => [...(i === 0 ? [] : [{ kind: "break" } as const]), text(item)]);
  const printed = items
    .slice(0, PRINTED_ITEMS)
    .map((_, i) => book.session.evaluate(`${path}[${i + 1}]`, { file: book.file }).result?.shown);
  if (printed.some((item) => item === undefined)) return valueCell(shown);
  const [first] = printed;
  const same = first !== undefined && printed.every((item) => item?.unit === first.unit && item.number !== "");
  const words = printed.map((item) => (same ? (item?.number ?? "") : (item?.text ?? ""))).join(", ");
  const rest = items.length > PRINTED_ITEMS ? `, … ${items.length} items, all of them in results.json` : "";
  return cell(`[${words}${rest}]${same && first.unit !== "" ? ` ${first.unit}` : ""}`);
}
