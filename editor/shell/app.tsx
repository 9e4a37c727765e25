// The page around the pad: bar, notices, title block, column heads, side panel, and what lies over them for a moment.

import { useEffect, useState } from "preact/hooks";
import { SidePanel } from "../panels/side-panel.tsx";
import { CommandList } from "./command-list.tsx";
import type { Desk, DeskState } from "./desk.ts";
import { Help } from "./help.tsx";
import { ModuleReader } from "./module-reader.tsx";
import { ReferenceCard } from "./reference-card.tsx";
import { RenameBox } from "./rename-box.tsx";
import { StartPage } from "./start-page.tsx";
import { TitleBlock } from "./title-block.tsx";
import { TopBar } from "./top-bar.tsx";
import { UnitChooser } from "./unit-chooser.tsx";
import { useDesk } from "./use-desk.ts";

interface AppProps {
  readonly desk: Desk;
  /** The element the pad lives in; it is put in once and never drawn by the view. */
  readonly host: HTMLElement;
}

export function App({ desk, host }: AppProps) {
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
    const shown = title === "" ? state.name : title;
    document.title = shown === "" ? "Jointwright" : `${shown} - Jointwright`;
  }, [state.title, state.name]);
  const start = state.place === "start";
  // What is hidden takes no focus: the pad gets it once it is on the screen again.
  useEffect(() => {
    if (start || place === null) return;
    desk.pad.view.requestMeasure();
    if (document.activeElement === null || document.activeElement === document.body) desk.pad.focus();
  }, [start, place, desk]);
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
      {start && <StartPage desk={desk} state={state} />}
      <div class={state.panel === undefined ? "desk" : "desk with-panel"} hidden={start}>
        <main class="page">
          <TitleBlock desk={desk} state={state} />
          <div class="column-heads" aria-hidden="true">
            <span>Reference</span>
            <span>Working</span>
            <span>Output</span>
          </div>
          <div class="pad-place" ref={setPlace} />
        </main>
        <SidePanel desk={desk} state={state} />
      </div>
      <Over desk={desk} state={state} />
    </>
  );
}

function Over({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const { overlay } = state;
  switch (overlay?.kind) {
    case "commands":
      return <CommandList desk={desk} state={state} {...(overlay.query === undefined ? {} : { query: overlay.query })} />;
    case "help":
      return <Help desk={desk} />;
    case "rename":
      return <RenameBox desk={desk} name={overlay.name} />;
    case "unit":
      return <UnitChooser key={overlay.output.id} desk={desk} state={state} output={overlay.output} at={overlay.at} />;
    case "reference":
      return <ReferenceCard key={overlay.output.id} desk={desk} state={state} output={overlay.output} at={overlay.at} />;
    case "module":
      return <ModuleReader key={overlay.module + overlay.name} desk={desk} module={overlay.module} name={overlay.name} />;
    default:
      return null;
  }
}
