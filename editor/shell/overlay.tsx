// A sheet over the page: it takes the focus, keeps it while it is open, closes by Escape, and gives the focus back.

import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

interface OverlayProps {
  readonly label: string;
  readonly className?: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

const REACHABLE = "button:not([disabled]), input, select, a[href], [tabindex='0'], .pad-host";

export function Overlay({ label, className = "", onClose, children }: OverlayProps) {
  const sheet = useRef<HTMLDivElement>(null);
  // At once, so that what is typed next goes into the sheet and not into the notebook.
  useLayoutEffect(() => {
    const before = document.activeElement;
    const first = sheet.current?.querySelector<HTMLElement>("[data-first]") ?? sheet.current;
    first?.focus();
    return () => {
      if (before instanceof HTMLElement && document.activeElement === document.body) before.focus();
    };
  }, []);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Escape") {
      event.preventDefault();
      event.stopPropagation();
      onClose();
    }
    if (event.key !== "Tab" || sheet.current === null) return;
    const all = [...sheet.current.querySelectorAll<HTMLElement>(REACHABLE)].filter((element) => element.offsetParent !== null);
    const edge = event.shiftKey ? all[0] : all.at(-1);
    if (document.activeElement !== edge && document.activeElement !== sheet.current) return;
    event.preventDefault();
    (event.shiftKey ? all.at(-1) : all[0])?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a click beside the sheet closes it; Escape does the same by key
    <div
      class="veil"
      onMouseDown={(event) => {
        if (event.target === event.currentTarget) onClose();
      }}
      onKeyDown={onKeyDown}
    >
      <div class={`overlay ${className}`} role="dialog" aria-modal="true" aria-label={label} tabIndex={-1} ref={sheet}>
        {children}
      </div>
    </div>
  );
}
