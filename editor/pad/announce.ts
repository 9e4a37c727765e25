// Tells screen readers, politely and not more than the hand can follow: which outputs changed, and how to leave the pad.

import { type Command, EditorView, ViewPlugin, type ViewUpdate } from "@codemirror/view";
import { outputWords } from "./output-words.ts";
import { outputsField, receiveSnapshot } from "./outputs-field.ts";

const REST = 900;
const MOST = 3;

export const announceOutputs = ViewPlugin.define((view) => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const waiting = new Set<string>();
  const said = new Map<string, string>();
  const say = (): void => {
    const { byId } = view.state.field(outputsField);
    const sentences: string[] = [];
    for (const id of waiting) {
      const output = byId.get(id);
      const sentence = output === undefined ? undefined : outputWords(output)?.sentence;
      if (sentence === undefined || said.get(id) === sentence) continue;
      said.set(id, sentence);
      sentences.push(sentence);
    }
    waiting.clear();
    if (sentences.length === 0) return;
    const more = sentences.length > MOST ? `, and ${sentences.length - MOST} more outputs changed` : "";
    view.dispatch({ effects: EditorView.announce.of(sentences.slice(0, MOST).join("; ") + more) });
  };
  return {
    update(update: ViewUpdate) {
      for (const transaction of update.transactions) {
        for (const effect of transaction.effects) {
          if (!effect.is(receiveSnapshot)) continue;
          const { snapshot, whole } = effect.value;
          for (const output of snapshot.changed) {
            // A notebook that was just opened is read by walking through it, not shouted.
            if (whole) {
              const sentence = outputWords(output)?.sentence;
              if (sentence !== undefined) said.set(output.id, sentence);
            } else waiting.add(output.id);
          }
        }
      }
      if (waiting.size === 0 || (timer !== undefined && !update.docChanged && update.transactions.length === 0)) return;
      clearTimeout(timer);
      timer = setTimeout(say, REST);
    },
    destroy: () => clearTimeout(timer),
  };
});

/** Escape, then Tab, leaves the editor; CodeMirror lets the next Tab through, this says so. */
export const announceWayOut: Command = (view) => {
  view.dispatch({ effects: EditorView.announce.of("Press Tab to leave the pad.") });
  return false;
};
