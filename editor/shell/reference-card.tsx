// What a line cites: the whole entry of each work, and the other lines that cite it.

import { useEffect, useState } from "preact/hooks";
import type { LineOutput } from "../../engine/session/index.ts";
import { outputsField } from "../pad/outputs-field.ts";
import { askTool } from "./ask.ts";
import type { Desk, DeskState } from "./desk.ts";
import { NameView } from "./maths.tsx";
import { Popover } from "./popover.tsx";

interface CardProps {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly output: LineOutput;
  readonly at: DOMRect;
}

type Cited = readonly { readonly entry: string; readonly alsoAt: readonly string[] }[];

export function ReferenceCard({ desk, state, output, at }: CardProps) {
  const [cited, setCited] = useState<Cited | undefined>(undefined);
  useEffect(() => {
    let current = true;
    void askTool(desk.link, "citations", state.name, output.id).then((answer) => {
      if (current) setCited(answer ?? []);
    });
    return () => {
      current = false;
    };
  }, [desk, state.name, output.id]);
  if (cited === undefined) return null;
  const { byId } = desk.pad.view.state.field(outputsField);
  const source = output.marks?.provenance;
  return (
    <Popover label="Reference" at={at} onClose={() => desk.closeOverlay()}>
      <div class="reference-card">
        <p>
          {output.citation === "" ? (source === undefined ? "" : `rests on ${source.from}, which is ${source.level}`) : output.citation}
        </p>
        {cited.map(({ entry, alsoAt }) => (
          <div key={entry}>
            <p class="row-text">{entry}</p>
            {alsoAt.length > 0 && (
              <ul class="chips">
                <li class="row-place">also at</li>
                {alsoAt.map((id) => (
                  <li key={id}>
                    <button
                      type="button"
                      class="chip"
                      onClick={() => {
                        desk.showOverlay(undefined);
                        desk.goToOutput(id);
                      }}
                    >
                      <NameView name={byId.get(id)?.name ?? byId.get(id)?.note ?? id} />
                    </button>
                  </li>
                ))}
              </ul>
            )}
          </div>
        ))}
        <button type="button" class="plain small" data-first onClick={() => desk.closeOverlay()}>
          Close
        </button>
      </div>
    </Popover>
  );
}
