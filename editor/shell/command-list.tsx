// The command list: every command, searched by its words or its two letters, run by Enter.

import { useEffect, useRef, useState } from "preact/hooks";
import { type Command, commands, findCommands } from "./commands.ts";
import type { Desk, DeskState } from "./desk.ts";
import { keyOf } from "./keys.ts";
import { Overlay } from "./overlay.tsx";

export function CommandList({
  desk,
  state,
  query: start = "",
}: {
  readonly desk: Desk;
  readonly state: DeskState;
  readonly query?: string;
}) {
  const [query, setQuery] = useState(start);
  const [chosen, setChosen] = useState(0);
  const list = useRef<HTMLDivElement>(null);
  const found = findCommands(
    commands.filter((command) => command.id !== "commands" && (command.when?.(state) ?? true)),
    query,
  );
  const at = Math.min(chosen, found.length - 1);
  useEffect(() => {
    list.current?.querySelector(`[aria-selected="true"]`)?.scrollIntoView({ block: "nearest" });
  }, [at, query]);
  const run = (command: Command | undefined): void => {
    if (command === undefined) return;
    desk.showOverlay(undefined);
    desk.pad.focus();
    void command.run(desk);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      setChosen((at + step + found.length) % Math.max(1, found.length));
    }
    if (event.key === "Enter") {
      event.preventDefault();
      run(found[at]);
    }
  };
  return (
    <Overlay label="Commands" className="command-list" onClose={() => desk.closeOverlay()}>
      <input
        data-first
        type="text"
        role="combobox"
        aria-expanded="true"
        aria-controls="command-rows"
        aria-activedescendant={found[at] === undefined ? undefined : `command-${found[at].id}`}
        aria-label="Command"
        placeholder="What would you like to do?"
        autocomplete="off"
        spellcheck={false}
        value={query}
        onInput={(event) => {
          setQuery(event.currentTarget.value);
          setChosen(0);
        }}
        onKeyDown={onKeyDown}
      />
      <div class="command-rows" role="listbox" id="command-rows" aria-label="Commands" ref={list} tabIndex={-1}>
        {found.map((command, index) => (
          <div key={command.id}>
            {query.trim() === "" && command.group !== found[index - 1]?.group && <div class="command-group">{command.group}</div>}
            {/* biome-ignore lint/a11y/useKeyWithClickEvents: the arrows and Enter work on the field above */}
            <div
              id={`command-${command.id}`}
              class="command-row"
              role="option"
              tabIndex={-1}
              aria-selected={index === at}
              onMouseMove={() => setChosen(index)}
              onClick={() => run(command)}
            >
              <span>{command.words}</span>
              <kbd>{keyOf(command)}</kbd>
            </div>
          </div>
        ))}
        {found.length === 0 && <p class="panel-empty">No command has these words.</p>}
      </div>
    </Overlay>
  );
}
