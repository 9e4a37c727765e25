// The units a value may be shown in; choosing one writes it into the line, as one step of undo.

import { useEffect, useState } from "preact/hooks";
import type { LineOutput, UnitChoices } from "../../engine/session/index.ts";
import { outputTip } from "../pad/output-words.ts";
import { askTool } from "./ask.ts";
import type { Desk, DeskState } from "./desk.ts";
import { Popover } from "./popover.tsx";

interface ChooserProps {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly output: LineOutput;
  readonly at: DOMRect;
}

export function UnitChooser({ desk, state, output, at }: ChooserProps) {
  const [found, setFound] = useState<UnitChoices | "none" | undefined>(undefined);
  useEffect(() => {
    let current = true;
    void askTool(desk.link, "unitChoices", state.name, output.id).then((answer) => {
      if (current) setFound(answer ?? "none");
    });
    return () => {
      current = false;
    };
  }, [desk, state.name, output.id]);
  const choose = (unit: string): void => {
    desk.closeOverlay();
    void desk.setUnit(output.id, unit);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (step === 0 || !(event.currentTarget instanceof HTMLElement)) return;
    event.preventDefault();
    const all = [...event.currentTarget.querySelectorAll<HTMLElement>("button")];
    all[(all.indexOf(document.activeElement as HTMLElement) + step + all.length) % all.length]?.focus();
  };
  if (found === undefined) return null;
  const written = found !== "none" && found.from < found.to;
  return (
    <Popover label={`Value of ${output.name ?? "this line"}`} at={at} onClose={() => desk.closeOverlay()}>
      <fieldset class="unit-list" aria-label="Units" onKeyDown={onKeyDown}>
        {outputTip(output).map((line) => (
          <p key={line} class="unit-fact">
            {line}
          </p>
        ))}
        {found !== "none" &&
          found.choices.map(({ unit, shown }) => {
            const now = shown.unit === output.value?.unit;
            return (
              <button
                key={unit}
                type="button"
                class="unit-row"
                aria-pressed={now}
                {...(now ? { "data-first": true } : {})}
                onClick={() => choose(unit)}
              >
                <span>{shown.number === "" ? shown.text : shown.number}</span>
                <span>{shown.unit === "" ? "plain" : shown.unit}</span>
              </button>
            );
          })}
        {written && (
          <button type="button" class="unit-row unit-own" onClick={() => choose("")}>
            the notebook's own unit
          </button>
        )}
        <button
          type="button"
          class="unit-row unit-own"
          {...(found === "none" ? { "data-first": true } : {})}
          onClick={() => {
            desk.showOverlay(undefined);
            desk.trace(output.id);
          }}
        >
          show the trace
        </button>
      </fieldset>
    </Popover>
  );
}
