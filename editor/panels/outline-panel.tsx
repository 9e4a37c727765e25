// The outline: the headings of the notebook, the one of the caret marked, with what needs looking at under each.

import type { PanelProps } from "./side-panel.tsx";

export function OutlinePanel({ desk }: PanelProps) {
  const headings = desk.headings();
  if (headings.length === 0)
    return (
      <p class="panel-empty">
        No headings. A line that begins with <code>#</code> is one.
      </p>
    );
  const at = desk.pad.view.state.selection.main.head;
  const here = headings.findLastIndex(({ from }) => from <= at);
  return (
    <ul class="panel-list outline">
      {headings.map((heading, index) => (
        <li key={`${index} ${heading.text}`}>
          <button
            type="button"
            class={`row outline-${Math.min(3, heading.level)}`}
            aria-current={index === here ? "location" : undefined}
            onClick={() => desk.leap(heading.from)}
          >
            <span>{heading.text}</span>
            {heading.faults > 0 && <Mark tone="fails" shape="✕" words={`${heading.faults} at fault`} />}
            {heading.failing > 0 && <Mark tone="fails" shape="▲" words={`${heading.failing} of ${heading.checks} fail`} />}
            {heading.failing === 0 && heading.checks > 0 && <Mark tone="holds" shape="●" words={String(heading.checks)} />}
          </button>
        </li>
      ))}
    </ul>
  );
}

function Mark({ tone, shape, words }: { readonly tone: "fails" | "holds"; readonly shape: string; readonly words: string }) {
  return (
    <span class={`row-state tone-${tone}`}>
      <span class="shape" aria-hidden="true">
        {shape}
      </span>
      {words}
    </span>
  );
}
