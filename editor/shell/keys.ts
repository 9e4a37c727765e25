// Keys of the commands: how they are written on the screen, and the page's own listener. Keys of the text are in pad/pad.ts.

import { type Command, commands } from "./commands.ts";
import type { Desk } from "./desk.ts";

export const isMac = typeof navigator !== "undefined" && /Mac|iPhone|iPad/.test(navigator.platform);

const NAMES: Readonly<Record<string, string>> = { ArrowRight: "→", ArrowLeft: "←", ArrowUp: "↑", ArrowDown: "↓" };
const MAC: Readonly<Record<string, string>> = { Mod: "⌘", Ctrl: "⌃", Alt: "⌥", Shift: "⇧" };

/** `Mod-Shift-s` as the user reads it: Ctrl+Shift+S, or ⌘⇧S. */
export function keyWords(key: string, mac = isMac): string {
  const parts = key.split("-");
  const last = parts.pop() ?? "";
  const name = NAMES[last] ?? (last.length === 1 ? last.toUpperCase() : last);
  const modifiers = parts.map((part) => (mac ? (MAC[part] ?? part) : part === "Mod" ? "Ctrl" : part));
  return mac ? [...modifiers, name].join("") : [...modifiers, name].join("+");
}

/** What stands beside a command: its key, else the way through the command list. */
export const keyOf = (command: Command): string =>
  command.key === undefined ? `${keyWords("Mod-k")}, ${command.code}` : keyWords(command.key);

/** Listens on the window; gives the way to stop. */
export function listenForKeys(desk: Desk): () => void {
  const listener = (event: KeyboardEvent): void => {
    const { overlay, panel } = desk.state();
    const run = overlay === undefined ? commandOf(event) : undefined;
    if (run !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      void run.run(desk);
      return;
    }
    if (event.key !== "Escape") return;
    if (overlay !== undefined && !isInOverlay(event)) {
      event.preventDefault();
      event.stopPropagation();
      desk.closeOverlay();
    }
    if (overlay === undefined && panel !== undefined && isInPanel(event)) {
      event.preventDefault();
      desk.pad.focus();
    }
  };
  // Before the editor, which has meanings of its own for some of these keys.
  window.addEventListener("keydown", listener, { capture: true });
  return () => window.removeEventListener("keydown", listener, { capture: true });
}

const isInOverlay = (event: KeyboardEvent): boolean =>
  event.target instanceof Element && event.target.closest(".overlay, .popover") !== null;
const isInPanel = (event: KeyboardEvent): boolean => event.target instanceof Element && event.target.closest(".panel") !== null;

const commandOf = (event: KeyboardEvent): Command | undefined =>
  commands.find((command) => command.key !== undefined && command.inPad !== true && matches(event, command.key));

/** With Alt a Mac types other letters, so the letter is read from the key's place on the keyboard. */
function matches(event: KeyboardEvent, key: string): boolean {
  const parts = key.split("-");
  const last = parts.pop() ?? "";
  const main = isMac ? event.metaKey && !event.ctrlKey : event.ctrlKey && !event.metaKey;
  const wanted = { main: parts.includes("Mod"), alt: parts.includes("Alt"), shift: parts.includes("Shift") };
  if (wanted.main !== main || wanted.alt !== event.altKey || wanted.shift !== event.shiftKey) return false;
  if (!wanted.main && (event.ctrlKey || event.metaKey)) return false;
  return wanted.alt && last.length === 1 ? event.code === `Key${last.toUpperCase()}` : event.key.toLowerCase() === last.toLowerCase();
}
