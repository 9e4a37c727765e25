// The page around the pad: bar, notices, title block, column heads, side panel.

import { useEffect, useState } from "preact/hooks";
import type { Desk } from "./desk.ts";
import { SidePanel } from "./panels.tsx";
import { TitleBlock } from "./title-block.tsx";
import { TopBar } from "./top-bar.tsx";
import { useDesk } from "./use-desk.ts";

/** `host` is the element the pad lives in; it is put in once and never drawn by the view. */
export function App({ desk, host }: { readonly desk: Desk; readonly host: HTMLElement }) {
  const state = useDesk(desk);
  const [place, setPlace] = useState<HTMLElement | null>(null);
  useEffect(() => {
    if (place !== null && host.parentElement !== place) {
      place.append(host);
      desk.pad.view.requestMeasure();
    }
  }, [place, host, desk]);
  useEffect(() => {
    const { title } = state.title;
    document.title = title === "" ? `${state.name} - Jointwright` : `${title} - Jointwright`;
  }, [state.title, state.name]);
  return (
    <>
      <TopBar desk={desk} state={state} />
      <div class="notices" role="status">
        {state.notices.map((notice) => (
          <div key={notice.key} class={`notice notice-${notice.tone}`}>
            <span>{notice.text}</span>
            {notice.actions.map((action) => (
              <button key={action.label} type="button" class="boxed" onClick={action.run}>
                {action.label}
              </button>
            ))}
          </div>
        ))}
      </div>
      <div class={state.panel === undefined ? "desk" : "desk with-panel"}>
        <main class="page">
          <TitleBlock desk={desk} state={state} />
          <div class="column-heads" aria-hidden="true">
            <span>Reference</span>
            <span>Working</span>
            <span>Output</span>
          </div>
          <button
            type="button"
            class="front-toggle plain"
            aria-pressed={state.frontShown}
            onClick={() => desk.showFront(!state.frontShown)}
          >
            {state.frontShown ? "hide title block text" : "title block as text"}
          </button>
          <div class="pad-place" ref={setPlace} />
        </main>
        <SidePanel desk={desk} state={state} />
      </div>
    </>
  );
}
