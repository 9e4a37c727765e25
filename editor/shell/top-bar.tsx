// The bar over the page: what is open, where it is kept, what the engine says of it, and how its values are shown.

import { useEffect, useRef } from "preact/hooks";
import type { ViewSystem } from "../../engine/session/index.ts";
import type { Desk, DeskState, Panel } from "./desk.ts";
import { keyWords } from "./keys.ts";

interface BarProps {
  readonly desk: Desk;
  readonly state: DeskState;
}

const SYSTEMS: readonly (readonly [ViewSystem, string])[] = [
  ["written", "units as written"],
  ["metric", "metric"],
  ["inch", "inch"],
];

export function TopBar({ desk, state }: BarProps) {
  const bar = useRef<HTMLElement>(null);
  useEffect(() => (bar.current === null ? undefined : keepHeight(bar.current)), []);
  return (
    <header class="top-bar" ref={bar}>
      <div class="top-group">
        <h1 class="top-name">Jointwright</h1>
        <button
          type="button"
          class="plain top-file"
          title="New, open, save"
          aria-haspopup="dialog"
          onClick={() => desk.showOverlay({ kind: "commands", query: "notebook" })}
        >
          {state.name === "" ? "Notebook" : state.name}
        </button>
        {state.name !== "" && <KeptWord state={state} />}
      </div>
      <div class="top-group top-counts">
        {state.place === "pad" && <Faults desk={desk} state={state} />}
        {state.place === "pad" && <Checks desk={desk} state={state} />}
        <span class="top-engine" role="status">
          {state.link === "starting" && state.place === "pad"
            ? "starting"
            : state.link === "stopped" || state.link === "broken"
              ? "▲ stopped"
              : ""}
        </span>
      </div>
      <div class="top-group">
        <select
          class="plain"
          aria-label="Units shown"
          value={state.system}
          onChange={(event) => void desk.setSystem(event.currentTarget.value as ViewSystem)}
        >
          {SYSTEMS.map(([system, words]) => (
            <option key={system} value={system}>
              {words}
            </option>
          ))}
        </select>
        <select
          class="plain"
          aria-label="Significant digits shown"
          value={String(desk.digits())}
          onChange={(event) => desk.setDigits(Number(event.currentTarget.value))}
        >
          {Array.from({ length: 15 }, (_, index) => index + 1).map((digits) => (
            <option key={digits} value={String(digits)}>
              {digits === 1 ? "1 digit" : `${digits} digits`}
            </option>
          ))}
        </select>
        {state.panel === undefined && (
          <button type="button" class="plain" onClick={() => desk.showPanel("trace")}>
            Panel
          </button>
        )}
        <button
          type="button"
          class="key-button"
          aria-label={`Commands, ${keyWords("Mod-k").replace("+", " ")}`}
          aria-haspopup="dialog"
          onClick={() => desk.showOverlay({ kind: "commands" })}
        >
          {keyWords("Mod-k").replace("+", " ")}
        </button>
      </div>
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

interface CountProps extends BarProps {
  readonly panel: Panel;
  readonly words: string;
  readonly tone: "quiet" | "fails" | "holds" | "open";
  readonly shape: string;
}

function Count({ desk, panel, words, tone, shape }: CountProps) {
  return (
    <button type="button" class={`plain count tone-${tone}`} onClick={() => desk.showPanel(panel)}>
      {shape !== "" && (
        <span class="shape" aria-hidden="true">
          {shape}
        </span>
      )}
      {words}
    </button>
  );
}

function Faults({ desk, state }: BarProps) {
  const { faults } = state.counts;
  const words = faults === 0 ? "no faults" : faults === 1 ? "1 fault" : `${faults} faults`;
  return (
    <Count desk={desk} state={state} panel="faults" words={words} tone={faults > 0 ? "fails" : "quiet"} shape={faults > 0 ? "✕" : ""} />
  );
}

function Checks({ desk, state }: BarProps) {
  const { checks, failing, open } = state.counts;
  const common = { desk, state, panel: "checks" } as const;
  const all = checks === 1 ? "1 check" : `${checks} checks`;
  if (checks === 0) return <Count {...common} words="no checks" tone="quiet" shape="" />;
  if (failing > 0) return <Count {...common} words={`${failing} of ${all} ${failing === 1 ? "fails" : "fail"}`} tone="fails" shape="▲" />;
  if (open > 0) return <Count {...common} words={`${open} of ${all} not evaluated`} tone="open" shape="◇" />;
  return <Count {...common} words={`${all} ${checks === 1 ? "holds" : "hold"}`} tone="holds" shape="●" />;
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
  if (keep.kind === "unavailable") return onDisk ? ["holds", "saved"] : ["fails", "▲ not kept"];
  if (keep.kind === "keeping") return ["quiet", "keeping"];
  return onDisk ? ["holds", "saved"] : ["quiet", "kept in this browser"];
}
