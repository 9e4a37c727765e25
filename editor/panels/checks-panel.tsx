// The checks of the notebook, the governing one first.

import { outputWords } from "../pad/output-words.ts";
import type { PanelProps } from "./side-panel.tsx";

export function ChecksPanel({ desk }: PanelProps) {
  const checks = desk.checks();
  if (checks.length === 0)
    return (
      <p class="panel-empty">
        No checks. A line such as <code>check F_t {"<="} F_max factor 2</code> is one.
      </p>
    );
  const governing = checks.findIndex(({ output }) => output.check?.utilisation !== undefined);
  return (
    <ul class="panel-list">
      {checks.map(({ output, from }, index) => {
        const words = outputWords(output);
        const tone = words?.tone === "holds" || words?.tone === "fails" ? words.tone : "open";
        const { check } = output;
        const facts = [
          check?.demand === undefined || check.capacity === undefined ? "" : `${check.demand.text} against ${check.capacity.text}`,
          check?.factor === undefined || check.factor === 1 ? "" : `factor ${check.factor}`,
          check?.marginText === undefined ? "" : `margin ${check.marginText}`,
        ].filter((text) => text !== "");
        return (
          <li key={output.id}>
            <button type="button" class="row" onClick={() => desk.leap(from)}>
              {index === governing && <span class="row-label">governs</span>}
              <span class="row-line">
                <span>{check?.title ?? "check"}</span>
                <span class={`row-state tone-${tone}`}>
                  <span class="shape" aria-hidden="true">
                    {words?.shape}
                  </span>
                  <span class="state-word">{words?.word}</span> {words?.number}
                </span>
              </span>
              {words?.bar !== undefined && (
                <span class={`wide-bar tone-${tone}`} aria-hidden="true">
                  <span style={{ width: `${(words.bar.filled * 100).toFixed(1)}%` }} />
                </span>
              )}
              {facts.length > 0 && <span class="row-place">{facts.join(", ")}</span>}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
