// A small sheet beside the place it belongs to; closes by Escape, by a click elsewhere, or when the page scrolls away.

import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

interface PopoverProps {
  readonly label: string;
  readonly at: DOMRect;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

const GAP = 4;
/** Room below that is enough, if the list scrolls. */
const ENOUGH = 240;

export function Popover({ label, at, onClose, children }: PopoverProps) {
  const sheet = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState({ top: at.bottom + GAP, height: window.innerHeight });
  useLayoutEffect(() => {
    const height = sheet.current?.scrollHeight ?? 0;
    const [below, above] = [window.innerHeight - at.bottom - 2 * GAP, at.top - 2 * GAP];
    if (height <= below || ENOUGH <= below) setPlace({ top: at.bottom + GAP, height: below });
    else setPlace({ top: Math.max(GAP, at.top - GAP - Math.min(height + 2, above)), height: above });
  }, [at, children]);
  useLayoutEffect(() => {
    sheet.current?.querySelector<HTMLElement>("[data-first]")?.focus();
    const away = (event: Event): void => {
      if (event.target instanceof Node && sheet.current?.contains(event.target) === true) return;
      onClose();
    };
    window.addEventListener("mousedown", away);
    window.addEventListener("resize", away);
    return () => {
      window.removeEventListener("mousedown", away);
      window.removeEventListener("resize", away);
    };
  }, []);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Escape" || event.key === "Tab") {
      event.preventDefault();
      event.stopPropagation();
      onClose();
    }
  };
  // On the left half of the page it hangs by its left edge, on the right half by its right one.
  const side = at.left < window.innerWidth / 2 ? { left: `${at.left}px` } : { right: `${Math.max(GAP, window.innerWidth - at.right)}px` };
  return (
    <div
      class="popover"
      role="dialog"
      aria-label={label}
      style={{ ...side, top: `${place.top}px`, maxHeight: `${place.height}px` }}
      ref={sheet}
      onKeyDown={onKeyDown}
      tabIndex={-1}
    >
      {children}
    </div>
  );
}
