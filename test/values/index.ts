// `npm run -s values -- FOLDER...`: published values through the public language, every failing row shown.

import { existsSync } from "node:fs";
import { createSession } from "../../engine/session/index.ts";
import { library } from "../../stdlib/index.ts";
import { collectRows, type Outcome, runRow } from "./run.ts";

process.exitCode = main(process.argv.slice(2));

function main(folders: readonly string[]): number {
  const missing = folders.filter((folder) => !existsSync(folder));
  if (folders.length === 0 || missing.length > 0) {
    console.error(folders.length === 0 ? "usage: npm run -s values -- FOLDER..." : `not found: ${missing.join(", ")}`);
    return 2;
  }
  const { rows, passedOver } = collectRows(folders);
  for (const file of passedOver) console.log(`passed over (no columns of published values): ${file}`);
  const session = createSession(library);
  const outcomes = rows.map((row) => runRow(session, row));
  for (const outcome of outcomes) if (outcome.state === "failed") console.log(describe(outcome));
  const unknown = new Map<string, number>();
  for (const { state, row } of outcomes) if (state === "skipped") unknown.set(row.quantity, (unknown.get(row.quantity) ?? 0) + 1);
  for (const [quantity, times] of unknown) console.log(`skipped ${times}: ${quantity}`);
  const count = (state: Outcome["state"]): number => outcomes.filter((one) => one.state === state).length;
  console.log(`${count("passed")} passed, ${count("failed")} failed, ${count("skipped")} skipped`);
  return count("failed") > 0 ? 1 : 0;
}

function describe({ row, expression, got }: Outcome): string {
  const unit = row.unit === "-" ? "" : ` ${row.unit}`;
  return `FAILED ${row.id} (${row.quantity}): ${expression || row.inputs} gives ${got}, expected ${row.expected}${unit} (tolerance ${row.tolerance} ${row.toleranceKind})`;
}
