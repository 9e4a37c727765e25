// The changes from one text to another line by line, so that marks and carets on the other lines stay where they are.

import type { TextChange } from "../../engine/base/index.ts";

/** Where the number of lines differs the whole stretch between the common ends is one change. */
export function changedLines(before: string, after: string): readonly TextChange[] {
  if (before === after) return [];
  const [old, now] = [before.split("\n"), after.split("\n")];
  if (old.length !== now.length) {
    let from = 0;
    while (before[from] === after[from]) from += 1;
    let end = 0;
    const most = Math.min(before.length, after.length) - from;
    while (end < most && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
    return [{ from, to: before.length - end, insert: after.slice(from, after.length - end) }];
  }
  const changes: TextChange[] = [];
  let at = 0;
  old.forEach((line, index) => {
    const next = now[index] as string;
    if (line !== next) changes.push({ from: at, to: at + line.length, insert: next });
    at += line.length + 1;
  });
  return changes;
}
