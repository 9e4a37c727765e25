// The bar over the page: what is open, where it is kept, what the engine says of it, and what one can do.

import { useEffect, useRef } from "preact/hooks";
import type { Desk, DeskState, Panel } from "./desk.ts";
import { isMac } from "./keys.ts";
import { ThemeButton } from "./theme-button.tsx";

export function TopBar({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const { counts } = state;
  const bar = useRef<HTMLElement>(null);
  useEffect(() => (bar.current === null ? undefined : keepHeight(bar.current)), []);
  const key = isMac ? "⌘" : "Ctrl+";
  return (
    <header class="top-bar" ref={bar}>
      <div class="top-group">
        <h1 class="top-name">Jointwright</h1>
        <span class="top-file" title={state.title.title}>
          {state.name}
        </span>
        <KeptWord state={state} />
      </div>
      <div class="top-group top-counts">
        <Count
          desk={desk}
          state={state}
          panel="messages"
          word={counts.faults === 1 ? "fault" : "faults"}
          count={counts.faults}
          tone={counts.faults > 0 ? "fails" : "quiet"}
          shape={counts.faults > 0 ? "✕" : ""}
        />
        <Checks desk={desk} state={state} />
        <span class="top-engine" role="status">
          {state.link === "starting" ? "starting" : state.link === "stopped" || state.link === "broken" ? "▲ stopped" : ""}
        </span>
      </div>
      <nav class="top-group" aria-label="Notebook">
        <Action label="New" run={() => desk.newNotebook()} hint={`${key === "⌘" ? "⌥" : "Alt+"}N`} />
        <Action label="Open" run={() => desk.open()} hint={`${key}O`} />
        <Action label="Save" run={() => desk.save()} hint={`${key}S`} />
        <Action label="Save as" run={() => desk.saveAs()} hint={`${key}Shift+S`} />
        <PanelButton desk={desk} state={state} panel="recent" label="Recent" />
        <PanelButton desk={desk} state={state} panel="help" label="Help" />
        <ThemeButton />
      </nav>
    </header>
  );
}

/** What sticks below the bar, and what scrolls the caret into view, goes by the bar's height, which hangs on how it wraps. */
function keepHeight(bar: HTMLElement): () => void {
  const observer = new ResizeObserver(() => {
    const sticks = getComputedStyle(bar).position === "sticky";
    document.documentElement.style.setProperty("--bar-height", `${sticks ? bar.offsetHeight : 0}px`);
  });
  observer.observe(bar);
  return () => observer.disconnect();
}

function Action({ label, run, hint }: { readonly label: string; readonly run: () => Promise<void>; readonly hint: string }) {
  return (
    <button type="button" class="plain" title={hint} onClick={() => void run()}>
      {label}
    </button>
  );
}

function PanelButton({
  desk,
  state,
  panel,
  label,
}: {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly panel: Panel;
  readonly label: string;
}) {
  return (
    <button type="button" class="plain" aria-expanded={state.panel === panel} onClick={() => desk.showPanel(panel)}>
      {label}
    </button>
  );
}

interface CountProps {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly panel: Panel;
  readonly word: string;
  readonly count: number;
  readonly tone: "quiet" | "fails" | "holds" | "open";
  readonly shape: string;
}

function Count({ desk, state, panel, word, count, tone, shape }: CountProps) {
  return (
    <button type="button" class={`plain count tone-${tone}`} aria-expanded={state.panel === panel} onClick={() => desk.showPanel(panel)}>
      {shape !== "" && (
        <span class="shape" aria-hidden="true">
          {shape}
        </span>
      )}
      {count === 0 ? `no ${word}` : `${count} ${word}`}
    </button>
  );
}

function Checks({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const { checks, failing, open } = state.counts;
  const common = { desk, state, panel: "checks" } as const;
  if (checks === 0) return <Count {...common} word="checks" count={0} tone="quiet" shape="" />;
  if (failing > 0)
    return (
      <Count {...common} word={`of ${checks} ${checks === 1 ? "check fails" : "checks fail"}`} count={failing} tone="fails" shape="▲" />
    );
  if (open > 0)
    return (
      <Count {...common} word={`of ${checks} ${checks === 1 ? "check" : "checks"} not evaluated`} count={open} tone="open" shape="◇" />
    );
  return <Count {...common} word={checks === 1 ? "check holds" : "checks hold"} count={checks} tone="holds" shape="●" />;
}

function KeptWord({ state }: { readonly state: DeskState }) {
  const [tone, text] = keptWords(state);
  return (
    <span class={`top-kept tone-${tone}`} role="status" data-kept={state.keep.kind}>
      {text}
    </span>
  );
}

function keptWords({ keep, onDisk }: DeskState): readonly ["holds" | "quiet" | "fails", string] {
  if (keep.kind === "full") return ["fails", "▲ not kept, storage is full"];
  if (keep.kind === "unavailable") return onDisk ? ["holds", "● saved"] : ["fails", "▲ not kept"];
  if (keep.kind === "keeping") return ["quiet", "keeping"];
  return onDisk ? ["holds", "● saved"] : ["quiet", "kept in this browser"];
}
