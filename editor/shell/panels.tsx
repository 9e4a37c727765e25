// The side panel, one at a time: faults, checks, trace, recent notebooks, help.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Kept } from "../files/keep.ts";
import { outputWords } from "../pad/output-words.ts";
import type { Desk, DeskState, Panel } from "./desk.ts";
import { Help } from "./help.tsx";
import { MessageText } from "./message-text.tsx";
import { TracePanel } from "./trace-panel.tsx";

const TITLES: Readonly<Record<Panel, string>> = { messages: "Faults", checks: "Checks", trace: "Trace", recent: "Recent", help: "Help" };

export function SidePanel({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { panel } = state;
  useEffect(() => {
    if (panel !== undefined && panel !== "trace") heading.current?.focus();
  }, [panel]);
  if (panel === undefined) return null;
  return (
    <aside class="panel" aria-label={TITLES[panel]}>
      <div class="panel-head">
        <h2 tabIndex={-1} ref={heading}>
          {TITLES[panel]}
        </h2>
        <button type="button" class="plain" onClick={() => desk.showPanel(undefined)}>
          Close
        </button>
      </div>
      {/* It scrolls, so the keyboard must be able to reach it. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls */}
      <div class="panel-body" tabIndex={0}>
        {panel === "messages" && <Messages desk={desk} />}
        {panel === "checks" && <Checks desk={desk} />}
        {panel === "trace" && <TracePanel desk={desk} state={state} />}
        {panel === "recent" && <Recent desk={desk} state={state} />}
        {panel === "help" && <Help />}
      </div>
    </aside>
  );
}

function Messages({ desk }: { readonly desk: Desk }) {
  const messages = desk.messages();
  if (messages.length === 0) return <p class="panel-empty">No faults.</p>;
  return (
    <ul class="panel-list">
      {messages.map((message) => (
        <li key={`${message.code} ${message.from}`}>
          <button type="button" class="row" onClick={() => desk.pad.goTo(message.from, message.to)}>
            <span class={message.severity === "fault" ? "tone-fails" : "tone-open"}>
              <span class="shape" aria-hidden="true">
                {message.severity === "fault" ? "✕" : "◇"}
              </span>
              <MessageText text={message.text} />
            </span>
            <span class="row-place">line {message.line}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}

function Checks({ desk }: { readonly desk: Desk }) {
  const checks = desk.checks();
  if (checks.length === 0) return <p class="panel-empty">No checks. A line such as: check F_t {"<="} F_max factor 2</p>;
  return (
    <ul class="panel-list">
      {checks.map(({ output, from, line }) => {
        const words = outputWords(output);
        const tone = words?.tone === "holds" || words?.tone === "fails" ? words.tone : "open";
        return (
          <li key={output.id}>
            <button type="button" class="row" onClick={() => desk.pad.goTo(from)}>
              <span>{output.check?.title ?? "check"}</span>
              <span class={`row-state tone-${tone}`}>
                <span class="shape" aria-hidden="true">
                  {words?.shape}
                </span>
                {words?.word} {words?.number}
              </span>
              <span class="row-place">
                line {line}
                {output.check?.marginText === undefined ? "" : `, margin of safety ${output.check.marginText}`}
              </span>
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function Recent({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const [list, setList] = useState<readonly Kept[] | undefined>(undefined);
  useEffect(() => {
    void desk.recent().then(setList);
  }, [desk, state.name]);
  if (list === undefined) return null;
  if (list.length === 0) return <p class="panel-empty">Nothing is kept in this browser yet.</p>;
  return (
    <ul class="panel-list">
      {list.map((kept) => (
        <li key={kept.id}>
          <button type="button" class="row" onClick={() => void desk.openKept(kept.id)}>
            <span>{kept.name}</span>
            <span class="row-place">{new Date(kept.at).toLocaleString()}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
