// The start page: begin from a template or a blank, go on with a recent notebook, and the cautions of the trade.

import { useEffect, useState } from "preact/hooks";
import type { Kept } from "../files/keep.ts";
import { cautions } from "./cautions.ts";
import type { Desk, DeskState } from "./desk.ts";
import { keyWords } from "./keys.ts";
import { type Template, templates } from "./templates.ts";

export function StartPage({ desk, state }: { readonly desk: Desk; readonly state: DeskState }) {
  const [recent, setRecent] = useState<readonly Kept[]>([]);
  const [list, setList] = useState<readonly Template[]>([]);
  useEffect(() => {
    let current = true;
    void desk.recent().then((found) => current && setRecent(found));
    void templates().then((found) => current && setList(found));
    return () => {
      current = false;
    };
  }, [desk]);
  return (
    <main class="start">
      <p class="start-line">A calculation pad for threaded joints in 3D-printed polymer and fibre-reinforced parts.</p>
      {state.name !== "" && (
        <button type="button" class="plain small" onClick={() => desk.showPlace("pad")}>
          ← back to {state.name}
        </button>
      )}
      <section>
        <h2>Begin</h2>
        <ul class="templates">
          <li>
            <button type="button" class="template" onClick={() => void desk.newNotebook()}>
              <span class="template-name">Blank pad</span>
              <span class="template-purpose">An empty notebook, the caret where the first line goes.</span>
            </button>
          </li>
          {list.map(({ name, title, purpose, text }) => (
            <li key={name}>
              <button type="button" class="template" onClick={() => void desk.openText(name, text)}>
                <span class="template-name">{title}</span>
                <span class="template-purpose">{purpose}</span>
              </button>
            </li>
          ))}
        </ul>
        <button type="button" class="boxed" onClick={() => void desk.open()}>
          Open from disk
        </button>{" "}
        <span class="row-place">
          {keyWords("Mod-o")}; every command is in the list that {keyWords("Mod-k")} opens
        </span>
      </section>
      {recent.length > 0 && (
        <section>
          <h2>Recent</h2>
          <ul class="panel-list">
            {recent.map((kept) => (
              <li key={kept.id}>
                <button type="button" class="row" onClick={() => void desk.openKept(kept.id)}>
                  <span class="row-line">
                    <span>{kept.name}</span>
                    <span class="row-place">{new Date(kept.at).toLocaleString()}</span>
                  </span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h2>Cautions</h2>
        <ul class="cautions">
          {cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
    </main>
  );
}
