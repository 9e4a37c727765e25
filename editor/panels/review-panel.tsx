// The review list: what a checker would ask before signing, by kind.

import { useEffect, useState } from "preact/hooks";
import type { ReviewItem, ReviewKind } from "../../engine/session/index.ts";
import { askTool } from "../shell/ask.ts";
import { NameView } from "../shell/maths.tsx";
import type { PanelProps } from "./side-panel.tsx";

const ORDER: readonly ReviewKind[] = [
  "outside validity",
  "check without factor",
  "no reference",
  "bare number",
  "unit not shown",
  "no note",
  "unused",
];

export function ReviewPanel({ desk, state }: PanelProps) {
  const [items, setItems] = useState<readonly ReviewItem[] | undefined>(undefined);
  useEffect(() => {
    let current = true;
    void askTool(desk.link, "review", state.name).then((answer) => {
      if (current && answer !== undefined) setItems(answer);
    });
    return () => {
      current = false;
    };
  }, [desk, state.name, state.revision]);
  if (items === undefined) return <p class="panel-empty">Reading the notebook.</p>;
  if (items.length === 0) return <p class="panel-empty">Nothing to ask: every line has its note, its source and its unit.</p>;
  return (
    <>
      {ORDER.map((kind) => {
        const some = items.filter((item) => item.kind === kind);
        if (some.length === 0) return null;
        return (
          <section key={kind}>
            <h3>
              {kind} <span class="count-of">{some.length}</span>
            </h3>
            <p class="panel-empty">{some[0]?.kind === "outside validity" ? "" : some[0]?.text}</p>
            <ul class="chips">
              {some.map((item) => (
                <li key={`${item.id} ${item.from}`}>
                  <button type="button" class="chip" title={item.text} onClick={() => desk.leap(item.from, item.to)}>
                    <NameView name={item.name} />
                  </button>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}
