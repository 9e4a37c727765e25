// A module of the library, read as a notebook is read, at the statement that was asked for. Nothing in it can be changed.

import { useEffect, useRef, useState } from "preact/hooks";
import { createReader } from "../pad/reader.ts";
import { askTool } from "./ask.ts";
import type { Desk } from "./desk.ts";
import { Overlay } from "./overlay.tsx";

export function ModuleReader({ desk, module, name }: { readonly desk: Desk; readonly module: string; readonly name: string }) {
  const place = useRef<HTMLDivElement>(null);
  const [title, setTitle] = useState(module);
  useEffect(() => {
    let close: (() => void) | undefined;
    let current = true;
    void askTool(desk.link, "moduleText", module).then((text) => {
      if (!current || text === undefined || place.current === null) return;
      setTitle(/^title:\s*(.*)$/m.exec(text)?.[1] ?? module);
      close = createReader(place.current, text, name, `Module ${module}`);
    });
    return () => {
      current = false;
      close?.();
    };
  }, [desk, module, name]);
  return (
    <Overlay label={`Module ${module}`} className="module" onClose={() => desk.closeOverlay()}>
      <div class="overlay-head">
        <h2>{title}</h2>
        <span class="row-place">{module}, read only</span>
        <button type="button" class="plain" onClick={() => desk.openLibrary(name)}>
          its card
        </button>
        <button type="button" class="plain" data-first onClick={() => desk.closeOverlay()}>
          Close
        </button>
      </div>
      <div class="overlay-body module-text" ref={place} />
    </Overlay>
  );
}
