// The side panel: one view of the notebook at a time, chosen by tabs.

import type { JSX } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { type Desk, type DeskState, type Panel, panels } from "../shell/desk.ts";
import { ChecksPanel } from "./checks-panel.tsx";
import { FaultsPanel } from "./faults-panel.tsx";
import { LibraryPanel } from "./library-panel.tsx";
import { OutlinePanel } from "./outline-panel.tsx";
import { ReviewPanel } from "./review-panel.tsx";
import { TracePanel } from "./trace-panel.tsx";

export interface PanelProps {
  readonly desk: Desk;
  readonly state: DeskState;
}

const TITLES: Readonly<Record<Panel, string>> = {
  outline: "Outline",
  checks: "Checks",
  trace: "Trace",
  library: "Library",
  review: "Review",
  faults: "Faults",
};

const VIEWS: Readonly<Record<Panel, (props: PanelProps) => JSX.Element>> = {
  outline: OutlinePanel,
  checks: ChecksPanel,
  trace: TracePanel,
  library: LibraryPanel,
  review: ReviewPanel,
  faults: FaultsPanel,
};

export function SidePanel({ desk, state }: PanelProps) {
  const { panel } = state;
  const tabs = useRef<HTMLDivElement>(null);
  const byHand = useRef(false);
  useEffect(() => {
    if (!byHand.current) return;
    byHand.current = false;
    tabs.current?.querySelector<HTMLElement>("[aria-selected=true]")?.focus();
  }, [panel]);
  if (panel === undefined) return null;
  const View = VIEWS[panel];
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    byHand.current = true;
    desk.showPanel(panels[(panels.indexOf(panel) + step + panels.length) % panels.length]);
  };
  return (
    <aside class="panel" aria-label="Side panel">
      <div class="panel-head">
        <div class="panel-tabs" role="tablist" aria-label="Panels" ref={tabs} onKeyDown={onKeyDown}>
          {panels.map((name) => (
            <button
              key={name}
              type="button"
              role="tab"
              id={`tab-${name}`}
              aria-selected={panel === name}
              aria-controls="panel-body"
              tabIndex={panel === name ? 0 : -1}
              onClick={() => desk.showPanel(name)}
            >
              {TITLES[name]}
            </button>
          ))}
        </div>
        <button type="button" class="plain panel-close" aria-label="Close the panel" onClick={() => desk.showPanel(undefined)}>
          ✕
        </button>
      </div>
      {/* It scrolls, so the keyboard must be able to reach it. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls */}
      <div class="panel-body" id="panel-body" role="tabpanel" aria-labelledby={`tab-${panel}`} tabIndex={0}>
        <View desk={desk} state={state} />
      </div>
    </aside>
  );
}
