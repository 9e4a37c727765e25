// A notebook's text shown as the pad shows it, to be read only: no engine, no outputs.

import { EditorState } from "@codemirror/state";
import { Decoration, type DecorationSet, EditorView } from "@codemirror/view";
import { chunkAt, placedChunks, readNotebook } from "../../engine/notebook/index.ts";
import { frontFold } from "./front-fold.ts";
import { gaps } from "./gaps.ts";
import { notebookField } from "./notebook-field.ts";
import { outputsField } from "./outputs-field.ts";
import { theme } from "./theme.ts";
import { working } from "./working.ts";

/** Shows the text with the statement that declares a name in view; gives the way to take it down. */
export function createReader(parent: HTMLElement, text: string, name: string, label: string): () => void {
  const host = document.createElement("div");
  host.className = "reader-host";
  parent.append(host);
  const root = host.attachShadow({ mode: "open" });
  const at = declaredAt(text, name);
  const state = EditorState.create({
    doc: text,
    selection: { anchor: at },
    extensions: [
      notebookField,
      outputsField,
      gaps,
      frontFold,
      working,
      theme,
      EditorView.decorations.of(hereIs(text, at)),
      EditorView.lineWrapping,
      EditorState.readOnly.of(true),
      EditorView.editable.of(false),
      EditorView.contentAttributes.of({ "aria-label": label, tabindex: "0" }),
    ],
  });
  const view = new EditorView({ state, parent: root, root });
  view.dispatch({ effects: EditorView.scrollIntoView(at, { y: "start", yMargin: 48 }) });
  return () => {
    view.destroy();
    host.remove();
  };
}

/** The lines of the statement that was asked for. */
function hereIs(text: string, at: number): DecorationSet {
  const found = chunkAt(readNotebook(text), at);
  if (found === undefined || at === 0) return Decoration.none;
  const lines: number[] = [];
  for (let from = found.from; from <= found.from + found.chunk.text.length; ) {
    lines.push(from);
    const end = text.indexOf("\n", from);
    if (end === -1) break;
    from = end + 1;
  }
  return Decoration.set(lines.map((from) => Decoration.line({ class: "jw-here" }).range(from)));
}

function declaredAt(text: string, name: string): number {
  const head = new RegExp(`^(?:(?:formula|record|family)\\s+)?${name}(?![\\p{L}\\p{M}\\p{N}_])`, "u");
  for (const { chunk, from } of placedChunks(readNotebook(text))) if (head.test(chunk.text)) return from;
  return 0;
}
