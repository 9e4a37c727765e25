// The pad's look inside the editor's shadow root. Colours and fonts are custom properties of the page (page.css).

import type { Extension } from "@codemirror/state";
import { EditorView } from "@codemirror/view";

/** Every row of text stands on this grid, in pixels. */
export const LINE = 24;
/** Below this width of the window the output goes under its line. */
export const NARROW = 820;
const narrow = `@media (max-width: ${NARROW - 0.02}px)`;

const LEFT = "var(--reference-width)";
const RIGHT = "var(--output-width)";
const spoken = { position: "absolute", width: "1px", height: "1px", overflow: "hidden", clipPath: "inset(50%)", whiteSpace: "nowrap" };
const sides = { paddingLeft: `calc(${LEFT} + 16px)`, paddingRight: `calc(${RIGHT} + 16px)` };

export const theme: Extension = EditorView.theme({
  "&": { backgroundColor: "transparent", color: "var(--ink)", fontSize: "15px" },
  "&.cm-focused": { outline: "none" },
  ".cm-scroller": { overflow: "visible", fontFamily: "var(--mono)", lineHeight: `${LINE}px`, position: "relative" },
  ".cm-content": { padding: "0 0 96px", caretColor: "var(--ink)", minHeight: "calc(100vh - 232px)", flexShrink: "1", minWidth: "0" },
  ".cm-line": { ...sides, lineHeight: `${LINE}px`, minHeight: `${LINE}px`, display: "flow-root" },
  ".cm-cursor": { borderLeftColor: "var(--ink)", borderLeftWidth: "1.5px" },
  "&.cm-focused .cm-activeLine": { backgroundColor: "var(--current)" },
  ".cm-activeLine": { backgroundColor: "transparent" },
  "&.cm-focused > .cm-scroller > .cm-selectionLayer .cm-selectionBackground, .cm-selectionBackground": { background: "var(--selected)" },
  ".cm-placeholder": { color: "var(--faint)", fontStyle: "italic", fontFamily: "var(--serif)" },
  ".cm-announced": spoken,

  // Working
  ".jw-working": { fontFamily: "var(--mono)" },
  ".jw-t-number": { color: "var(--accent)" },
  ".jw-t-unit": { color: "var(--soft)" },
  ".jw-t-keyword": { fontWeight: "500" },
  ".jw-t-text": { color: "var(--ink)" },
  ".jw-t-comment": { color: "var(--faint)", fontFamily: "var(--serif)", fontStyle: "italic", fontSize: "14px", lineHeight: "1" },
  ".jw-t-columns": { color: "var(--faint)" },
  ".jw-t-wrong": { color: "var(--fails)" },
  ".jw-sub": { fontSize: "11.5px", verticalAlign: "-4px", lineHeight: "0" },
  ".jw-note": {
    float: "right",
    marginLeft: "24px",
    fontFamily: "var(--serif)",
    fontStyle: "italic",
    fontSize: "14px",
    lineHeight: `${LINE}px`,
    color: "var(--faint)",
    textAlign: "right",
  },
  ".jw-fence": { fontSize: "9px", lineHeight: `${LINE / 2}px`, minHeight: `${LINE / 2}px`, height: `${LINE / 2}px`, overflow: "hidden", color: "var(--faint)" },
  ".jw-fence.jw-fence-whole": { lineHeight: `${LINE}px`, minHeight: `${LINE}px`, height: `${LINE}px`, fontSize: "11px" },
  ".jw-gap": { fontSize: "10px", lineHeight: `${LINE / 2}px`, minHeight: `${LINE / 2}px`, height: `${LINE / 2}px` },
  ".jw-data": { fontFamily: "var(--mono)", fontSize: "13px", color: "var(--soft)" },
  ".jw-data-head": { color: "var(--ink)" },
  ".jw-front": { fontFamily: "var(--mono)", fontSize: "13px", color: "var(--soft)" },
  ".jw-front-hidden": { height: `${LINE}px` },

  // Prose
  ".jw-prose": { fontFamily: "var(--serif)", fontSize: "16px" },
  ".jw-heading": { fontWeight: "600" },
  ".jw-heading-bound": { paddingTop: `${LINE / 2}px` },
  ".jw-heading-1": { fontSize: "18px" },
  ".jw-heading-2": { fontSize: "17px" },
  ".jw-heading-3": { fontSize: "16px" },
  ".jw-emphasis": { fontStyle: "italic" },
  ".jw-strong": { fontWeight: "600" },
  ".jw-code": { fontFamily: "var(--mono)", fontSize: "14px", lineHeight: "1" },
  ".jw-code-line": { fontFamily: "var(--mono)", fontSize: "14px", color: "var(--soft)" },
  ".jw-table": { fontFamily: "var(--mono)", fontSize: "14px" },
  ".jw-table-head": { fontWeight: "500" },
  ".jw-link": { color: "var(--accent)" },
  ".jw-quote": { color: "var(--soft)" },
  ".jw-aside, .jw-list-mark": { color: "var(--faint)" },
  ".jw-live": { fontFamily: "var(--sans)", fontSize: "15px", lineHeight: "1", fontWeight: "500", borderBottom: "1px dotted var(--accent)" },
  ".jw-live-open": { color: "var(--open)", borderBottomColor: "var(--open)" },
  ".jw-offer": { fontFamily: "var(--sans)", fontSize: "12px", lineHeight: "1", color: "var(--faint)", marginLeft: "16px", userSelect: "none" },

  // Faults
  ".jw-wave": { textDecorationLine: "underline", textDecorationStyle: "wavy", textDecorationThickness: "1px", textUnderlineOffset: "4px", textDecorationSkipInk: "none" },
  ".jw-wave-fault": { textDecorationColor: "var(--fails)" },
  ".jw-wave-notice": { textDecorationColor: "var(--open)" },
  ".jw-message": {
    ...sides,
    minHeight: `${LINE}px`,
    lineHeight: `${LINE}px`,
    fontFamily: "var(--sans)",
    fontSize: "13px",
    color: "var(--fails)",
  },
  ".jw-message-fault, .jw-faulty": {
    backgroundImage: "linear-gradient(var(--fault-ground), var(--fault-ground))",
    backgroundOrigin: "border-box",
    backgroundRepeat: "no-repeat",
    backgroundPosition: `${LEFT} 0`,
    backgroundSize: `calc(100% - ${LEFT} - ${RIGHT}) 100%`,
  },
  "&.cm-focused .cm-activeLine.jw-faulty": { backgroundImage: "none" },
  ".jw-message-notice": { color: "var(--open)" },
  ".jw-message-words": { marginRight: "10px" },
  ".jw-message code": { fontFamily: "var(--mono)", fontSize: "12.5px", lineHeight: "1" },
  ".jw-mend": {
    font: "500 12px/16px var(--sans)",
    color: "inherit",
    background: "none",
    border: "1px solid currentColor",
    borderRadius: "2px",
    padding: "1px 6px",
    cursor: "pointer",
  },
  ".jw-mend:hover": { background: "var(--paper)" },

  // Columns
  ".jw-references, .jw-outputs": { position: "absolute", top: "0", zIndex: "1" },
  ".jw-references": { left: "0", width: LEFT },
  ".jw-outputs": { right: "0", width: RIGHT },
  ".jw-reference, .jw-output": { position: "absolute", left: "0", right: "0", height: `${LINE}px`, lineHeight: `${LINE}px`, boxSizing: "border-box", whiteSpace: "nowrap" },
  ".jw-reference": { padding: "0 8px 0 12px", fontFamily: "var(--condensed)", fontSize: "13px", color: "var(--soft)" },
  ".jw-reference .jw-seen": { display: "block", overflow: "hidden", textOverflow: "ellipsis" },
  ".jw-doubtful": { color: "var(--open)" },
  ".jw-output": { padding: "0 12px", fontFamily: "var(--sans)", fontSize: "15px", fontVariantNumeric: "tabular-nums", textAlign: "right", display: "flex", justifyContent: "flex-end", alignItems: "center", gap: "10px" },
  ".jw-output .jw-seen": { overflow: "hidden", textOverflow: "ellipsis", display: "inline-flex", alignItems: "center", minWidth: "0" },
  ".jw-spoken": spoken,
  ".jw-number": { overflow: "hidden", textOverflow: "ellipsis" },
  ".jw-unit": { color: "var(--soft)", marginLeft: "5px", flexShrink: "0" },
  ".jw-shape": { fontSize: "11px", marginRight: "5px", flexShrink: "0" },
  ".jw-word": { fontFamily: "var(--condensed)", fontSize: "12.5px", fontWeight: "600", letterSpacing: "0.04em", textTransform: "uppercase", overflow: "hidden", textOverflow: "ellipsis" },
  ".jw-word + .jw-number": { marginLeft: "7px" },
  ".jw-fails .jw-number, .jw-holds .jw-number": { fontFamily: "var(--condensed)", fontSize: "12.5px", fontWeight: "600" },
  ".jw-holds": { color: "var(--holds)" },
  ".jw-fails": { color: "var(--fails)" },
  ".jw-open": { color: "var(--open)" },
  ".jw-open .jw-number": { color: "var(--ink)" },
  ".jw-fault": { color: "var(--fails)" },
  ".jw-fault .jw-word, .jw-open .jw-word": { textTransform: "none", letterSpacing: "0", fontWeight: "500", fontSize: "13px" },
  ".jw-bar": { width: "54px", height: "7px", boxSizing: "border-box", border: "1px solid currentColor", marginRight: "8px", display: "inline-block", flexShrink: "0" },
  ".jw-fill": { display: "block", height: "100%", background: "currentColor" },
  ".jw-slider": { order: "-1", width: "72px", height: "16px", margin: "0", flexShrink: "1", minWidth: "40px", accentColor: "var(--accent)", appearance: "none", background: "none", cursor: "ew-resize" },
  ".jw-slider::-webkit-slider-runnable-track": { height: "1px", background: "var(--faint)" },
  ".jw-slider::-webkit-slider-thumb": { appearance: "none", width: "8px", height: "14px", marginTop: "-6.5px", background: "var(--paper)", border: "1.5px solid var(--accent)", borderRadius: "1px" },
  ".jw-slider:focus-visible": { outline: "2px solid var(--accent)", outlineOffset: "1px" },

  // Completion and hover
  ".cm-tooltip": { backgroundColor: "var(--paper)", color: "var(--ink)", border: "1px solid var(--strong)", borderRadius: "2px", fontFamily: "var(--sans)", fontSize: "13px", boxShadow: "0 2px 8px var(--shade)" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul": { fontFamily: "var(--sans)", maxHeight: "240px" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul > li": { padding: "0 10px", lineHeight: `${LINE}px` },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { background: "var(--current)", color: "var(--ink)" },
  ".cm-completionLabel": { fontFamily: "var(--mono)" },
  ".cm-completionMatchedText": { textDecoration: "none", fontWeight: "500", color: "var(--accent)" },
  ".cm-completionDetail": { color: "var(--soft)", fontStyle: "normal", marginLeft: "12px" },
  ".cm-completionInfo": { maxWidth: "320px", padding: "4px 10px", lineHeight: "20px" },
  ".jw-hover": { padding: "4px 10px", maxWidth: "420px", lineHeight: "20px" },
  ".jw-hover-head": { fontFamily: "var(--mono)", fontSize: "13px" },
  ".jw-hover-soft": { color: "var(--soft)" },

  // Search
  ".cm-panels": { backgroundColor: "var(--paper)", color: "var(--ink)", borderColor: "var(--rule)", fontFamily: "var(--sans)", zIndex: "3" },
  ".cm-panels.cm-panels-bottom": { borderTop: "1px solid var(--strong)", position: "sticky", bottom: "0" },
  ".cm-textfield": { border: "1px solid var(--faint)", borderRadius: "2px", background: "var(--paper)", color: "var(--ink)" },
  ".cm-button": { backgroundImage: "none", background: "none", border: "1px solid var(--faint)", borderRadius: "2px", color: "var(--ink)" },
  ".cm-searchMatch": { backgroundColor: "var(--found)" },
  ".cm-searchMatch.cm-searchMatch-selected": { backgroundColor: "var(--found-here)" },

  // Narrow: the output goes under its line, its citation to the left of it.
  [narrow]: {
    ".cm-line.jw-has-output": { paddingBottom: `${LINE}px` },
    ".cm-line.jw-fence, .cm-line.jw-gap": { paddingBottom: "0" },
    ".jw-references, .jw-outputs": { width: "100%", left: "0", right: "auto", pointerEvents: "none" },
    ".jw-reference, .jw-output": { marginTop: `calc(var(--line-height) - ${LINE}px)`, pointerEvents: "auto" },
    ".jw-reference": { right: "50%", padding: "0 8px 0 16px" },
    ".jw-output": { left: "40%", padding: "0 16px 0 0" },
    ".jw-output.jw-fault, .jw-output.jw-open": { left: "30%" },
  },
});
