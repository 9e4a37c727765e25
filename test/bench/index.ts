// `npm run bench`: one line `name: value unit` a figure; `-- --json FILE` writes all, `-- --only WORD` runs those with the word.

import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { type Figure, registered, runCase, shown } from "./harness.ts";
import "./figures.ts";

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { json: { type: "string" }, only: { type: "string" } } });
  const wanted = registered().filter(({ name }) => name.includes(values.only ?? ""));
  if (wanted.length === 0) throw new Error(`no figure has "${values.only}" in its name: ${registered().map(({ name }) => name)}`);
  const figures: Figure[] = [];
  for (const one of wanted) {
    const figure = await runCase(one);
    console.log(`${figure.name}: ${shown(figure.value)} ${figure.unit}`);
    figures.push(figure);
  }
  if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify({ node: process.version, figures }, null, 2)}\n`);
}

main().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : String(fault));
  process.exitCode = 1;
});
