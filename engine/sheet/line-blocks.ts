// What one part of a notebook becomes on the sheet: prose, a line of working, a table of values, a record, a figure.

import type { ProsePart } from "../notebook/index.ts";
import type { Book, BookLine } from "./book.ts";
import { gridTable } from "./grid-tables.ts";
import type { Block } from "./model.ts";
import { type PlacedValue, proseBlocks } from "./prose-blocks.ts";
import { heldFields, recordTable } from "./record-tables.ts";
import { workingOf } from "./working.ts";

export function proseOf(part: ProsePart, start: number, book: Book): readonly Block[] {
  const values = book.outputs
    .filter(({ kind, from, to }) => kind === "live" && start <= from && to <= start + part.length)
    .map((output): PlacedValue => {
      const missing = output.value === undefined;
      return {
        from: output.from - start,
        to: output.to - start,
        text: missing ? `{${output.name ?? ""}}` : (output.value?.text ?? ""),
        missing,
      };
    });
  return proseBlocks(part.text, values);
}

/** `told` holds the broken limits that a line before has told in full. */
export function lineBlocks(line: BookLine, book: Book, told: Set<string>): readonly Block[] {
  const { tree, output } = line;
  if (output.figure !== undefined)
    return [{ kind: "figure", number: 0, scene: output.figure, caption: output.note === "" ? output.figure.caption : output.note }];
  if (tree.kind === "definition") {
    const nominal = tree.value.kind === "scatter" ? tree.value.nominal : tree.value;
    if (nominal.kind === "record") {
      const table = recordTable(line, tree.name.name, nominal.fields, tree.columns, book);
      return output.grid === undefined || output.check !== undefined ? [table] : [table, gridTable(output, output.grid)];
    }
  }
  const working = [...workingOf(line, book, told), ...heldFields(line, book)];
  return output.grid === undefined || output.check !== undefined ? working : [...working, gridTable(output, output.grid)];
}
