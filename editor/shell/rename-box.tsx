// Asks for the new name of a value and renames it wherever it stands.

import { useState } from "preact/hooks";
import type { Desk } from "./desk.ts";
import { Overlay } from "./overlay.tsx";

export function RenameBox({ desk, name }: { readonly desk: Desk; readonly name: string }) {
  const [wanted, setWanted] = useState(name);
  const [why, setWhy] = useState<string | undefined>(undefined);
  const rename = async (): Promise<void> => {
    const refusal = wanted === name ? undefined : await desk.rename(name, wanted);
    if (refusal === undefined) desk.closeOverlay();
    else setWhy(refusal);
  };
  return (
    <Overlay label={`Rename ${name}`} className="rename" onClose={() => desk.closeOverlay()}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void rename();
        }}
      >
        <label>
          Rename <code>{name}</code> everywhere to
          <input
            data-first
            type="text"
            autocomplete="off"
            spellcheck={false}
            aria-describedby={why === undefined ? undefined : "rename-why"}
            value={wanted}
            onFocus={(event) => event.currentTarget.select()}
            onInput={(event) => {
              setWanted(event.currentTarget.value);
              setWhy(undefined);
            }}
          />
        </label>
        <button type="submit" class="boxed">
          Rename
        </button>
        <button type="button" class="plain" onClick={() => desk.closeOverlay()}>
          Cancel
        </button>
      </form>
      {why !== undefined && (
        <p id="rename-why" class="tone-fails" role="alert">
          {why}
        </p>
      )}
    </Overlay>
  );
}
