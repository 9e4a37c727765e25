// The help page: how one writes, every command with its key, the cautions of the trade. The commands come from their list.

import { cautions } from "./cautions.ts";
import { commands, groups } from "./commands.ts";
import type { Desk } from "./desk.ts";
import { keyOf, keyWords } from "./keys.ts";
import { Overlay } from "./overlay.tsx";

export function Help({ desk }: { readonly desk: Desk }) {
  return (
    <Overlay label="Help" className="help" onClose={() => desk.closeOverlay()}>
      <div class="overlay-head">
        <h2>Help</h2>
        <button type="button" class="plain" data-first onClick={() => desk.closeOverlay()}>
          Close
        </button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls */}
      <div class="overlay-body" tabIndex={0}>
        <h3>Writing</h3>
        <p>
          A line of working has three parts: <code>F = 42 N | what it is | where it comes from</code>. The last stands in the reference
          column, the result in the output column. Lines may stand in any order. <code>check F {"<="} F_max factor 2</code> is a check, and{" "}
          <code>{"{F}"}</code> in a sentence shows the value. A reference begins with how well the number is known: <code>test</code>,{" "}
          <code>@key</code> for a published work, <code>supplier</code>, <code>given</code>, <code>practice</code>, <code>memory</code> or{" "}
          <code>assumed</code>.
        </p>
        <p>
          Hold Alt and drag a number sideways to change it; inputs with <code>within</code> have a slider. Escape, then Tab, leaves the pad;{" "}
          {keyWords("Alt-o")} goes from a line to its output.
        </p>
        {groups.map((group) => (
          <section key={group}>
            <h3>{group}</h3>
            <dl class="keys">
              {commands
                .filter((command) => command.group === group)
                .map((command) => (
                  <div key={command.id}>
                    <dt>{command.words}</dt>
                    <dd>
                      <kbd>{keyOf(command)}</kbd>
                    </dd>
                  </div>
                ))}
            </dl>
          </section>
        ))}
        <h3>Cautions</h3>
        <ul class="cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
    </Overlay>
  );
}
