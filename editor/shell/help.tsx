// Help: how one writes, the keys, and the cautions of the trade.

import { isMac } from "./keys.ts";

const main = isMac ? "⌘" : "Ctrl+";

const KEYS: readonly (readonly [string, string])[] = [
  [`${main}Enter`, "turn the line into working, or back into prose"],
  [isMac ? "⌥Enter" : "Alt+Enter", "accept the mend of the fault on this line"],
  ["F8, Shift+F8", "next fault, fault before"],
  [`${isMac ? "⌃" : "Ctrl+"}Space`, "names, units and formulas that fit here"],
  ["Escape, then Tab", "leave the pad"],
  [`${main}F`, "search"],
  [`${main}Z, ${isMac ? "⇧⌘Z" : "Ctrl+Y"}`, "undo, redo"],
  [`${main}S, ${main}Shift+S`, "save, save as"],
  [`${main}O, ${isMac ? "⌥" : "Alt+"}N`, "open, new"],
];

const CAUTIONS: readonly string[] = [
  "A result here is an aid to judgement. Lifting, life-safety and regulated work needs the local codes and a licensed engineer.",
  "Printed parts differ from print to print: strength across layers, moisture and temperature change it. Test your own specimens.",
  "Polymers creep. A joint that holds today may loosen under a load that lasts; check preload again after time and heat.",
  "Pull and torque tests store energy: guard them, wear eye protection, stand out of the line of the screw.",
  "Setting inserts and post-processing use hot tools. Cut or drilled fibre-reinforced parts give splinters and dust: gloves, mask, extraction.",
];

export function Help() {
  return (
    <>
      <h3>Writing</h3>
      <p>
        A line of working has three parts: <code>F = 42 N | what it is | where it comes from</code>. The last one stands in the reference
        column, the result in the output column. Lines may stand in any order.
      </p>
      <p>
        <code>check F {"<="} F_max factor 2</code> is a check. <code>{"{F}"}</code> in a sentence shows the value. <code>test</code>,{" "}
        <code>given</code>, <code>assumed</code> or <code>@key</code> at the start of a reference says how well a number is known.
      </p>
      <h3>Keys</h3>
      <dl class="keys">
        {KEYS.map(([key, what]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <h3>Cautions</h3>
      <ul class="cautions">
        {CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
}
