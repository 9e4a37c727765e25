// The page's own keys; those of the text are in pad/pad.ts.

import type { Desk } from "./desk.ts";

export const isMac = typeof navigator !== "undefined" && /Mac|iPhone|iPad/.test(navigator.platform);

/** Listens on the window; gives the way to stop. */
export function listenForKeys(desk: Desk): () => void {
  const listener = (event: KeyboardEvent): void => {
    const run = commandOf(event, desk);
    if (run === undefined) return;
    event.preventDefault();
    void run();
  };
  window.addEventListener("keydown", listener);
  return () => window.removeEventListener("keydown", listener);
}

function commandOf(event: KeyboardEvent, desk: Desk): (() => Promise<void> | void) | undefined {
  const main = isMac ? event.metaKey && !event.ctrlKey : event.ctrlKey && !event.metaKey;
  const letter = event.key.toLowerCase();
  if (main && !event.altKey && letter === "s") return event.shiftKey ? desk.saveAs : desk.save;
  if (main && !event.altKey && !event.shiftKey && letter === "o") return desk.open;
  // The browser keeps Ctrl+N for itself.
  if (event.altKey && !main && !event.shiftKey && event.code === "KeyN") return desk.newNotebook;
  if (event.key === "F8") return () => nextFault(desk, event.shiftKey);
  if (event.key === "Escape" && desk.state().panel !== undefined && isInPanel(event)) {
    return () => {
      desk.showPanel(undefined);
      desk.pad.focus();
    };
  }
  return undefined;
}

const isInPanel = (event: KeyboardEvent): boolean => event.target instanceof Element && event.target.closest(".panel") !== null;

function nextFault(desk: Desk, back: boolean): void {
  const places = [...desk.messages()].sort((a, b) => a.from - b.from);
  const { head } = desk.pad.view.state.selection.main;
  const found = back
    ? (places.findLast((message) => message.to < head) ?? places.at(-1))
    : (places.find((message) => head < message.from) ?? places[0]);
  if (found !== undefined) desk.pad.goTo(found.from);
}
